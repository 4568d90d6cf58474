//! What people may answer at a step, and what may have happened instead
//! (*common practice*).

use super::{CheckStep, StepKind};
use crate::record::Outcome;

/// An answer to a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Answer {
    /// What is written down.
    pub outcome: Outcome,
    /// What the button says.
    pub words: &'static str,
}

const fn answer(outcome: Outcome, words: &'static str) -> Answer {
    Answer { outcome, words }
}

const USUAL: &[Answer] = &[
    answer(Outcome::Ok, "OK"),
    answer(Outcome::SomethingElse, "Something else happened"),
    answer(Outcome::Nothing, "Nothing happened"),
];

/// Where nothing is what is expected.
const QUIET: &[Answer] = &[
    answer(Outcome::Ok, "OK: nothing happened"),
    answer(Outcome::SomethingElse, "Something happened"),
];

/// Where somebody looks or does something, and nothing answers.
const SEEN: &[Answer] = &[
    answer(Outcome::Ok, "OK"),
    answer(Outcome::SomethingElse, "Not as it should be"),
];

impl CheckStep {
    /// What may be answered, OK first.
    pub fn answers(&self) -> &'static [Answer] {
        match self.kind {
            _ if self.expects_nothing => QUIET,
            StepKind::Ready | StepKind::After | StepKind::FullLock | StepKind::Proved => SEEN,
            StepKind::Brake if self.is_look() || self.measure.is_some() => SEEN,
            _ => USUAL,
        }
    }

    /// What the answer to an outcome says.
    pub fn answer(&self, outcome: Outcome) -> &'static str {
        let mut answers = self.answers().iter().chain(USUAL);
        let found = answers.find(|answer| answer.outcome == outcome);
        found.map_or("", |answer| answer.words)
    }

    /// Whether it is only looked at.
    pub(super) fn is_look(&self) -> bool {
        self.key.starts_with("look:")
    }

    /// Whether it is a call to brake in the rider's check.
    pub(super) fn is_called_brake(&self) -> bool {
        self.key.starts_with("brake:")
    }

    /// What may have happened instead, likeliest first; there may be other
    /// words, too.
    pub fn instead(&self) -> &'static [&'static str] {
        match self.kind {
            _ if self.expects_nothing => &[
                "The rear shifts",
                "The front shifts",
                "Lights or screen change",
            ],
            StepKind::Brake if self.is_look() => &["The blade is on", "The gap is open"],
            StepKind::Brake if self.is_called_brake() => &[
                "Another lever",
                "Late, or looked down",
                "Not hard enough",
                "Not let go at once",
            ],
            StepKind::Brake if self.measure.is_some() => {
                &["The gap is smaller", "The blade touches the bar"]
            }
            StepKind::Brake => &[
                "It creeps towards the bar",
                "It feels soft",
                "It does not spring back",
                "Another wheel is braked",
            ],
            StepKind::Wheel | StepKind::Stop => &[
                "The wheel turns, or slips",
                "It does not turn freely when let go",
                "Another wheel is braked",
                "It pulls to one side",
            ],
            StepKind::FullLock => &[
                "A wire pulls tight",
                "A hose or cable pulls tight",
                "Something shifts",
                "A wheel is braked",
            ],
            StepKind::Button | StepKind::Blank | StepKind::Shift => &[
                "It shifts the other way",
                "The other derailleur moves",
                "More than one step each time",
                "Only sometimes",
                "It trims a little",
                "The chain comes off",
            ],
            StepKind::Hold => &[
                "It shifts once only",
                "It runs on when let go",
                "It moves more cogs than asked",
                "It shifts the other way",
            ],
            StepKind::Chord => &[
                "Only one of the two acts",
                "Each does its own",
                "It shifts the other way",
            ],
            StepKind::End => &[
                "The chain goes over",
                "It rubs or jumps",
                "It stops before that cog",
            ],
            StepKind::Crossover => &[
                "The chain comes off",
                "Only the front shifts",
                "Only the rear shifts",
                "It rubs afterwards",
            ],
            StepKind::Power => &[
                "It does something else than before",
                "It shifts by itself",
                "It takes long to wake",
            ],
            StepKind::Call => &[
                "Another button",
                "Looked down for it",
                "The hand came off",
                "More than one press",
            ],
            StepKind::BrakeAndShift => &[
                "The brake was let go",
                "Another button",
                "No shift came",
                "The hand came off",
            ],
            StepKind::Ready | StepKind::After | StepKind::Proved => {
                &["Not yet", "Not possible here"]
            }
        }
    }
}
