//! What a plan keeps of rides: the road, how the rider rides, the ride that was
//! fine, and what came of rides with the state of the plan that it belongs to.

use std::sync::Arc;

use super::digest::digest;
use super::export;
use super::habits::Habits;
use super::load::Load;
use super::measure::{Measure, Who};
use super::road::{Road, RoadKind};
use super::study::Outcome;
use crate::document;
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::rider::{Contact, Day, Side};
use crate::text::Text;
use crate::vocabulary::Vocabulary;

/// Which road is ridden.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RoadChoice {
    /// One of our own.
    BuiltIn(RoadKind),
    /// The imported one, if there is one.
    Imported,
}

impl Default for RoadChoice {
    fn default() -> Self {
        RoadChoice::BuiltIn(RoadKind::Rolling)
    }
}

/// What a plan keeps of rides.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rides {
    /// Which road is ridden.
    pub choice: RoadChoice,
    /// A road that was imported; shared, because undo keeps many plans.
    pub imported: Option<Arc<Road>>,
    /// How the rider rides.
    pub habits: Habits,
    /// The ride that was fine.
    pub known: Option<KnownRide>,
    /// What came of rides, one for each layout at most.
    pub remembered: Vec<Remembered>,
}

impl Rides {
    /// The road that is ridden.
    pub fn road(&self) -> Arc<Road> {
        match (self.choice, &self.imported) {
            (RoadChoice::Imported, Some(road)) => Arc::clone(road),
            (RoadChoice::Imported, None) => Arc::new(Road::built_in(RoadKind::Rolling)),
            (RoadChoice::BuiltIn(kind), _) => Arc::new(Road::built_in(kind)),
        }
    }

    /// The road alone: how somebody rides and what it asked of the hands is removed.
    pub fn without_hand_details(&self) -> Rides {
        Rides {
            choice: self.choice,
            imported: self.imported.clone(),
            ..Rides::default()
        }
    }
}

/// What a ride that was fine asked of a hand, rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct FineHand {
    /// Presses an hour.
    pub presses_per_hour: u16,
    /// Presses in the worst ten minutes.
    pub worst_ten_minutes: u16,
    /// Minutes at the brake an hour.
    pub pulled_per_hour: u16,
}

/// A ride that the rider names as fine, with what it asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KnownRide {
    /// What the rider calls it.
    pub name: Text,
    /// Of the left hand.
    pub left: FineHand,
    /// Of the right hand.
    pub right: FineHand,
}

impl KnownRide {
    /// A ride that was worked out and that the rider says was fine.
    pub fn of(name: Text, outcome: &Outcome) -> KnownRide {
        let fine = |side| {
            let told = |measure: Measure| whole(measure.span(Who::Hand(side), outcome).told);
            FineHand {
                presses_per_hour: told(Measure::PressesPerHour),
                worst_ten_minutes: told(Measure::WorstTenMinutes),
                pulled_per_hour: told(Measure::PulledPerHour),
            }
        };
        KnownRide {
            name,
            left: fine(Side::Left),
            right: fine(Side::Right),
        }
    }

    /// What it asked of a hand.
    pub fn hand(&self, side: Side) -> FineHand {
        match side {
            Side::Left => self.left,
            Side::Right => self.right,
        }
    }
}

fn whole(value: f64) -> u16 {
    value.round().clamp(0.0, f64::from(u16::MAX)) as u16
}

/// What a ride asked of one hand, as far as rules look at it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HandFigures {
    /// Presses in all.
    pub presses: u16,
    /// Presses an hour at least and at most.
    pub presses_per_hour: (u16, u16),
    /// Presses in the worst ten minutes.
    pub worst_ten_minutes: u16,
    /// Bursts.
    pub bursts: u16,
    /// Presses of the longest burst.
    pub longest_burst: u16,
    /// Brake pulls.
    pub pulls: u16,
    /// Presses while it brakes.
    pub clashes: u16,
    /// Shifts put off because it brakes.
    pub delays: u16,
    /// Times that its brake was wanted while it was away.
    pub wanted: u16,
    /// Presses by each contact that presses, in order.
    pub contacts: Vec<(Contact, u16)>,
}

