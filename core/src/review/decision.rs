//! A therapist's decision, as it is kept.

use super::{Basis, Decision, NotAssessed, ReviewEvent};
use crate::cockpit::ButtonId;
use crate::edit::EditError;
use crate::rider::{Ability, Side, Worn, YesNo};
use crate::text::{Date, Text};

/// A therapist's decision and what it rests on. Name, role, date and revision
/// stand on the [`Entry`](crate::record::Entry).
#[derive(Debug, Clone, PartialEq)]
pub struct Review {
    /// The decision.
    pub decision: Decision,
    /// What it rests on.
    pub basis: Basis,
    /// The hands that were seen at work, and what they did.
    pub seen: Vec<(Side, Ability)>,
    /// What was worn.
    pub worn: Option<Worn>,
    /// The bike on which it was seen, in words; may be empty.
    pub bike: Text,
    /// Under which conditions it holds; may be empty.
    pub conditions: Text,
    /// The changes asked for, each tied to a button.
    pub changes: Vec<(ButtonId, Text)>,
    /// The supervised trial.
    pub trial: Option<Trial>,
    /// What was not assessed.
    pub not_assessed: Vec<NotAssessed>,
    /// Whether the rider agrees; `None`: not asked.
    pub rider_agrees: Option<YesNo>,
    /// When to review again.
    pub again_on: Option<Date>,
    /// After what to review again.
    pub again_after: Vec<ReviewEvent>,
}

/// A trial with somebody beside the rider.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Trial {
    /// Where.
    pub place: Text,
    /// With whom.
    pub with: Text,
    /// When to stop.
    pub stop_if: Text,
    /// By when to review it.
    pub review_by: Option<Date>,
}

impl Review {
    /// A decision that rests on something, with nothing else said yet.
    pub fn of(decision: Decision, basis: Basis) -> Review {
        Review {
            decision,
            basis,
            seen: Vec::new(),
            worn: None,
            bike: Text::default(),
            conditions: Text::default(),
            changes: Vec::new(),
            trial: None,
            not_assessed: Vec::new(),
            rider_agrees: None,
            again_on: None,
            again_after: Vec::new(),
        }
    }

    /// Refuses a decision that leaves out what it needs: a decision must be
    /// one that can be defended.
    pub(crate) fn is_whole(&self) -> Result<(), EditError> {
        let refuse = |words: &str| Err(EditError::NotPossible(words.into()));
        match self.decision {
            Decision::AfterChanges if self.changes.is_empty() => {
                return refuse(
                    "“Go on after these changes” needs at least one change. Tie one to a button.",
                );
            }
            Decision::AfterChanges if self.changes.iter().any(|(_, what)| what.is_empty()) => {
                return refuse("A change needs words. Write what should change on the button.");
            }
            Decision::SupervisedTrial => {
                let whole = self.trial.as_ref().is_some_and(|trial| {
                    let words = [&trial.place, &trial.with, &trial.stop_if];
                    words.iter().all(|text| !text.is_empty()) && trial.review_by.is_some()
                });
                if !whole {
                    return refuse(
                        "A supervised trial needs a place, a companion, when to stop and a day to review it. Fill in all four.",
                    );
                }
            }
            _ => {}
        }
        let from_sight = matches!(self.decision, Decision::Matches | Decision::Exceeds);
        if from_sight && (self.basis == Basis::PlanOnly || self.seen.is_empty()) {
            return refuse(
                "This decision speaks of what you saw. Note the actions you saw, in person or by video, or choose another decision.",
            );
        }
        Ok(())
    }
}
