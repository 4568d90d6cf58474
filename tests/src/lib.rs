//! Shared by the reference checks, the browser walk-throughs and the measurements.

#[cfg(feature = "browser")]
pub mod browser;
pub mod ladder;
pub mod number;
