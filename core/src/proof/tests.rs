//! Checks as people do them.

use proptest::prelude::*;

use super::{Advice, PROVED, Progress, Proof, ProofState, RoadCard, Run, StepKind, advice, steps};
use crate::catalogue::{DemoId, TemplateId, demo, template};
use crate::edit::{Edit, LayoutEdit, RecordEdit, RiderEdit};
use crate::finding::{Place, Role};
use crate::function::Function;
use crate::history::History;
use crate::plan::Plan;
use crate::record::{Check, Matter, Outcome, Step};
use crate::rider::{Ability, Answer, Difficulty, Side};
use crate::testing::{button, plan};
use crate::vocabulary::Vocabulary;

fn written(role: Role, matter: Matter) -> Edit {
    Edit::Record(RecordEdit {
        by: "Bench 2".into(),
        role,
        date: None,
        layout: None,
        matter,
    })
}

fn done(check: Check, step: &str, outcome: Outcome) -> Edit {
    let role = match check {
        Check::Stand => Role::Shop,
        Check::Rider | Check::FirstRide => Role::Rider,
    };
    written(
        role,
        Matter::Step(Step {
            check,
            step: step.into(),
            outcome,
            what: "".into(),
            measured: None,
        }),
    )
}

#[track_caller]
fn does(history: &mut History, edit: &Edit) {
    if let Err(error) = history.commit(edit) {
        panic!("{error}");
    }
}

/// Every step is OK, and somebody says so.
fn prove(history: &mut History, check: Check) {
    loop {
        let run = Run::of(history.plan(), check);
        let step = match run.progress() {
            Progress::Next(at) => run.steps[at].step.key.clone(),
            Progress::GiveYourWord => PROVED.into(),
            Progress::Proved => return,
            other => panic!("{other:?}"),
        };
        does(history, &done(check, &step, Outcome::Ok));
    }
}

fn refused(plan: &Plan, edit: &Edit) -> String {
    plan.apply(edit).expect_err("it is refused").to_string()
}

fn road() -> History {
    History::new(template(TemplateId::RoadPods).plan("Test"))
}

#[test]
fn brakes_come_first_and_hold_up_all_else() {
    let mut shop = road();
    let first = Run::of(shop.plan(), Check::Stand);
    assert_eq!(first.progress(), Progress::Next(0));
    let kinds: Vec<StepKind> = first.steps.iter().map(|s| s.step.kind).collect();
    let is_brake = |kind: &StepKind| matches!(kind, StepKind::Brake | StepKind::Wheel);
    let brakes = kinds.iter().take_while(|kind| is_brake(kind)).count();
    assert!(brakes >= 6 && !kinds[brakes..].iter().any(is_brake));

    does(
        &mut shop,
        &done(
            Check::Stand,
            &first.steps[0].step.key,
            Outcome::SomethingElse,
        ),
    );
    assert_eq!(
        Run::of(shop.plan(), Check::Stand).progress(),
        Progress::MendBrake(0)
    );
    does(
        &mut shop,
        &done(Check::Stand, &first.steps[0].step.key, Outcome::Ok),
    );
    assert_eq!(
        Run::of(shop.plan(), Check::Stand).progress(),
        Progress::Next(1)
    );
}

