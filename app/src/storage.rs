//! Keeps plans in this browser, so that a torn write, a full store or an
//! unreadable entry loses nothing.
//!
//! Each plan lies in two *slots* that are written in turn, each with a checksum
//! and a counter: whatever happens to a write, the copy before it stays. There
//! is no index that could go wrong: the slots are the list.

mod drawer;
mod plan_id;
mod shelf;
mod slot;

pub mod file_name;
