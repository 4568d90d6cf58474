//! Lessons as riders take them.

use proptest::prelude::*;

use super::{
    Answer, Gearing, KeySet, Lesson, NewsKind, Pace, Pressed, Report, Session, Switch, total,
};
use crate::catalogue::{DemoId, TemplateId, demo, template};
use crate::coverage::Via;
use crate::edit::{Edit, LayoutEdit, RecordEdit};
use crate::finding::Role;
use crate::function::Function;
use crate::gears::Rpm;
use crate::layout::Hold;
use crate::plan::Plan;
use crate::record::{Matter, Practised};
use crate::rider::Side;
use crate::testing::{button, plan};
use crate::vocabulary::Vocabulary;

fn meant(lesson: &Lesson) -> Pressed {
    let call = lesson.call().expect("a call is open");
    match (call.answers[0], call.keep) {
        (Via::Tap(id), false) => Pressed::Tap(id),
        (Via::Tap(id), true) | (Via::Hold(id), _) => Pressed::Held(id),
        (Via::Chord(chord), _) => Pressed::Both(chord.first, chord.second),
    }
}

fn lesson(plan: &Plan) -> Lesson {
    Lesson::new(plan, plan.current, Pace::NoHurry, 7).expect("something can be practised")
}

fn road() -> Plan {
    template(TemplateId::RoadPlain).plan("Test")
}

#[test]
fn it_begins_with_one_button_and_no_clock() {
    let mut lesson = lesson(&road());
    assert_eq!((lesson.pace().seconds(), lesson.buttons().len()), (None, 1));
    let first = lesson.call().expect("a call is open").function;
    assert_eq!(first, Function::RearEasier);
    let mut sizes = Vec::new();
    for _ in 0..40 {
        assert_eq!(lesson.press(meant(&lesson)), Answer::RightFirst);
        sizes.push(lesson.buttons().len());
    }
    assert_eq!(&sizes[..4], &[1, 1, 2, 2]);
    assert_eq!((sizes.is_sorted(), sizes[39]), (true, 4));
    let result = lesson.result();
    // The first call of each of the four buttons shows the button.
    assert_eq!(
        (result.calls, result.right_first, result.wrong),
        (36, 36, 0)
    );
    assert_eq!(result.presses.iter().map(|(_, n)| n).sum::<u32>(), 40);
}

#[test]
fn mix_ups_come_back_and_are_told() {
    let plan = road();
    let mut lesson = lesson(&plan);
    while lesson.buttons().len() < 4 {
        lesson.press(meant(&lesson));
    }
    while lesson.call().expect("a call is open").function != Function::RearHarder {
        lesson.press(meant(&lesson));
    }
    let outer = button(&plan, "right outer paddle");
    let inner = button(&plan, "right inner paddle");
    let wrong = lesson.press(Pressed::Tap(outer));
    assert_eq!(
        wrong,
        Answer::Wrong {
            pressed: vec![outer],
            does: Some(Function::RearEasier)
        }
    );
    assert_eq!(lesson.press(Pressed::Tap(inner)), Answer::Right);
    let mut called = Vec::new();
    for _ in 0..8 {
        called.push(lesson.call().expect("a call is open").function);
        lesson.press(meant(&lesson));
    }
    for both in [Function::RearHarder, Function::RearEasier] {
        assert!(
            called.iter().filter(|f| **f == both).count() >= 2,
            "{called:?}"
        );
    }
    let mixed = lesson.result().mixed_up[0];
    assert_eq!(
        (mixed.wanted, mixed.pressed, mixed.times),
        (inner, outer, 1)
    );
}

