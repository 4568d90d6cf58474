//! What a therapist may write, and what the page says.

use proptest::prelude::*;

use super::{
    Audience, Basis, Block, Decision, Fit, Lack, MarkKind, Review, ReviewEvent, ReviewPage,
    Standing, Trial, Who, comments, last_decision, marks, pins,
};
use crate::catalogue::{DemoId, TemplateId, demo, template};
use crate::cockpit::ButtonId;
use crate::edit::{Edit, EditError, LayoutEdit, PlanEdit, RecordEdit, RiderEdit};
use crate::finding::{Acceptable, Acceptance, Finding, Place, Role, Severity};
use crate::function::Function;
use crate::history::History;
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::{Desk, Matter, Pin};
use crate::rider::{
    Ability, Answer, Contact, Difficulty, Evidence, HandPlace, Later, Side, Source,
};
use crate::rules;
use crate::sheet::{Sheet, SheetOptions};
use crate::testing::{button, plan};
use crate::text::{Date, Text, capital};
use crate::vocabulary::Vocabulary;

fn by(role: Role, matter: Matter) -> Edit {
    Edit::Record(RecordEdit {
        by: "K.".into(),
        role,
        date: Date::new(2031, 5, 9),
        layout: None,
        matter,
    })
}

fn reviewed(review: Review) -> Edit {
    by(Role::Clinician, Matter::Review(Box::new(review)))
}

fn seen(decision: Decision) -> Review {
    Review {
        seen: vec![(Side::Left, Ability::BrakesHard)],
        ..Review::of(decision, Basis::InPerson)
    }
}

fn refused(plan: &Plan, edit: &Edit) -> String {
    plan.apply(edit).expect_err("it is refused").to_string()
}

fn road() -> Plan {
    template(TemplateId::RoadPods).plan("Test")
}

fn after(plan: &Plan, edits: &[Edit]) -> Plan {
    let made = edits
        .iter()
        .try_fold(plan.clone(), |plan, edit| plan.apply(edit));
    made.expect("the edits are possible")
}

#[test]
fn a_decision_says_what_it_needs() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let said = |review: Review| refused(&plan, &reviewed(review));
    let after_changes = |changes| Review {
        changes,
        ..seen(Decision::AfterChanges)
    };
    assert_eq!(
        said(after_changes(Vec::new())),
        "“Go on after these changes” needs at least one change. Tie one to a button."
    );
    assert_eq!(
        said(after_changes(vec![(hood, "".into())])),
        "A change needs words. Write what should change on the button."
    );
    assert!(
        plan.apply(&reviewed(after_changes(vec![(hood, "thumb only".into())])))
            .is_ok()
    );
    let trial = |trial| Review {
        trial,
        ..seen(Decision::SupervisedTrial)
    };
    assert!(said(trial(Some(Trial::default()))).starts_with("A supervised trial needs a place"));
    let whole = Trial {
        place: "yard".into(),
        with: "M.".into(),
        stop_if: "a hand comes off".into(),
        review_by: Date::new(2031, 6, 1),
    };
    assert!(plan.apply(&reviewed(trial(Some(whole)))).is_ok());
    for decision in [Decision::Matches, Decision::Exceeds] {
        let from_plan = Review {
            basis: Basis::PlanOnly,
            ..seen(decision)
        };
        assert!(said(from_plan).starts_with("This decision speaks of what you saw."));
        assert!(plan.apply(&reviewed(seen(decision))).is_ok());
    }
    let unsure = Review::of(Decision::NotEnough, Basis::PlanOnly);
    assert!(plan.apply(&reviewed(unsure)).is_ok());
}

