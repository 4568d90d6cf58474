//! A ride worked out step by step: it can be stopped at any time, and what came
//! of it so far is there.

mod braking;
mod moving;
mod rolling;
mod shifting;

use std::sync::Arc;

use super::envelope::Envelope;
use super::event::{Event, What};
use super::gearbox::Gearbox;
use super::grasp::{Grasp, Grip};
use super::habits::{Conditions, Habit, Habits};
use super::load::{Counters, Load};
use super::physics::{Air, Machine, Motion, STEP};
use super::road::Road;
use crate::cockpit::HandPosition;
use crate::function::Function;
use crate::rider::Side;

/// The most events that a ride keeps; what it counts goes on beyond.
pub const MOST_EVENTS: usize = 10_000;

/// Into how many pieces a ride's trace is cut at most: enough for a picture.
pub const MOST_TRACE: usize = 800;

/// What a ride is worked out from.
#[derive(Debug, Clone)]
pub struct Inputs {
    /// The road.
    pub road: Arc<Road>,
    /// The gears.
    pub gearbox: Arc<Gearbox>,
    /// What the hands do.
    pub grasp: Arc<Grasp>,
    /// How the rider rides.
    pub habits: Habits,
    /// What varies from ride to ride.
    pub conditions: Conditions,
}

/// The state of a ride at a place of the road.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Along the road, in metres.
    pub at: f64,
    /// Since the start, in seconds.
    pub time: f64,
    /// In m/s.
    pub speed: f64,
    /// The gear, as [`Gearbox::gears`] counts them.
    pub gear: usize,
}

/// Where the rider's work went, in joules.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Energy {
    /// What reached the wheel from the legs.
    pub pedalled: f64,
    /// Into the air; negative where the wind pushed more than it held back.
    pub air: f64,
    /// Into rolling.
    pub rolling: f64,
    /// Into the brakes.
    pub braked: f64,
    /// Into height; negative where the road ends lower.
    pub height: f64,
    /// Into the speed at the end.
    pub speed: f64,
}

impl Energy {
    /// What is not accounted for, as a share of all that was turned over.
    pub fn unaccounted(&self) -> f64 {
        let spent = self.air + self.rolling + self.braked + self.height + self.speed;
        let turned = self.pedalled + self.braked;
        (self.pedalled - spent).abs() / turned.max(1.0)
    }
}

/// What came of a ride, whole or so far.
#[derive(Debug, Clone, PartialEq)]
pub struct Ride {
    /// Whether it came to the end of the road.
    pub finished: bool,
    /// How far it came, in metres.
    pub distance: f64,
    /// How long it took, in seconds, stops included.
    pub seconds: f64,
    /// How much of the road was walked or pushed up, in metres.
    pub walked: f64,
    /// What it asked of the hands.
    pub load: Load,
    /// Where the work went.
    pub energy: Energy,
    /// What happened, in order, the first [`MOST_EVENTS`].
    pub events: Vec<Event>,
    /// Whether more happened than was kept.
    pub events_cut: bool,
    /// The state along the road, [`MOST_TRACE`] times.
    pub trace: Vec<Sample>,
}

/// A ride in the making.
#[derive(Debug, Clone)]
pub struct Simulation {
    road: Arc<Road>,
    gearbox: Arc<Gearbox>,
    grasp: Arc<Grasp>,
    envelope: Envelope,
    machine: Machine,
    air: Air,
    /// On the level and uphill, in watts.
    power: (f64, f64),
    /// In turns a minute.
    band: (f64, f64),
    patience: f64,

    time: f64,
    motion: Motion,
    gear: usize,
    /// Seconds still to stand.
    standing: f64,
    /// The next stop of the road.
    next_stop: usize,
    /// Up to where what held the bike back is behind it, in metres.
    past: f64,
    hands: moving::Hands,
    brake: braking::Brake,
    shifter: shifting::Shifter,

    energy: Energy,
    walked: f64,
    counters: Counters,
    events: Vec<Event>,
    events_cut: bool,
    trace: Vec<Sample>,
}

/// Slower than this, in m/s, no ride is taken to be: whoever cannot ride a slope
/// walks it (our judgement).
const WALK: f64 = 1.1;

impl Simulation {
    /// A ride at its start.
    pub fn new(inputs: &Inputs) -> Simulation {
        let Inputs {
            habits, conditions, ..
        } = inputs;
        let comfortable = habits.get(Habit::DescentSpeed) / 3.6;
        let (low, high) = habits.band();
        let mut air = habits.air();
        air.headwind += conditions.headwind;
        let watts = |habit| habits.get(habit) * conditions.power;
        let band = (low * conditions.cadence, high * conditions.cadence);
        Simulation {
            envelope: Envelope::of(&inputs.road, comfortable),
            machine: habits.machine(),
            air,
            power: (watts(Habit::LevelPower), watts(Habit::ClimbPower)),
            band,
            patience: conditions.patience,
            time: 0.0,
            motion: Motion::default(),
            gear: inputs.gearbox.nearest(shifting::start_development(band)),
            standing: 0.0,
            next_stop: 0,
            past: 0.0,
            hands: moving::Hands::of(&inputs.grasp),
            brake: braking::Brake::default(),
            shifter: shifting::Shifter::default(),
            energy: Energy::default(),
            walked: 0.0,
            counters: Counters::default(),
            events: Vec::new(),
            events_cut: false,
            trace: Vec::new(),
            road: Arc::clone(&inputs.road),
            gearbox: Arc::clone(&inputs.gearbox),
            grasp: Arc::clone(&inputs.grasp),
        }
    }