/// What came of a ride, with the state of the plan that it belongs to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Remembered {
    /// The layout that was ridden.
    pub layout: LayoutId,
    /// The road.
    pub road: Text,
    /// How long it took, in minutes.
    pub minutes: u16,
    /// Of what the ride was worked out from.
    pub inputs: u64,
    /// Of everything that came of it, both days.
    pub results: u64,
    /// What it asked of the left hand on a usual day.
    pub left: HandFigures,
    /// Of the right hand.
    pub right: HandFigures,
}

impl Remembered {
    /// What came of one subject, both days. `None` where the rides are
    /// unfinished or were not of this plan as it stands.
    pub fn of(plan: &Plan, outcomes: &[Outcome]) -> Option<Remembered> {
        let usual = outcomes.iter().find(|outcome| outcome.day == Day::Usual)?;
        let ridden = usual.subject.plan();
        let own = inputs(plan, ridden.current);
        let is_own = |outcome: &Outcome| {
            outcome.is_finished() && inputs(outcome.subject.plan(), ridden.current) == own
        };
        if outcomes.len() != Day::ALL.len() || !outcomes.iter().all(is_own) {
            return None;
        }
        Some(Remembered {
            layout: ridden.current,
            road: ridden.rides.road().name.clone(),
            minutes: whole(usual.ride.seconds / 60.0),
            inputs: own,
            results: digest(export::summary(outcomes).as_bytes()),
            left: figures(Side::Left, usual),
            right: figures(Side::Right, usual),
        })
    }

    /// A ride of the layout in hand that asked nothing, for tests to fill in.
    #[cfg(test)]
    pub(crate) fn blank(plan: &Plan) -> Remembered {
        Remembered {
            layout: plan.current,
            road: plan.rides.road().name.clone(),
            minutes: 60,
            inputs: inputs(plan, plan.current),
            results: 0,
            left: HandFigures::default(),
            right: HandFigures::default(),
        }
    }

    /// What it asked of a hand.
    pub fn hand(&self, side: Side) -> &HandFigures {
        match side {
            Side::Left => &self.left,
            Side::Right => &self.right,
        }
    }

    /// The presses of both hands.
    pub fn presses(&self) -> u32 {
        u32::from(self.left.presses) + u32::from(self.right.presses)
    }

    /// Whether the plan has changed since in something that the ride was worked
    /// out from.
    pub fn is_stale(&self, plan: &Plan) -> bool {
        inputs(plan, self.layout) != self.inputs
    }
}

fn figures(side: Side, outcome: &Outcome) -> HandFigures {
    let hour = Measure::PressesPerHour.span(Who::Hand(side), outcome);
    let load = &outcome.ride.load;
    let hand = load.hand(side);
    let work = &hand.work;
    let count = |count: u32| whole(count.into());
    let mut contacts = Vec::new();
    for (own, contact, work) in &load.contacts {
        if *own == side && work.presses > 0 {
            contacts.push((*contact, count(work.presses)));
        }
    }
    HandFigures {
        presses: count(work.presses),
        presses_per_hour: (whole(hour.low), whole(hour.high)),
        worst_ten_minutes: count(work.worst_ten_minutes),
        bursts: count(work.bursts),
        longest_burst: count(work.longest_burst),
        pulls: count(work.pulls),
        clashes: count(work.clashes),
        delays: count(hand.delays),
        wanted: count(hand.wanted),
        contacts,
    }
}

/// A number for everything in a plan that a ride of a layout is worked out from.
pub fn inputs(plan: &Plan, layout: LayoutId) -> u64 {
    digest(document::ridden(plan, layout).as_bytes())
}

/// The load in a few words, for a list: "62 presses, 14 brake pulls".
pub fn in_short(load: &Load) -> String {
    let pulls = load.left.work.pulls.max(load.right.work.pulls);
    format!("{} presses, {pulls} brake pulls", load.presses())
}
