//! Small views that several screens share.

mod choice;
mod confirm;
mod field;
mod finding;
mod finding_list;
mod id;
mod mark;
mod menu;
mod no_plan;
mod spot_link;

pub use choice::{Choice, Choices, all_or_not_asked, seen};
pub use confirm::Confirm;
pub use field::{DateField, NumberField, ReadField, Select, TextField, Tick};
pub use finding::{FindingCard, FixButton};
pub use finding_list::FindingList;
pub use mark::SeverityMark;
pub use menu::{MenuButton, MenuItem};
pub use no_plan::NoPlan;
pub use spot_link::SpotList;
