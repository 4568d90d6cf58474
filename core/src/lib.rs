//! Decides which hand control of an electronically shifted bike does what,
//! for a rider who cannot use both hands alike.
//!
//! This crate is pure: no input or output, no clock, no randomness, no web.
//! Dates and identities come in as arguments. Data flows one way:
//! an [`edit::Edit`] applied to a [`plan::Plan`] gives a new plan, from which
//! everything else is derived: the [`coverage`] table, findings of the
//! [`rules`], the [`drawing`], the setup [`sheet`]. A [`document`] is the plan
//! as a file.
//!
//! ```
//! use leverwright_core::catalogue::{TemplateId, template};
//! use leverwright_core::edit::{Edit, LayoutEdit, RiderEdit};
//! use leverwright_core::rider::{HandPlace, Side};
//! use leverwright_core::rules;
//!
//! let plan = template(TemplateId::RoadPlain).plan("Over the pass");
//! let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
//! let plan = plan.apply(&Edit::Rider(rests))?;
//! let plan = plan.apply(&Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)))?;
//!
//! // The right lever still brakes the rear wheel.
//! let findings = rules::findings(&plan);
//! assert!(findings.iter().any(|finding| finding.rule == "brake-out-of-reach"));
//! # Ok::<(), leverwright_core::edit::EditError>(())
//! ```
#![deny(missing_docs)]

#[macro_use]
mod vocabulary;

pub mod limits;
pub mod ordered;
pub mod text;
pub mod units;

pub mod rider;

pub mod catalogue;
pub mod cockpit;
pub mod function;
pub mod gears;
pub mod layout;
pub mod shift_plan;

pub mod document;
pub mod edit;
pub mod history;
pub mod offers;
pub mod plan;
pub mod slot;

pub mod merge;
pub mod practice;
pub mod proof;
pub mod record;
pub mod review;
pub mod revision;
pub mod share;
pub mod variants;

pub mod coverage;
pub mod reach;
pub mod ride;
pub mod situation;
mod suggest_button;
pub mod summary;
#[cfg(test)]
mod testing;

pub mod drawing;

pub mod finding;
pub mod lights;
pub mod rules;
pub mod shared_fixes;
pub mod spot;
pub mod tally;

pub mod sheet;

pub use vocabulary::Vocabulary;
