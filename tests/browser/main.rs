//! Walk-throughs of the release build in a real browser. `cargo xtask walk [FILTER]` runs them.

mod accept;
mod bike;
mod boot;
mod compare;
mod desk;
mod driving;
mod gears;
mod journey;
mod layout;
mod offline;
mod parts;
mod plans;
mod practice;
mod review;
mod ride;
mod rider;
mod share;
mod sheet;
mod shell;
mod stand;
mod storage;
mod three_people;