#[test]
fn a_call_first_pressed_wrong_is_not_right_first_even_when_shown() {
    let plan = road();
    let mut lesson = lesson(&plan);
    let inner = button(&plan, "right inner paddle");
    assert!(lesson.shows().is_some());
    for _ in 0..2 {
        assert!(matches!(
            lesson.press(Pressed::Tap(inner)),
            Answer::Wrong { .. }
        ));
    }
    // It counts at once: the lesson may be stopped here.
    let counted = |lesson: &Lesson| {
        let result = lesson.result();
        (result.calls, result.right_first, result.wrong)
    };
    assert_eq!(counted(&lesson), (1, 0, 2));
    assert_eq!(lesson.press(meant(&lesson)), Answer::Right);
    assert_eq!(counted(&lesson), (1, 0, 2));
    assert_eq!(lesson.press(meant(&lesson)), Answer::RightFirst);
    assert_eq!(counted(&lesson), (2, 1, 2));
}

#[test]
fn what_was_found_says_no_side() {
    let plan = road();
    let outer = Switch::Button(button(&plan, "right outer paddle"));
    let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 7).expect("it can");
    session.take_news();
    session.press(outer);
    let news = session.take_news();
    assert_eq!(
        (news[0].kind, news[0].words.as_str()),
        (NewsKind::Right, "Found: easier.")
    );
}

#[test]
fn letting_go_is_called_for_where_holds_repeat() {
    let plan = road();
    let outer = button(&plan, "right outer paddle");
    let hold = Hold::Repeats(crate::cockpit::HoldRun::Cogs(3));
    let plan = plan
        .apply(&Edit::Layout(LayoutEdit::Hold(outer, Some(hold))))
        .expect("a hold is possible");
    let mut lesson = lesson(&plan);
    let mut kept = 0;
    for _ in 0..40 {
        let call = lesson.call().expect("a call is open").clone();
        if call.keep {
            assert!(call.words.contains("let go"), "{}", call.words);
            assert_eq!(lesson.press(Pressed::Tap(outer)), Answer::OtherWay);
            assert_eq!(lesson.press(Pressed::Held(outer)), Answer::Right);
            kept += 1;
        } else {
            lesson.press(meant(&lesson));
        }
    }
    assert!(kept > 1, "{kept}");
    assert_eq!(lesson.result().wrong, 0);
}

#[test]
fn a_stop_is_offered_after_three_minutes() {
    let lesson = lesson(&road());
    assert!(!lesson.offers_stop(179) && lesson.offers_stop(180));
}

#[test]
fn shifting_before_the_stop_is_taught() {
    let mut lesson = lesson(&demo(DemoId::Wren).plan);
    let mut stops = 0;
    for _ in 0..30 {
        let call = lesson.call().expect("a call is open");
        stops += usize::from(call.words.contains("before you stop"));
        lesson.press(meant(&lesson));
    }
    assert!(stops > 2, "{stops}");
}

fn by_rider(matter: Matter) -> Edit {
    Edit::Record(RecordEdit {
        by: "".into(),
        role: Role::Rider,
        date: None,
        layout: None,
        matter,
    })
}

#[test]
fn sessions_are_kept_for_each_layout() {
    let plan = demo(DemoId::Wren).plan;
    let [left, inner] =
        ["left outer paddle", "left inner paddle"].map(|place| button(&plan, place));
    let session = Practised {
        layout: plan.current,
        calls: 10,
        right_first: 8,
        wrong: 2,
        late: Some(1),
        presses: vec![(left, 7), (inner, 5)],
        mixed_up: vec![crate::record::MixUp {
            wanted: left,
            pressed: inner,
            times: 2,
        }],
    };
    assert_eq!(total(&plan, plan.current), None);
    let kept = [
        by_rider(Matter::Practice(session.clone())),
        by_rider(Matter::Practice(session)),
    ]
    .iter()
    .try_fold(plan.clone(), |plan, edit| plan.apply(edit))
    .expect("sessions are kept");
    let sum = total(&kept, plan.current).expect("there are sessions");
    assert_eq!(
        (
            sum.sessions,
            sum.calls,
            sum.right_first,
            sum.wrong,
            sum.sent
        ),
        (2, 20, 16, 4, false)
    );
    assert_eq!(
        sum.by_contact.iter().map(|(.., times)| times).sum::<u32>(),
        24
    );
    assert!(sum.by_contact.iter().all(|(hand, ..)| *hand == Side::Left));
    assert_eq!(sum.mixed_up[0].times, 4);
    let ids: Vec<_> = kept.record.entries.iter().map(|entry| entry.id).collect();
    let sent = ids.into_iter().map(|id| by_rider(Matter::Sent(id)));
    let sent = sent
        .into_iter()
        .try_fold(kept, |plan, edit| plan.apply(&edit))
        .expect("they can be sent");
    assert!(total(&sent, plan.current).expect("there are sessions").sent);
}

