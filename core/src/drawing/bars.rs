//! The bars, each with its stem, tape, grips and hoses.

pub mod aero;
pub mod drop;
pub mod flat;
pub mod hose;
pub mod side_grip;
pub mod stem;
