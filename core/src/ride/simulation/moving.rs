//! Hands that move along the bar.

use super::Simulation;
use crate::cockpit::HandPosition;
use crate::ride::event::What;
use crate::ride::grasp::Grasp;
use crate::ride::physics::STEP;
use crate::ride::road::Bend;
use crate::rider::{Side, Use};
use crate::vocabulary::Vocabulary;

/// Where the hands are.
#[derive(Debug, Clone)]
pub(super) struct Hands {
    /// The grip, as [`Grasp::grips`] counts them.
    pub(super) grip: usize,
    since: f64,
    /// How long each grip was used, in seconds.
    used: Vec<f64>,
    /// Until when each hand is off its place.
    pub(super) away_until: [f64; Side::ALL.len()],
}

/// How long a hand is off its place when it moves along the bar, in seconds
/// (our judgement; MTM-1 gives 0.6 s for a reach of 16 inches to a fixed place,
/// to which the grasp comes).
const MOVE: f64 = 0.8;

/// How long hands stay where they are at least, in seconds (our judgement).
const STAY: f64 = 20.0;

/// How much more another position must speak for itself before hands move, in
/// seconds of its share (our judgement).
const WORTH: f64 = 60.0;

impl Hands {
    pub(super) fn of(grasp: &Grasp) -> Hands {
        let mostly = grasp.grips.iter().position(|grip| grip.used == Use::Mostly);
        Hands {
            grip: mostly.unwrap_or(0),
            since: 0.0,
            used: vec![0.0; grasp.grips.len()],
            away_until: [0.0; 2],
        }
    }
}

/// The share of the time that an answer stands for, against the other positions
/// (our judgement).
fn weight(used: Use) -> f64 {
    match used {
        Use::Mostly => 3.0,
        Use::Sometimes => 1.0,
        Use::Never => 0.0,
    }
}

impl Simulation {
    /// Moves the hands where road and speed call for it, in the shares that the
    /// rider gave.
    pub(super) fn move_hands(&mut self, limit: f64) {
        self.hands.used[self.hands.grip] += STEP;
        let grips = self.grasp.grips.len();
        let busy = self.brake.is_on()
            || self.shifter.is_pressing()
            || self.motion.speed > 0.85 * limit
            || self.time - self.hands.since < STAY;
        if grips < 2 || busy {
            return;
        }
        let mut best = self.hands.grip;
        let mut score = self.call(best) + WORTH;
        for grip in 0..grips {
            let call = self.call(grip);
            if grip != self.hands.grip && call > score {
                (best, score) = (grip, call);
            }
        }
        if best != self.hands.grip {
            self.take(best);
        }
    }

    /// The hands go to a grip.
    pub(super) fn take(&mut self, grip: usize) {
        self.hands.grip = grip;
        self.hands.since = self.time;
        let to = self.grip().position;
        for n in 0..self.grasp.moving.len() {
            let hand = self.grasp.moving[n];
            self.goes_away(hand, MOVE);
            self.note(What::Move { hand, to });
        }
    }

    /// How much a grip speaks for itself: the time by which it fell short of its
    /// share, and how well it suits.
    fn call(&self, grip: usize) -> f64 {
        let grips = &self.grasp.grips;
        let all: f64 = grips.iter().map(|grip| weight(grip.used)).sum();
        let share = weight(grips[grip].used) / all.max(1.0);
        let ridden: f64 = self.hands.used.iter().sum();
        let short = share * ridden - self.hands.used[grip];
        short.clamp(-120.0, 120.0) + 60.0 * self.suits(grips[grip].position)
    }

    /// How well a position suits road and speed, -1 to 1 (*common practice*:
    /// tops uphill, drops downhill, extensions where it is fast and straight).
    fn suits(&self, position: HandPosition) -> f64 {
        let piece = self.road.piece(self.motion.at);
        let grade = self.road.grade_of(piece);
        let speed = self.motion.speed;
        let (climbs, falls) = (grade > 0.02, grade < -0.02);
        let open = self.road.bend(piece) == Bend::Straight;
        let suits = |suits: bool| if suits { 1.0 } else { -0.5 };
        match position {
            HandPosition::Tops => suits(climbs && speed < 5.0),
            HandPosition::Drops => suits(falls && speed > 6.0),
            HandPosition::Extensions => suits(!climbs && !falls && open && speed > 5.0),
            HandPosition::BaseBar => suits(climbs || falls || !open || speed < 5.0),
            HandPosition::Hoods => 0.2,
            HandPosition::Grip | HandPosition::SideGrip => 0.0,
        }
    }
}
