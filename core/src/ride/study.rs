//! Layouts, or shift plans, over the same ride: each on a usual and on a bad
//! day, under everything that varies, worked out in slices.

use std::sync::Arc;

use thiserror::Error;

use super::gearbox::Gearbox;
use super::grasp::Grasp;
use super::habits::{Conditions, Habits};
use super::kept;
use super::load::Load;
use super::road::Road;
use super::simulation::{Inputs, Ride, Simulation};
use crate::edit::{Edit, EditError, PlanEdit};
use crate::gears::ShiftingError;
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::rider::Day;
use crate::shift_plan::ShiftPlanKind;
use crate::vocabulary::Vocabulary;

/// The most subjects of one study: more cannot be read side by side.
pub const MOST_SUBJECTS: usize = 4;

/// Why a ride cannot be worked out: a sentence with the cure.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum RideError {
    /// Nothing can be said of the gears.
    #[error(transparent)]
    Gears(#[from] ShiftingError),
    /// Nothing is ridden.
    #[error("Choose at least one layout to ride.")]
    Nothing,
    /// Too much is ridden.
    #[error("At most {MOST_SUBJECTS} layouts are ridden side by side. Take one out first.")]
    TooMany,
}

/// What of a plan may be ridden.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pick {
    /// A layout as it is.
    Layout(LayoutId),
    /// The layout in hand under a shift plan.
    Under(ShiftPlanKind),
}

/// One layout under one shift plan, as it is ridden.
#[derive(Debug, Clone, PartialEq)]
pub struct Subject {
    /// What people call it.
    pub name: String,
    pick: Pick,
    plan: Arc<Plan>,
}

impl Subject {
    /// What was picked of a plan.
    ///
    /// # Errors
    /// As of [`Subject::layout`] and [`Subject::under`].
    pub fn of(plan: &Plan, pick: Pick) -> Result<Subject, EditError> {
        match pick {
            Pick::Layout(layout) => Subject::layout(plan, layout),
            Pick::Under(kind) => Subject::under(plan, kind),
        }
    }

    /// A layout of the plan.
    ///
    /// # Errors
    /// When the plan has no such layout.
    pub fn layout(plan: &Plan, layout: LayoutId) -> Result<Subject, EditError> {
        let plan = plan.apply(&Edit::Plan(PlanEdit::SelectLayout(layout)))?;
        Ok(Subject {
            name: plan.layout().name.to_string(),
            pick: Pick::Layout(layout),
            plan: Arc::new(plan),
        })
    }

    /// The layout in hand under another shift plan, its buttons' functions
    /// replaced by those that take their place.
    ///
    /// # Errors
    /// When the shift plan does not go with the bike.
    pub fn under(plan: &Plan, kind: ShiftPlanKind) -> Result<Subject, EditError> {
        let own = kind == plan.shift_plan;
        let edit = Edit::Plan(PlanEdit::ShiftPlanAndButtons(kind));
        let plan = if own {
            plan.clone()
        } else {
            plan.apply(&edit)?
        };
        Ok(Subject {
            name: format!("{}, {kind}", plan.layout().name),
            pick: Pick::Under(kind),
            plan: Arc::new(plan),
        })
    }

    /// The plan that is ridden.
    pub fn plan(&self) -> &Plan {
        &self.plan
    }

    /// Whether the plan has changed since in what the ride rests on.
    pub fn is_stale(&self, plan: &Plan) -> bool {
        let inputs = |plan: &Plan| kept::inputs(plan, plan.current);
        Subject::of(plan, self.pick).map_or(true, |now| inputs(&now.plan) != inputs(&self.plan))
    }
}

/// A range: the lowest and the highest of what came of the rides, and what came
/// of the one as told.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Lowest.
    pub low: f64,
    /// As told.
    pub told: f64,
    /// Highest.
    pub high: f64,
}

/// What came of one subject on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// What was ridden.
    pub subject: Subject,
    /// On what day.
    pub day: Day,
    /// The ride as told, whole or so far.
    pub ride: Ride,
    /// What each ride asked, the one as told first; those not begun are absent.
    pub loads: Vec<Load>,
    /// The gears it was ridden with.
    pub gearbox: Arc<Gearbox>,
}

impl Outcome {
    /// Whether every ride of it came to the end of the road.
    pub fn is_finished(&self) -> bool {
        self.loads.len() == Conditions::SPREAD.len() && self.ride.finished
    }

    /// The range of something over the rides that were finished, or of the one
    /// as told while none was.
    pub fn span(&self, of: &dyn Fn(&Load) -> f64) -> Span {
        let told = of(&self.ride.load);
        let mut span = Span {
            low: told,
            told,
            high: told,
        };
        for load in &self.loads {
            let value = of(load);
            span.low = span.low.min(value);
            span.high = span.high.max(value);
        }
        span
    }
}

