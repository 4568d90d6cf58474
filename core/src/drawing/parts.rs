//! The controls that sit on a bar.

pub mod base_bar_lever;
pub mod drop_lever;
pub mod flat_lever;
pub mod pod;
pub mod port;
pub mod thumb_pod;
pub mod thumb_work;
