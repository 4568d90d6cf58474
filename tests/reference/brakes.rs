//! Brake and lever rules against published clauses.

use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::{
    Bar, BarKind, BarSide, BrakeRun, ControlId, Ease, HandPosition, Joint, Wheel,
};
use leverwright_core::coverage::{BrakeCell, WhyNot};
use leverwright_core::edit::{BikeEdit, BrakeEdit, Edit, EditError, RiderEdit};
use leverwright_core::finding::{Acceptable, Finding, Severity};
use leverwright_core::plan::Plan;
use leverwright_core::rider::{Answer, Day, Hand, HandPlace, Side, Use};
use leverwright_core::rules::{Origin, findings, rule};
use leverwright_core::situation::Situation;
use leverwright_core::units::Mm;

/// A template ridden with both hands, no difficulty with anything.
fn two_able_hands(id: TemplateId) -> Plan {
    let mut plan = template(id).plan("Reference");
    plan.rider.hands.left = Hand::does_all(None);
    plan.rider.hands.right = Hand::does_all(None);
    plan
}

fn with(plan: &Plan, edit: &Edit) -> Plan {
    plan.apply(edit).expect("the edit is possible")
}

fn said(plan: &Plan, id: &str) -> Vec<Finding> {
    assert!(rule(id).is_some(), "no rule is called {id}");
    let found = findings(plan).into_iter();
    found.filter(|finding| finding.rule == id).collect()
}

fn lever(plan: &Plan, side: Side) -> ControlId {
    let mut controls = plan.bike.controls.iter();
    let found = controls.find(|c| c.has_blade() && c.side == BarSide::from(side));
    found.expect("there is a lever on that side").id
}

fn has_two_levers(id: TemplateId) -> bool {
    !matches!(
        id,
        TemplateId::SingleSidedLeft | TemplateId::SingleSidedRight
    )
}

/// ISO 4210-2 cl. 4.6.1 (seen in TBIS 4210-2:2018): a bicycle has two
/// independently actuated braking systems, one acting on the front wheel and one
/// on the rear wheel.
#[test]
fn front_and_rear_are_braked_independently_or_a_rule_says_so() {
    for id in TemplateId::ALL.iter().copied() {
        let plan = two_able_hands(id);
        let independent = has_two_levers(id);
        let shared = said(&plan, "front-and-rear-on-one-lever");
        assert_eq!(shared.is_empty(), independent, "{id}");
        assert!(said(&plan, "wheel-brake-without-lever").is_empty(), "{id}");

        for brake in &plan.bike.brakes.wheels {
            let mut without = plan.clone();
            without
                .bike
                .brakes
                .runs
                .retain(|run| !run.wheels.contains(&brake.wheel));
            let found = said(&without, "wheel-brake-without-lever");
            assert!(!found.is_empty(), "{id}: {}", brake.wheel);
            for finding in found {
                assert_eq!(finding.severity, Severity::MustFix);
                assert_eq!(finding.acceptable, Acceptable::Never);
            }
        }
    }
}

/// The same clause: a bicycle with no brake at one end.
#[test]
fn a_bicycle_without_a_brake_at_one_end_must_be_fixed() {
    for wheel in [Wheel::Front, Wheel::Rear] {
        let mut plan = two_able_hands(TemplateId::RoadPlain);
        let left = lever(&plan, Side::Left);
        plan.bike.brakes.wheels.retain(|brake| brake.wheel != wheel);
        plan = with(&plan, &Edit::Brakes(BrakeEdit::AllOnLever(left)));
        let found = said(&plan, "wheel-brake-without-lever");
        assert_eq!(found.len(), 1, "{wheel}");
        assert_eq!(found[0].acceptable, Acceptable::Never);
    }
}

