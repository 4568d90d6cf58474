//! Three riders as fitters know them (a scenario of our own, judged as fitters
//! would: *common practice*), as far as the rules about functions, reach, rest
//! and holds look at them.

use super::testing::{self, Setup, button};
use super::{Family, findings, rule};
use crate::catalogue::TemplateId;
use crate::cockpit::HandPosition::{Drops, Hoods, Tops};
use crate::cockpit::{BarSide, HoldRun, ProfileOrigin, ThumbWorkKind};
use crate::edit::{BikeEdit, Edit, PlanEdit, RideEdit};
use crate::finding::{Finding, Place, Severity};
use crate::function::Function::{
    self, FrontLarger, FrontSmaller, FrontToggle, RearEasier, RearHarder, RungDown, RungUp,
};
use crate::layout::Hold;
use crate::plan::Plan;
use crate::ride::kept::Remembered;
use crate::ride::study::{Pick, Study, Subject};
use crate::rider::{Ability, Contact, Difficulty, HandPlace, Side, Use};
use crate::shift_plan::ShiftPlanKind;
use crate::vocabulary::Vocabulary;

/// A bike whose system was looked up in its manual.
fn bike(id: TemplateId) -> Setup {
    testing::bike(id).system(|system| system.origin = ProfileOrigin::FromManual)
}

/// The right hand rests on the hood and does nothing; the left one does all,
/// with a ladder on the left lever.
fn case_a() -> Setup {
    let setup = bike(TemplateId::RoadPods)
        .hand_does_nothing(Side::Right, HandPlace::Rests)
        .rides(Hoods, Use::Mostly)
        .rides(Drops, Use::Sometimes)
        .rides(Tops, Use::Never)
        .blank()
        .edit(&Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)))
        .tap("left outer paddle", Some(RungDown))
        .tap("left inner paddle", Some(RungUp))
        .tap("left hood button", Some(FrontToggle));
    let sprint = button(&setup, "right sprint button").control;
    setup.edit(&Edit::Bike(BikeEdit::Connect(sprint, false)))
}

/// The left hand is off the bar; the right one does all.
fn case_b() -> Setup {
    bike(TemplateId::FlatSingle)
        .hand_does_nothing(Side::Left, HandPlace::OffBar)
        .edit(&Edit::Bike(BikeEdit::PutThumbWork(
            ThumbWorkKind::Bell,
            BarSide::Right,
        )))
}

/// Both hands press with the index and middle finger rather than the thumb, and
/// do not keep a button pressed with ease.
fn case_c() -> Setup {
    let mut setup = bike(TemplateId::Gravel)
        .rides(Hoods, Use::Mostly)
        .rides(Drops, Use::Sometimes)
        .rides(Tops, Use::Never);
    for side in Side::ALL.iter().copied() {
        for (contact, step) in [
            (Contact::Thumb, Difficulty::Severe),
            (Contact::Index, Difficulty::Mild),
            (Contact::Middle, Difficulty::Mild),
            (Contact::Ring, Difficulty::Moderate),
            (Contact::Little, Difficulty::Severe),
        ] {
            setup = setup.contact(side, contact, step);
        }
        setup = setup
            .ability(side, Ability::BrakesHard, Difficulty::Moderate)
            .ability(side, Ability::KeepsPressed, Difficulty::Severe)
            .tap(&format!("{side} outer paddle"), Some(RearEasier))
            .tap(&format!("{side} inner paddle"), Some(RearHarder));
    }
    setup
}

/// What the rules of these families say, as rule and weight.
fn spoken(plan: &Plan) -> Vec<(&'static str, Severity)> {
    let ours = |finding: &Finding| {
        let family = rule(finding.rule).map(|rule| rule.family);
        matches!(
            family,
            Some(Family::Function | Family::Reach | Family::Rest | Family::Hold)
        )
    };
    let found = findings(plan).into_iter();
    found.filter(ours).map(|f| (f.rule, f.severity)).collect()
}

fn says(plan: &Plan, rule: &str, severity: Severity) -> bool {
    spoken(plan).contains(&(rule, severity))
}

fn speaks(plan: &Plan, rule: &str) -> bool {
    spoken(plan).iter().any(|(spoken, _)| *spoken == rule)
}