/// A form leads to the first thing that is missing, from top to bottom.
#[test]
fn a_decision_names_the_first_thing_it_lacks() {
    let hood = button(&road(), "left hood button");
    let lacks = |decision, changes: &[(ButtonId, Text)], trial| {
        let review = Review {
            changes: changes.to_vec(),
            trial,
            ..Review::of(decision, Basis::InPerson)
        };
        review.lacks()
    };
    let trial = |place: &str, with: &str, stop_if: &str| {
        Some(Trial {
            place: place.into(),
            with: with.into(),
            stop_if: stop_if.into(),
            review_by: None,
        })
    };
    use Decision::{AfterChanges, Matches, NotEnough, SupervisedTrial};
    for (decision, changes, trial, lack) in [
        (NotEnough, vec![], None, None),
        (Matches, vec![], None, Some(Lack::Actions)),
        (AfterChanges, vec![], None, Some(Lack::Changes)),
        (
            AfterChanges,
            vec![(hood, "".into())],
            None,
            Some(Lack::WordsOfChange(hood)),
        ),
        (AfterChanges, vec![(hood, "blank".into())], None, None),
        (SupervisedTrial, vec![], None, Some(Lack::Place)),
        (
            SupervisedTrial,
            vec![],
            trial("a", "", ""),
            Some(Lack::Companion),
        ),
        (
            SupervisedTrial,
            vec![],
            trial("a", "b", ""),
            Some(Lack::StopIf),
        ),
        (
            SupervisedTrial,
            vec![],
            trial("a", "b", "c"),
            Some(Lack::ReviewBy),
        ),
    ] {
        assert_eq!(lacks(decision, &changes, trial), lack, "{decision}");
    }
    let from_plan = Review::of(Matches, Basis::PlanOnly);
    assert_eq!(from_plan.lacks(), Some(Lack::Sight));
}

#[test]
fn who_may_not_accept_is_told_what_to_do_instead() {
    for acceptable in Acceptable::ALL {
        for role in Role::ALL {
            let instead = acceptable.instead(*role);
            assert_eq!(
                instead.is_none(),
                acceptable.by(*role),
                "{acceptable} {role}"
            );
        }
    }
    assert_eq!(
        Acceptable::ByShop.instead(Role::Clinician),
        Some("This one is for the shop: leave a comment on it.")
    );
}

#[test]
fn everybody_writes_what_is_theirs() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let mark = Matter::Mark {
        button: hood,
        kind: MarkKind::Hurts,
        text: "".into(),
    };
    let review = Matter::Review(Box::new(seen(Decision::Matches)));
    for (matter, whose) in [
        (review, Role::Clinician),
        (Matter::Words("mine".into()), Role::Rider),
        (mark, Role::Rider),
    ] {
        for role in Role::ALL {
            let written = plan.apply(&by(*role, matter.clone()));
            assert_eq!(written.is_ok(), *role == whose, "{role}: {matter:?}");
        }
    }
    let nameless = Edit::Record(RecordEdit {
        by: " ".into(),
        role: Role::Clinician,
        date: None,
        layout: None,
        matter: Matter::Review(Box::new(seen(Decision::Matches))),
    });
    assert_eq!(
        refused(&plan, &nameless),
        "A review needs a name. Write who gives it; a typed name is not a signature."
    );
}

#[test]
fn the_riders_own_words_are_for_the_rider_to_change() {
    let mut history = History::new(road());
    let words = |text: &str| Edit::Rider(RiderEdit::OwnWords(text.into()));
    history
        .commit(&words("my thumb tires"))
        .expect("the interview may write them down");
    for role in [Role::Shop, Role::Clinician] {
        history.sit_down(Desk {
            role: Some(role),
            ..Desk::default()
        });
        for text in ["something else", ""] {
            let refused = history.commit(&words(text)).expect_err("it is refused");
            assert!(
                refused
                    .to_string()
                    .starts_with("These are the rider’s own words")
            );
        }
    }
    history.sit_down(Desk {
        role: Some(Role::Rider),
        ..Desk::default()
    });
    history
        .commit(&words("my thumb tires late"))
        .expect("they are the rider’s");
    let plan = after(
        history.plan(),
        &[by(Role::Rider, Matter::Words("and it is cold".into()))],
    );
    let own = ReviewPage::of(&plan, Role::Clinician).own_words;
    let texts: Vec<_> = own.iter().map(|w| w.text.as_str()).collect();
    assert_eq!(texts, ["my thumb tires late", "and it is cold"]);
    let id = own[1].id.expect("it was written into the record");
    let withdrawn = |role| {
        by(
            role,
            Matter::Withdrawn {
                what: id,
                reason: "".into(),
            },
        )
    };
    assert!(refused(&plan, &withdrawn(Role::Shop)).starts_with("Only K. (rider) may withdraw"));
    assert!(plan.apply(&withdrawn(Role::Rider)).is_ok());
}