#[test]
fn every_button_is_pressed_blank_ones_too() {
    for id in TemplateId::ALL {
        let plan = template(*id).plan("Test");
        let steps = steps(&plan, Check::Stand);
        for (button, ..) in plan.bike.buttons() {
            let pressed: Vec<_> = steps
                .iter()
                .filter(|s| s.key == format!("press:{button}"))
                .collect();
            assert_eq!((pressed.len(), pressed[0].times), (1, 3), "{id} {button}");
            let blank = plan.layout().tap(&plan.bike, button).is_none();
            assert_eq!(pressed[0].kind == StepKind::Blank, blank);
            assert_eq!(pressed[0].expect == "nothing happens", blank);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn steps_have_names_of_their_own(plan in plan()) {
        for check in Check::ALL {
            let steps = steps(&plan, *check);
            prop_assert!(!steps.is_empty());
            let mut keys: Vec<&str> = steps.iter().map(|s| s.key.as_str()).collect();
            keys.sort_unstable();
            let all = keys.len();
            keys.dedup();
            prop_assert_eq!(keys.len(), all);
            for step in &steps {
                prop_assert!(!step.act.is_empty() && !step.expect.is_empty() && step.times > 0);
                prop_assert_eq!(advice(step, Outcome::Ok), &[] as &[Advice]);
                prop_assert!(!advice(step, Outcome::SomethingElse).is_empty());
                prop_assert!(!advice(step, Outcome::Nothing).is_empty());
                prop_assert!(!step.instead().is_empty());
                prop_assert_eq!(step.answers()[0].outcome, Outcome::Ok);
            }
        }
    }

    #[test]
    fn no_card_speaks_of_health(plan in plan()) {
        let card = RoadCard::of(&plan);
        let text = format!("{card:?}").to_lowercase();
        for word in ["rests", "effort", "pain", "difficult", "hand cannot", "splint", "glove"] {
            prop_assert!(!text.contains(word), "{}: {}", word, text);
        }
        prop_assert_eq!(&card, &RoadCard::of(&plan.without_hand_details(None)));
    }
}

#[test]
fn all_of_it_stands_for_one_revision_and_lapses_on_any_change() {
    let mut shop = road();
    assert_eq!(Proof::of(shop.plan()).wired, ProofState::NotYet);
    prove(&mut shop, Check::Stand);
    let proof = Proof::of(shop.plan());
    assert!(proof.wired.stands() && proof.tried == ProofState::NotYet);
    prove(&mut shop, Check::Rider);
    assert!(!Proof::of(shop.plan()).tried.stands());
    prove(&mut shop, Check::FirstRide);
    assert!(Proof::of(shop.plan()).tried.stands());

    let hood = button(shop.plan(), "left hood button");
    does(
        &mut shop,
        &Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights))),
    );
    let proof = Proof::of(shop.plan());
    let ProofState::Lapsed { since, .. } = &proof.wired else {
        panic!("{proof:?}");
    };
    assert_eq!(since.len(), 1);
    assert_eq!(since[0].words, "Left hood button: “lights”, was blank");
    assert_eq!(since[0].places, [Place::Button(hood)]);
    assert!(matches!(proof.tried, ProofState::Lapsed { .. }));

    // The same revision again: what was proved stands again.
    assert!(shop.undo());
    assert!(Proof::of(shop.plan()).wired.stands());
    // Another answer about a hand: the bike is wired as before, the rider is to
    // try again.
    let answer = Answer::of(Difficulty::Severe);
    does(
        &mut shop,
        &Edit::Rider(RiderEdit::Ability(Side::Left, Ability::BrakesHard, answer)),
    );
    let proof = Proof::of(shop.plan());
    assert!(proof.wired.stands() && matches!(proof.tried, ProofState::Lapsed { .. }));
}

#[test]
fn the_last_word_waits_for_every_step() {
    let mut shop = road();
    let word = done(Check::Stand, PROVED, Outcome::Ok);
    assert_eq!(
        refused(shop.plan(), &word),
        "Not every step is OK yet. Do the open ones, or mend and repeat."
    );
    let rider_first = done(Check::Rider, PROVED, Outcome::Ok);
    assert_eq!(
        refused(shop.plan(), &rider_first),
        "The stand check of this revision comes first. Finish it."
    );
    let unknown = done(Check::Stand, "press:99.single", Outcome::Ok);
    assert_eq!(
        refused(shop.plan(), &unknown),
        "This check has no such step. Choose one from its list."
    );
    prove(&mut shop, Check::Stand);
    // A step that goes wrong later takes the word back.
    does(
        &mut shop,
        &done(Check::Stand, "lock", Outcome::SomethingElse),
    );
    let run = Run::of(shop.plan(), Check::Stand);
    assert_eq!(
        (run.progress(), run.is_proved()),
        (Progress::Differs(1), false)
    );
    let differing = run.differing().next().expect("one differs");
    let causes = advice(&differing.step, Outcome::SomethingElse);
    assert_eq!(
        causes[0].cause,
        "A wire, cable or hose is too short or caught."
    );
    // Begun again, nothing counts.
    does(&mut shop, &written(Role::Shop, Matter::Again(Check::Stand)));
    assert_eq!(Run::of(shop.plan(), Check::Stand).count().0, 0);
}

