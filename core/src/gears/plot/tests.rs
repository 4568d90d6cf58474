//! Plots as people would look at them.

use proptest::prelude::*;

use super::*;
use crate::catalogue::{TemplateId, template};
use crate::edit::{BikeEdit, Edit, GearEdit, PlanEdit};
use crate::shift_plan::ShiftPlanKind;

fn ladder() -> Plan {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let ladder = PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder);
    plan.apply(&Edit::Plan(ladder)).expect("a ladder")
}

fn plot(plan: &Plan, quantity: Quantity) -> GearPlot {
    let options = PlotOptions {
        quantity,
        ..PlotOptions::default()
    };
    GearPlot::of(plan, options).expect("teeth are entered")
}

#[test]
fn a_gear_twice_as_hard_lies_as_far_on_everywhere() {
    let plot = plot(&ladder(), Quantity::Ratio);
    let x = |ring, cog| {
        let found = plot.marks.iter().find(|m| m.gear == Gear::new(ring, cog));
        found.expect("every gear has a mark").at.0
    };
    // 34 and 17, 30 and 15, 24 and 12 teeth.
    let far = x(0, 6) - x(0, 0);
    assert!(far > 0.0);
    for ring in 0..2 {
        for (from, to) in [(0, 6), (1, 7), (3, 10)] {
            let off = x(ring, to) - x(ring, from) - far;
            assert!(off.abs() < 1e-6, "{ring} {from} {to}: {off}");
        }
    }
}

#[test]
fn marks_say_what_they_are() {
    let forbidden = GearEdit::Forbid(Gear::new(1, 0), true);
    let plan = ladder()
        .apply(&Edit::Gears(forbidden))
        .expect("it can be forbidden");
    let plot = plot(&plan, Quantity::Speed);
    let mark = |gear| plot.marks.iter().find(|m| m.gear == gear).expect("a mark");
    let closed = mark(Gear::new(1, 0));
    assert_eq!(closed.shape, MarkShape::Forbidden);
    assert_eq!(
        closed.words,
        "50×34, ratio 1.47, 39 gear inches, development 3.13 m, 11.3 to 16.9 km/h, forbidden, chain runs crossed"
    );
    let (low, high) = closed.band.expect("speeds are a band");
    assert!(low < closed.at.0 && closed.at.0 < high);
    let shapes: Vec<MarkShape> = plot.marks.iter().map(|m| m.shape).collect();
    for shape in MarkShape::ALL {
        assert!(shapes.contains(shape), "{shape}");
    }
    assert!(plot.marks.iter().any(|m| m.duplicate));
    assert_eq!(plot.crossovers.len(), 2);
    assert_eq!(
        plot.crossovers[0].words,
        "up: 34×15 to 50×19, 2 cogs, a step of 16 %, cadence -14 %, 0.8 s"
    );
}

#[test]
fn a_wide_picture_has_more_ticks_and_none_meet() {
    let ticks = |width| {
        let options = PlotOptions {
            width,
            ..PlotOptions::default()
        };
        GearPlot::of(&ladder(), options).expect("teeth").axis.ticks
    };
    assert!(ticks(320.0).len() < ticks(1200.0).len());
    let labels: Vec<String> = ticks(720.0).into_iter().map(|t| t.label).collect();
    assert_eq!(
        labels,
        ["1", "1.2", "1.5", "2", "2.5", "3", "3.5", "4", "4.5"]
    );
}

#[test]
fn handles_lie_between_the_rows_a_target_apart() {
    for width in [280.0, 720.0] {
        let options = PlotOptions {
            width,
            ..PlotOptions::default()
        };
        let plot = GearPlot::of(&ladder(), options).expect("teeth");
        let (top, bottom) = (plot.rows[0].y, plot.rows[1].y);
        let [up, down] = &plot.crossovers[..] else {
            panic!("two crossovers");
        };
        for line in [up, down] {
            assert!(top < line.handle.1 && line.handle.1 < bottom, "{line:?}");
        }
        let apart = (up.handle.1 - down.handle.1).abs();
        assert!(apart >= 44.0, "{apart}");
    }
}

#[test]
fn teeth_stand_where_there_is_room_and_the_graduation_is_even() {
    let options = PlotOptions {
        width: 280.0,
        ..PlotOptions::default()
    };
    let plot = GearPlot::of(&ladder(), options).expect("teeth");
    let row = plot.marks.iter().filter(|mark| mark.gear.ring == 1);
    let labelled: Vec<f64> = row
        .filter(|mark| mark.label_foot.is_some())
        .map(|mark| mark.at.0)
        .collect();
    assert!(labelled.len() >= 4, "{labelled:?}");
    assert!(labelled.windows(2).all(|pair| pair[1] - pair[0] >= 16.9));
    assert!(
        plot.axis
            .fine
            .windows(2)
            .all(|pair| pair[1] - pair[0] >= 4.9)
    );
}

#[test]
fn cadences_that_are_no_band_are_refused_in_a_sentence() {
    let band = |from, to| CadenceBand {
        from: Rpm(from),
        to: Rpm(to),
    };
    assert_eq!(
        band(60.0, 90.0).checked().map(CadenceBand::middle),
        Ok(Rpm(75.0))
    );
    assert_eq!(
        band(90.0, 60.0).checked().map_err(|e| e.to_string()),
        Err(
            "Cadences of 90 rpm to 60 rpm are no band. Enter 20 to 150 rpm, the slower first."
                .into()
        )
    );
    for (from, to) in [(0.0, 90.0), (60.0, 1e9), (f64::NAN, 90.0)] {
        assert!(band(from, to).checked().is_err());
    }
}

#[test]
fn steps_and_table_say_the_same_as_the_plot() {
    let plan = ladder();
    let steps = StepPlot::of(&plan, PlotOptions::default()).expect("teeth");
    let table = GearTable::of(&plan, CadenceBand::default()).expect("teeth");
    assert_eq!(steps.bars.iter().filter(|bar| bar.front).count(), 1);
    assert!(steps.bars.iter().all(|bar| !bar.wide));
    assert_eq!(table.rows.len(), 24);
    for row in &table.rows {
        assert_eq!(row.cells.len(), table.heads.len());
    }
    for bar in &steps.bars {
        let row = table
            .rows
            .iter()
            .find(|row| row.gear == bar.to)
            .expect("a row");
        assert_eq!(row.cells[0], bar.label);
        assert_eq!(row.cells[7], format!("{:.0}", bar.step.0));
    }
}

#[test]
fn without_teeth_there_is_nothing_to_draw() {
    let plan = ladder()
        .apply(&Edit::Bike(BikeEdit::Rings(3)))
        .expect("three rings");
    assert!(GearPlot::of(&plan, PlotOptions::default()).is_err());
}

proptest! {
    #[test]
    fn any_plan_is_drawn_within_its_picture(plan in crate::testing::plan()) {
        for quantity in Quantity::ALL {
            let options = PlotOptions { quantity: *quantity, ..PlotOptions::default() };
            let Ok(plot) = GearPlot::of(&plan, options) else { continue };
            for mark in &plot.marks {
                prop_assert!(mark.at.0 >= 0.0 && mark.at.0 <= plot.size.0, "{:?}", mark);
                prop_assert!(mark.at.1 >= 0.0 && mark.at.1 <= plot.size.1, "{:?}", mark);
            }
            let steps = StepPlot::of(&plan, options).expect("teeth are entered");
            for bar in &steps.bars {
                prop_assert!(bar.top >= 0.0 && bar.top <= steps.ground, "{:?}", bar);
            }
        }
    }
}