#[test]
fn the_sheet_bears_the_last_decision_that_stands() {
    let plan = road();
    assert_eq!(last_decision(&plan), None);
    let trial = Review {
        trial: Some(Trial {
            place: "yard".into(),
            with: "M.".into(),
            stop_if: "the left hand slips".into(),
            review_by: Date::new(2031, 6, 1),
        }),
        ..seen(Decision::SupervisedTrial)
    };
    let plan = after(&plan, &[reviewed(trial)]);
    let what = Decision::SupervisedTrial.words();
    let stands = format!("K., clinician, 2031-05-09: {what}. Stop if: the left hand slips.");
    let sheet = |plan: &Plan| Sheet::of(plan, SheetOptions::default());
    assert_eq!(sheet(&plan).decided.as_ref(), Some(&stands));
    assert!(sheet(&plan).to_text().contains(&stands));

    let changed = after(&plan, &[Edit::Layout(LayoutEdit::Clear)]);
    let older = last_decision(&changed).expect("it is still on record");
    assert!(older.starts_with("K., clinician, 2031-05-09, on an older revision: "));
    assert!(
        older.ends_with("Stop if: the left hand slips. Ask before going on."),
        "{older}"
    );

    // What is withdrawn says so first, and is not on the sheet.
    let withdrawn = by(
        Role::Clinician,
        Matter::Withdrawn {
            what: plan.record.entries[0].id,
            reason: "seen anew".into(),
        },
    );
    let plan = after(&plan, &[withdrawn]);
    assert_eq!(last_decision(&plan), None);
    let page = ReviewPage::of(&plan, Role::Clinician);
    assert_eq!(page.decided[0].title(), format!("Withdrawn: {what}"));
    let paper = page.parts(&plan, None);
    let blocks = paper.iter().flat_map(|part| &part.blocks);
    let told = blocks.filter_map(|block| match block {
        Block::Named(head, lines) => Some((head.as_str(), lines[1].as_str())),
        _ => None,
    });
    let told: Vec<_> = told.collect();
    let why = "Withdrawn by K., clinician, 2031-05-09: seen anew";
    assert!(
        told.contains(&(page.decided[0].title().as_str(), why)),
        "{told:?}"
    );
}

#[test]
fn a_day_to_review_again_is_not_past() {
    let plan = road();
    let again = |day| {
        plan.apply(&reviewed(Review {
            again_on: Date::new(2031, 5, day),
            ..seen(Decision::Matches)
        }))
    };
    assert!(again(9).is_ok());
    let refused = again(8).expect_err("it is past").to_string();
    assert_eq!(
        refused,
        "2031-05-08 is before the day of this review. Choose a later day to review it again."
    );
}

