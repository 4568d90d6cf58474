//! Plans with a record: revisions, reviews, checks, practice, and what merging keeps.

use crate::plans::full;
use leverwright_core::Vocabulary;
use leverwright_core::document;
use leverwright_core::edit::{Edit, LayoutEdit, PlanEdit, RecordEdit};
use leverwright_core::finding::{Place, Role};
use leverwright_core::history::History;
use leverwright_core::layout::Chosen;
use leverwright_core::merge::{self, Merge};
use leverwright_core::plan::Plan;
use leverwright_core::practice::{Lesson, Pace};
use leverwright_core::proof::{self, Proof, RoadCard, Run};
use leverwright_core::record::{
    Check, Desk, Matter, MixUp, Outcome, PartKey, Pin, Practised, Step,
};
use leverwright_core::review::{
    Audience, Basis, Decision, MarkKind, NotAssessed, Review, ReviewEvent, ReviewPage, Trial,
};
use leverwright_core::revision;
use leverwright_core::rider::{Ability, Side, Worn, YesNo};
use leverwright_core::share::{Along, content, qr_of};
use leverwright_core::text::{Date, Text};
use leverwright_core::units::Mm;
use leverwright_core::variants::Comparison;
use proptest::prelude::*;
use serde_json::{Value, json};

fn day() -> Option<Date> {
    Date::new(2031, 5, 10)
}

fn by(name: &str, role: Role, matter: Matter) -> Edit {
    Edit::Record(RecordEdit {
        by: name.into(),
        role,
        date: day(),
        layout: None,
        matter,
    })
}

/// A plan into whose record everything is written that can be.
pub fn recorded() -> Plan {
    let mut history = History::new(full());
    history.sit_down(Desk {
        by: "Bench 2".into(),
        role: Some(Role::Shop),
        date: day(),
    });
    let layout = history.plan().current;
    let button = *history
        .plan()
        .layout()
        .taps
        .keys()
        .next()
        .expect("a button has a function");
    let review = Review {
        seen: vec![
            (Side::Left, Ability::BrakesHard),
            (Side::Right, Ability::StaysOn),
        ],
        worn: Some(Worn::Splint),
        bike: "his own, on a stand".into(),
        conditions: "gloves on, dry".into(),
        changes: vec![(button, "nearer to the thumb".into())],
        trial: Some(Trial {
            place: "yard".into(),
            with: "M.".into(),
            stop_if: "a hand comes off".into(),
            review_by: Date::new(2031, 6, 1),
        }),
        not_assessed: vec![NotAssessed::Bumps, NotAssessed::NextMorning],
        rider_agrees: Some(YesNo::Yes),
        again_on: Date::new(2031, 8, 1),
        again_after: vec![ReviewEvent::Numbness, ReviewEvent::ChangedSplint],
        ..Review::of(Decision::SupervisedTrial, Basis::InPerson)
    };
    let comment = |on, audience| Matter::Comment {
        on,
        audience,
        text: "Look here.".into(),
    };
    let step = |outcome, measured| {
        Matter::Step(Step {
            check: Check::Stand,
            step: "lock".into(),
            outcome,
            what: "the rear wire pulls".into(),
            measured,
        })
    };
    let chosen = Chosen {
        layout,
        reason: "fewer mix-ups".into(),
        by: "M.".into(),
        role: Role::Rider,
        date: day(),
    };
    let edits = [
        by("K.", Role::Clinician, Matter::Review(Box::new(review))),
        by(
            "K.",
            Role::Clinician,
            comment(
                Pin::Place(Place::Hand(Side::Left)),
                Audience::RiderAndClinician,
            ),
        ),
        by(
            "",
            Role::Rider,
            comment(Pin::Place(Place::Button(button)), Audience::Everyone),
        ),
        by(
            "Bench 2",
            Role::Shop,
            comment(
                Pin::Finding("tap-lost|button:1.near".into()),
                Audience::Everyone,
            ),
        ),
        by(
            "Bench 2",
            Role::Shop,
            comment(Pin::Whole, Audience::Everyone),
        ),
        by(
            "",
            Role::Rider,
            Matter::Words("The hill behind the mill is fine.".into()),
        ),
        by(
            "",
            Role::Rider,
            Matter::Mark {
                button,
                kind: MarkKind::Confuses,
                text: "which one?".into(),
            },
        ),
        by(
            "Bench 2",
            Role::Shop,
            step(Outcome::SomethingElse, Some(Mm(22.5))),
        ),
        by("Bench 2", Role::Shop, Matter::Again(Check::Stand)),
        by("Bench 2", Role::Shop, step(Outcome::Ok, None)),
        by(
            "",
            Role::Rider,
            Matter::Practice(Practised {
                layout,
                calls: 30,
                right_first: 24,
                wrong: 6,
                late: None,
                presses: vec![(button, 36)],
                mixed_up: vec![MixUp {
                    wanted: button,
                    pressed: button,
                    times: 6,
                }],
            }),
        ),
        Edit::Plan(PlanEdit::ChooseLayout(Some(chosen))),
        Edit::Plan(PlanEdit::AddLayout("Blank".into())),
        Edit::Plan(PlanEdit::RemoveLayout(layout)),
        Edit::Layout(LayoutEdit::Mirror),
        Edit::Plan(PlanEdit::Name("Up the long valley, again".into())),
    ];
    for edit in edits {
        history
            .commit(&edit)
            .unwrap_or_else(|error| panic!("{edit:?}: {error}"));
    }
    let id = |at: usize| history.plan().record.entries[at].id;
    let more = [
        by(
            "K.",
            Role::Clinician,
            Matter::Addendum {
                to: id(0),
                text: "The strap was new.".into(),
            },
        ),
        by(
            "K.",
            Role::Clinician,
            Matter::Withdrawn {
                what: id(0),
                reason: "Seen anew.".into(),
            },
        ),
        by("", Role::Rider, Matter::Sent(id(10))),
    ];
    for edit in more {
        history
            .commit(&edit)
            .unwrap_or_else(|error| panic!("{edit:?}: {error}"));
    }
    history.plan().clone()
}

