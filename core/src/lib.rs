//! Decides which hand control of an electronically shifted bike does what,
//! for a rider with limited use of one hand.
//!
//! This crate is pure: no input or output, no clock, no randomness, no web.
//! Dates and identities come in as arguments. Data flows one way:
//! an [`edit::Edit`] applied to a [`plan::Plan`] gives a new plan, from which
//! everything else is derived: [`coverage`], findings of the [`rules`], the
//! setup sheet.
#![deny(missing_docs)]

#[macro_use]
mod vocabulary;

pub mod limits;
pub mod text;
pub mod units;

pub mod rider;

pub mod catalogue;
pub mod cockpit;
pub mod function;
pub mod layout;
pub mod shift_plan;

pub mod document;
pub mod edit;
pub mod history;
pub mod offers;
pub mod plan;
pub mod slot;

pub mod coverage;
pub mod reach;
pub mod situation;
mod suggest_button;
pub mod summary;
#[cfg(test)]
mod testing;

pub mod drawing;

pub mod finding;
pub mod lights;
pub mod rules;
pub mod tally;

pub mod sheet;

pub use vocabulary::Vocabulary;