#[test]
fn records_are_only_added_to_and_undo_leaves_them() {
    let mut history = History::new(road());
    history
        .commit(&reviewed(seen(Decision::Matches)))
        .expect("a review is written");
    let id = history.plan().record.entries[0].id;
    assert!(!history.undo(), "writing is no step of undo");
    history
        .commit(&Edit::Layout(LayoutEdit::Clear))
        .expect("a layout is cleared");
    history
        .commit(&by(
            Role::Clinician,
            Matter::Addendum {
                to: id,
                text: "gloves on".into(),
            },
        ))
        .expect("an addendum is written");
    assert!(history.undo());
    let decided = ReviewPage::of(history.plan(), Role::Clinician).decided;
    assert_eq!(decided[0].addenda.len(), 1);
    assert!(
        decided[0].addenda[0].starts_with("gloves on (K."),
        "{:?}",
        decided[0].addenda
    );
    let withdraw = by(
        Role::Clinician,
        Matter::Withdrawn {
            what: id,
            reason: "".into(),
        },
    );
    assert_eq!(
        refused(history.plan(), &withdraw),
        "Withdrawing a review needs words. Write some."
    );
    let withdraw = by(
        Role::Clinician,
        Matter::Withdrawn {
            what: id,
            reason: "seen anew".into(),
        },
    );
    history.commit(&withdraw).expect("it is withdrawn");
    let decided = ReviewPage::of(history.plan(), Role::Clinician).decided;
    // The layout was cleared and that undone: it still stood for this plan.
    let withdrawn = |is_older| Standing::Withdrawn {
        by: "K., clinician, 2031-05-09".into(),
        reason: "seen anew".into(),
        is_older,
    };
    assert_eq!(decided[0].standing, withdrawn(false));
    assert_eq!(
        decided[0].standing_words(),
        "Withdrawn by K., clinician, 2031-05-09: seen anew"
    );
    let cleared = after(history.plan(), &[Edit::Layout(LayoutEdit::Clear)]);
    let older = &ReviewPage::of(&cleared, Role::Clinician).decided[0];
    assert_eq!(older.standing, withdrawn(true));
    assert!(
        older
            .standing_words()
            .starts_with("Given for an older revision")
    );
    assert_eq!(
        refused(history.plan(), &withdraw),
        "This entry is withdrawn already. Nothing more is needed."
    );
}

#[test]
fn a_changed_layout_marks_a_review_as_given_for_an_older_revision() {
    let mut history = History::new(road());
    history
        .commit(&reviewed(seen(Decision::Matches)))
        .expect("a review is written");
    let standing = |history: &History| {
        let decided = ReviewPage::of(history.plan(), Role::Clinician).decided;
        decided[0].standing.clone()
    };
    assert_eq!(standing(&history), Standing::ForThis);
    let name = Edit::Plan(PlanEdit::Name("Other".into()));
    history.commit(&name).expect("a plan is named");
    assert_eq!(standing(&history), Standing::ForThis);
    let hood = button(history.plan(), "left hood button");
    let tap = Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights)));
    history.commit(&tap).expect("the button is free");
    let Standing::ForOlder(since) = standing(&history) else {
        panic!("{:?}", standing(&history));
    };
    let words: Vec<_> = since.iter().map(|d| d.words.as_str()).collect();
    assert!(
        words.contains(&"Left hood button: “lights”, was blank"),
        "{words:?}"
    );
    // Another one may stand beside it.
    history
        .commit(&reviewed(seen(Decision::Exceeds)))
        .expect("a review is written");
    let page = ReviewPage::of(history.plan(), Role::Clinician);
    assert_eq!(
        (page.decided.len(), &page.decided[0].standing),
        (2, &Standing::ForThis)
    );
    assert_eq!(page.since, Some((history.plan().revision, Vec::new())));
}

#[test]
fn comments_have_their_readers() {
    let plan = road();
    let comment = |audience, on| Matter::Comment {
        on,
        audience,
        text: "look".into(),
    };
    let private = comment(Audience::RiderAndClinician, Pin::Whole);
    assert!(refused(&plan, &by(Role::Shop, private.clone())).contains("written by one of them"));
    let hand = Pin::Place(Place::Hand(Side::Left));
    let plan = after(
        &plan,
        &[
            by(Role::Clinician, private),
            by(Role::Shop, comment(Audience::Everyone, hand.clone())),
        ],
    );
    assert_eq!(comments(&plan, Role::Rider).len(), 2);
    let shop = comments(&plan, Role::Shop);
    assert_eq!((shop.len(), &shop[0].on), (1, &hand));
    let wheel = comment(
        Audience::Everyone,
        Pin::Place(Place::Wheel(crate::cockpit::Wheel::Rear)),
    );
    assert!(refused(&plan, &by(Role::Shop, wheel)).starts_with("A comment is pinned to"));
}