/// Everything that the app asks of a record, so that a panic shows.
pub fn look_at(plan: &Plan) {
    let _ = (Comparison::of(plan), Proof::of(plan), RoadCard::of(plan));
    for role in Role::ALL {
        let _ = ReviewPage::of(plan, *role);
    }
    for check in Check::ALL {
        let run = Run::of(plan, *check);
        let _ = (
            run.progress(),
            run.missed_twice(),
            proof::steps(plan, *check),
        );
    }
    for revision in plan.record.revisions.iter().take(3) {
        let past = revision::plan_at(plan, revision.number.saturating_sub(1));
        let _ = past.map(|past| revision::differences(&past.plan, plan));
    }
    for along in Along::ALL {
        let sent = content(plan, *along);
        let merge = Merge::of(plan, &sent);
        let _ = merge.make(&[(PartKey::Title, merge::Choice::Theirs)], &Desk::default());
    }
    let _ = (merge::join(plan, plan), qr_of("https://example.org/", plan));
    let _ = Lesson::new(plan, plan.current, Pace::NoHurry, 1).map(|lesson| lesson.buttons());
}

#[test]
fn everything_that_was_written_opens_again() {
    let plan = recorded();
    assert_eq!(plan.record.entries.len(), 14);
    let opened = document::read(document::write(&plan)).expect("it opens");
    assert_eq!((opened.plan, opened.notes), (plan, Vec::new()));
}

/// The past is in the file: who changed what, and the plan as it was.
#[test]
fn the_past_is_in_the_file() {
    let opened = document::read(document::write(&recorded()))
        .expect("it opens")
        .plan;
    let last = opened.record.revisions.last().expect("there are revisions");
    assert_eq!(
        (last.by.as_str(), last.what.as_str()),
        ("Bench 2", "rename the plan")
    );
    let past = revision::plan_at(&opened, 1).expect("it reaches back");
    assert!(past.is_whole);
    assert_eq!(past.plan.name, full().name);
    assert_eq!(past.plan.layouts, full().layouts);
    assert_eq!(past.plan.bike, full().bike);
}

#[test]
fn what_cannot_be_in_a_record_is_refused_with_its_place() {
    let file: Value = serde_json::from_str(&document::write(&recorded())).expect("JSON");
    for (place, wrong, said) in [
        (
            "/record/entries/0/id",
            json!("K7PF"),
            "record.entries[0].id: expected a code such as K7PF-3QXM",
        ),
        (
            "/record/stamps/0/part",
            json!("wheels"),
            "record.stamps[0].part: expected a part such as bike or layout:1",
        ),
        (
            "/record/entries/0/role",
            json!("judge"),
            "record.entries[0].role: expected shop, rider or clinician",
        ),
        (
            "/record/entries/1/comment/on/place",
            json!("moon"),
            "record.entries[1].comment.on.place: expected a place such as button:3.single or hand:left",
        ),
        (
            "/record/entries/7/step/measured",
            json!(1e9),
            "record.entries[7].step.measured: expected a number from 0 to 200 (millimetres)",
        ),
    ] {
        let mut file = file.clone();
        *file.pointer_mut(place).unwrap_or_else(|| panic!("{place}")) = wrong;
        let refused = document::read(file.to_string())
            .expect_err("it is refused")
            .to_string();
        assert!(refused.starts_with(said), "{refused}");
    }
}

/// An entry of a kind that this version does not know is kept with what it says.
#[test]
fn entries_of_a_newer_version_are_kept() {
    let mut file: Value = serde_json::from_str(&document::write(&recorded())).expect("JSON");
    let entry = file
        .pointer_mut("/record/entries/5")
        .and_then(Value::as_object_mut)
        .expect("an entry");
    entry.remove("words");
    entry.insert("song".into(), json!({ "of": "the road" }));
    let opened = document::read(file.to_string()).expect("it opens").plan;
    assert_eq!(opened.record.entries[5].matter, Matter::Other);
    let joined = merge::join(&opened, &recorded()).expect("they go together");
    for plan in [opened, joined] {
        let again: Value = serde_json::from_str(&document::write(&plan)).expect("JSON");
        assert_eq!(
            again.pointer("/record/entries/5/song"),
            Some(&json!({ "of": "the road" }))
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Records as a stranger may write them.
    #[test]
    fn no_record_makes_anything_panic(at in any::<prop::sample::Index>(), with in any::<prop::sample::Index>()) {
        let mut file: Value = serde_json::from_str(&document::write(&recorded())).expect("JSON");
        let mut places = Vec::new();
        crate::never_panics::places(&file["record"], "/record", &mut places);
        let from = file.pointer(&places[with.index(places.len())]).cloned().expect("it is there");
        *file.pointer_mut(&places[at.index(places.len())]).expect("it is there") = from;
        if let Ok(opened) = document::read(file.to_string()) {
            look_at(&opened.plan);
            let again = document::read(document::write(&opened.plan)).expect("it opens again");
            prop_assert_eq!(again.plan, opened.plan);
        }
    }
}

#[test]
fn text_is_kept_within_limits() {
    let long = Text::new(&"x".repeat(1000));
    let written = by("", Role::Rider, Matter::Words(long));
    let plan = full().apply(&written).expect("it is cut to what fits");
    let opened = document::read(document::write(&plan)).expect("it opens");
    assert_eq!(opened.notes, Vec::new());
}
