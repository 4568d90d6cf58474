//! What is ridden, how far it is, and what came of it so far.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::ride::profile::Axis;
use leverwright_core::ride::road::Road;
use leverwright_core::ride::study::{Outcome, Pick, Study, Subject};
use leverwright_core::rider::Day;

use crate::slices::in_slices;
use crate::workspace::Workspace;

/// Steps of the first slice; later ones follow the machine.
const FIRST: usize = 5_000;

/// What came of rides, with what they were ridden on.
#[derive(Clone)]
pub struct Done {
    /// The road.
    pub road: Arc<Road>,
    /// By subject, a usual and a bad day each.
    pub outcomes: Vec<Outcome>,
}

impl Done {
    /// The subjects, once each, in order.
    pub fn names(&self) -> Vec<String> {
        let usual = self.outcomes.iter().filter(|o| o.day == Day::Usual);
        usual.map(|o| o.subject.name.clone()).collect()
    }

    /// What came of a subject on a day.
    pub fn outcome(&self, subject: usize, day: Day) -> Option<&Outcome> {
        self.outcomes.iter().filter(|o| o.day == day).nth(subject)
    }

    /// Whether a plan has changed since in what the rides rest on.
    pub fn is_stale(&self, plan: &Plan) -> bool {
        self.outcomes
            .iter()
            .any(|outcome| outcome.subject.is_stale(plan))
    }
}

/// The rides of the open plan; they outlast a visit to another screen. A context.
#[derive(Clone, Copy)]
pub struct RideDesk {
    study: StoredValue<Option<Study>>,
    /// What is ticked; nothing: the layout in hand.
    pub picks: RwSignal<Vec<Pick>>,
    /// How much is done, 0 to 1, while it runs.
    pub running: RwSignal<Option<f64>>,
    /// What came of it.
    pub done: RwSignal<Option<Arc<Done>>>,
    /// Which subject is shown.
    pub shown: RwSignal<usize>,
    /// Which day is shown.
    pub day: RwSignal<Day>,
    /// What runs along the picture.
    pub axis: RwSignal<Axis>,
}

impl RideDesk {
    /// Nothing is ridden yet, nor whenever another plan is opened.
    pub fn new(workspace: Workspace) -> RideDesk {
        let desk = RideDesk::empty();
        Effect::new(move |_| {
            workspace.opened.track();
            desk.clear();
        });
        desk
    }

    fn empty() -> RideDesk {
        RideDesk {
            study: StoredValue::new(None),
            picks: RwSignal::new(Vec::new()),
            running: RwSignal::new(None),
            done: RwSignal::new(None),
            shown: RwSignal::new(0),
            day: RwSignal::new(Day::Usual),
            axis: RwSignal::new(Axis::Distance),
        }
    }

    fn clear(self) {
        self.study.set_value(None);
        self.picks.set(Vec::new());
        self.running.set(None);
        self.done.set(None);
        self.shown.set(0);
    }

    /// The desk of the screen.
    pub fn here() -> RideDesk {
        expect_context()
    }

    /// Begins to ride what is ticked.
    pub fn start(self, workspace: Workspace) {
        let Some(plan) = workspace.plan.get_untracked() else {
            return;
        };
        let mut picks = self.picks.get_untracked();
        if picks.is_empty() {
            picks.push(Pick::Layout(plan.current));
        }
        let subjects = picks
            .iter()
            .filter_map(|pick| Subject::of(&plan, *pick).ok())
            .collect();
        match Study::new(plan.rides.road(), plan.rides.habits, subjects) {
            Err(error) => workspace.refuse(&error.to_string()),
            Ok(study) => {
                self.study.set_value(Some(study));
                self.shown.set(0);
                self.done.set(None);
                self.running.set(Some(0.0));
                workspace.say("Riding.");
                in_slices(FIRST, move |steps| self.go_on(workspace, steps));
            }
        }
    }

    /// Rides on; whether there is nothing more to do.
    fn go_on(self, workspace: Workspace, steps: usize) -> bool {
        let went = self.study.try_update_value(|study| {
            let study = study.as_mut()?;
            Some((study.advance(steps), study.progress()))
        });
        match went.flatten() {
            Some((false, progress)) => {
                self.running.set(Some(progress));
                false
            }
            Some((true, _)) => {
                self.end(workspace, "All rides are done.");
                true
            }
            None => true,
        }
    }

    /// Stops, and keeps what came of it so far.
    pub fn stop(self, workspace: Workspace) {
        self.end(workspace, "Stopped. What was ridden is kept.");
    }

    fn end(self, workspace: Workspace, words: &str) {
        let study = self.study.try_update_value(Option::take).flatten();
        self.running.set(None);
        if let Some(study) = study {
            self.done.set(Some(Arc::new(Done {
                road: Arc::clone(study.road()),
                outcomes: study.outcomes(),
            })));
        }
        workspace.say(words);
    }
}
