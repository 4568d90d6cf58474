//! The integration of a ride against a general solver of differential
//! equations, the crate `ode_solvers` (Dormand and Prince, order 5, with its
//! own choice of steps), on the same equations and roads.

use leverwright_core::ride::physics::{self, Machine, Motion, STEP, STILL_AIR};
use leverwright_core::ride::road::{Road, RoadKind};
use ode_solvers::{Dopri5, System, Vector2};

const TOURING: Machine = Machine {
    mass: 95.0,
    spin: 1.5,
    drag_area: 0.463,
    spokes: 0.0044,
    rolling: 0.0045,
    efficiency: 0.96,
};

/// A steady rider on a road; downhill the rider rolls.
struct Rider<'a> {
    road: &'a Road,
}

impl Rider<'_> {
    fn force(&self, motion: Motion) -> f64 {
        let grade = self.road.grade(motion.at);
        let power = if grade < -0.02 { 0.0 } else { 130.0 };
        let driven = physics::push(&TOURING, power, motion.speed);
        driven - TOURING.resistance(motion.speed, grade, &STILL_AIR).sum()
    }
}

impl System<f64, Vector2<f64>> for Rider<'_> {
    fn system(&self, _: f64, y: &Vector2<f64>, dy: &mut Vector2<f64>) {
        let motion = Motion {
            at: y[0],
            speed: y[1].max(0.0),
        };
        dy[0] = motion.speed;
        dy[1] = self.force(motion) / TOURING.moved_mass();
    }
}

/// Where the rider is after each whole second, by our own steps.
fn own(rider: &Rider<'_>, seconds: usize) -> Vec<Motion> {
    let mut motion = Motion::default();
    let steps = (1.0 / STEP) as usize;
    let mut path = vec![motion];
    for _ in 0..seconds {
        for _ in 0..steps {
            motion = physics::step(motion, STEP, TOURING.moved_mass(), |m| rider.force(m));
        }
        path.push(motion);
    }
    path
}

fn general(rider: Rider<'_>, seconds: usize) -> Vec<Motion> {
    let start = Vector2::new(0.0, 0.0);
    let mut solver = Dopri5::new(rider, 0.0, seconds as f64, 1.0, start, 1e-8, 1e-8);
    solver.integrate().expect("the equations are tame");
    let (_, states) = solver.results().get();
    states
        .iter()
        .map(|y| Motion {
            at: y[0],
            speed: y[1],
        })
        .collect()
}

/// When a path comes past a place, in seconds.
fn time_at(path: &[Motion], at: f64) -> f64 {
    let n = path.iter().position(|m| m.at >= at).expect("it gets there");
    let (before, after) = (path[n - 1].at, path[n].at);
    n as f64 - 1.0 + (at - before) / (after - before)
}

#[test]
fn time_and_distance_stay_within_half_a_percent() {
    for (kind, seconds) in [(RoadKind::Rolling, 4000), (RoadKind::Pass, 6000)] {
        let road = Road::built_in(kind);
        let (own, general) = (
            own(&Rider { road: &road }, seconds),
            general(Rider { road: &road }, seconds),
        );
        for n in (100..=seconds).step_by(100) {
            let off = own[n].at / general[n].at - 1.0;
            assert!(off.abs() < 0.005, "{kind}, distance after {n} s: {off}");
        }
        let end = own[seconds].at.min(general[seconds].at) - 10.0;
        let off = time_at(&own, end) / time_at(&general, end) - 1.0;
        assert!(off.abs() < 0.005, "{kind}, time to {end} m: {off}");
        println!("{kind}: time off by {:.5} %", 100.0 * off);
    }
}
