//! What is written opens again as the same plan.

use crate::plans::{any_plan, full, look_at};
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, TemplateId, demo, template};
use leverwright_core::document;
use leverwright_core::edit::{Edit, PlanEdit, RiderEdit};
use leverwright_core::plan::Plan;
use leverwright_core::rider::{
    Ability, Answer, Contact, Difficulty, Evidence, Later, Side, Source, Worn,
};
use leverwright_core::text::Date;
use proptest::prelude::*;

#[track_caller]
fn check(plan: &Plan) {
    let text = document::write(plan);
    match document::read(&text) {
        Ok(opened) => {
            assert_eq!(&opened.plan, plan);
            assert_eq!(opened.notes, [], "{text}");
        }
        Err(error) => panic!("{error}\n{text}"),
    }
}

#[test]
fn every_template_and_demo() {
    for id in TemplateId::ALL {
        check(&template(*id).plan("Test"));
    }
    for id in DemoId::ALL {
        check(&demo(*id).plan);
    }
}

#[test]
fn a_plan_in_which_everything_is_said() {
    check(&full());
}

#[test]
fn what_was_said_before_and_the_day_hand_details_went() {
    let day = Date::new(2031, 5, 9);
    let clinician = Evidence {
        source: Source::SeenByClinician,
        date: day,
        worn: Some(Worn::Splint),
        in_one_tap: false,
    };
    let step = |step| Answer::with(step, Some(clinician));
    let later = Answer::with(Later::DoNotCountOnIt, Some(clinician));
    let left = Side::Left;
    let edits = [
        RiderEdit::HandDoesAll(left, None),
        RiderEdit::Later(left, Answer::of(Later::Same)),
        RiderEdit::Ability(left, Ability::BrakesHard, step(Difficulty::Severe)),
        RiderEdit::Contact(left, Contact::Thumb, step(Difficulty::Mild)),
        RiderEdit::Later(left, later),
    ];
    let plan = edits.into_iter().fold(full(), |plan, edit| {
        plan.apply(&Edit::Rider(edit)).expect("it can be said")
    });
    let hand = &plan.rider.hands.left;
    assert!(hand.abilities.get(Ability::BrakesHard).before.is_some());
    assert!(hand.later.before.is_some());
    check(&plan);
    let removed = Edit::Plan(PlanEdit::RemoveHandDetails(day));
    let plan = plan.apply(&removed).expect("hand details can be removed");
    assert_eq!(plan.rider.hand_details_removed, day);
    check(&plan);
}

#[test]
fn a_mark_before_the_text_does_not_matter() {
    let text = format!("\u{FEFF}{}", document::write(&full()));
    assert_eq!(document::read(text).map(|opened| opened.plan), Ok(full()));
}

proptest! {
    #[test]
    fn any_plan_that_people_could_have_made(plan in any_plan()) {
        check(&plan);
        look_at(&plan);
    }
}
