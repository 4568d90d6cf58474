//! What is typed into the forms of a review until it is recorded: kept while the
//! plan is open, whatever screen is shown, and nowhere else.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::record::{Code, Pin};
use leverwright_core::review::{
    Audience, Basis, Decision, NotAssessed, Review, ReviewEvent, Trial,
};
use leverwright_core::rider::{Ability, Side, Worn, YesNo};
use leverwright_core::text::{Date, Text};

/// All drafts.
#[derive(Clone, Copy)]
pub struct Drafts {
    /// A decision.
    pub decision: RwSignal<DecisionDraft>,
    /// A comment.
    pub comment: RwSignal<CommentDraft>,
    /// What is to be said about earlier entries.
    pub notes: RwSignal<Vec<Note>>,
    /// Why findings may stand, by the name of the finding.
    reasons: RwSignal<Vec<(String, String)>>,
}

/// A decision that is being written.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DecisionDraft {
    pub decision: Option<Decision>,
    pub basis: Option<Basis>,
    pub seen: Vec<(Side, Ability)>,
    pub worn: Option<Worn>,
    pub bike: String,
    pub conditions: String,
    /// Changes by button; a button is chosen before there are words for it.
    pub changes: Vec<(ButtonId, String)>,
    pub place: String,
    pub with: String,
    pub stop_if: String,
    pub review_by: Option<Date>,
    pub not_assessed: Vec<NotAssessed>,
    pub rider_agrees: Option<YesNo>,
    pub again_on: Option<Date>,
    pub again_after: Vec<ReviewEvent>,
}

/// A comment that is being written.
#[derive(Debug, Clone, PartialEq)]
pub struct CommentDraft {
    pub on: Pin,
    pub audience: Audience,
    pub text: String,
}

/// What is being written about an earlier entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Note {
    /// The entry.
    pub about: Code,
    /// Whether it is to be withdrawn; else something is added to it.
    pub withdraws: bool,
    pub text: String,
}

impl Drafts {
    /// Nothing is typed yet.
    pub fn new() -> Drafts {
        Drafts {
            decision: RwSignal::new(DecisionDraft::default()),
            comment: RwSignal::new(CommentDraft::default()),
            notes: RwSignal::new(Vec::new()),
            reasons: RwSignal::new(Vec::new()),
        }
    }

    /// Forgets everything: another plan comes, or hand details were removed.
    pub fn clear(self) {
        self.decision.set(DecisionDraft::default());
        self.comment.set(CommentDraft::default());
        self.notes.set(Vec::new());
        self.reasons.set(Vec::new());
    }

    /// The reason that is being written for a finding.
    pub fn reason(self, finding: &str) -> String {
        self.reasons.with_untracked(|reasons| {
            let found = reasons.iter().find(|(key, _)| key == finding);
            found.map(|(_, reason)| reason.clone()).unwrap_or_default()
        })
    }

    /// Keeps the reason that is being written for a finding; an empty one is
    /// forgotten.
    pub fn set_reason(self, finding: &str, reason: String) {
        self.reasons.update(|reasons| {
            reasons.retain(|(key, _)| key != finding);
            if !reason.is_empty() {
                reasons.push((finding.to_owned(), reason));
            }
        });
    }

    /// What is typed about an entry.
    pub fn note(self, about: Code, withdraws: bool) -> String {
        self.notes.with(|notes| {
            let found = notes
                .iter()
                .find(|note| (note.about, note.withdraws) == (about, withdraws));
            found.map(|note| note.text.clone()).unwrap_or_default()
        })
    }

    /// Keeps what is typed about an entry.
    pub fn set_note(self, about: Code, withdraws: bool, text: String) {
        self.notes.update(|notes| {
            notes.retain(|note| (note.about, note.withdraws) != (about, withdraws));
            notes.push(Note {
                about,
                withdraws,
                text,
            });
        });
    }
}

impl Default for CommentDraft {
    fn default() -> Self {
        CommentDraft {
            on: Pin::Whole,
            audience: Audience::Everyone,
            text: String::new(),
        }
    }
}

impl DecisionDraft {
    /// The decision as far as it is written; whether it is whole is the core's
    /// to say.
    ///
    /// # Errors
    /// The choice that is open, by its name on the page, and what to choose.
    pub fn review(&self) -> Result<Review, (&'static str, &'static str)> {
        let decision = self
            .decision
            .ok_or(("review-decision", "Choose one of the five decisions first."))?;
        let basis = self.basis.ok_or((
            "review-basis",
            "Say what the decision rests on: in person, video, or plan only.",
        ))?;
        let trial = Trial {
            place: Text::new(&self.place),
            with: Text::new(&self.with),
            stop_if: Text::new(&self.stop_if),
            review_by: self.review_by,
        };
        Ok(Review {
            seen: self.seen.clone(),
            worn: self.worn,
            bike: Text::new(&self.bike),
            conditions: Text::new(&self.conditions),
            changes: match decision {
                Decision::AfterChanges => {
                    let changes = self.changes.iter();
                    changes.map(|(id, text)| (*id, Text::new(text))).collect()
                }
                _ => Vec::new(),
            },
            trial: (decision == Decision::SupervisedTrial).then_some(trial),
            not_assessed: self.not_assessed.clone(),
            rider_agrees: self.rider_agrees,
            again_on: self.again_on,
            again_after: self.again_after.clone(),
            ..Review::of(decision, basis)
        })
    }
}
