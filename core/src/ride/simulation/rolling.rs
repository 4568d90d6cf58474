//! How the bike moves in one step.

use super::braking::{SLOW_ENOUGH, TOO_FAST};
use super::{Simulation, WALK};
use crate::ride::envelope::{FIRM, GENTLE};
use crate::ride::physics::{self, Motion, STEP};

/// How fast a pull slows the bike that only keeps to a speed downhill, in m/s²
/// (our judgement).
const DRAG: f64 = 0.5;

/// The tangent of a slope whose sine is known: a bike covers the road itself, so
/// rise over distance is the sine. At 10 % they differ by half a percent.
fn incline(sine: f64) -> f64 {
    sine / (1.0 - sine * sine).max(0.01).sqrt()
}

impl Simulation {
    /// The power that the rider gives here, in watts at the crank.
    pub(super) fn pedalling(&self, limit: f64) -> f64 {
        let speed = self.motion.speed;
        if self.brake.is_on() || speed > 0.97 * limit {
            return 0.0;
        }
        let grade = self.road.grade(self.motion.at);
        // More on a climb, less downhill (our judgement): in full from 3.5 %
        // up, none from 4 % down.
        let climb = ((grade - 0.005) / 0.03).clamp(0.0, 1.0);
        let down = (1.0 + (grade + 0.01) / 0.03).clamp(0.0, 1.0);
        let power = self.power.0 + (self.power.1 - self.power.0) * climb;
        power * down * self.legs()
    }

    /// What the cadence leaves of the power: legs neither push much harder far
    /// below the band, nor keep up far above it (our judgement).
    fn legs(&self) -> f64 {
        let cadence = self.cadence();
        let (low, high) = self.band;
        let slow = (cadence / (0.6 * low)).clamp(0.4, 1.0);
        let fast = (1.0 - (cadence / high - 1.25) / 0.15).clamp(0.0, 1.0);
        slow * fast
    }

    /// In turns a minute, as fast as the legs would have to turn.
    pub(super) fn cadence(&self) -> f64 {
        60.0 * self.motion.speed / self.gearbox.gears()[self.gear].development
    }

    /// One step of the road.
    pub(super) fn roll(&mut self, limit: f64) {
        let power = self.pedalling(limit);
        let from = self.motion;
        let (machine, air) = (&self.machine, &self.air);
        // A step touches two pieces of the road at most.
        let piece = self.road.piece(from.at);
        let ahead = (piece + 1).min(self.road.samples() - 2);
        let slope = |piece| incline(self.road.grade_of(piece));
        let weight = |piece| machine.resistance(-air.headwind, slope(piece), air);
        let (here, there) = (weight(piece).sum(), weight(ahead).sum());
        let border = (piece + 1) as f64 * self.road.spacing();
        let ride = |from, dt, uphill: f64| {
            physics::step(from, dt, machine.moved_mass(), |m: Motion| {
                physics::push(machine, power, m.speed) - uphill - machine.air(m.speed, air)
            })
        };
        let mut next = ride(from, STEP, here);
        if next.at > border {
            // Stepping over the kink would cost the method its order.
            let before = STEP * (border - from.at) / (next.at - from.at);
            next = ride(ride(from, before, here), STEP - before, there);
        }
        if self.slows_down() {
            next = self.braked(from, next);
        } else if next.speed < WALK && limit > WALK {
            next = self.walked(from, next);
        }
        // A ride never hangs: whoever stands without a reason walks on.
        if next.at - from.at < 0.01 {
            next = self.walked(from, next);
        }
        let end = self.road.length();
        if next.at > end {
            let share = (end - from.at) / (next.at - from.at);
            let speed = from.speed + (next.speed - from.speed) * share;
            next = Motion { at: end, speed };
        }
        self.account(from, next, power);
        self.motion = next;
    }

    /// Whether something slows the bike: brakes, or where no hand pulls one,
    /// feet and luck; the ride goes on and has noted it.
    fn slows_down(&self) -> bool {
        self.brake.is_on() || self.grasp.grips.iter().all(|grip| grip.pulls.is_empty())
    }

    /// The step with brakes: as slow as wanted, no faster than they slow down.
    fn braked(&self, from: Motion, rolled: Motion) -> Motion {
        let ahead = self.limit(rolled.at);
        let rate = match () {
            () if self.is_startled() => FIRM,
            // Before a bend or a stop.
            () if ahead < self.limit(from.at) => 1.25 * GENTLE,
            // Down a hill, only to keep to a speed.
            () => DRAG,
        };
        // Who has no brake slows down by other means, and not below the limit.
        let share = if self.brake.is_on() {
            SLOW_ENOUGH
        } else {
            TOO_FAST + 0.01
        };
        let wanted = share * ahead;
        let speed = rolled.speed.min(wanted.max(from.speed - rate * STEP));
        Motion {
            at: from.at + 0.5 * (from.speed + speed) * STEP,
            speed,
        }
    }

    /// The step of a rider who gets off and walks.
    fn walked(&mut self, from: Motion, rolled: Motion) -> Motion {
        let speed = WALK.min(from.speed + 0.8 * STEP).max(rolled.speed);
        let at = from.at + 0.5 * (from.speed + speed) * STEP;
        if from.speed >= 0.9 * WALK {
            self.walked += at - from.at;
        }
        Motion { at, speed }
    }

    /// Where the work of a step went. Each part is worked out by itself, so that
    /// their sum is a check.
    fn account(&mut self, from: Motion, to: Motion, power: f64) {
        let way = to.at - from.at;
        let speed = 0.5 * (from.speed + to.speed);
        let middle = from.at + 0.5 * way;
        let held = self
            .machine
            .resistance(speed, incline(self.road.grade(middle)), &self.air);
        self.energy.air += held.air * way;
        self.energy.rolling += held.rolling * way;
        let push = |speed| physics::push(&self.machine, power, speed);
        let pushed = (push(from.speed) + 4.0 * push(speed) + push(to.speed)) / 6.0;
        self.energy.pedalled += pushed * way;
        // What neither legs nor resistance explain is brakes or walking.
        let risen = self.road.height(to.at) - self.road.height(from.at);
        let lifted = self.machine.mass * physics::GRAVITY * risen;
        let sped = self.moving_energy(to.speed) - self.moving_energy(from.speed);
        let left = (pushed - held.air - held.rolling) * way - lifted - sped;
        if self.slows_down() {
            self.energy.braked += left.max(0.0);
        } else if to.speed <= WALK {
            self.energy.pedalled += (-left).max(0.0);
        }
    }
}