#[test]
fn marks_stand_beside_their_button() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let mark = |kind, text: &str| {
        by(
            Role::Rider,
            Matter::Mark {
                button: hood,
                kind,
                text: text.into(),
            },
        )
    };
    let plan = after(
        &plan,
        &[
            mark(MarkKind::Hurts, "a bit"),
            mark(MarkKind::Confuses, ""),
            mark(MarkKind::Hurts, "much"),
        ],
    );
    let found = marks(&plan);
    let said: Vec<_> = found
        .iter()
        .map(|m| (m.kind, m.text.as_str(), m.of.is_empty()))
        .collect();
    assert_eq!(
        said,
        [
            (MarkKind::Hurts, "much", false),
            (MarkKind::Confuses, "", false)
        ]
    );
    let changed = after(&plan, &[Edit::Layout(LayoutEdit::Clear)]);
    assert!(marks(&changed).iter().all(|mark| mark.of.is_empty()));
}

#[test]
fn a_mark_is_about_the_layout_that_was_practised() {
    let plan = road();
    let hood = button(&plan, "left hood button");
    let plan = after(
        &plan,
        &[
            Edit::Plan(PlanEdit::DuplicateLayout("Second".into())),
            Edit::Layout(LayoutEdit::Clear),
        ],
    );
    let [first, second] = [plan.layouts[0].id, plan.layouts[1].id];
    let mark = |layout, text: &str| {
        Edit::Record(RecordEdit {
            by: "".into(),
            role: Role::Rider,
            date: None,
            layout,
            matter: Matter::Mark {
                button: hood,
                kind: MarkKind::Hurts,
                text: text.into(),
            },
        })
    };
    assert_eq!(plan.current, second);
    let plan = after(&plan, &[mark(Some(first), "far"), mark(None, "near")]);
    let found = marks(&plan);
    let of: Vec<_> = found
        .iter()
        .map(|m| (m.text.as_str(), m.of.as_slice()))
        .collect();
    assert_eq!(of, [("far", &[first][..]), ("near", &[second][..])]);
    assert!(found[0].holds_for(first) && !found[0].holds_for(second));
    let name = &plan.layouts[0].name;
    let words = found[0].words(&plan);
    assert!(words.ends_with(&format!("(said of “{name}”)")), "{words}");
    // Said anew of the same layout, the later stands.
    let plan = after(&plan, &[mark(Some(first), "much")]);
    let said: Vec<_> = marks(&plan).iter().map(|m| m.text.to_string()).collect();
    assert_eq!(said, ["near", "much"]);
    assert_eq!(
        plan.apply(&mark(Some(LayoutId(999)), "")),
        Err(EditError::NoSuchLayout)
    );
}

fn acceptance(finding: &Finding, role: Role, reason: &str) -> Edit {
    Edit::Plan(PlanEdit::Accept(Acceptance {
        finding: finding.key(),
        reason: reason.into(),
        by: "K.".into(),
        role,
        date: None,
        lapsed: false,
    }))
}

#[test]
fn each_role_accepts_only_what_it_may() {
    let mut counted = [0; 3];
    for demo_id in DemoId::ALL {
        let mut plan = demo(*demo_id).plan;
        plan.accepted.clear();
        for id in [None, Some(LayoutEdit::Clear)] {
            let plan = id.map_or(plan.clone(), |edit| after(&plan, &[Edit::Layout(edit)]));
            for finding in rules::findings(&plan) {
                for role in Role::ALL {
                    let made = plan.apply(&acceptance(&finding, *role, "seen"));
                    assert_eq!(
                        made.is_ok(),
                        finding.acceptable.by(*role),
                        "{role} {}",
                        finding.rule
                    );
                    if finding.acceptable == Acceptable::Never {
                        let words = made.expect_err("it is refused").to_string();
                        let why = rules::rule(finding.rule).map_or("", |rule| rule.why);
                        assert!(
                            words.contains("never be accepted") && words.contains(why),
                            "{words}"
                        );
                    }
                }
                counted[finding.acceptable as usize] += 1;
            }
        }
    }
    assert!(counted.iter().all(|count| *count > 0), "{counted:?}");
}

