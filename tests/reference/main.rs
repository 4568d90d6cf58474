//! Checks against values from outside: each names its source. *Memory* marks a
//! value recalled and not read again.

mod brakes;
mod contrast;
mod gears;
mod ladder;
mod links;
mod power;
mod recorded_rides;
mod ride_against_solver;
mod steps;
mod targets;
