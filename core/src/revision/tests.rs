//! Codes, differences and looking back.

use proptest::prelude::*;

use super::{between, code, differences, hands_code, plan_at};
use crate::catalogue::{TemplateId, template};
use crate::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use crate::finding::{Place, Role};
use crate::function::Function;
use crate::history::History;
use crate::plan::Plan;
use crate::record::{Desk, Record};
use crate::rider::{Ability, Answer, Difficulty, Evidence, HandPlace, Side, Source};
use crate::testing::{button, plan, plan_and_edits};
use crate::text::Date;

/// What a plan says, lists in an order of their own.
fn said(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    plan.record = Record::default();
    plan.revision = 0;
    plan.unknown.clear();
    plan.bike.controls.sort_by_key(|c| c.id);
    plan.bike.thumb_work.sort_by_key(|w| w.kind);
    plan.bike.brakes.runs.sort_by_key(|r| r.lever);
    plan.bike.brakes.wheels.sort_by_key(|w| w.wheel);
    plan.bike
        .brakes
        .together
        .sort_by_key(|t| (t.hand, t.first, t.second));
    for control in &mut plan.bike.controls {
        control.buttons.sort_by_key(|b| b.part);
        for button in &mut control.buttons {
            button.seen_reach.sort_by_key(|s| (s.from, s.contact));
        }
    }
    for layout in &mut plan.layouts {
        layout.chords.sort();
    }
    for ride in &mut plan.rides.remembered {
        ride.left.contacts.sort();
        ride.right.contacts.sort();
    }
    plan.accepted.sort_by(|a, b| a.finding.cmp(&b.finding));
    plan
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(80))]

    #[test]
    fn every_revision_can_be_looked_back_at((plan, edits) in plan_and_edits()) {
        let mut history = History::new(plan);
        let mut stood = vec![history.plan().clone()];
        for edit in &edits {
            let removes = format!("{edit:?}").contains("RemoveHandDetails");
            if !removes && history.commit(edit).is_ok() {
                stood.push(history.plan().clone());
            }
        }
        for past in &stood {
            let told = plan_at(history.plan(), past.revision).expect("the record reaches back");
            prop_assert!(told.is_whole);
            prop_assert_eq!(said(&told.plan), said(past));
        }
    }

    #[test]
    fn differences_are_told_exactly_where_there_are_some((plan, edits) in plan_and_edits()) {
        let mut history = History::new(plan.clone());
        for edit in &edits {
            let _ = history.commit(edit);
        }
        let after = history.plan();
        let told = differences(&plan, after);
        let mut like_before = after.clone();
        like_before.revision = plan.revision;
        like_before.record = plan.record.clone();
        prop_assert_eq!(told.is_empty(), like_before == plan);
        prop_assert!(differences(after, after).is_empty());
        for difference in &told {
            prop_assert!(!difference.words.is_empty() && !difference.words.contains("null"));
            for raw in ["{", "}", "\"", "_"] {
                // Braces and the like come only from what people wrote.
                let quoted = difference.words.contains('“');
                prop_assert!(quoted || !difference.words.contains(raw), "{}", difference.words);
            }
        }
    }

    #[test]
    fn rider_details_leave_the_code_alone(plan in plan()) {
        prop_assert_eq!(code(&plan), code(&plan.without_hand_details(None)));
    }

    #[test]
    fn a_code_outlives_the_file(plan in plan()) {
        let opened = crate::document::read(crate::document::write(&plan));
        let opened = opened.expect("it was just written").plan;
        prop_assert_eq!(code(&opened), code(&plan));
        prop_assert_eq!(hands_code(&opened), hands_code(&plan));
    }
}

fn road() -> Plan {
    template(TemplateId::RoadPods).plan("Test")
}

fn after(plan: &Plan, edit: Edit) -> Plan {
    plan.apply(&edit).expect("the edit is possible")
}

#[test]
fn the_code_follows_what_is_built() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let lever = plan.bike.controls[0].id;
    for edit in [
        Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights))),
        Edit::Bike(BikeEdit::BladeFitted(lever, false)),
        Edit::Bike(BikeEdit::Cogs(11)),
        Edit::Bike(BikeEdit::Travel(hood, crate::units::Mm(3.5))),
        Edit::Plan(PlanEdit::ShiftPlan(
            crate::shift_plan::ShiftPlanKind::Ladder,
        )),
    ] {
        assert_ne!(code(&after(&plan, edit.clone())), code(&plan), "{edit:?}");
    }
    for edit in [
        Edit::Plan(PlanEdit::Name("Other".into())),
        Edit::Plan(PlanEdit::RenameLayout("Other".into())),
        Edit::Plan(PlanEdit::DuplicateLayout("Other".into())),
        Edit::Bike(BikeEdit::Name("Other".into())),
        Edit::Rider(RiderEdit::Nickname("Other".into())),
        Edit::Rider(RiderEdit::ForgetHand(Side::Left)),
    ] {
        assert_eq!(code(&after(&plan, edit.clone())), code(&plan), "{edit:?}");
    }
}

/// A code stands on paper, so it must not change with the program: these were
/// given out by the first version.
#[test]
fn codes_given_out_stay() {
    let codes = [TemplateId::RoadPods, TemplateId::FlatSingle]
        .map(|id| code(&template(id).plan("Test")).to_string());
    assert_eq!(codes, ["XV4R-38XK", "29RE-MJKQ"]);
}

