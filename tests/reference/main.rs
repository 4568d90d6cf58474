//! Checks against values from outside: each names its source. *Memory* marks a
//! value recalled and not read again.

mod brakes;
mod contrast;
mod gears;
mod ladder;
mod steps;
mod targets;
