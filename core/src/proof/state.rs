//! What is proved, for which revision.

use super::{PROVED, Run, is_current};
use crate::plan::Plan;
use crate::record::{Check, Code, Matter, Step};
use crate::revision::{self, Difference};
use crate::text::{Date, Text};

/// How a proof stands.
#[derive(Debug, Clone, PartialEq)]
pub enum ProofState {
    /// Nothing was done.
    NotYet,
    /// So many steps were done, of so many.
    Going(usize, usize),
    /// It stands for what the plan says now.
    Stands {
        /// The revision by number when the last word was given; its code is
        /// still the plan's.
        revision: u32,
        /// Who gave the last word; a typed name is not a signature.
        by: Text,
        /// When.
        date: Option<Date>,
    },
    /// It stood for another revision and lapsed with the change.
    Lapsed {
        /// That revision by number.
        revision: u32,
        /// Its code.
        code: Code,
        /// When it was proved.
        date: Option<Date>,
        /// What changed since, as far as the record tells.
        since: Vec<Difference>,
    },
}

impl ProofState {
    /// Whether it stands.
    pub const fn stands(&self) -> bool {
        matches!(self, ProofState::Stands { .. })
    }

    /// How it stands, to follow a colon: "not yet".
    fn words(&self, code: Code) -> String {
        let day = |date: &Option<Date>| date.map(|d| format!(", {d}")).unwrap_or_default();
        match self {
            ProofState::NotYet => "not yet".into(),
            ProofState::Going(done, of) => format!("not yet, {done} of {of} steps done"),
            ProofState::Stands { revision, by, date } => {
                let day = day(date);
                format!("yes, for revision {revision} ({code}), says {by}{day}")
            }
            ProofState::Lapsed {
                revision,
                code,
                date,
                ..
            } => {
                let day = day(date);
                format!(
                    "no longer; it was for revision {revision} ({code}{day}), and the plan changed since"
                )
            }
        }
    }
}

/// The two proofs of the layout in hand.
#[derive(Debug, Clone, PartialEq)]
pub struct Proof {
    /// Wired and working: the stand check.
    pub wired: ProofState,
    /// Tried by the rider: the rider check and the first ride.
    pub tried: ProofState,
    /// The code of the revision for which they stand.
    pub code: Code,
}

impl Proof {
    /// What is proved of a plan.
    pub fn of(plan: &Plan) -> Proof {
        let wired = state(plan, &[Check::Stand]);
        let tried = match state(plan, &[Check::Rider, Check::FirstRide]) {
            // A bike that is not proved on the stand is not proved by riding.
            ProofState::Stands { .. } if !wired.stands() => ProofState::NotYet,
            tried => tried,
        };
        Proof {
            wired,
            tried,
            code: revision::code(plan),
        }
    }

    /// Both in words, a sentence each.
    pub fn words(&self) -> [String; 2] {
        [
            format!("Wired and working: {}.", self.wired.words(self.code)),
            format!("Tried by the rider: {}.", self.tried.words(self.code)),
        ]
    }
}

fn state(plan: &Plan, checks: &[Check]) -> ProofState {
    let runs: Vec<Run> = checks.iter().map(|check| Run::of(plan, *check)).collect();
    let (code, hands) = (revision::code(plan), revision::hands_code(plan));
    let last = checks[checks.len() - 1];
    let words = plan.record.standing().filter(|entry| {
        matches!(&entry.matter, Matter::Step(Step { check, step, .. }) if *check == last && step == PROVED)
    });
    let last_word = words.last();
    if let Some(word) = last_word.filter(|_| runs.iter().all(Run::is_proved)) {
        return ProofState::Stands {
            revision: word.revision,
            by: word.by.clone(),
            date: word.date,
        };
    }
    let (done, of) = runs
        .iter()
        .map(Run::count)
        .fold((0, 0), |(a, b), (c, d)| (a + c, b + d));
    match last_word {
        _ if done > 0 => ProofState::Going(done, of),
        Some(word) if !is_current(word, last, code, hands) => ProofState::Lapsed {
            revision: word.revision,
            code: word.code,
            date: word.date,
            since: revision::plan_at(plan, word.revision)
                .map(|past| revision::differences(&past.plan, plan))
                .unwrap_or_default(),
        },
        _ => ProofState::NotYet,
    }
}
