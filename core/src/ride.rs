//! What a layout asks of each hand and digit on a real road: a ride worked out
//! step by step over a [`road`], with the [`physics`] of a bike.
//!
//! A forward simulation with stated assumptions, not a measurement: it answers
//! in ranges and compares layouts with each other.

pub mod compare;
mod digest;
mod envelope;
pub mod event;
pub mod export;
pub mod gearbox;
pub mod grasp;
pub mod habits;
pub mod in_short;
pub mod kept;
pub mod load;
pub mod measure;
pub mod page;
pub mod physics;
pub mod profile;
pub mod road;
pub mod simulation;
pub mod study;
pub mod track;
pub mod used;