#[test]
fn demands_that_do_not_meet_come_first() {
    let seen = Some(Evidence {
        source: Source::SeenByClinician,
        date: None,
        worn: None,
        in_one_tap: false,
    });
    let plan = after(
        &road(),
        &[
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, seen)),
            Edit::Rider(RiderEdit::HandDoesAll(Side::Right, None)),
            Edit::Rider(RiderEdit::Contact(
                Side::Left,
                Contact::Index,
                Answer::of(Difficulty::Severe),
            )),
            Edit::Rider(RiderEdit::Ability(
                Side::Right,
                Ability::BrakesLong,
                Answer::of(Difficulty::Moderate),
            )),
            Edit::Rider(RiderEdit::Later(
                Side::Right,
                Answer::of(Later::OneStepHarder),
            )),
        ],
    );
    let page = ReviewPage::of(&plan, Role::Clinician);
    let fits: Vec<Fit> = page.demands.iter().map(|d| d.fit).collect();
    assert!(fits.is_sorted());
    let bad_day = page
        .demands
        .iter()
        .find(|d| d.fit == Fit::NotOnBadDay)
        .expect("one step harder");
    assert_eq!(
        (bad_day.who(), bad_day.asked.as_str()),
        ("right hand".into(), "brakes down a long hill")
    );
    assert!(
        page.sources.by_clinician > 15 && page.sources.not_recorded > 15 && page.sources.told == 0
    );
    // One tap says what a hand does, not what it feels like or how it ends.
    let of_left = page.not_asked.iter().filter(|q| q.starts_with("left hand"));
    let of_left: Vec<&str> = of_left.map(String::as_str).collect();
    assert_eq!(
        of_left,
        ["left hand: pain", "left hand: effort, startle, cold"]
    );
}

/// Not asked is not “as on a usual day”: the page, its print and the load page
/// say so of the hands that work.
#[test]
fn a_bad_day_nobody_asked_about_is_not_told() {
    let unasked = |side| Edit::Rider(RiderEdit::Later(side, Answer::NOT_ASKED));
    let plan = after(&demo(DemoId::Wren).plan, &[unasked(Side::Left)]);
    let page = ReviewPage::of(&plan, Role::Clinician);
    assert!(
        page.stopping_rows()
            .iter()
            .all(|row| row.bad == "Not asked")
    );
    let of_left = || page.demands.iter().filter(|d| d.hand == Side::Left);
    assert!(of_left().count() > 2);
    for demand in of_left() {
        assert!(demand.usual.is_some(), "{demand:?}");
        assert_eq!(demand.bad, None, "{demand:?}");
        assert_ne!(demand.fit, Fit::Within, "{demand:?}");
    }
    assert_eq!(
        plan.rider.hands.bad_day_open().as_deref(),
        Some("bad day not asked")
    );
    let asked = demo(DemoId::Wren).plan;
    assert_eq!(asked.rider.hands.bad_day_open(), None);
    let page = ReviewPage::of(&asked, Role::Clinician);
    assert!(page.stopping_rows().iter().all(|row| row.bad == row.usual));
}