    /// How much of the road is done, 0 to 1.
    pub fn progress(&self) -> f64 {
        (self.motion.at / self.road.length()).min(1.0)
    }

    /// Whether the end of the road is reached.
    pub fn is_finished(&self) -> bool {
        self.motion.at >= self.road.length()
    }

    /// Rides on for at most so many steps of [`STEP`] seconds; how many of them
    /// were left over, which is none while the road goes on. Ten thousand take
    /// about a millisecond.
    pub fn advance(&mut self, steps: usize) -> usize {
        for step in 0..steps {
            if self.is_finished() {
                return steps - step;
            }
            self.step();
        }
        0
    }

    /// Rides on until a time since the start, in seconds, or to the end.
    pub fn step_until(&mut self, time: f64) {
        while self.time < time && !self.is_finished() {
            self.step();
        }
    }

    /// What came of it so far.
    pub fn ride(&self) -> Ride {
        let mut events = self.events.clone();
        events.extend(self.open_pulls());
        // By time, and what begins at once as it came: a plain insertion, since
        // only what lasts was noted late.
        for n in 1..events.len() {
            let mut at = n;
            while at > 0 && events[at - 1].time > events[at].time {
                events.swap(at - 1, at);
                at -= 1;
            }
        }
        let mut counters = self.counters.clone();
        for pull in self.open_pulls() {
            counters.count(&pull, self.third(), false);
        }
        let mut energy = self.energy;
        let risen = self.road.height(self.motion.at) - self.road.height(0.0);
        energy.height = self.machine.mass * super::physics::GRAVITY * risen;
        energy.speed = self.moving_energy(self.motion.speed);
        Ride {
            finished: self.is_finished(),
            distance: self.motion.at.min(self.road.length()),
            seconds: self.time,
            walked: self.walked,
            load: counters.by(self.time),
            energy,
            events,
            events_cut: self.events_cut,
            trace: self.trace.clone(),
        }
    }

    fn moving_energy(&self, speed: f64) -> f64 {
        0.5 * self.machine.moved_mass() * speed * speed
    }

    fn third(&self) -> usize {
        ((self.progress() * 3.0) as usize).min(2)
    }

    fn grip(&self) -> &Grip {
        &self.grasp.grips[self.hands.grip]
    }

    fn step(&mut self) {
        self.sample();
        self.counters.spend(self.third(), STEP);
        if self.standing > 0.0 {
            self.standing -= STEP;
            self.time += STEP;
            return;
        }
        let limit = self.limit(self.motion.at);
        self.brake(limit);
        self.move_hands(limit);
        self.shift(limit);
        self.roll(limit);
        self.time += STEP;
        self.pass();
    }

    /// Notes the state where the picture wants it.
    fn sample(&mut self) {
        let every = self.road.length() / (MOST_TRACE - 1) as f64;
        if self.motion.at >= every * self.trace.len() as f64 {
            self.trace.push(Sample {
                at: self.motion.at,
                time: self.time,
                speed: self.motion.speed,
                gear: self.gear,
            });
        }
    }

    /// Comes past stops.
    fn pass(&mut self) {
        let Some(stop) = self.road.stops().get(self.next_stop).copied() else {
            return;
        };
        let left = stop.at - self.motion.at;
        let stands = stop.kind.speed() == 0.0 && left < 2.0 && self.motion.speed < 0.6;
        if left <= 0.2 || stands {
            self.next_stop += 1;
            self.past = stop.at + self.road.spacing();
            if stop.kind.speed() == 0.0 {
                self.roll_up_to(stop.at);
                self.stand(stop.kind.wait());
            }
        }
    }

    /// Rolls the last bit to where the bike stands.
    fn roll_up_to(&mut self, at: f64) {
        let from = self.motion.at;
        self.motion.at = from.max(at);
        let risen = self.road.height(self.motion.at) - self.road.height(from);
        let lifted = self.machine.mass * super::physics::GRAVITY * risen;
        if lifted < 0.0 {
            self.energy.braked -= lifted;
        } else {
            self.energy.pedalled += lifted;
        }
    }

    fn stand(&mut self, wait: f64) {
        self.energy.braked += self.moving_energy(self.motion.speed);
        self.motion.speed = 0.0;
        self.standing = wait;
        self.let_go();
        self.give_up();
    }

    fn note(&mut self, what: What) {
        self.note_from(self.time, self.motion.at, self.motion.speed, what);
    }

    fn note_from(&mut self, time: f64, at: f64, speed: f64, what: What) {
        let event = Event {
            time,
            at,
            speed,
            what,
        };
        let front = match what {
            What::Press { from, to, .. } => self.changes_ring(from, to),
            _ => false,
        };
        self.counters.count(&event, self.third(), front);
        if self.events.len() < MOST_EVENTS {
            self.events.push(event);
        } else {
            self.events_cut = true;
        }
    }

    fn changes_ring(&self, from: usize, to: usize) -> bool {
        let gears = self.gearbox.gears();
        gears[from].ring != gears[to].ring
    }

    /// The position that the hands are in.
    pub fn position(&self) -> HandPosition {
        self.grip().position
    }

    fn doing(&self, function: Function) -> Option<super::grasp::Doing> {
        self.grip().doing(function).copied()
    }

    fn is_away(&self, hand: Side) -> bool {
        self.hands.away_until[hand as usize] > self.time
    }

    fn goes_away(&mut self, hand: Side, seconds: f64) {
        let until = &mut self.hands.away_until[hand as usize];
        *until = until.max(self.time + seconds);
    }
}

#[cfg(test)]
mod tests;