/// SI 1983/1176 reg. 7, Great Britain (seen in translation): two independent
/// systems, front and rear, so one lever for both counts only as an extra. 16 CFR
/// 1512.5(b) (memory) lets one lever pull both. The advice is therefore to ask,
/// and neither word of the law is used.
#[test]
fn one_lever_for_both_brakes_is_advice_by_place() {
    for id in TemplateId::ALL.iter().copied() {
        let plan = two_able_hands(id);
        let left_or_only = plan.bike.controls.iter().find(|c| c.has_blade());
        let lever = left_or_only.expect("a lever").id;
        let plan = with(&plan, &Edit::Brakes(BrakeEdit::AllOnLever(lever)));
        let found = said(&plan, "front-and-rear-on-one-lever");
        assert_eq!(found.len(), 1, "{id}");
        assert_eq!(found[0].severity, Severity::Check);
        assert!(found[0].message.contains("ask"));
        assert!(!found[0].message.contains("legal"));
    }
}

/// TBIS 15194:2019 cl. 4.3.5.1 and TBIS 79010:2019 cl. 4.2.1 (seen): no hand
/// leaves the bar to brake. Whatever position is used and whoever rides, a wheel
/// whose brake asks a hand to let go has its finding.
#[test]
fn a_hand_that_must_leave_the_bar_to_brake_is_always_reported() {
    let mut let_go = 0;
    for id in TemplateId::ALL.iter().copied() {
        for idle in [None, Some(Side::Left), Some(Side::Right)] {
            let mut plan = two_able_hands(id);
            for position in plan.bike.bar.kind.positions() {
                let used = RiderEdit::Position(*position, Answer::of(Use::Sometimes));
                plan = with(&plan, &Edit::Rider(used));
            }
            if let Some(side) = idle {
                plan.rider.hands.get_mut(side).place = Answer::of(HandPlace::Rests);
            }
            let reported = said(&plan, "brake-out-of-reach").len();
            let coverage = Situation::of(&plan).coverage;
            let cells = coverage.brakes.iter().flat_map(|row| {
                let usual = coverage.columns().zip(&row.cells);
                usual
                    .filter(|((_, day), _)| *day == Day::Usual)
                    .map(|(_, cell)| cell)
            });
            let out_of_reach = cells.filter(|cell| cell.reached().is_none()).count();
            assert_eq!(reported, out_of_reach, "{id}, idle {idle:?}");
            let_go += out_of_reach;
        }
    }
    assert!(let_go > 0, "the check looked at nothing");
}

/// The same clauses, for one hand that would have to cross over.
#[test]
fn crossing_over_to_brake_is_out_of_reach() {
    let mut plan = two_able_hands(TemplateId::FlatSingle);
    plan.rider.hands.right.place = Answer::of(HandPlace::Rests);
    let coverage = Situation::of(&plan).coverage;
    let rear = coverage.brake_cell(Wheel::Rear, HandPosition::Grip, Day::Usual);
    let idle = BrakeCell::No(WhyNot::UnderIdleHand(Side::Right));
    assert_eq!(rear, Some(&idle), "no credit for the left hand");
    let lever = coverage.levers.iter().find_map(|row| {
        let column = coverage.column(HandPosition::Grip, Day::Usual)?;
        match row.by_hand(Side::Left, column) {
            BrakeCell::ByLettingGo(pull) => Some(pull.ease),
            _ => None,
        }
    });
    assert_eq!(lever, Some(Ease::CrossOver), "though it could cross over");
    let found = said(&plan, "brake-out-of-reach");
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].acceptable, Acceptable::Never);
}

/// 16 CFR 1512.5(b)(2), 2011 edition (seen): levers are readily accessible in
/// the normal riding position, which 1512.2(f) defines with both hands on the
/// grips. The extensions of an aero bar are not that position.
#[test]
fn levers_are_accessible_with_both_hands_on_the_grips() {
    for id in TemplateId::ALL
        .iter()
        .copied()
        .filter(|id| has_two_levers(*id))
    {
        let plan = two_able_hands(id);
        let coverage = Situation::of(&plan).coverage;
        for row in &coverage.brakes {
            for ((position, _), cell) in coverage.columns().zip(&row.cells) {
                let reached = cell.reached().is_some();
                let grips = position != HandPosition::Extensions;
                assert_eq!(reached, grips, "{id}: {} from the {position}", row.wheel);
            }
        }
    }
}