#[test]
fn the_hands_have_a_code_of_their_own() {
    let plan = road();
    let answer = RiderEdit::Ability(Side::Left, Ability::LetsGo, Answer::of(Difficulty::Mild));
    assert_ne!(
        hands_code(&after(&plan, Edit::Rider(answer))),
        hands_code(&plan)
    );
    let words = Edit::Rider(RiderEdit::OwnWords("as before".into()));
    assert_eq!(hands_code(&after(&plan, words)), hands_code(&plan));
}

#[test]
fn differences_read_like_speech() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let pod = button(&plan, "left tops pod, near button");
    let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
    let changed = [
        Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights))),
        Edit::Bike(BikeEdit::Remove(pod.control)),
        Edit::Bike(BikeEdit::Rings(1)),
        Edit::Plan(PlanEdit::DuplicateLayout("Evening".into())),
        Edit::Rider(rests),
    ]
    .into_iter()
    .fold(plan.clone(), |plan, edit| after(&plan, edit));
    let told = differences(&plan, &changed);
    let words: Vec<&str> = told.iter().map(|d| d.words.as_str()).collect();
    for expected in [
        "Left hood button: “lights”, was blank",
        "Left tops pod: removed",
        "Chainrings: 1, was 2",
        "Layout “Evening”: added",
        "Right hand, place: rests on the bar and does not press, was not asked",
        "Layout in hand: “Evening”, was “Layout 1”",
    ] {
        assert!(words.contains(&expected), "{expected}: {words:#?}");
    }
    let hood_place = told
        .iter()
        .find(|d| d.words.starts_with("Left hood"))
        .map(|d| d.places.clone());
    assert_eq!(hood_place, Some(vec![Place::Button(hood)]));
}

#[test]
fn who_changed_what_when_is_kept() {
    let mut history = History::new(road());
    let date = Date::new(2031, 5, 9);
    history.sit_down(Desk {
        by: "Bench 2".into(),
        role: Some(Role::Shop),
        date,
    });
    history
        .commit(&Edit::Layout(LayoutEdit::Clear))
        .expect("a layout is cleared");
    let revision = history.plan().record.revision(2).expect("it was just made");
    assert_eq!(
        (
            revision.by.as_str(),
            revision.role,
            revision.date,
            revision.what.as_str()
        ),
        ("Bench 2", Some(Role::Shop), date, "clear the layout")
    );
    assert_eq!(revision.code, code(history.plan()));
}

#[test]
fn removed_hand_details_cannot_be_looked_back_at() {
    let mut history = History::new(road());
    let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
    history
        .commit(&Edit::Rider(rests))
        .expect("a hand can rest");
    history
        .commit(&Edit::Plan(PlanEdit::RemoveHandDetails(None)))
        .expect("details are removed");
    for revision in 1..=history.plan().revision {
        let past = plan_at(history.plan(), revision).expect("the rest is known");
        assert!(!past.plan.has_hand_details(), "{revision}");
    }
    assert!(!format!("{:?}", history.plan()).contains("Rests"));
}

#[test]
fn two_revisions_differ_whichever_is_named_first() {
    let mut history = History::new(template(TemplateId::RoadPods).plan("Test"));
    let hood = button(history.plan(), "left hood button");
    let first = history.plan().revision;
    let lights = Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights)));
    history.commit(&lights).expect("the button is free");
    let plan = history.plan();
    let found = between(plan, plan.revision, first).expect("both are on record");
    assert_eq!(
        found,
        between(plan, first, plan.revision).expect("both are on record")
    );
    assert_eq!(found.buttons, [hood].into());
    assert!(found.before.is_whole && found.after.is_whole);
    assert_eq!(
        found.differences[0].words,
        "Left hood button: “lights”, was blank"
    );
    let same = between(plan, plan.revision, plan.revision).expect("it is on record");
    assert!(same.differences.is_empty() && same.buttons.is_empty());
}

/// What was told and is now seen is told in one sentence, with what it was
/// before.
#[test]
fn an_answer_seen_after_it_was_told_says_so_once() {
    let by = |source, in_one_tap| {
        Some(Evidence {
            source,
            date: Date::new(2031, 5, 9),
            worn: None,
            in_one_tap,
        })
    };
    let told = RiderEdit::HandDoesAll(Side::Left, by(Source::Told, false));
    let before = after(&road(), Edit::Rider(told));
    let answer = |step, evidence| {
        let answer = Answer::with(step, evidence);
        Edit::Rider(RiderEdit::Ability(Side::Left, Ability::BrakesHard, answer))
    };
    let said = |plan: &Plan| -> Vec<String> {
        let found = differences(&before, plan).into_iter();
        found.map(|differs| differs.words).collect()
    };
    let seen = by(Source::SeenByClinician, false);
    let confirmed = after(&before, answer(Difficulty::None, seen));
    assert_eq!(
        said(&confirmed),
        [
            "Left hand, brakes hard: no difficulty (seen by a clinician, 2031-05-09), was no difficulty (told; in one tap, not asked singly, 2031-05-09)"
        ]
    );
    let harder = after(&before, answer(Difficulty::Severe, seen));
    assert_eq!(said(&harder).len(), 1);
    assert!(
        said(&harder)[0].contains("was no difficulty (told"),
        "{:?}",
        said(&harder)
    );
    // Where nothing was said before, nothing is claimed about it.
    let found = differences(&road(), &before);
    let place = found
        .iter()
        .find(|d| d.words.starts_with("Left hand, place"));
    assert_eq!(
        place.expect("it was told").words,
        "Left hand, place: works on the bar (told, 2031-05-09), was not asked"
    );
}