/// All rides of a study, done and to be done.
#[derive(Debug, Clone)]
pub struct Study {
    road: Arc<Road>,
    habits: Habits,
    subjects: Vec<(Subject, Arc<Gearbox>, [Arc<Grasp>; Day::ALL.len()])>,
    /// Done, in the order of [`Study::task`].
    done: Vec<Ride>,
    running: Option<Simulation>,
}

impl Study {
    /// A study of some subjects over a road, at its start.
    ///
    /// # Errors
    /// When there is nothing to ride or no gears to ride with.
    pub fn new(
        road: Arc<Road>,
        habits: Habits,
        subjects: Vec<Subject>,
    ) -> Result<Study, RideError> {
        match subjects.len() {
            0 => return Err(RideError::Nothing),
            n if n > MOST_SUBJECTS => return Err(RideError::TooMany),
            _ => {}
        }
        let mut ridden = Vec::with_capacity(subjects.len());
        for subject in subjects {
            let plan = subject.plan();
            let gearbox = Gearbox::of(plan)?;
            let grasp = |day| Arc::new(Grasp::of(plan, plan.layout(), day));
            let grasps = [grasp(Day::Usual), grasp(Day::Bad)];
            ridden.push((subject, Arc::new(gearbox), grasps));
        }
        Ok(Study {
            road,
            habits,
            subjects: ridden,
            done: Vec::new(),
            running: None,
        })
    }

    /// The road.
    pub fn road(&self) -> &Arc<Road> {
        &self.road
    }

    /// How many rides there are in all.
    fn rides(&self) -> usize {
        self.subjects.len() * Day::ALL.len() * Conditions::SPREAD.len()
    }

    /// Subject, day and conditions of the nth ride: all subjects as told first,
    /// so that a study which is stopped has something to say of each.
    fn task(&self, n: usize) -> (usize, Day, usize) {
        let subject = n % self.subjects.len();
        let rest = n / self.subjects.len();
        (
            subject,
            Day::ALL[rest % Day::ALL.len()],
            rest / Day::ALL.len(),
        )
    }

    /// How much is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        let running = self.running.as_ref().map_or(0.0, Simulation::progress);
        (self.done.len() as f64 + running) / self.rides() as f64
    }

    /// Whether all is done.
    pub fn is_finished(&self) -> bool {
        self.done.len() == self.rides()
    }

    /// Rides on for at most so many steps; whether all is done. Ten thousand
    /// take a millisecond or two.
    pub fn advance(&mut self, steps: usize) -> bool {
        let mut left = steps;
        while left > 0 && !self.is_finished() {
            let mut simulation = match self.running.take() {
                Some(simulation) => simulation,
                None => self.begin(self.done.len()),
            };
            left = simulation.advance(left);
            if simulation.is_finished() {
                let mut ride = simulation.ride();
                if self.task(self.done.len()).2 > 0 {
                    // Of the others only the load is looked at.
                    (ride.events, ride.trace) = (Vec::new(), Vec::new());
                }
                self.done.push(ride);
            } else {
                self.running = Some(simulation);
            }
        }
        self.is_finished()
    }

    fn begin(&self, n: usize) -> Simulation {
        let (subject, day, conditions) = self.task(n);
        let (_, gearbox, grasps) = &self.subjects[subject];
        Simulation::new(&Inputs {
            road: Arc::clone(&self.road),
            gearbox: Arc::clone(gearbox),
            grasp: Arc::clone(&grasps[day as usize]),
            habits: self.habits,
            conditions: Conditions::SPREAD[conditions],
        })
    }

    /// What came of it so far: for each subject a usual and a bad day, as far as
    /// they were begun.
    pub fn outcomes(&self) -> Vec<Outcome> {
        let mut outcomes: Vec<Outcome> = Vec::new();
        let under_way = self.running.as_ref().map(Simulation::ride);
        for (n, ride) in self.done.iter().chain(under_way.as_ref()).enumerate() {
            let (subject, day, conditions) = self.task(n);
            if conditions == 0 {
                let (subject, gearbox, _) = &self.subjects[subject];
                outcomes.push(Outcome {
                    subject: subject.clone(),
                    day,
                    ride: ride.clone(),
                    loads: vec![ride.load.clone()],
                    gearbox: Arc::clone(gearbox),
                });
            } else if ride.finished {
                let own = day as usize * self.subjects.len() + subject;
                outcomes[own].loads.push(ride.load.clone());
            }
        }
        // By subject, then day: a few items only.
        for n in 1..outcomes.len() {
            let mut at = n;
            while at > 0 && self.place(&outcomes[at - 1]) > self.place(&outcomes[at]) {
                outcomes.swap(at - 1, at);
                at -= 1;
            }
        }
        outcomes
    }

    fn place(&self, outcome: &Outcome) -> (usize, Day) {
        let mut subjects = self.subjects.iter();
        let at = subjects.position(|(subject, ..)| *subject == outcome.subject);
        (at.unwrap_or(0), outcome.day)
    }
}

#[cfg(test)]
mod tests;
