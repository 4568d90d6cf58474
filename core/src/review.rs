//! The therapist's part: decisions, comments, the rider's own words, and the
//! Review page.

mod decision;
mod words;

pub use decision::{Review, Trial};
pub use words::{Audience, Basis, Decision, MarkKind, NotAssessed, ReviewEvent};

/// The most changes that one decision asks for.
pub const MOST_CHANGES: usize = 24;
