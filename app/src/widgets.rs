//! Small views that several screens share.

mod confirm;
mod field;
mod finding;
mod finding_list;
mod id;
mod mark;
mod menu;

pub use confirm::Confirm;
pub use field::TextField;
pub use finding::FindingCard;
pub use finding_list::FindingList;
pub use mark::SeverityMark;
pub use menu::{MenuButton, MenuItem};
