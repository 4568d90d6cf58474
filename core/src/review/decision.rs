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
        match self.lacks() {
            None => Ok(()),
            Some(lack) => Err(EditError::NotPossible(lack.words().into())),
        }
    }

    /// The first thing that the decision needs and leaves out, from top to
    /// bottom.
    pub fn lacks(&self) -> Option<Lack> {
        let from_sight = matches!(self.decision, Decision::Matches | Decision::Exceeds);
        let needed = match self.decision {
            Decision::AfterChanges => self.lacks_changes(),
            Decision::SupervisedTrial => self.lacks_terms(),
            _ => None,
        };
        needed.or(match self.basis {
            Basis::PlanOnly if from_sight => Some(Lack::Sight),
            _ if from_sight && self.seen.is_empty() => Some(Lack::Actions),
            _ => None,
        })
    }

    fn lacks_changes(&self) -> Option<Lack> {
        let wordless = self.changes.iter().find(|(_, what)| what.is_empty());
        match wordless {
            Some((button, _)) => Some(Lack::WordsOfChange(*button)),
            None => self.changes.is_empty().then_some(Lack::Changes),
        }
    }

    fn lacks_terms(&self) -> Option<Lack> {
        let none = Trial::default();
        let trial = self.trial.as_ref().unwrap_or(&none);
        let terms = [
            (trial.place.is_empty(), Lack::Place),
            (trial.with.is_empty(), Lack::Companion),
            (trial.stop_if.is_empty(), Lack::StopIf),
            (trial.review_by.is_none(), Lack::ReviewBy),
        ];
        let mut lacking = terms.into_iter().filter(|(lacks, _)| *lacks);
        lacking.next().map(|(_, lack)| lack)
    }
}

/// What a decision needs and leaves out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lack {
    /// At least one change.
    Changes,
    /// What should change on this button.
    WordsOfChange(ButtonId),
    /// Where the trial is.
    Place,
    /// With whom it is.
    Companion,
    /// When to stop it.
    StopIf,
    /// By when to review it.
    ReviewBy,
    /// A basis on which something was seen.
    Sight,
    /// The actions that were seen.
    Actions,
}

impl Lack {
    /// What is missing and the cure.
    pub const fn words(self) -> &'static str {
        match self {
            Lack::Changes => {
                "“Go on after these changes” needs at least one change. Tie one to a button."
            }
            Lack::WordsOfChange(_) => {
                "A change needs words. Write what should change on the button."
            }
            Lack::Place | Lack::Companion | Lack::StopIf | Lack::ReviewBy => {
                "A supervised trial needs a place, a companion, when to stop and a day to review it. Fill in all four."
            }
            Lack::Sight | Lack::Actions => {
                "This decision speaks of what you saw. Note the actions you saw, in person or by video, or choose another decision."
            }
        }
    }
}
