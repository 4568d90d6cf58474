//! The controls that sit on a bar.

pub mod drop_lever;
pub mod pod;
pub mod flat_lever;
pub mod thumb_pod;