#[test]
fn gears_answer_as_on_the_bike() {
    let plan = demo(DemoId::Wren).plan;
    let [down, up] = ["left outer paddle", "left inner paddle"].map(|place| button(&plan, place));
    let mut gearing = Gearing::of(&plan, plan.layout()).expect("the teeth are known");
    let start = gearing.gear();
    let harder = gearing
        .press(&plan, Pressed::Tap(up))
        .expect("it is not at an end");
    assert_eq!((gearing.gear(), harder.to), (harder.to, gearing.gear()));
    assert_ne!(gearing.gear(), start);
    gearing.press(&plan, Pressed::Tap(down));
    assert!(gearing.speed(Rpm(80.0)).is_some() && !gearing.words().is_empty());
    // To the end, and then nothing moves.
    for _ in 0..40 {
        gearing.press(&plan, Pressed::Tap(down));
    }
    assert_eq!(gearing.press(&plan, Pressed::Tap(down)), None);
    let blank = button(&plan, "right hood button");
    assert_eq!(gearing.press(&plan, Pressed::Tap(blank)), None);
}

#[test]
fn keys_lie_under_the_fingers_and_can_be_changed() {
    let plan = road();
    let outer = Switch::Button(button(&plan, "right outer paddle"));
    let count = plan.bike.buttons().len() + 2;
    for (hand, home) in [
        (Side::Left, ["KeyF", "KeyD"]),
        (Side::Right, ["KeyJ", "KeyK"]),
    ] {
        let mut set = KeySet::for_hand(&plan, hand);
        // Two levers: one on the space bar, where it is found without looking.
        assert_eq!(set.all().len(), count);
        assert!(set.switch("Space").is_some_and(Switch::is_brake));
        assert!(home.iter().any(|key| set.switch(key).is_some()));
        let other = set.all()[0].0;
        let (key, left) = (
            set.key(other).expect("it has one"),
            set.key(outer).expect("it has one"),
        );
        assert!(set.put(outer, key) && !set.put(outer, "Escape"));
        assert_eq!((set.switch(key), set.key(other)), (Some(outer), Some(left)));
        assert_eq!(set.all().len(), count);
    }
}

/// Presses and lets go what a session lights.
fn follow(session: &mut Session) {
    for switch in session.shown().lit {
        session.press(switch);
        session.advance(0.05);
        session.let_go(switch);
    }
}

#[test]
fn a_session_starts_with_the_button_shown_and_waits_for_it() {
    let plan = road();
    let outer = Switch::Button(button(&plan, "right outer paddle"));
    let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 7).expect("it can");
    assert_eq!(session.shown().lit, [outer]);
    // That one, and the two brakes.
    assert_eq!(session.shown().called.len(), 3);
    assert_eq!(session.take_news().len(), 1);
    for _ in 0..600 {
        session.advance(0.1);
    }
    let waiting = session.shown();
    assert!(
        waiting.waits && session.take_news().is_empty(),
        "{waiting:?}"
    );
    let view = session.view();
    session.advance(0.1);
    assert_eq!(session.view(), view);
    let gear = waiting.gear.expect("the teeth are known");
    session.press(outer);
    assert_ne!(session.shown().gear, Some(gear));
    assert_eq!(session.shown().down, [outer]);
    session.let_go(outer);
    session.advance(0.2);
    assert_ne!(session.view(), view);
}