#[test]
fn each_crossover_of_the_ladder_is_walked_both_ways() {
    let steps = steps(&demo(DemoId::Wren).plan, Check::Stand);
    let crossing: Vec<_> = steps
        .iter()
        .filter(|s| s.kind == StepKind::Crossover)
        .collect();
    let keys: Vec<_> = crossing.iter().map(|s| s.key.as_str()).collect();
    assert_eq!(keys, ["cross:up:0", "cross:down:0"]);
    assert!(
        crossing
            .iter()
            .all(|s| s.times == 3 && s.act.contains(" to ") && !s.places.is_empty())
    );
}

#[test]
fn only_the_shop_does_the_stand_check() {
    let step = Step {
        check: Check::Stand,
        step: "lock".into(),
        outcome: Outcome::Ok,
        what: "".into(),
        measured: None,
    };
    let refused = refused(road().plan(), &written(Role::Rider, Matter::Step(step)));
    assert_eq!(
        refused,
        "The stand check is for the shop to write. Hand the plan over, or write a comment."
    );
}

#[test]
fn two_misses_in_one_place_ask_for_another_layout() {
    let mut history = History::new(demo(DemoId::Wren).plan);
    let called = steps(history.plan(), Check::Rider);
    let call = called
        .iter()
        .find(|s| s.kind == StepKind::Call)
        .expect("a function is called");
    does(
        &mut history,
        &done(Check::Rider, &call.key, Outcome::Nothing),
    );
    assert!(
        Run::of(history.plan(), Check::Rider)
            .missed_twice()
            .is_empty()
    );
    does(
        &mut history,
        &done(Check::Rider, &call.key, Outcome::SomethingElse),
    );
    let missed = Run::of(history.plan(), Check::Rider).missed_twice();
    assert_eq!((missed.len(), missed[0].times), (1, 2));
    assert!(call.places.contains(&missed[0].place));
}

#[test]
fn the_card_says_how_to_stop() {
    let card = RoadCard::of(&demo(DemoId::Wren).plan);
    assert_eq!(card.borrowed.as_deref(), Some("BOTH BRAKES LEFT"));
    assert_eq!(
        card.stop,
        ["Left brake-shift lever: front wheel and rear wheel"]
    );
    let both = RoadCard::of(&template(TemplateId::RoadPlain).plan("Test"));
    assert_eq!((both.borrowed, both.stop.len()), (None, 2));
}

/// Every step up to the one named is OK.
fn until(history: &mut History, check: Check, key: &str) {
    loop {
        let run = Run::of(history.plan(), check);
        let Progress::Next(at) = run.progress() else {
            panic!("{:?}", run.progress());
        };
        let step = run.steps[at].step.key.clone();
        if step == key {
            return;
        }
        does(history, &done(check, &step, Outcome::Ok));
    }
}

fn open(plan: &Plan, check: Check) -> Vec<String> {
    let run = Run::of(plan, check);
    let open = run.steps.iter().filter(|step| step.is_open());
    open.map(|step| step.step.key.clone()).collect()
}