/// The functions that a rule misses in the drops, with how much that weighs.
fn missing_in_the_drops(plan: &Plan) -> Vec<(Function, Severity)> {
    let found = findings(plan).into_iter();
    found
        .filter(|f| f.rule == "needed-function-missing-from-position")
        .filter(|f| f.places.contains(&Place::Position(Drops)))
        .filter_map(|f| match f.places[0] {
            Place::Function(function) => Some((function, f.severity)),
            _ => None,
        })
        .collect()
}

#[test]
fn a_changes_its_position_with_one_hand_and_nothing_else_is_amiss() {
    let plan = case_a().plan();
    assert_eq!(
        spoken(&plan),
        [
            ("position-change-by-only-steering-hand", Severity::Check),
            ("not-asked-yet", Severity::Check)
        ]
    );
}

#[test]
fn a_sprint_button_left_live_lies_under_the_resting_hand() {
    let setup = case_a();
    let sprint = button(&setup, "right sprint button").control;
    let plan = setup
        .edit(&Edit::Bike(BikeEdit::Connect(sprint, true)))
        .plan();
    assert!(says(
        &plan,
        "live-button-under-resting-hand",
        Severity::MustFix
    ));
}

#[test]
fn a_separate_plan_leaves_the_front_out_of_the_drops() {
    let separate = PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Separate);
    let plan = case_a().edit(&Edit::Plan(separate)).plan();
    assert_eq!(
        missing_in_the_drops(&plan),
        [
            (FrontSmaller, Severity::Check),
            (FrontLarger, Severity::GoodToKnow)
        ]
    );
}

#[test]
fn b_lets_go_of_nothing() {
    let plan = case_b().plan();
    assert_eq!(spoken(&plan), [("not-asked-yet", Severity::Check)]);
}

/// A hilly hour, ridden to its end and kept with the plan.
fn ridden(plan: &Plan) -> Plan {
    let subject = Subject::of(plan, Pick::Layout(plan.current)).expect("a layout of the plan");
    let mut study =
        Study::new(plan.rides.road(), plan.rides.habits, vec![subject]).expect("it can be ridden");
    while !study.advance(100_000) {}
    let ride = Remembered::of(plan, &study.outcomes()).expect("it was ridden to its end");
    let kept = plan.apply(&Edit::Ride(RideEdit::Remember(ride)));
    kept.expect("a ride of its own is kept")
}

#[test]
fn b_on_a_ride_the_right_thumb_makes_nearly_all_presses() {
    let plan = ridden(&case_b().plan());
    let load = |plan: &Plan| -> Vec<Finding> {
        let found = findings(plan).into_iter();
        found
            .filter(|f| f.rule == "one-contact-takes-most-presses")
            .collect()
    };
    let found = load(&plan);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].places, [Place::Hand(Side::Right)]);
    assert!(
        found[0].message.contains("the right thumb makes"),
        "{}",
        found[0].message
    );
    assert!(load(&case_b().plan()).is_empty(), "nothing was ridden");
}

#[test]
fn b_bell_on_the_left_takes_a_hand_off_the_bar() {
    let bell = BikeEdit::PutThumbWork(ThumbWorkKind::Bell, BarSide::Left);
    let plan = case_b().edit(&Edit::Bike(bell)).plan();
    assert!(says(
        &plan,
        "thumb-work-only-by-letting-go",
        Severity::Check
    ));
}

#[test]
fn c_asks_nothing_of_the_thumbs() {
    let plan = case_c().plan();
    assert_eq!(spoken(&plan), [("not-asked-yet", Severity::Check)]);
}

#[test]
fn c_easier_only_on_a_hood_button_takes_great_effort_and_is_missing_in_the_drops() {
    let plan = case_c()
        .tap("left outer paddle", None)
        .tap("right outer paddle", None)
        .tap("right hood button", Some(RearEasier))
        .plan();
    assert!(says(&plan, "press-takes-great-effort", Severity::Check));
    assert_eq!(
        missing_in_the_drops(&plan),
        [(RearEasier, Severity::MustFix)]
    );
}

#[test]
fn c_a_hold_switched_on_is_not_possible() {
    let hold = Hold::Repeats(HoldRun::Cogs(3));
    let plan = case_c().hold("right outer paddle", hold).plan();
    assert!(says(&plan, "holding-not-possible", Severity::Check));
    assert!(!speaks(&case_c().plan(), "holding-not-possible"));
}