/// 16 CFR 1512.5(b) (memory): the rear brake is pulled on the right and the front
/// brake on the left. ISO 4210-2 cl. 4.6.2.1 (seen): by law or custom of the
/// country of sale, so a rider who expects otherwise is asked about.
#[test]
fn templates_start_with_the_front_brake_on_the_left() {
    for id in TemplateId::ALL
        .iter()
        .copied()
        .filter(|id| has_two_levers(*id))
    {
        let plan = two_able_hands(id);
        for run in &plan.bike.brakes.runs {
            let side = plan.bike.control(run.lever).expect("its lever").side;
            let front = run.wheels.iter().any(|wheel| wheel.is_front());
            assert_eq!(side == BarSide::Left, front, "{id}");
        }
        for (habit, asked) in [(Side::Left, false), (Side::Right, true)] {
            let habit = Edit::Rider(RiderEdit::FrontBrakeHabit(Answer::of(habit)));
            let found = said(&with(&plan, &habit), "front-brake-side-changed");
            assert_eq!(!found.is_empty(), asked, "{id}");
        }
    }
}

/// ISO 4210-2 cl. 4.6.2.2 (memory): grip dimension at most 90 mm. 16 CFR
/// 1512.5(b)(3) (seen) says 89 mm, measured from the pivot to the middle of the
/// lever, another way of measuring a like length.
#[test]
fn a_blade_beyond_the_grip_dimension_is_a_check() {
    let plan = two_able_hands(TemplateId::FlatSingle);
    let left = lever(&plan, Side::Left);
    for (mm, found) in [(89.0, 0), (90.0, 0), (90.5, 1), (120.0, 1)] {
        let reach = Edit::Bike(BikeEdit::BladeReach(left, Some(Mm(mm))));
        let said = said(&with(&plan, &reach), "blade-far-from-bar");
        assert_eq!(said.len(), found, "{mm} mm");
        assert!(said.iter().all(|f| f.severity == Severity::Check));
    }
    let origin = rule("blade-far-from-bar").map(|rule| rule.origin);
    let Some(Origin::Published(source)) = origin else {
        panic!("the rule names its source");
    };
    assert!(source.contains("memory"), "a recalled value says so");
}

/// ISO 4210-2 cl. 4.7.1 (seen in TBIS 4210-2:2018): handlebar width from 350 to
/// 1000 mm.
#[test]
fn bars_are_as_wide_as_handlebars_may_be() {
    let plan = two_able_hands(TemplateId::FlatSingle);
    let wide = |mm| {
        let bar = Bar {
            width: Mm(mm),
            ..plan.bike.bar
        };
        plan.apply(&Edit::Bike(BikeEdit::BarMeasures(bar)))
    };
    for mm in [350.0, 1000.0] {
        assert_eq!(wide(mm).map(|plan| plan.bike.bar.width), Ok(Mm(mm)));
    }
    for mm in [349.9, 1000.1] {
        let refused = wide(mm);
        assert!(matches!(refused, Err(EditError::OutOfRange { .. })), "{mm}");
    }
    for kind in BarKind::ALL {
        let width = Bar::usual(*kind).width.0;
        assert!((350.0..=1000.0).contains(&width), "{kind}");
    }
}

/// ISO 4210-2 cl. 4.6.1 again: what makes one lever two systems is that nothing
/// shared loses both. A lever with a cable to each brake shares no line.
#[test]
fn one_line_to_both_brakes_is_told_from_two() {
    for (joint, shares) in [
        (Joint::DualPull, false),
        (Joint::CableDoubler, true),
        (Joint::HoseSplitter, true),
    ] {
        let plan = two_able_hands(TemplateId::FlatSingle);
        let run = &plan.bike.brakes.runs[0];
        let both = BrakeRun {
            joint,
            wheels: vec![Wheel::Front, Wheel::Rear],
            ..run.clone()
        };
        let plan = with(&plan, &Edit::Brakes(BrakeEdit::SetRun(both)));
        let found = said(&plan, "one-joint-for-front-and-rear");
        assert_eq!(!found.is_empty(), shares, "{joint}");
    }
}