#[test]
fn a_hand_that_rests_is_asked_to_stay_on() {
    let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
    let plan = after(&road(), &[Edit::Rider(rests)]);
    let page = ReviewPage::of(&plan, Role::Clinician);
    let of_right: Vec<_> = page
        .demands
        .iter()
        .filter(|d| d.hand == Side::Right)
        .collect();
    assert_eq!(of_right.len(), 1);
    assert_eq!(of_right[0].asked, Ability::StaysOn.words());
    assert_eq!(of_right[0].fit, Fit::NotAsked);
    assert_eq!(of_right[0].where_words(&plan), "");
    // What is open of it is named thing by thing where some of it is told.
    let steady = Answer::of(Difficulty::None);
    let told = RiderEdit::Ability(Side::Right, Ability::StaysOn, steady);
    let page = ReviewPage::of(&after(&plan, &[Edit::Rider(told)]), Role::Clinician);
    let of_right = page
        .not_asked
        .iter()
        .filter(|q| q.starts_with("right hand"));
    assert_eq!(
        of_right.collect::<Vec<_>>(),
        [
            "right hand: keeps steady, without brushing what is near",
            "right hand: keeping pressed and letting go",
            "right hand: effort, startle, cold"
        ]
    );
}

#[test]
fn how_demands_meet_claims_no_more_than_was_seen() {
    let words = |plan: &Plan| ReviewPage::of(plan, Role::Clinician).demands_words();
    let mut page = ReviewPage::of(&demo(DemoId::Wren).plan, Role::Clinician);
    page.demands
        .iter_mut()
        .for_each(|demand| demand.fit = Fit::Within);
    page.never.clear();
    page.open.retain(|f| f.severity != Severity::MustFix);
    let (seen, all) = (
        page.sources.by_fitter + page.sources.by_clinician,
        page.sources.all(),
    );
    assert_eq!(
        page.demands_words(),
        format!(
            "Nothing that is asked goes beyond what was answered: {seen} of {all} answers were seen."
        )
    );
    let mut must = page.open[0].clone();
    must.severity = Severity::MustFix;
    page.open.push(must);
    assert_eq!(
        page.demands_words(),
        "One by one it meets the answers, but 1 finding below must be fixed."
    );
    let told = Evidence {
        source: Source::Told,
        date: None,
        worn: None,
        in_one_tap: false,
    };
    let all = Edit::Rider(RiderEdit::HandDoesAll(Side::Left, Some(told)));
    let plan = after(&road(), &[all]);
    assert!(words(&plan).ends_with("to look at; they stand first."));
    let sources = ReviewPage::of(&plan, Role::Clinician).sources;
    // The place of the hand is asked singly.
    assert_eq!(sources.in_one_tap + 1, sources.told);
    let one_tap = format!(
        "{} of them in one tap, not asked singly.",
        sources.in_one_tap
    );
    assert!(sources.words().ends_with(&one_tap), "{}", sources.words());
}

