//! Which check is done, which page of it is shown, and what is written down.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, RecordEdit};
use leverwright_core::finding::Role;
use leverwright_core::proof::{PROVED, Progress, Run, StepDone};
use leverwright_core::record::{Check, Matter, Outcome, Step};
use leverwright_core::text::Text;
use leverwright_core::units::Mm;

use crate::route::{Route, current_page};
use crate::workspace::Workspace;

/// A page of the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// The three checks and how they stand.
    Overview,
    /// A step.
    Step(usize),
    /// What happened at a step instead.
    Instead(usize),
    /// A brake to be mended before anything else.
    Mend(usize),
    /// What did not go as expected.
    Differs,
    /// All is OK: somebody says so.
    GiveWord,
    /// It stands.
    Proved,
}

/// The check in hand. A context.
#[derive(Clone, Copy)]
pub struct CheckDesk {
    workspace: Workspace,
    /// The check that the address names; none on the overview.
    pub check: Memo<Option<Check>>,
    /// How far it is.
    pub run: Memo<Option<Arc<Run>>>,
    /// What is shown.
    pub shown: Memo<Shown>,
    /// A step that was gone to, in place of the one whose turn it is.
    at: RwSignal<Option<usize>>,
    /// Whether what happened instead is asked.
    asks: RwSignal<bool>,
    /// Whether only what did not go as expected is done again.
    repeats: StoredValue<bool>,
    /// What was measured at the step.
    pub measured: RwSignal<Option<f64>>,
    /// What is noted at the step.
    pub note: RwSignal<String>,
    /// In what role the last word is given.
    pub role: RwSignal<Option<Role>>,
}

impl CheckDesk {
    /// The desk of the screen.
    pub fn here() -> CheckDesk {
        expect_context()
    }

    /// Goes where the address leads.
    pub fn new(workspace: Workspace) -> CheckDesk {
        let page = current_page();
        let check = Memo::new(move |_| page.with(|page| Check::from_code(page)));
        let run = Memo::new(move |_| {
            let (plan, check) = (workspace.plan.get()?, check.get()?);
            Some(Arc::new(Run::of(&plan, check)))
        });
        let (at, asks) = (RwSignal::new(None), RwSignal::new(false));
        let shown = Memo::new(move |_| {
            let Some(run) = run.get() else {
                return Shown::Overview;
            };
            let at = at.get().filter(|at: &usize| *at < run.steps.len());
            match (at, run.progress()) {
                (Some(at), _) | (None, Progress::Next(at)) => match asks.get() {
                    true => Shown::Instead(at),
                    false => Shown::Step(at),
                },
                (None, Progress::MendBrake(at)) => Shown::Mend(at),
                (None, Progress::Differs(_) | Progress::ChangeLayout) => Shown::Differs,
                (None, Progress::GiveYourWord) => Shown::GiveWord,
                (None, Progress::Proved) => Shown::Proved,
            }
        });
        let desk = CheckDesk {
            workspace,
            check,
            run,
            shown,
            at,
            asks,
            repeats: StoredValue::new(false),
            measured: RwSignal::new(None),
            note: RwSignal::new(String::new()),
            role: RwSignal::new(None),
        };
        // Another check begins where it stands.
        Effect::new(move |_| {
            check.track();
            desk.repeats.set_value(false);
            desk.go(None);
        });
        desk
    }

    /// The address of a check.
    pub fn href(check: Check) -> String {
        format!("{}/{}", Route::Stand.href(), check.code())
    }

    /// A step with what came of it.
    pub fn step(self, at: usize) -> Option<StepDone> {
        self.run.with(|run| run.as_ref()?.steps.get(at).cloned())
    }

    /// Shows a step, or the one whose turn it is.
    pub fn go(self, at: Option<usize>) {
        let noted = untrack(|| at.and_then(|at| self.step(at)?.done));
        let (measured, note) = match noted {
            Some(done) if done.outcome == Outcome::Ok => (done.measured, done.what.to_string()),
            _ => (None, String::new()),
        };
        self.measured.set(measured.map(|mm| mm.0));
        self.note.set(note);
        self.asks.set(false);
        self.at.set(at);
    }

    /// Shows the step before, or the one after as far as steps were done.
    pub fn walk(self, by: isize) {
        let (Shown::Step(at), Some(run)) = (self.shown.get_untracked(), self.run.get_untracked())
        else {
            return;
        };
        let to = at.saturating_add_signed(by);
        if to >= run.steps.len() || by > 0 && run.steps[at].done.is_none() {
            return;
        }
        self.go(Some(to));
    }

    /// Does again what did not go as expected, one after the other.
    pub fn repeat(self) {
        let first = self
            .run
            .with_untracked(|run| run.as_ref()?.next_missed(None));
        self.repeats.set_value(true);
        self.go(first);
    }

    /// An answer to a step. Where something else happened, it is asked what.
    pub fn answer(self, at: usize, outcome: Outcome) {
        match outcome {
            Outcome::SomethingElse => self.asks.set(true),
            Outcome::Ok => self.write(at, outcome, &self.note.get_untracked()),
            Outcome::Nothing => self.write(at, outcome, ""),
        }
    }

    /// Goes back from what happened instead.
    pub fn take_back(self) {
        self.asks.set(false);
    }

    /// Writes down what came of a step, and goes on.
    pub fn write(self, at: usize, outcome: Outcome, what: &str) {
        let Some(step) = untrack(|| self.step(at)) else {
            return;
        };
        let measured = step.step.measure.and(self.measured.get_untracked()).map(Mm);
        let role = self.role.get_untracked().unwrap_or(Role::Shop);
        if self.enter(&step.step.key, outcome, what, measured, role) {
            self.go_on(at);
        }
    }

    fn go_on(self, at: usize) {
        let next = self.run.with_untracked(|run| {
            let run = run.as_ref()?;
            match run.progress() {
                Progress::MendBrake(_) => None,
                _ => run.next_missed(Some(at)),
            }
        });
        let next = next.filter(|_| self.repeats.get_value());
        self.repeats.set_value(next.is_some());
        self.go(next);
    }

    /// The last word of the check; whether it was taken.
    pub fn give_word(self, role: Role) -> bool {
        self.enter(PROVED, Outcome::Ok, "", None, role)
    }

    fn enter(
        self,
        step: &str,
        outcome: Outcome,
        what: &str,
        measured: Option<Mm>,
        role: Role,
    ) -> bool {
        let Some(check) = self.check.get_untracked() else {
            return false;
        };
        self.record(
            role_for(check, role),
            Matter::Step(Step {
                check,
                step: step.to_owned(),
                outcome,
                what: Text::new(what),
                measured,
            }),
        )
    }

    /// Begins the check again: earlier steps no longer count.
    pub fn begin_again(self) {
        let Some(check) = self.check.get_untracked() else {
            return;
        };
        let role = self.role.get_untracked().unwrap_or(Role::Shop);
        if self.record(role_for(check, role), Matter::Again(check)) {
            self.go(None);
        }
    }

    fn record(self, role: Role, matter: Matter) -> bool {
        let is_taken = self.workspace.commit(Edit::Record(RecordEdit {
            by: Text::new(&self.workspace.signer.get_untracked()),
            role,
            date: self.workspace.desk().date,
            layout: None,
            matter,
        }));
        if is_taken {
            // The next page says it, and needs the room.
            self.workspace.status.set(None);
        }
        is_taken
    }
}

/// The stand check is written by the shop alone.
fn role_for(check: Check, role: Role) -> Role {
    match check {
        Check::Stand => Role::Shop,
        Check::Rider | Check::FirstRide => role,
    }
}
