//! What a layout asks of each hand and digit on a real road: a ride worked out
//! step by step over a [`road`], with the [`physics`] of a bike.
//!
//! A forward simulation with stated assumptions, not a measurement: it answers
//! in ranges and compares layouts with each other.

pub mod physics;
pub mod road;
pub mod track;