#[test]
fn stopping_names_who_brakes_and_who_steers() {
    let plan = demo(DemoId::Wren).plan;
    let page = ReviewPage::of(&plan, Role::Clinician);
    assert!(!page.stopping.is_empty());
    for line in &page.stopping {
        assert!(
            matches!(line.brakes, Who::Hand(pull) if pull.hand == Side::Left),
            "{line:?}"
        );
        assert!(line.steers.starts_with("the same hand steers"), "{line:?}");
    }
    let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
    let plan = after(&road(), &[Edit::Rider(rests)]);
    let page = ReviewPage::of(&plan, Role::Clinician);
    assert!(
        page.stopping
            .iter()
            .any(|line| line.brakes.is_out_of_reach())
    );
    assert!(
        page.off_the_bar
            .iter()
            .any(|f| f.rule == "brake-out-of-reach")
    );
    assert!(
        page.never
            .iter()
            .all(|(f, why)| f.acceptable == Acceptable::Never && !why.is_empty())
    );
    assert!(!page.never.is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn a_page_can_be_made_of_any_plan(plan in plan()) {
        for role in Role::ALL {
            let page = ReviewPage::of(&plan, *role);
            prop_assert!(page.demands.is_sorted_by_key(|demand| demand.fit));
            prop_assert!(page.open.iter().all(|f| f.acceptable.by(Role::Clinician)));
            let private = page.comments.iter().any(|c| c.audience == Audience::RiderAndClinician);
            prop_assert!(!private || *role != Role::Shop);
        }
    }
}

#[test]
fn paper_and_plain_text_say_the_same_in_the_order_of_reading() {
    let mut plan = demo(DemoId::Wren).plan;
    let lever = plan.bike.buttons()[0].0;
    let review = Review {
        changes: vec![(lever, "leave it blank".into())],
        again_on: Date::new(2031, 8, 1),
        again_after: vec![ReviewEvent::Numbness, ReviewEvent::Fall],
        ..seen(Decision::AfterChanges)
    };
    plan = after(&plan, &[reviewed(review)]);
    let page = ReviewPage::of(&plan, Role::Clinician);
    let text = page.to_text(&plan, Date::new(2031, 5, 10));
    let mut from = 0;
    for part in page.parts(&plan, Date::new(2031, 5, 10)) {
        let heading = format!("-- {} --", part.heading);
        let at = text[from..].find(&heading);
        from += at.unwrap_or_else(|| panic!("{heading} is not where it should be: {text}"));
        assert!(!part.blocks.is_empty(), "{heading} says nothing");
        for block in part.blocks {
            if let Block::Table(heads, rows) = block {
                assert!(rows.iter().all(|row| row.len() == heads.len()));
            }
        }
    }
    for words in [
        "K., clinician, 2031-05-09",
        "leave it blank",
        "Review again: on 2031-08-01, or after numbness or a fall",
        "Rider agrees: not asked",
        "Name or record number: ____",
        "Printed on 2031-05-10.",
        "Given for what the plan says now.",
        "A typed name is not a signature.",
        &page.revision_words(),
    ] {
        assert!(text.contains(words), "{words}: {text}");
    }
    assert!(!text.contains("ends this proof"));
    let nickname = plan.rider.nickname.as_str();
    assert!(!nickname.is_empty());
    assert!(text.contains(&format!("Rider, as called in the shop: {nickname}.")));
    // How much a finding weighs stands beside it, wherever it is listed.
    for finding in page.accepted.iter().chain(&page.for_shop) {
        let weighed = format!("{}: {}", capital(finding.severity.words()), finding.message);
        assert!(text.contains(&weighed), "{weighed}");
    }
    assert!(!page.accepted.is_empty());
    // Both days of each wheel and position, once.
    let rows = page.stopping_rows();
    assert_eq!(rows.len() * 2, page.stopping.len());
    assert!(
        rows.iter()
            .all(|row| !row.usual.is_empty() && !row.bad.is_empty())
    );
}

#[test]
fn what_a_comment_may_be_pinned_to_can_be_written() {
    let plan = road();
    let findings = rules::findings(&plan);
    let all = pins(&plan, &findings);
    assert_eq!(all.len(), 3 + plan.bike.buttons().len() + findings.len());
    for (on, words) in all {
        assert!(!words.is_empty() && !words.contains('|'), "{words}");
        let comment = Matter::Comment {
            on,
            audience: Audience::Everyone,
            text: "look".into(),
        };
        assert!(plan.apply(&by(Role::Shop, comment)).is_ok(), "{words}");
    }
}

#[test]
fn findings_stand_where_they_may_be_settled() {
    let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
    let plan = after(&road(), &[Edit::Rider(rests)]);
    let page = ReviewPage::of(&plan, Role::Clinician);
    let all = rules::findings(&plan).len();
    assert_eq!(
        page.open.len() + page.never.len() + page.for_shop.len(),
        all
    );
    let finding = page.open[0].clone();
    let plan = after(&plan, &[acceptance(&finding, Role::Clinician, "seen")]);
    let then = ReviewPage::of(&plan, Role::Clinician);
    assert_eq!(then.accepted, [finding]);
    assert_eq!(then.open.len() + 1, page.open.len());
    assert!(
        then.to_text(&plan, None)
            .contains("Accepted (K., clinician): seen")
    );
}
