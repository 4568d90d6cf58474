//! Checks against values from outside: each names its source. *Memory* marks a
//! value recalled and not read again.

mod brakes;
mod contrast;
mod links;
mod steps;
mod targets;
