//! What is to be done again after something was mended.

use super::CheckStep;
use crate::finding::Place;
use crate::record::{Outcome, Step};

/// Whether a step that was OK is to be done again: something about the same
/// place was missed by another step and mended since, and what was mended may
/// have moved this one, too (*our judgement*).
///
/// `done` are all steps done, oldest first; `last` is when this one was done.
pub(super) fn is_to_repeat(
    step: &CheckStep,
    last: usize,
    steps: &[CheckStep],
    done: &[&Step],
) -> bool {
    let mut places = step.places.iter().chain(&step.rests_on);
    places.any(|place| mended(*place, steps, done).is_some_and(|mended| last < mended))
}

/// When a place was last found mended: the first step about it that was missed
/// and then OK, with no miss since.
fn mended(place: Place, steps: &[CheckStep], done: &[&Step]) -> Option<usize> {
    let is_about = |key: &str| {
        let step = steps.iter().find(|step| step.key == key);
        step.is_some_and(|step| step.places.contains(&place))
    };
    let mut missed: Vec<&str> = Vec::new();
    let mut mended = None;
    for (at, step) in done.iter().enumerate().filter(|(_, s)| is_about(&s.step)) {
        if step.outcome != Outcome::Ok {
            missed.push(&step.step);
            mended = None;
        } else if missed.contains(&step.step.as_str()) {
            missed.retain(|key| *key != step.step);
            mended = mended.or(Some(at));
        }
    }
    mended
}
