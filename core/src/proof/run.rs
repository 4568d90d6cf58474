//! How far a check is.

use super::mended::is_to_repeat;
use super::{CheckStep, PROVED, StepKind, is_current, steps};
use crate::finding::Place;
use crate::plan::Plan;
use crate::record::{Check, Matter, Outcome, Step};
use crate::revision;

/// A step with what came of it last.
#[derive(Debug, Clone, PartialEq)]
pub struct StepDone {
    /// The step.
    pub step: CheckStep,
    /// What came of it last; `None`: not done yet.
    pub done: Option<Step>,
    /// Whether it was OK, and is to be done again because something about the
    /// same place was mended since.
    pub again: bool,
    /// How often it did not go as expected since the check began.
    pub misses: usize,
}

impl StepDone {
    /// Whether it went as expected the last time, and that still counts.
    pub fn is_ok(&self) -> bool {
        let done = self.done.as_ref();
        done.is_some_and(|done| done.outcome == Outcome::Ok && !self.again)
    }

    /// Whether it did not go as expected the last time.
    pub fn is_missed(&self) -> bool {
        let done = self.done.as_ref();
        done.is_some_and(|done| done.outcome != Outcome::Ok)
    }

    /// Whether it is still to be done.
    pub fn is_open(&self) -> bool {
        self.done.is_none() || self.again
    }
}

/// How far a check of the layout in hand is.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The check.
    pub check: Check,
    /// Every step in order.
    pub steps: Vec<StepDone>,
    /// Whether somebody gave the last word: all of it is OK.
    pub proved: bool,
    /// How many steps were done for an earlier revision and no longer count.
    pub outdated: usize,
}

/// What to do now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Progress {
    /// The step at this place is next.
    Next(usize),
    /// A brake is not as it must be: mend it, then do the step at this place
    /// again. Nothing else is asked before.
    MendBrake(usize),
    /// Every step was done; something was missed twice in one place. The layout
    /// is to change there.
    ChangeLayout,
    /// Every step was done; so many did not go as expected.
    Differs(usize),
    /// Every step is OK; somebody says so with a name.
    GiveYourWord,
    /// All of it is OK for this revision.
    Proved,
}

/// A place that was missed too often: the layout should change.
#[derive(Debug, Clone, PartialEq)]
pub struct Miss {
    /// The place.
    pub place: Place,
    /// How often it was missed.
    pub times: usize,
}

impl Run {
    /// How far a check is, for what the plan says now.
    pub fn of(plan: &Plan, check: Check) -> Run {
        let (code, hands) = (revision::code(plan), revision::hands_code(plan));
        let mut done: Vec<&Step> = Vec::new();
        let mut outdated = 0;
        for entry in plan.record.standing() {
            match &entry.matter {
                Matter::Again(again) if *again == check => (done, outdated) = (Vec::new(), 0),
                Matter::Step(step) if step.check == check => {
                    match is_current(entry, check, code, hands) {
                        true => done.push(step),
                        false => outdated += 1,
                    }
                }
                _ => {}
            }
        }
        let all = steps(plan, check);
        let last = |key: &str| done.iter().rposition(|done| done.step == key);
        let with_outcome = all.iter().map(|step| {
            let last = last(&step.key);
            let again = last.is_some_and(|last| {
                check == Check::Stand
                    && done[last].outcome == Outcome::Ok
                    && is_to_repeat(step, last, &all, &done)
            });
            let of_step = done.iter().filter(|done| done.step == step.key);
            StepDone {
                misses: of_step.filter(|done| done.outcome != Outcome::Ok).count(),
                done: last.map(|last| done[last].clone()),
                again,
                step: step.clone(),
            }
        });
        let mut run = Run {
            check,
            steps: with_outcome.collect(),
            proved: false,
            outdated,
        };
        // A step that went wrong after the last word takes it back.
        run.proved = last(PROVED).is_some() && run.is_all_ok();
        run
    }

    /// Whether every step went as expected.
    pub fn is_all_ok(&self) -> bool {
        self.steps.iter().all(StepDone::is_ok)
    }

    /// Whether somebody gave the last word, and it stands.
    pub fn is_proved(&self) -> bool {
        self.proved
    }

    /// Whether anything was done.
    pub fn has_begun(&self) -> bool {
        self.steps.iter().any(|step| step.done.is_some())
    }

    /// Steps done that count, of all.
    pub fn count(&self) -> (usize, usize) {
        let done = self.steps.iter().filter(|step| !step.is_open());
        (done.count(), self.steps.len())
    }

    /// What to do now.
    pub fn progress(&self) -> Progress {
        let is_brake = |step: &StepDone| match self.check {
            Check::Stand => matches!(step.step.kind, StepKind::Brake | StepKind::Wheel),
            // The ride ends where a brake is not there.
            Check::FirstRide => step.step.kind == StepKind::Stop,
            Check::Rider => false,
        };
        if self.proved {
            return Progress::Proved;
        }
        let mut steps = self.steps.iter();
        if let Some(at) = steps.position(|step| is_brake(step) && step.is_missed()) {
            return Progress::MendBrake(at);
        }
        if let Some(at) = self.steps.iter().position(StepDone::is_open) {
            return Progress::Next(at);
        }
        if !self.missed_twice().is_empty() {
            return Progress::ChangeLayout;
        }
        match self.differing().count() {
            0 => Progress::GiveYourWord,
            differing => Progress::Differs(differing),
        }
    }

    /// The next step after the one at `after` that did not go as expected: a
    /// round that repeats only those goes from one to the next.
    pub fn next_missed(&self, after: Option<usize>) -> Option<usize> {
        let from = after.map_or(0, |at| at + 1);
        let mut later = self.steps.iter().enumerate().skip(from);
        later.find(|(_, step)| step.is_missed()).map(|(at, _)| at)
    }

    /// The steps that did not go as expected, in their order.
    pub fn differing(&self) -> impl Iterator<Item = &StepDone> {
        self.steps.iter().filter(|step| step.is_missed())
    }

    /// Buttons and wheels that were missed twice or more in the rider's check:
    /// change the layout there (*common practice*).
    pub fn missed_twice(&self) -> Vec<Miss> {
        let mut found: Vec<Miss> = Vec::new();
        if self.check == Check::Stand {
            return found;
        }
        for step in self.steps.iter().filter(|step| step.misses > 0) {
            let places = step.step.places.iter();
            for place in places.filter(|p| matches!(p, Place::Button(_) | Place::Wheel(_))) {
                match found.iter_mut().find(|miss| miss.place == *place) {
                    Some(miss) => miss.times += step.misses,
                    None => found.push(Miss {
                        place: *place,
                        times: step.misses,
                    }),
                }
            }
        }
        found.retain(|miss| miss.times >= 2);
        found
    }
}
