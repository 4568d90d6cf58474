//! How far a check is.

use super::{CheckStep, PROVED, StepKind, is_current, steps};
use crate::finding::Place;
use crate::plan::Plan;
use crate::record::{Check, Entry, Matter, Outcome, Step};
use crate::revision;

/// A step with what came of it last.
#[derive(Debug, Clone, PartialEq)]
pub struct StepDone {
    /// The step.
    pub step: CheckStep,
    /// What came of it last; `None`: not done yet.
    pub done: Option<Step>,
    /// How often it did not go as expected since the check began.
    pub misses: usize,
}

impl StepDone {
    /// Whether it went as expected the last time.
    pub fn is_ok(&self) -> bool {
        self.done
            .as_ref()
            .is_some_and(|done| done.outcome == Outcome::Ok)
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
}

/// What to do now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Progress {
    /// The step at this place is next.
    Next(usize),
    /// A brake is not as it must be: mend it, then do the step at this place
    /// again. Nothing else is asked before.
    MendBrake(usize),
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
        let mut entries: Vec<&Entry> = Vec::new();
        for entry in plan
            .record
            .standing()
            .filter(|e| is_current(e, check, code, hands))
        {
            match &entry.matter {
                Matter::Again(again) if *again == check => entries.clear(),
                Matter::Step(step) if step.check == check => entries.push(entry),
                _ => {}
            }
        }
        let done = |key: &str| {
            let of_step = entries.iter().filter_map(|entry| match &entry.matter {
                Matter::Step(step) if step.step == key => Some(step),
                _ => None,
            });
            of_step.collect::<Vec<&Step>>()
        };
        let steps = steps(plan, check).into_iter().map(|step| {
            let all = done(&step.key);
            StepDone {
                misses: all
                    .iter()
                    .filter(|done| done.outcome != Outcome::Ok)
                    .count(),
                done: all.last().map(|done| (*done).clone()),
                step,
            }
        });
        let mut run = Run {
            check,
            steps: steps.collect(),
            proved: false,
        };
        // A step that went wrong after the last word takes it back.
        run.proved = !done(PROVED).is_empty() && run.is_all_ok();
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

    /// Steps done, of all.
    pub fn count(&self) -> (usize, usize) {
        let done = self.steps.iter().filter(|step| step.done.is_some());
        (done.count(), self.steps.len())
    }

    /// What to do now.
    pub fn progress(&self) -> Progress {
        let is_brake =
            |step: &StepDone| matches!(step.step.kind, StepKind::Brake | StepKind::Wheel);
        let stops = |step: &StepDone| {
            self.check == Check::Stand && is_brake(step) && step.done.is_some() && !step.is_ok()
        };
        if self.proved {
            return Progress::Proved;
        }
        if let Some(at) = self.steps.iter().position(stops) {
            return Progress::MendBrake(at);
        }
        if let Some(at) = self.steps.iter().position(|step| step.done.is_none()) {
            return Progress::Next(at);
        }
        match self.steps.iter().filter(|step| !step.is_ok()).count() {
            0 => Progress::GiveYourWord,
            differing => Progress::Differs(differing),
        }
    }

    /// The steps that did not go as expected, heaviest first as they stand.
    pub fn differing(&self) -> impl Iterator<Item = &StepDone> {
        self.steps
            .iter()
            .filter(|step| step.done.is_some() && !step.is_ok())
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
