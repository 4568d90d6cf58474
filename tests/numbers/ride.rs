//! What a ride costs: 100 km over our own rolling road with presses and all, beside the crate
//! `ode_solvers` on the bare equations of motion; how time grows with distance; a large track.

use std::fmt::Write;
use std::hint::black_box;
use std::sync::Arc;
use std::time::Instant;

use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::plan::Plan;
use leverwright_core::ride::gearbox::Gearbox;
use leverwright_core::ride::grasp::Grasp;
use leverwright_core::ride::habits::{Conditions, Habits};
use leverwright_core::ride::physics::{self, Motion, STILL_AIR};
use leverwright_core::ride::road::{Road, RoadKind};
use leverwright_core::ride::simulation::{Inputs, MOST_EVENTS, MOST_TRACE, Ride, Simulation};
use leverwright_core::ride::study::{Study, Subject};
use leverwright_core::ride::track::TrackReader;
use leverwright_core::rider::Day;
use leverwright_tests::number::{Number, quantile};
use ode_solvers::{Dopri5, System, Vector2};

const RUNS: usize = 15;

fn main() {
    let plan = template(TemplateId::RoadPlain).plan("Numbers");
    let hundred = inputs(&plan, 100);
    let own = median_time(|| drop(black_box(ridden(&hundred))));
    let seconds = ridden(&hundred).seconds;
    let general = median_time(|| black_box(general(&hundred.road, seconds)));
    report(
        "a ride of 100 km at half a second",
        own,
        Some(20.0),
        &format!(
            "{:.2} of a general solver on its bare motion, {general:.1} ms for {:.1} h",
            own / general,
            seconds / 3600.0
        ),
    );
    growth(&plan);
    study(&plan);
    track();
}

fn report(name: &str, value: f64, limit: Option<f64>, against: &str) {
    Number {
        name,
        value,
        unit: "ms",
        limit,
        against,
    }
    .report();
}

/// So many kilometres of the rolling road, which is 30 km long.
fn inputs(plan: &Plan, km: usize) -> Inputs {
    let rolling = Road::built_in(RoadKind::Rolling);
    let ten = Road::new(
        "10 km".into(),
        10_000.0,
        &(0..=1000)
            .map(|n| rolling.height(f64::from(n) * 10.0))
            .collect::<Vec<_>>(),
        (0..=1000).map(|n| rolling.bend(n)).collect(),
        rolling
            .stops()
            .iter()
            .copied()
            .filter(|stop| stop.at < 10_000.0)
            .collect(),
    );
    // 1,000 km have more heights than a road holds at 10 m.
    let ten = ten.expect("it is a road");
    let road = if km > 400 { coarse(&ten) } else { ten };
    Inputs {
        road: Arc::new(road.repeated(km / 10).expect("it is not too long")),
        gearbox: Arc::new(Gearbox::of(plan).expect("the template has gears")),
        grasp: Arc::new(Grasp::of(plan, plan.layout(), Day::Usual)),
        habits: Habits::default(),
        conditions: Conditions::AS_TOLD,
    }
}

fn coarse(road: &Road) -> Road {
    let heights: Vec<f64> = (0..=250)
        .map(|n| road.height(f64::from(n) * 40.0))
        .collect();
    let bends = (0..=250).map(|n| road.bend(n * 4)).collect();
    let coarse = Road::new(
        road.name.clone(),
        road.length(),
        &heights,
        bends,
        road.stops().to_vec(),
    );
    coarse.expect("it is a road")
}

fn ridden(inputs: &Inputs) -> Ride {
    let mut simulation = Simulation::new(inputs);
    simulation.step_until(f64::INFINITY);
    simulation.ride()
}

/// The same rider without hands, gears, brakes and stops.
struct Motions<'a>(&'a Road);

impl System<f64, Vector2<f64>> for Motions<'_> {
    fn system(&self, _: f64, y: &Vector2<f64>, dy: &mut Vector2<f64>) {
        let machine = Habits::default().machine();
        let (at, speed) = (y[0], y[1].max(0.0));
        let grade = self.0.grade(at);
        let power = if grade < -0.02 { 0.0 } else { 130.0 };
        let motion = Motion { at, speed };
        let held = machine.resistance(motion.speed, grade, &STILL_AIR).sum();
        dy[0] = motion.speed;
        dy[1] = (physics::push(&machine, power, motion.speed) - held) / machine.moved_mass();
    }
}

fn general(road: &Road, seconds: f64) -> usize {
    let start = Vector2::new(0.0, 0.0);
    let mut solver = Dopri5::new(Motions(road), 0.0, seconds, 1.0, start, 1e-4, 1e-4);
    solver.integrate().expect("the equations are tame");
    solver.results().get().0.len()
}

fn growth(plan: &Plan) {
    let mut before = 0.0;
    for km in [10, 100, 1000] {
        let inputs = inputs(plan, km);
        let time = median_time(|| drop(black_box(ridden(&inputs))));
        let ride = ridden(&inputs);
        assert!(ride.events.len() <= MOST_EVENTS && ride.trace.len() <= MOST_TRACE);
        let against = if before > 0.0 {
            format!(
                "{:.1} times a tenth of it; {} events kept",
                time / before,
                ride.events.len()
            )
        } else {
            format!("{} events kept", ride.events.len())
        };
        report(&format!("a ride of {km} km"), time, None, &against);
        before = time;
    }
}

/// What the app waits for: both days under all conditions.
fn study(plan: &Plan) {
    let inputs = inputs(plan, 100);
    let subject = Subject::layout(plan, plan.current).expect("it is there");
    let run = || {
        let road = Arc::clone(&inputs.road);
        let mut study =
            Study::new(road, inputs.habits, vec![subject.clone()]).expect("it is ridden");
        study.advance(usize::MAX);
        drop(black_box(study.outcomes()));
    };
    let time = median_time(run);
    report(
        "one layout over 100 km, all ranges, both days",
        time,
        None,
        "14 rides",
    );
}

fn track() {
    let mut file = String::from("<gpx><trk><trkseg>");
    for n in 0..200_000 {
        let (along, turn) = (f64::from(n) * 3e-5, f64::from(n) / 300.0);
        let _ = write!(
            file,
            "<trkpt lat=\"{}\" lon=\"{}\"><ele>{:.1}</ele><time>2031-05-09T10:00:00Z</time></trkpt>",
            40.0 + along,
            8.0 + 1e-3 * turn.sin(),
            300.0 + 40.0 * (turn / 9.0).sin()
        );
    }
    file.push_str("</trkseg></trk></gpx>");
    let bytes = file.into_bytes();
    let time = median_time(|| {
        let reader = TrackReader::new(bytes.clone()).expect("it is small enough");
        let imported = reader.finish("").expect("it is a track");
        assert_eq!(imported.points, 200_000);
    });
    let mega = bytes.len() as f64 / 1e6;
    report(
        "a track of 200,000 points read and cleaned",
        time,
        Some(2000.0),
        &format!("{mega:.0} MB of text"),
    );
}

/// Median time of one run, in milliseconds.
fn median_time<T>(run: impl Fn() -> T) -> f64 {
    let time = || {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e3
    };
    let times: Vec<f64> = (0..RUNS).map(|_| time()).collect();
    quantile(&times, 0.5)
}
