//! The therapist's part: decisions, comments, the rider's own words, and the
//! Review page.

mod decision;
mod demand;
mod page;
mod paper;
mod stopping;
#[cfg(test)]
mod tests;
mod told;
mod voices;
mod words;

pub use decision::{Lack, Review, Trial};
pub use demand::{Demand, Fit};
pub use page::{Decided, ReviewPage, Sources, Standing};
pub use paper::{Block, PaperPart};
pub use stopping::{Stopping, Who};
pub use told::{StoppingRow, last_decision};
pub use voices::{CommentLine, MarkLine, OwnWords, comments, marks, own_words, pins};
pub use words::{Audience, Basis, Decision, MarkKind, NotAssessed, ReviewEvent};

/// The most changes that one decision asks for.
pub const MOST_CHANGES: usize = 24;
