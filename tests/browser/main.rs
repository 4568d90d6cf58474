//! Walk-throughs of the release build in a real browser. `cargo xtask walk [FILTER]` runs them.

mod accept;
mod bike;
mod boot;
mod desk;
mod driving;
mod journey;
mod layout;
mod offline;
mod plans;
mod practice;
mod ride;
mod rider;
mod sheet;
mod shell;
mod storage;
