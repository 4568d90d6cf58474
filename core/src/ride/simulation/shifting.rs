//! When the rider shifts, and how the presses come.

use super::Simulation;
use super::braking::REACH_OVER;
use crate::function::Function;
use crate::ride::envelope::GENTLE;
use crate::ride::event::{Clash, What};
use crate::ride::grasp::Doing;
use crate::ride::road::StopKind;

/// What the shifting rider has in mind.
#[derive(Debug, Clone, Default)]
pub(super) struct Shifter {
    /// Presses still to make, last one first.
    queue: Vec<Function>,
    /// When the next may come.
    ready: f64,
    /// Since when the cadence is outside the band.
    outside: Option<f64>,
    /// Since when the next press waits for a brake to be let go.
    waits: Option<f64>,
}

impl Shifter {
    pub(super) fn is_pressing(&self) -> bool {
        !self.queue.is_empty()
    }

    /// Drops what was to be pressed.
    fn forget(&mut self) {
        self.queue.clear();
        self.outside = None;
        self.waits = None;
    }
}

/// From one tap to the next, in seconds (our judgement: unhurried).
const TAP_PACE: f64 = 0.5;
/// Fewer shifts than this are tapped (our judgement).
const WORTH_A_HOLD: usize = 3;
/// After presses the rider feels how it goes, in seconds (our judgement).
const SETTLE: f64 = 2.0;
/// So much before a stop that is foreseen the rider begins to shift, in seconds
/// before braking (our judgement).
const LEAD: f64 = 4.0;
/// How fast the bike is when the legs first turn in earnest after a stop, in m/s
/// (our judgement).
const START_SPEED: f64 = 2.2;

/// The development in metres in which a rider likes to set off.
pub(super) fn start_development(band: (f64, f64)) -> f64 {
    60.0 * START_SPEED / band.0
}

impl Simulation {
    /// Presses what is due, or makes up the rider's mind.
    pub(super) fn shift(&mut self, limit: f64) {
        if self.time < self.shifter.ready {
            return;
        }
        if let Some(function) = self.shifter.queue.last().copied() {
            return self.press(function);
        }
        let Some(development) = self.wish(limit) else {
            return;
        };
        if self.gearbox.serves(self.gear, development) {
            return;
        }
        let may = |function| self.doing(function).is_some();
        let mut presses = self.gearbox.presses(self.gear, development, may);
        if presses.is_empty() {
            return self.miss(development);
        }
        presses.reverse();
        self.shifter.queue = presses;
        if let Some(function) = self.shifter.queue.last().copied() {
            self.press(function);
        }
    }

    /// The development that the rider would like, if another one.
    fn wish(&mut self, limit: f64) -> Option<f64> {
        let start = start_development(self.band);
        let own = self.gearbox.gears()[self.gear].development;
        if self.stops_soon() && own > 1.15 * start {
            return Some(start);
        }
        let pedals = self.pedalling_wanted(limit);
        let cadence = self.cadence();
        let (low, high) = self.band;
        if !pedals || (low..=high).contains(&cadence) {
            self.shifter.outside = None;
            return None;
        }
        if self.motion.speed < START_SPEED {
            // Setting off, the legs turn slowly in any gear: only one that is
            // much too hard is left.
            return (own > 1.3 * start && self.motion.speed > 0.5).then_some(start);
        }
        let since = *self.shifter.outside.get_or_insert(self.time);
        if self.time - since < self.patience {
            return None;
        }
        self.shifter.outside = None;
        Some(60.0 * self.motion.speed * 2.0 / (low + high))
    }

    /// Whether the rider wants to pedal, whatever the gear: who spins out
    /// shifts.
    fn pedalling_wanted(&self, limit: f64) -> bool {
        let grade = self.road.grade(self.motion.at);
        !self.brake.is_on() && self.motion.speed <= 0.97 * limit && grade > -0.035
    }

    /// Whether the rider comes to a stand soon and knows it.
    fn stops_soon(&self) -> bool {
        let Some(stop) = self.road.stops().get(self.next_stop) else {
            return false;
        };
        let speed = self.motion.speed;
        let left = stop.at - self.motion.at;
        let foreseen = left < speed * (speed / (2.0 * GENTLE) + LEAD);
        match stop.kind {
            StopKind::Halt | StopKind::Gate => foreseen && speed > 1.0,
            StopKind::Sudden => self.brake.is_on() && self.is_startled() && speed > 1.5,
            StopKind::GiveWay => false,
        }
    }

