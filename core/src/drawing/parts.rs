//! The controls that sit on a bar.

pub mod drop_lever;
pub mod pod;
pub mod flat_lever;
pub mod thumb_pod;
pub mod base_bar_lever;
pub mod port;
pub mod thumb_work;