#[test]
fn a_brake_that_was_mended_is_squeezed_again() {
    let mut shop = road();
    let lever = shop.plan().bike.brakes.runs[0].lever;
    let wheel = Place::Wheel(shop.plan().bike.brakes.runs[0].wheels[0]).key();
    let [squeeze, gap, hold] = [
        format!("squeeze:{lever}"),
        format!("gap:{lever}"),
        format!("hold:{lever}:{wheel}"),
    ];
    until(&mut shop, Check::Stand, &hold);
    does(&mut shop, &done(Check::Stand, &hold, Outcome::Nothing));
    assert!(!open(shop.plan(), Check::Stand).contains(&squeeze));
    does(&mut shop, &done(Check::Stand, &hold, Outcome::Ok));
    let again = open(shop.plan(), Check::Stand);
    assert!(again.contains(&squeeze) && again.contains(&gap) && !again.contains(&hold));
    for key in [&squeeze, &gap] {
        does(&mut shop, &done(Check::Stand, key, Outcome::Ok));
    }
    let again = open(shop.plan(), Check::Stand);
    assert!(![squeeze, gap, hold].iter().any(|key| again.contains(key)));
}

#[test]
fn a_button_that_was_mended_is_pressed_again_and_no_other() {
    let mut shop = road();
    let paddle = button(shop.plan(), "right outer paddle");
    let press = format!("press:{paddle}");
    until(&mut shop, Check::Stand, &press);
    does(&mut shop, &done(Check::Stand, &press, Outcome::Nothing));
    while let Progress::Next(at) = Run::of(shop.plan(), Check::Stand).progress() {
        let key = steps(shop.plan(), Check::Stand)[at].key.clone();
        does(&mut shop, &done(Check::Stand, &key, Outcome::Ok));
    }
    let run = Run::of(shop.plan(), Check::Stand);
    assert_eq!(run.progress(), Progress::Differs(1));
    assert_eq!(
        run.next_missed(None),
        run.steps.iter().position(|s| s.step.key == press)
    );
    does(&mut shop, &done(Check::Stand, &press, Outcome::Ok));
    let again = open(shop.plan(), Check::Stand);
    assert!(again.contains(&format!("again:{paddle}")) && again.contains(&"power".to_owned()));
    let untouched = |key: &String| {
        key.starts_with("squeeze")
            || (key.starts_with("press:") || key.starts_with("again:"))
                && !key.ends_with(&paddle.to_string())
    };
    assert!(!again.iter().any(untouched), "{again:?}");
    let word = done(Check::Stand, PROVED, Outcome::Ok);
    assert!(refused(shop.plan(), &word).starts_with("Not every step is OK yet."));
    prove(&mut shop, Check::Stand);
    assert!(Proof::of(shop.plan()).wired.stands());
}

#[test]
fn a_gap_that_is_too_small_is_not_ok() {
    let shop = road();
    let steps = steps(shop.plan(), Check::Stand);
    let gap = steps.iter().find(|step| step.measure.is_some());
    let gap = gap.expect("a gap is measured");
    let measured = |mm: f64, outcome| {
        written(
            Role::Shop,
            Matter::Step(Step {
                check: Check::Stand,
                step: gap.key.clone(),
                outcome,
                what: "".into(),
                measured: Some(crate::units::Mm(mm)),
            }),
        )
    };
    assert!(refused(shop.plan(), &measured(19.0, Outcome::Ok)).starts_with("That is less than"));
    assert!(shop.plan().apply(&measured(20.0, Outcome::Ok)).is_ok());
    assert!(
        shop.plan()
            .apply(&measured(19.0, Outcome::SomethingElse))
            .is_ok()
    );
}

#[test]
fn nothing_is_right_where_nothing_is_expected() {
    let mut shop = road();
    let hood = button(shop.plan(), "left hood button");
    does(&mut shop, &Edit::Layout(LayoutEdit::Tap(hood, None)));
    let quiet = |key: String| {
        let steps = steps(shop.plan(), Check::Stand);
        let step = steps
            .iter()
            .find(|step| step.key == key)
            .expect("it is there");
        assert!(step.expects_nothing);
        let answers: Vec<Outcome> = step.answers().iter().map(|a| a.outcome).collect();
        assert_eq!(answers, [Outcome::Ok, Outcome::SomethingElse]);
        assert_eq!(step.answer(Outcome::Ok), "OK: nothing happened");
    };
    quiet(format!("press:{hood}"));
    quiet(format!("again:{hood}"));
}

