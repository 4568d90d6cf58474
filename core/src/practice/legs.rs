//! How the bike rolls while practising: the power balance of rides, in small
//! steps of time.

use crate::gears::Kmh;
use crate::ride::habits::{Habit, Habits};
use crate::ride::physics::{Air, Machine, Motion, push, step};

use super::Gearing;
use super::course::Course;

/// The step of time, in seconds.
pub const STEP: f64 = 1.0 / 60.0;

/// Slowest while the road moves, in m/s (our judgement: below it a bike falls
/// over).
const SLOWEST: f64 = 1.4;

/// How firmly the brakes slow down, in m/s² (our judgement: half of what a dry
/// road holds).
const BRAKING: f64 = 2.5;

/// Up to this speed in m/s the rider pushes twice as hard, to get going (our
/// judgement).
const SETTING_OFF: f64 = 3.0;

/// Slopes below this are climbs, which riders push harder on.
const CLIMB: f64 = 0.02;

/// Rider and bike.
#[derive(Debug, Clone, PartialEq)]
pub struct Legs {
    machine: Machine,
    air: Air,
    level: f64,
    climb: f64,
    fastest: f64,
    band: (f64, f64),
}

impl Legs {
    /// As the rider rides.
    pub fn of(habits: &Habits) -> Legs {
        Legs {
            machine: habits.machine(),
            air: habits.air(),
            level: habits.get(Habit::LevelPower),
            climb: habits.get(Habit::ClimbPower),
            fastest: habits.get(Habit::DescentSpeed) / 3.6,
            band: habits.band(),
        }
    }

    /// Where it begins: at the speed of the level road.
    pub fn start(&self) -> Motion {
        Motion {
            at: 0.0,
            speed: self.machine.steady_speed(self.level, 0.0, &self.air),
        }
    }

    /// One step of time.
    pub fn roll(
        &self,
        from: Motion,
        course: &Course,
        gearing: Option<&Gearing>,
        brakes: bool,
    ) -> Motion {
        if brakes {
            let speed = (from.speed - BRAKING * STEP).max(0.0);
            return Motion {
                at: from.at + 0.5 * (from.speed + speed) * STEP,
                speed,
            };
        }
        let power = self.power(from, course, gearing);
        let mut to = step(from, STEP, self.machine.moved_mass(), |motion| {
            let held = self
                .machine
                .resistance(motion.speed, course.grade(motion.at), &self.air);
            push(&self.machine, power, motion.speed) - held.sum()
        });
        to.speed = to.speed.clamp(SLOWEST, self.fastest.max(SLOWEST));
        to
    }

    /// The power now, in watts: more on a climb, less where the legs turn far
    /// outside their band in this gear, none where they cannot follow.
    fn power(&self, motion: Motion, course: &Course, gearing: Option<&Gearing>) -> f64 {
        let usual = match course.grade(motion.at) {
            grade if grade > CLIMB => self.climb,
            _ => self.level,
        };
        if motion.speed < SETTING_OFF {
            return 2.0 * usual;
        }
        let cadence = gearing.and_then(|gearing| gearing.cadence(Kmh(motion.speed * 3.6)));
        let Some(cadence) = cadence.map(|rpm| rpm.0) else {
            return usual;
        };
        let (low, high) = self.band;
        let share = match cadence {
            slow if slow < low => slow / low,
            fast if fast > high => (2.0 - fast / high).max(0.0),
            _ => 1.0,
        };
        usual * share
    }
}

#[cfg(test)]
mod tests {
    use super::super::Scene;
    use super::*;

    fn ride(scene: Scene, seconds: f64) -> Motion {
        let legs = Legs::of(&Habits::default());
        let mut course = Course::default();
        course.put(scene, 0.0);
        let mut motion = legs.start();
        for _ in 0..(seconds / STEP) as u32 {
            motion = legs.roll(motion, &course, None, false);
        }
        motion
    }

    #[test]
    fn hills_slow_down_and_crests_speed_up() {
        let level = ride(Scene::Flat, 8.0);
        assert!(ride(Scene::Hill, 8.0).speed < level.speed - 0.5);
        assert!(ride(Scene::Crest, 8.0).speed > level.speed + 0.5);
        assert!((level.speed - Legs::of(&Habits::default()).start().speed).abs() < 1e-3);
    }

    #[test]
    fn brakes_stop_it() {
        let legs = Legs::of(&Habits::default());
        let mut motion = legs.start();
        let speed = motion.speed;
        for _ in 0..240 {
            motion = legs.roll(motion, &Course::default(), None, true);
        }
        assert_eq!(motion.speed, 0.0);
        // v² / 2a: elementary mechanics.
        assert!((motion.at - speed * speed / (2.0 * BRAKING)).abs() < 0.05);
    }
}