#[test]
fn a_stop_wants_the_shift_then_the_brake_then_letting_go() {
    let plan = demo(DemoId::Wren).plan;
    let brake = Switch::all(&plan.bike).into_iter().find(|s| s.is_brake());
    let brake = brake.expect("it has a lever");
    let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 3).expect("it can");
    for _ in 0..400 {
        if session.shown().headline.contains("before you stop") {
            break;
        }
        let way = session.lesson().call().expect("a call").answers[0];
        for id in way.buttons() {
            session.press(Switch::Button(id));
        }
        for id in way.buttons() {
            session.let_go(Switch::Button(id));
        }
        session.advance(0.25);
    }
    // Braking first is told.
    session.press(brake);
    assert!(session.shown().is_wrong);
    session.let_go(brake);
    for id in session.lesson().call().expect("a call").answers[0].buttons() {
        session.press(Switch::Button(id));
        session.let_go(Switch::Button(id));
    }
    for _ in 0..100 {
        session.advance(0.1);
    }
    let braking = session.shown();
    assert!(braking.waits && braking.lit.contains(&brake), "{braking:?}");
    // A tap is told from a pull that is kept.
    session.take_news();
    session.press(brake);
    session.advance(0.1);
    session.let_go(brake);
    let tapped = session.shown();
    assert!(
        tapped.is_wrong && tapped.hint.starts_with("Hold it"),
        "{tapped:?}"
    );
    assert_eq!(session.take_news().len(), 1);
    session.press(brake);
    assert!(!session.shown().is_wrong);
    for _ in 0..100 {
        session.advance(0.1);
    }
    let standing = session.shown();
    assert_eq!((standing.speed, standing.lit.len()), (0, 0));
    assert_eq!(standing.hint, "Braked: you stand.");
    let news = session.take_news();
    let kinds: Vec<NewsKind> = news.iter().map(|item| item.kind).collect();
    assert_eq!(kinds, [NewsKind::Right, NewsKind::Call]);
    assert_eq!(news[0].words, standing.hint);
    assert!(standing.headline.contains("Let the brake go"));
    session.let_go(brake);
    session.advance(0.25);
    assert_eq!(session.shown().headline, "Ride on");
}

#[test]
fn a_hold_shifts_on_until_it_is_let_go() {
    let plan = road();
    let outer = button(&plan, "right outer paddle");
    let hold = Hold::Repeats(crate::cockpit::HoldRun::ToEnd);
    let plan = plan
        .apply(&Edit::Layout(LayoutEdit::Hold(outer, Some(hold))))
        .expect("a hold is possible");
    let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 7).expect("it can");
    let mut gears = vec![session.shown().gear];
    session.press(Switch::Button(outer));
    for _ in 0..60 {
        session.advance(1.0 / 60.0);
        gears.push(session.shown().gear);
    }
    session.let_go(Switch::Button(outer));
    let last = session.shown().gear;
    session.advance(0.25);
    assert_eq!(session.shown().gear, last);
    gears.dedup();
    // One at once, and one each 200 ms after half a second.
    assert_eq!(gears.len(), 1 + 1 + 3, "{gears:?}");
    // Only a tap was wanted.
    assert!(session.shown().is_wrong);
}

#[test]
fn lateness_counts_only_when_asked_for() {
    let plan = road();
    for (asked, late) in [(false, None), (true, Some(1))] {
        let mut session = Session::new(&plan, plan.current, Pace::AsOnTheRoad, 7).expect("it can");
        session.lesson_mut().count_late(asked);
        for _ in 0..100 {
            session.advance(0.1);
        }
        // The road does not wait; the call does.
        assert!(!session.shown().waits);
        follow(&mut session);
        assert_eq!(session.result().late, late);
    }
}

