//! Small views that several screens share.

mod choice;
mod field;
mod no_plan;

pub use choice::{Choice, Choices, all_or_not_asked};
pub use field::{NumberField, Select, TextField, Tick};
pub use no_plan::NoPlan;
