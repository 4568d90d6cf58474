//! What the reasoning costs: coverage and all rules over a plan with six layouts, beside one round
//! trip of the same plan through its file.

use std::hint::black_box;
use std::time::Instant;

use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::document;
use leverwright_core::edit::{Edit, PlanEdit, RiderEdit};
use leverwright_core::plan::Plan;
use leverwright_core::rider::{HandPlace, Side};
use leverwright_core::rules;
use leverwright_core::situation::Situation;
use leverwright_core::text::Text;
use leverwright_tests::number::{Number, quantile};

const LAYOUTS: usize = 6;
const RUNS: usize = 300;

fn main() {
    let plan = six_layouts_on_the_largest_cockpit();
    let round_trip = median_time(|| {
        let text = document::write(&plan);
        black_box(document::read(text.as_bytes()).is_ok());
    });
    let reasoning = median_time(|| {
        for layout in &plan.layouts {
            black_box(rules::findings_in(&Situation::of_layout(&plan, layout)));
        }
    });
    let fixes = median_time(|| {
        black_box(rules::findings(&plan));
    });
    Number {
        name: "coverage and all rules, largest cockpit, 6 layouts",
        value: reasoning,
        unit: "µs",
        limit: Some(200.0),
        against: &format!(
            "{:.2} of a round trip of the same plan through its file, {round_trip:.0} µs",
            reasoning / round_trip
        ),
    }
    .report();
    Number {
        name: "findings of one layout, every offered fix tried",
        value: fixes,
        unit: "µs",
        limit: None,
        against: &format!("{:.1} of the six layouts without fixes", fixes / reasoning),
    }
    .report();
}

/// The catalogue's cockpit with the most buttons, under a rider whose right hand rests.
fn six_layouts_on_the_largest_cockpit() -> Plan {
    let largest = TemplateId::ALL
        .iter()
        .max_by_key(|id| template(**id).bike.buttons().len())
        .expect("the catalogue is not empty");
    let mut edits = vec![
        Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
        Edit::Rider(RiderEdit::HandDoesNothing(
            Side::Right,
            HandPlace::Rests,
            None,
        )),
    ];
    edits.extend((2..=LAYOUTS).map(|n| {
        let name = format!("Layout {n}");
        Edit::Plan(PlanEdit::DuplicateLayout(Text::new(&name)))
    }));
    let plan = edits
        .iter()
        .try_fold(template(*largest).plan("Numbers"), |plan, edit| {
            plan.apply(edit)
        })
        .expect("the edits are possible");
    assert_eq!(plan.layouts.len(), LAYOUTS);
    plan
}

/// Median time of one run, in microseconds.
fn median_time(run: impl Fn()) -> f64 {
    let time = || {
        let start = Instant::now();
        run();
        start.elapsed().as_secs_f64() * 1e6
    };
    let times: Vec<f64> = (0..RUNS).map(|_| time()).collect();
    quantile(&times, 0.5)
}