#[test]
fn two_buttons_together_also_one_after_the_other() {
    let plan = template(TemplateId::RoadOnePaddle).plan("Test");
    let chord = *plan
        .layout()
        .chords
        .first()
        .expect("the front is on a chord");
    let both = [chord.first, chord.second].map(Switch::Button);
    for gathered in [false, true] {
        let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 7).expect("it can");
        assert!(session.has_chords());
        let gear = session.shown().gear;
        session.press_together(gathered);
        session.press(both[0]);
        if gathered {
            session.let_go(both[0]);
            session.advance(0.25);
            session.advance(0.25);
        }
        assert_eq!(session.shown().gear, gear);
        session.press(both[1]);
        assert!(!session.presses_together());
        let teeth = |gear: Option<String>| {
            gear.unwrap_or_default()
                .split('×')
                .next()
                .map(str::to_owned)
        };
        assert_ne!(teeth(session.shown().gear), teeth(gear));
    }
}

#[test]
fn a_lesson_goes_back_to_a_gear_that_suits() {
    use crate::gears::Kmh;
    let plan = road();
    let mut gearing = Gearing::of(&plan, plan.layout()).expect("the teeth are known");
    let harder = button(&plan, "right inner paddle");
    for _ in 0..12 {
        gearing.press(&plan, Pressed::Tap(harder));
    }
    let hardest = gearing.gear();
    gearing.make_room(Function::RearEasier, Kmh(40.0));
    assert_eq!(gearing.gear(), hardest);
    // No harder one is left.
    gearing.make_room(Function::RearHarder, Kmh(40.0));
    assert_ne!(gearing.gear(), hardest);
    // The legs would hardly turn.
    for _ in 0..12 {
        gearing.press(&plan, Pressed::Tap(harder));
    }
    gearing.make_room(Function::RearEasier, Kmh(8.0));
    let cadence = gearing.cadence(Kmh(8.0)).expect("the wheel is known");
    assert!((40.0..110.0).contains(&cadence.0), "{cadence}");
}

#[test]
fn one_side_is_shown_where_the_other_has_nothing() {
    use crate::cockpit::BarSide;
    let both = road();
    assert_eq!(Switch::one_side(&both.bike, both.layout()), None);
    for (id, side) in [
        (TemplateId::SingleSidedLeft, BarSide::Left),
        (TemplateId::SingleSidedRight, BarSide::Right),
    ] {
        let plan = template(id).plan("Test");
        assert_eq!(Switch::one_side(&plan.bike, plan.layout()), Some(side));
        let sheet = crate::drawing::Sheet::for_width(600.0);
        let whole = crate::drawing::Picture::of(&plan.bike, sheet);
        let live = Switch::live(&plan.bike, plan.layout());
        let owners: Vec<_> = live.into_iter().map(Switch::owner).collect();
        let part = whole.clone().around(&owners);
        let width = |words: &str| -> f64 {
            words
                .split(' ')
                .nth(2)
                .expect("a width")
                .parse()
                .expect("a number")
        };
        assert!(width(&part.view_box()) < 0.6 * width(&whole.view_box()));
    }
}

#[test]
fn skipping_leads_to_the_next_call() {
    let plan = road();
    let mut session = Session::new(&plan, plan.current, Pace::NoHurry, 7).expect("it can");
    for _ in 0..5 {
        session.skip();
        assert!(session.shown().waits);
        for id in session.lesson().call().expect("a call").answers[0].buttons() {
            session.press(Switch::Button(id));
            session.let_go(Switch::Button(id));
        }
        for lever in Switch::all(&plan.bike)
            .into_iter()
            .filter(|s| s.is_brake())
            .take(1)
        {
            session.skip();
            session.press(lever);
            session.skip();
            session.let_go(lever);
        }
    }
}

