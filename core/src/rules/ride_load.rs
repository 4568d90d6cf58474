//! What the rules about load ask of a ride that is remembered.

use crate::ride::kept::Remembered;
use crate::situation::Situation;

/// Fewer presses than this say nothing about how they are shared out (our
/// judgement).
pub(super) const TELLING: u32 = 20;

/// The ride that is remembered of the layout looked at, if the plan has not
/// changed since in anything that it was worked out from.
pub(super) fn ride<'a>(situation: &Situation<'a>) -> Option<&'a Remembered> {
    let mut remembered = situation.plan.rides.remembered.iter();
    let own = remembered.find(|ride| ride.layout == situation.layout.id)?;
    situation.ride_is_current(own).then_some(own)
}
