//! Three riders as fitters know them (a scenario of our own, judged as fitters
//! would: *common practice*), as far as the clash and brake rules look at them.

use super::testing::{Setup, bike, button, lever};
use super::{ALL, Family, findings};
use crate::catalogue::TemplateId;
use crate::cockpit::{
    BarSide, BrakeRun, ControlKind, HandPosition, Joint, Medium, PulledTogether, ThumbWorkKind,
    Wheel, Zone,
};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use crate::finding::{Acceptable, Finding, Severity};
use crate::function::Function::{FrontToggle, RearEasier, RearHarder, RungDown, RungUp};
use crate::plan::Plan;
use crate::rider::{Ability, Answer, Difficulty, HandPlace, Side, Use, YesNo, digits};
use crate::shift_plan::ShiftPlanKind;
use crate::vocabulary::Vocabulary;

/// The right hand rests on the hood and does nothing; the left one does all,
/// with a ladder on the left lever, which brakes both wheels.
fn case_a() -> Setup {
    let setup = bike(TemplateId::RoadPods)
        .hand_does_nothing(Side::Right, HandPlace::Rests)
        .rides(HandPosition::Hoods, Use::Mostly)
        .rides(HandPosition::Drops, Use::Sometimes)
        .edit(&Edit::Layout(LayoutEdit::Clear))
        .edit(&Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)));
    let left = lever(&setup, Side::Left);
    let sprint = button(&setup, "right sprint button").control;
    setup
        .tap("left outer paddle", Some(RungDown))
        .tap("left inner paddle", Some(RungUp))
        .tap("left hood button", Some(FrontToggle))
        .bike_edit(BikeEdit::Connect(sprint, false))
        .all_brakes_on(left)
}

/// The left hand is off the bar; the right one does all, with a dual-pull lever.
fn case_b() -> Setup {
    let setup = bike(TemplateId::FlatSingle).hand_does_nothing(Side::Left, HandPlace::OffBar);
    let right = lever(&setup, Side::Right);
    setup
        .bike_edit(BikeEdit::PutThumbWork(ThumbWorkKind::Bell, BarSide::Right))
        .all_brakes_on(right)
}

/// Both hands brake with effort and press with the index and middle finger.
fn case_c() -> Setup {
    let mut setup = bike(TemplateId::Gravel)
        .rides(HandPosition::Hoods, Use::Mostly)
        .rides(HandPosition::Drops, Use::Sometimes);
    for side in Side::ALL {
        for (contact, step) in digits().zip([3, 1, 1, 2, 3]) {
            let step = Answer::of(Difficulty::from_number(step).expect("a step"));
            setup = setup.rider_edit(RiderEdit::Contact(*side, contact, step));
        }
        setup = setup
            .ability(*side, Ability::BrakesHard, Difficulty::Moderate)
            .ability(*side, Ability::KeepsPressed, Difficulty::Severe)
            .tap(&format!("{side} outer paddle"), Some(RearEasier))
            .tap(&format!("{side} inner paddle"), Some(RearHarder));
    }
    setup
}

/// The clash and brake rules that speak, with how much they weigh.
fn spoken(plan: &Plan) -> Vec<Finding> {
    let ours = |id| {
        let rule = ALL.iter().find(|rule| rule.id == id);
        rule.is_some_and(|r| matches!(r.family, Family::Clash | Family::Brake))
    };
    let found = findings(plan).into_iter();
    found.filter(|finding| ours(finding.rule)).collect()
}

fn says(plan: &Plan, rule: &str, severity: Severity) -> bool {
    let mut found = spoken(plan).into_iter();
    found.any(|finding| finding.rule == rule && finding.severity == severity)
}

fn speaks(plan: &Plan, rule: &str) -> bool {
    spoken(plan).iter().any(|finding| finding.rule == rule)
}

#[test]
fn a_one_lever_with_a_splitter_is_asked_about_and_nothing_must_be_fixed() {
    let plan = case_a().plan();
    assert!(says(&plan, "one-joint-for-front-and-rear", Severity::Check));
    assert!(says(&plan, "front-and-rear-on-one-lever", Severity::Check));
    assert!(!speaks(&plan, "brakes-not-pulled-together"));
    let must = |f: &Finding| f.severity == Severity::MustFix;
    assert_eq!(spoken(&plan).into_iter().find(must), None);
}

#[test]
fn a_tops_in_use_take_the_brakes_out_of_reach() {
    let plan = case_a().rides(HandPosition::Tops, Use::Sometimes).plan();
    let found = spoken(&plan).into_iter();
    let from_tops: Vec<Finding> = found.filter(|f| f.rule == "brake-out-of-reach").collect();
    assert_eq!(from_tops.len(), 2, "both wheels");
    for finding in from_tops {
        assert_eq!(finding.severity, Severity::MustFix);
        assert_eq!(finding.acceptable, Acceptable::Never);
    }
}

#[test]
fn b_a_dual_pull_lever_is_one_lever_but_not_one_circuit() {
    let plan = case_b().plan();
    assert!(says(&plan, "front-and-rear-on-one-lever", Severity::Check));
    assert!(!speaks(&plan, "one-joint-for-front-and-rear"));
    let must = |f: &Finding| f.severity == Severity::MustFix;
    assert_eq!(spoken(&plan).into_iter().find(must), None);
}

#[test]
fn b_a_second_lever_that_one_hand_cannot_pull_along_must_be_fixed() {
    let setup = case_b();
    let first = lever(&setup, Side::Right);
    let setup = setup.bike_edit(BikeEdit::Add(
        ControlKind::BrakeLever,
        Side::Right,
        Zone::Grip,
    ));
    let second = setup.plan_so_far().bike.controls.last();
    let second = second.expect("just added").id;
    let run = |lever, wheel| {
        BrakeEdit::SetRun(BrakeRun {
            lever,
            medium: Medium::Cable,
            joint: Joint::Direct,
            throw_tested: Answer::NOT_ASKED,
            wheels: vec![wheel],
        })
    };
    let plan = setup
        .brake_edit(run(first, Wheel::Rear))
        .brake_edit(run(second, Wheel::Front))
        .brake_edit(BrakeEdit::Together(PulledTogether {
            hand: Side::Right,
            first,
            second,
            tried: Answer::of(YesNo::No),
        }))
        .plan();
    assert!(says(&plan, "brakes-not-pulled-together", Severity::MustFix));
    assert!(!speaks(&plan, "front-and-rear-on-one-lever"));
}

#[test]
fn b_an_untested_throw_must_be_fixed() {
    let setup = case_b();
    let right = lever(&setup, Side::Right);
    let untested = BrakeEdit::ThrowTested(right, Answer::NOT_ASKED);
    let plan = setup.brake_edit(untested).plan();
    assert!(says(&plan, "brake-throw-untested", Severity::MustFix));
}

#[test]
fn c_effort_at_the_brake_is_a_check_and_nothing_clashes() {
    let plan = case_c().plan();
    assert!(says(&plan, "brake-grip-takes-effort", Severity::Check));
    assert!(!speaks(&plan, "front-and-rear-on-one-lever"));
    let family = |id: &str| ALL.iter().find(|r| r.id == id).map(|r| r.family);
    let clashes = spoken(&plan).into_iter();
    let mut clashes = clashes.filter(|f| family(f.rule) == Some(Family::Clash));
    assert_eq!(clashes.next(), None);
}
