//! Who said an answer, when, and wearing what: shown with each answer, because
//! somebody may have to stand by it later.

use leverwright_core::rider::Answer;
use std::fmt;

/// Where an answer came from, and what it replaced; empty where nothing was
/// asked.
pub fn said<T: fmt::Display>(answer: &Answer<T>) -> String {
    let known = [answer.origin_in_words(), answer.before_in_words()];
    known.into_iter().flatten().collect::<Vec<_>>().join("; ")
}
