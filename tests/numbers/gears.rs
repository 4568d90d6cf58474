//! What working out the best ladder costs, how it grows, and what a general graph search takes for
//! the same; what the Gears screen asks after each edit.

use std::hint::black_box;
use std::time::Instant;

use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::gears::plot::{CadenceBand, GearPlot, GearTable, PlotOptions, StepPlot};
use leverwright_core::gears::{Demand, Ladder, LadderGoal, LadderSettings};
use leverwright_core::shift_plan::ShiftPlanKind;
use leverwright_tests::ladder::Bike;
use leverwright_tests::number::{Number, quantile};

const RUNS: usize = 300;
/// Cogs from the smallest; a cassette takes the first of them.
const COGS: [u64; 14] = [10, 11, 12, 13, 14, 15, 17, 19, 21, 24, 28, 32, 36, 42];
/// Rings from the smallest; a crankset takes the last of them.
const RINGS: [u64; 3] = [26, 36, 48];

fn main() {
    for rings in 1..=3 {
        for cogs in [8, 10, 12, 14] {
            report(rings, cogs);
        }
    }
    report_screen();
}

fn report(rings: usize, cogs: usize) {
    let mut cassette = COGS[..cogs].to_vec();
    cassette.reverse();
    let bike = Bike {
        rings: RINGS[3 - rings..].to_vec(),
        cogs: cassette,
        goal: LadderGoal::Even,
        forbidden: Vec::new(),
    };
    let (gears, settings) = (bike.gears(), LadderSettings::default());
    let own = median_time(RUNS, || {
        black_box(Ladder::of(black_box(&gears), &settings).is_ok());
    });
    let general = median_time(30, || {
        black_box(bike.best_by_graph().is_some());
    });
    Number {
        name: &format!("best ladder, {rings}x{cogs}"),
        value: own / 1000.0,
        unit: "ms",
        limit: Some(2.0),
        against: &format!(
            "{:.3} of a general graph search, {:.2} ms",
            own / general,
            general / 1000.0
        ),
    }
    .report();
}

/// Everything that the Gears screen derives after an edit.
fn report_screen() {
    let plan = template(TemplateId::RoadPods).plan("Numbers");
    let ladder = PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder);
    let plan = plan
        .apply(&Edit::Plan(ladder))
        .expect("two rings take a ladder");
    let options = PlotOptions::default();
    let plots = median_time(RUNS, || {
        black_box(GearPlot::of(&plan, options).is_ok());
        black_box(StepPlot::of(&plan, options).is_ok());
        black_box(GearTable::of(&plan, CadenceBand::default()).is_ok());
    });
    let all = median_time(RUNS, || {
        black_box(Demand::side_by_side(&plan));
    });
    Number {
        name: "both plots and the table of 2x12",
        value: plots / 1000.0,
        unit: "ms",
        limit: None,
        against: &format!(
            "{:.2} of all shift plans side by side, {:.2} ms",
            plots / all,
            all / 1000.0
        ),
    }
    .report();
}

/// Median time of one run, in microseconds.
fn median_time(runs: usize, run: impl Fn()) -> f64 {
    let time = || {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e6
    };
    let times: Vec<f64> = (0..runs).map(|_| time()).collect();
    quantile(&times, 0.5)
}
