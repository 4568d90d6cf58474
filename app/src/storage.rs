//! Keeps plans in this browser, so that a torn write, a full store or an
//! unreadable entry loses nothing.
//!
//! Each plan lies in two *slots* that are written in turn, each with a checksum
//! and a counter: whatever happens to a write, the copy before it stays. There
//! is no index that could go wrong: the slots are the list. The undo of the newest
//! copy lies beside them, as far as there is room.

mod browser;
mod download;
mod drawer;
mod file_name;
mod free_name;
mod library;
mod plan_id;
mod record;
mod shelf;
mod slot;
mod tabs;
mod undo;

pub use browser::{is_available, is_page_from_file, note_shared_here};
pub use download::download;
pub use library::{Card, Library, in_words, keeps_plans};
pub use plan_id::PlanId;
pub use record::Keeping;
pub use shelf::Damaged;
