//! Small views that several screens share.

mod choice;
mod no_plan;

pub use choice::{Choice, Choices, all_or_not_asked};
pub use no_plan::NoPlan;
