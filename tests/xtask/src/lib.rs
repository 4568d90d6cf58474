//! What the commands and the walk-throughs share.

pub mod server;
pub mod tools;
