//! What people wrote into the record: never changed, only added to.

use super::Code;
use crate::cockpit::ButtonId;
use crate::finding::{Place, Role};
use crate::layout::LayoutId;
use crate::review::{Audience, MarkKind, Review};
use crate::text::{Date, Text};
use crate::units::Mm;

/// Something that somebody wrote into the record of a plan. Entries are never
/// changed and never removed one by one; what is wrong gets an addendum or is
/// withdrawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// Its name: the digest of what it says.
    pub id: Code,
    /// Its turn: one more than the highest in the plan in which it was written.
    pub turn: u32,
    /// Who wrote it; a typed name is not a signature.
    pub by: Text,
    /// In what role.
    pub role: Role,
    /// When.
    pub date: Option<Date>,
    /// The revision it is about, by number.
    pub revision: u32,
    /// The same by its code: what was to be built.
    pub code: Code,
    /// The digest of what was known of the hands.
    pub hands: Code,
    /// What it says.
    pub matter: Matter,
}

impl Entry {
    /// Whether this person wrote it, by name and role.
    pub fn is_by(&self, by: &Text, role: Role) -> bool {
        self.role == role && self.by == *by
    }

    /// Who wrote it and when: "K. Example, clinician, 2031-05-09".
    pub fn signed(&self) -> String {
        signed(&self.by, self.role, self.date)
    }
}

/// Who and when in one line; a typed name is not a signature.
pub fn signed(by: &Text, role: Role, date: Option<Date>) -> String {
    let mut words = match by.is_empty() {
        true => role.to_string(),
        false => format!("{by}, {role}"),
    };
    if let Some(date) = date {
        words.push_str(&format!(", {date}"));
    }
    words
}

/// What an entry says.
#[derive(Debug, Clone, PartialEq)]
pub enum Matter {
    /// A therapist's decision.
    Review(Box<Review>),
    /// Something added to an earlier entry.
    Addendum {
        /// The entry.
        to: Code,
        /// What is added.
        text: Text,
    },
    /// An earlier entry no longer stands.
    Withdrawn {
        /// The entry.
        what: Code,
        /// Why.
        reason: Text,
    },
    /// A comment.
    Comment {
        /// What it is about.
        on: Pin,
        /// Who sees it.
        audience: Audience,
        /// What it says.
        text: Text,
    },
    /// The rider's own words.
    Words(Text),
    /// The rider's word on a button.
    Mark {
        /// The button.
        button: ButtonId,
        /// What is wrong with it.
        kind: MarkKind,
        /// More about it; may be empty.
        text: Text,
    },
    /// A step of a check was done.
    Step(Step),
    /// A check begins again: earlier steps no longer count.
    Again(Check),
    /// A practice session.
    Practice(Practised),
    /// The rider sends a practice session along from now on.
    Sent(Code),
    /// Something that a newer version wrote; its content is kept as unknown
    /// parts of the plan.
    Other,
}

impl Matter {
    /// Whether it may say something about the rider's hands. The stand check
    /// speaks of the bike alone, and so do the words that follow on it.
    pub const fn is_about_hands(&self) -> bool {
        !matches!(
            self,
            Matter::Step(Step {
                check: Check::Stand,
                ..
            }) | Matter::Again(Check::Stand)
        )
    }
}

/// What a comment is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pin {
    /// The plan as a whole.
    Whole,
    /// A button or a hand.
    Place(Place),
    /// A finding, by [`Finding::key`](crate::finding::Finding::key).
    Finding(String),
}

vocabulary! {
    /// A check of what was built.
    pub enum Check as "check" {
        /// On the stand, by the shop.
        Stand = "stand", "stand check";
        /// By the rider, bike held still or on a trainer.
        Rider = "rider", "rider check";
        /// The first ride.
        FirstRide = "first-ride", "first ride";
    }
}

vocabulary! {
    /// What came of a step of a check.
    pub enum Outcome as "outcome" {
        /// As expected.
        Ok = "ok", "OK";
        /// Something else happened.
        SomethingElse = "something-else", "something else happened";
        /// Nothing happened.
        Nothing = "nothing", "nothing happened";
    }
}

/// A step of a check, as done.
#[derive(Debug, Clone, PartialEq)]
pub struct Step {
    /// The check.
    pub check: Check,
    /// The step, by its stable name.
    pub step: String,
    /// What came of it.
    pub outcome: Outcome,
    /// What happened instead, or what was seen; may be empty.
    pub what: Text,
    /// What was measured.
    pub measured: Option<Mm>,
}

/// A practice session with one layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Practised {
    /// The layout.
    pub layout: LayoutId,
    /// Calls answered with the first press, rightly or not.
    pub calls: u32,
    /// Calls answered rightly with the first press.
    pub right_first: u32,
    /// Wrong presses.
    pub wrong: u32,
    /// Calls answered after their place on the road was reached; `None`: the
    /// rider did not ask for it.
    pub late: Option<u32>,
    /// Presses of each button, those of both kinds.
    pub presses: Vec<(ButtonId, u32)>,
    /// What was mixed up: the button wanted, the one pressed, how often.
    pub mixed_up: Vec<MixUp>,
}

/// One button pressed in place of another.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MixUp {
    /// The button that was wanted.
    pub wanted: ButtonId,
    /// The one that was pressed.
    pub pressed: ButtonId,
    /// How often.
    pub times: u32,
}