#[test]
fn two_misses_in_one_place_keep_the_word_back() {
    let mut history = road();
    prove(&mut history, Check::Stand);
    let called = steps(history.plan(), Check::Rider);
    let call = called.iter().find(|s| s.kind == StepKind::Call);
    let call = call.expect("a function is called").key.clone();
    for outcome in [Outcome::Nothing, Outcome::SomethingElse, Outcome::Ok] {
        does(&mut history, &done(Check::Rider, &call, outcome));
    }
    while let Progress::Next(at) = Run::of(history.plan(), Check::Rider).progress() {
        does(
            &mut history,
            &done(Check::Rider, &called[at].key, Outcome::Ok),
        );
    }
    let run = Run::of(history.plan(), Check::Rider);
    assert_eq!(run.progress(), Progress::ChangeLayout);
    assert!(
        refused(history.plan(), &done(Check::Rider, PROVED, Outcome::Ok))
            .starts_with("Something was missed twice in one place.")
    );
    does(
        &mut history,
        &written(Role::Rider, Matter::Again(Check::Rider)),
    );
    prove(&mut history, Check::Rider);
}

#[test]
fn a_first_ride_ends_where_a_brake_is_not_there() {
    let mut history = road();
    prove(&mut history, Check::Stand);
    prove(&mut history, Check::Rider);
    let ride = steps(history.plan(), Check::FirstRide);
    let at = ride.iter().position(|s| s.kind == StepKind::Stop);
    let at = at.expect("stops come first");
    until(&mut history, Check::FirstRide, &ride[at].key);
    does(
        &mut history,
        &done(Check::FirstRide, &ride[at].key, Outcome::Nothing),
    );
    let run = Run::of(history.plan(), Check::FirstRide);
    assert_eq!(run.progress(), Progress::MendBrake(at));
}

#[test]
fn a_bike_that_is_not_ready_is_not_given_to_the_rider() {
    let mut shop = History::new(demo(DemoId::Dipper).plan);
    prove(&mut shop, Check::Stand);
    let first = super::comes_first(shop.plan(), Check::Rider);
    assert_eq!(
        first,
        Some("The sheet says NOT READY. Mend what must be fixed, then do the stand check again.")
    );
    let word = refused(shop.plan(), &done(Check::Rider, PROVED, Outcome::Ok));
    assert_eq!(Some(word.as_str()), first);
}

#[test]
fn steps_of_an_earlier_revision_are_counted_and_no_longer_count() {
    let mut shop = road();
    let hood = button(shop.plan(), "left hood button");
    until(&mut shop, Check::Stand, "lock");
    let before = Run::of(shop.plan(), Check::Stand).count().0;
    does(
        &mut shop,
        &Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights))),
    );
    let run = Run::of(shop.plan(), Check::Stand);
    assert_eq!((run.count().0, run.outdated), (0, before));
}

#[test]
fn how_it_stands_is_told_in_words() {
    let mut shop = road();
    assert_eq!(
        Proof::of(shop.plan()).words(),
        [
            "Wired and working: not yet.",
            "Tried by the rider: not yet."
        ]
    );
    prove(&mut shop, Check::Stand);
    let code = Proof::of(shop.plan()).code;
    let revision = shop.plan().revision;
    assert_eq!(
        Proof::of(shop.plan()).words()[0],
        format!("Wired and working: yes, for revision {revision} ({code}), says Bench 2.")
    );
    let hood = button(shop.plan(), "left hood button");
    does(
        &mut shop,
        &Edit::Layout(LayoutEdit::Tap(hood, Some(Function::Lights))),
    );
    assert_eq!(
        Proof::of(shop.plan()).words()[0],
        format!(
            "Wired and working: no longer; it was for revision {revision} ({code}), and the plan changed since."
        )
    );
}