    /// Presses a function, or waits for the hand.
    fn press(&mut self, function: Function) {
        let Some(doing) = self.doing(function) else {
            // The hands moved meanwhile.
            return self.give_up();
        };
        if self.is_away(doing.hand) {
            return;
        }
        let clash = self.clash(&doing);
        if self.is_put_off(clash) {
            self.shifter.waits.get_or_insert(self.time);
            return;
        }
        if let Some(since) = self.shifter.waits.take() {
            let (hand, seconds) = (doing.hand, self.time - since);
            self.note(What::Delay {
                function,
                hand,
                seconds,
            });
            // Braked meanwhile: what is wanted now may be another gear.
            self.shifter.queue.clear();
            return;
        }
        self.make(function, &doing, clash);
    }

    /// Drops what was to be pressed; that it waited in vain is noted.
    pub(super) fn give_up(&mut self) {
        let next = self.shifter.queue.last().copied();
        if let (Some(since), Some(function)) = (self.shifter.waits, next)
            && let Some(Doing { hand, .. }) = self.doing(function)
        {
            let seconds = self.time - since;
            self.note(What::Delay {
                function,
                hand,
                seconds,
            });
        }
        self.shifter.forget();
    }

    /// What a press would share with the brake pulls that go on.
    fn clash(&self, doing: &Doing) -> Clash {
        let mut clash = Clash::No;
        for pull in self.brake.pulls_of(doing.hand) {
            clash = clash.max(if pull.contact == doing.contact || doing.lets_go {
                Clash::Contact
            } else {
                Clash::Hand
            });
        }
        clash
    }

    /// Whether a press waits until the brake is let go: what brakes does not
    /// press, and a hand that brakes presses only before a stand.
    fn is_put_off(&self, clash: Clash) -> bool {
        match clash {
            Clash::No => false,
            Clash::Hand => !self.stops_soon(),
            Clash::Contact => true,
        }
    }

    fn make(&mut self, function: Function, doing: &Doing, clash: Clash) {
        let from = self.gear;
        let shifts = self.shifts_at_once(function, doing);
        let (mut made, mut time) = (0, 0.0);
        while made < shifts
            && let Some(shift) = self.gearbox.shift(self.gear, function)
        {
            self.gear = shift.to;
            self.shifter.queue.pop();
            // A hold shifts at once, waits, and then shifts on.
            time = match made {
                1 => self.gearbox.trigger().max(time) + shift.seconds,
                _ => time + shift.seconds,
            };
            made += 1;
        }
        if made == 0 {
            return self.give_up();
        }
        let held = if made == 1 { 0.0 } else { time };
        self.note(What::Press {
            function,
            via: doing.via,
            hand: doing.hand,
            contact: doing.contact,
            held,
            clash,
            from,
            to: self.gear,
        });
        let mut busy = time.max(TAP_PACE);
        if doing.lets_go {
            self.note(What::Off { hand: doing.hand });
            self.goes_away(doing.hand, REACH_OVER);
            busy = busy.max(REACH_OVER);
        }
        let settle = if self.shifter.queue.is_empty() {
            SETTLE
        } else {
            0.0
        };
        self.shifter.ready = self.time + busy + settle;
    }

    /// How many shifts one press makes: one by a tap, several by a hold.
    fn shifts_at_once(&self, function: Function, doing: &Doing) -> usize {
        let wanted = self.shifter.queue.iter().rev();
        let wanted = wanted.take_while(|next| **next == function).count();
        let Some(most) = doing.hold.filter(|_| wanted >= WORTH_A_HOLD) else {
            return 1;
        };
        let most = wanted.min(usize::from(most));
        let shifts = self.gearbox.holds(self.gear, function, most);
        if shifts < WORTH_A_HOLD { 1 } else { shifts }
    }

    /// Nothing that can be called up brings the wanted gear nearer: noted where
    /// some press would.
    fn miss(&mut self, development: f64) {
        let all = self.gearbox.presses(self.gear, development, |_| true);
        if let Some(function) = all.into_iter().find(|f| self.doing(*f).is_none()) {
            self.note(What::Missing { function });
            self.shifter.ready = self.time + 10.0;
        }
    }
}