#[test]
fn the_report_says_what_was_mixed_up() {
    let plan = demo(DemoId::Wren).plan;
    let [left, inner] =
        ["left outer paddle", "left inner paddle"].map(|place| button(&plan, place));
    let session = Practised {
        layout: plan.current,
        calls: 10,
        right_first: 8,
        wrong: 2,
        late: None,
        presses: vec![(left, 7), (inner, 5)],
        mixed_up: vec![crate::record::MixUp {
            wanted: left,
            pressed: inner,
            times: 2,
        }],
    };
    let report = Report::of(&plan, &session);
    assert_eq!(report.right_first, "8 of 10");
    assert!(
        report.confuses[0].contains("left inner paddle"),
        "{report:?}"
    );
    assert!(report.confuses[0].contains("2 times"), "{report:?}");
    assert_eq!(report.buttons.len(), 2);
    assert!(
        report
            .contacts
            .iter()
            .all(|line| line.0.starts_with("left ")),
        "{report:?}"
    );
    assert_eq!(report.late, None);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_presses_are_taken(plan in plan(), presses in prop::collection::vec((0..40usize, 0..3u8), 0..80), seed in any::<u64>()) {
        let buttons: Vec<_> = plan.bike.buttons().iter().map(|(id, ..)| *id).collect();
        let Some(mut lesson) = Lesson::new(&plan, plan.current, Pace::AsOnTheRoad, seed) else {
            return Ok(());
        };
        let mut again = Lesson::new(&plan, plan.current, Pace::AsOnTheRoad, seed).expect("as before");
        for (at, how) in presses {
            let pressed = match (how, buttons.get(at)) {
                (0, Some(id)) => Pressed::Tap(*id),
                (1, Some(id)) => Pressed::Held(*id),
                (2, Some(id)) => Pressed::Both(*id, buttons[0]),
                _ => meant(&lesson),
            };
            let before = lesson.result().clone();
            let answer = lesson.press(pressed);
            prop_assert_eq!(&answer, &again.press(pressed));
            let after = lesson.result();
            // A call counts once, with its first press.
            let counts = !matches!(answer, Answer::Right | Answer::Nothing);
            prop_assert!(after.calls - before.calls <= u32::from(counts));
            prop_assert_eq!(after.wrong - before.wrong, u32::from(matches!(answer, Answer::Wrong { .. })));
            prop_assert!(after.right_first <= after.calls);
        }
        // Whatever was pressed, a rider who is right comes on.
        for _ in 0..600 {
            lesson.press(meant(&lesson));
        }
        let practised = lesson.result();
        let kept = plan.apply(&by_rider(Matter::Practice(practised.clone())));
        prop_assert!(kept.is_ok());
        prop_assert!(total(&kept.expect("it is kept"), plan.current).is_some());
    }

    #[test]
    fn any_session_goes_on(plan in plan(), acts in prop::collection::vec((0..40usize, any::<bool>(), 0.0..0.3), 0..120), pace in prop::sample::select(Pace::ALL), seed in any::<u64>()) {
        let Some(mut session) = Session::new(&plan, plan.current, pace, seed) else {
            return Ok(());
        };
        let all = Switch::all(&plan.bike);
        for (at, down, seconds) in acts {
            if let Some(switch) = all.get(at) {
                match down {
                    true => session.press(*switch),
                    false => session.let_go(*switch),
                }
            }
            session.advance(seconds);
            let view = session.view();
            prop_assert!(!view.road.contains("NaN") && !view.road.is_empty());
            prop_assert!(!session.shown().headline.is_empty());
        }
        session.release();
        prop_assert!(session.shown().down.is_empty());
    }

    #[test]
    fn every_button_has_a_key_of_its_own(plan in plan()) {
        for hand in Side::ALL {
            let set = KeySet::for_hand(&plan, *hand);
            let mut keys: Vec<_> = set.all().iter().map(|(_, key)| key).collect();
            keys.sort_unstable();
            keys.dedup();
            let all = Switch::all(&plan.bike);
            prop_assert_eq!(keys.len(), all.len().min(super::MOVABLE.len()));
            for switch in all {
                prop_assert_eq!(Switch::find(&plan.bike, &switch.key()), Some(switch));
            }
        }
    }
}
