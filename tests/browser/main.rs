//! Walk-throughs of the release build in a real browser. `cargo xtask walk [FILTER]` runs them.

mod boot;
mod desk;
mod driving;
mod layout;
mod plans;
mod sheet;
mod shell;
mod storage;
