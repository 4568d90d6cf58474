//! When the rider brakes, and with what.

use super::{Event, Simulation, What};
use crate::ride::envelope::FIRM;
use crate::ride::grasp::Pull;
use crate::ride::road::StopKind;
use crate::rider::Side;

/// What the brakes do.
#[derive(Debug, Clone, Default)]
pub(super) struct Brake {
    /// Since when they are pulled, from where and how fast.
    on: Option<(f64, f64, f64)>,
    /// With what.
    pulls: Vec<Pull>,
    /// Since when a pull waits for a hand that is away, and for which.
    waits: Option<(f64, Side)>,
    /// Whether it was noted that no hand brakes here.
    unmet: bool,
}

impl Brake {
    pub(super) fn is_on(&self) -> bool {
        self.on.is_some()
    }

    /// The pulls of a hand.
    pub(super) fn pulls_of(&self, hand: Side) -> impl Iterator<Item = &Pull> {
        let on = self.is_on();
        self.pulls.iter().filter(move |p| on && p.hand == hand)
    }
}

/// Above the limit by this much the rider brakes, and lets go once below it by
/// that much (our judgement): a descent is braked in pulls, not all the way.
pub(super) const TOO_FAST: f64 = 1.03;
pub(super) const SLOW_ENOUGH: f64 = 0.93;

/// How long it takes until something unforeseen is braked for, in seconds
/// (*common practice*: about a second).
const STARTLE: f64 = 1.0;

/// How long a hand that left its place to brake or press needs to come back, in
/// seconds (our judgement).
pub(super) const REACH_OVER: f64 = 1.2;

impl Simulation {
    /// The highest speed here, with what was not foreseen.
    pub(super) fn limit(&self, at: f64) -> f64 {
        let foreseen = self.envelope.at(at.max(self.past));
        match self.road.stops().get(self.next_stop) {
            Some(stop) if stop.kind == StopKind::Sudden => {
                let left = (stop.at - at).max(0.0);
                // Seen where firm braking is just still in time: sooner it was
                // no surprise.
                foreseen.min((2.0 * FIRM * left).sqrt())
            }
            _ => foreseen,
        }
    }

    /// Whether what is ahead was not foreseen and must be braked for firmly.
    pub(super) fn is_startled(&self) -> bool {
        let stop = self.road.stops().get(self.next_stop);
        stop.is_some_and(|stop| {
            let left = stop.at - self.motion.at;
            let speed = self.motion.speed;
            stop.kind == StopKind::Sudden && left < speed * (speed / (2.0 * FIRM) + STARTLE)
        })
    }

    /// Pulls and lets go.
    pub(super) fn brake(&mut self, limit: f64) {
        let speed = self.motion.speed;
        if self.brake.is_on() {
            if speed <= limit * SLOW_ENOUGH && !self.is_startled() {
                self.let_go();
            }
            return;
        }
        if speed <= limit * TOO_FAST && !self.is_startled() {
            (self.brake.waits, self.brake.unmet) = (None, false);
            return;
        }
        self.pull();
    }

    fn pull(&mut self) {
        if self.grip().pulls.is_empty() {
            return self.look_for_a_brake();
        }
        let away = self
            .grip()
            .pulls
            .iter()
            .find(|pull| self.is_away(pull.hand));
        if let Some(pull) = away {
            let waits = (self.time, pull.hand);
            self.brake.waits.get_or_insert(waits);
            return;
        }
        if let Some((since, hand)) = self.brake.waits.take() {
            let seconds = self.time - since;
            self.note(What::Wanted { hand, seconds });
        }
        self.brake.pulls = self.grip().pulls.clone();
        self.brake.on = Some((self.time, self.motion.at, self.motion.speed));
        for n in 0..self.brake.pulls.len() {
            let Pull { hand, lets_go, .. } = self.brake.pulls[n];
            if lets_go {
                self.note(What::Off { hand });
            }
        }
    }

    /// No brake from here: the hands go where there is one.
    fn look_for_a_brake(&mut self) {
        let mut grips = self.grasp.grips.iter();
        match grips.position(|grip| !grip.pulls.is_empty()) {
            Some(grip) => self.take(grip),
            None if !self.brake.unmet => {
                self.brake.unmet = true;
                self.note(What::NoBrake);
            }
            None => {}
        }
    }

    /// Lets the brakes go.
    pub(super) fn let_go(&mut self) {
        let Some((time, at, speed)) = self.brake.on.take() else {
            return;
        };
        let seconds = (self.time - time).max(crate::ride::physics::STEP);
        for pull in std::mem::take(&mut self.brake.pulls) {
            self.note_from(time, at, speed, pulled(&pull, seconds));
            if pull.lets_go {
                self.goes_away(pull.hand, REACH_OVER);
            }
        }
    }

    /// The pulls that go on.
    pub(super) fn open_pulls(&self) -> Vec<Event> {
        let Some((time, at, speed)) = self.brake.on else {
            return Vec::new();
        };
        let seconds = self.time - time;
        let pulls = self.brake.pulls.iter();
        pulls
            .map(|pull| Event {
                time,
                at,
                speed,
                what: pulled(pull, seconds),
            })
            .collect()
    }
}

fn pulled(pull: &Pull, seconds: f64) -> What {
    What::Pull {
        lever: pull.lever,
        hand: pull.hand,
        contact: pull.contact,
        seconds,
    }
}
