//! Ready or not, and why.

use super::{OpenPoint, counted, points};
use crate::finding::Severity;
use crate::tally::Tally;

vocabulary! {
    /// What the sheet says on top.
    ///
    /// A sheet with open check findings says neither READY nor NOT READY: the
    /// work may begin, but somebody must decide on each point. It has a word of
    /// its own that cannot be read as READY from two metres away (our
    /// judgement).
    pub enum Readiness as "verdict" {
        /// Nothing stands open but what is good to know.
        Ready = "ready", "READY";
        /// Check findings stand open.
        CheckFirst = "check-first", "CHECK FIRST";
        /// A must-fix finding stands open, or one that can never be accepted.
        NotReady = "not-ready", "NOT READY";
    }
}

impl Readiness {
    /// The word for so many open findings.
    pub fn of(tally: &Tally) -> Readiness {
        Self::for_open(tally.must_fix, tally.check)
    }

    fn for_open(must_fix: usize, check: usize) -> Readiness {
        match (must_fix, check) {
            (0, 0) => Readiness::Ready,
            (0, _) => Readiness::CheckFirst,
            _ => Readiness::NotReady,
        }
    }
}

/// The verdict with its reasons.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verdict {
    /// The word on top.
    pub readiness: Readiness,
    /// What the word means here, in one or two sentences.
    pub line: String,
    /// The reasons: the open points that decide the word, those that can never
    /// be accepted first, those of one rule about several buttons as one. The
    /// other open points stand on the proof page.
    pub reasons: Vec<OpenPoint>,
    /// How many findings were accepted with a reason.
    pub accepted: usize,
}

impl Verdict {
    /// The verdict on the open points, and those that are no reason for it.
    pub(super) fn of(open: Vec<OpenPoint>, accepted: usize) -> (Verdict, Vec<OpenPoint>) {
        let (must, rest): (Vec<_>, Vec<_>) = open
            .into_iter()
            .partition(|p| p.never || p.severity == Severity::MustFix);
        let (check, good_to_know): (Vec<_>, Vec<_>) = rest
            .into_iter()
            .partition(|p| p.severity == Severity::Check);
        let readiness = Readiness::for_open(must.len(), check.len());
        let line = match readiness {
            Readiness::Ready => {
                "The plan has no open point. Nothing is proven yet: build it, prove it on the stand, then with the rider."
                    .into()
            }
            Readiness::CheckFirst => check_first(check.len()),
            Readiness::NotReady => not_ready(must.len(), check.len(), &must),
        };
        let (reasons, rest) = if must.is_empty() {
            (check, good_to_know)
        } else {
            (must, [check, good_to_know].concat())
        };
        let verdict = Verdict {
            readiness,
            line,
            reasons: points::gathered(reasons),
            accepted,
        };
        (verdict, points::gathered(rest))
    }
}

fn check_first(count: usize) -> String {
    format!(
        "{} to look at. Decide on each, with a reason, before the bike is ridden.",
        counted(count, "point", "points")
    )
}

fn not_ready(count: usize, checks: usize, must: &[OpenPoint]) -> String {
    let mut line = format!(
        "{} to fix before the bike is ridden.",
        counted(count, "point", "points")
    );
    let never = must.iter().filter(|point| point.never).count();
    if never > 0 {
        line.push_str(&format!(" {never} of them can never be accepted."));
    }
    if checks > 0 {
        line.push_str(&format!(
            " Then {} to look at: see “Open points”.",
            counted(checks, "more", "more")
        ));
    }
    line
}
