use super::*;
use crate::catalogue::{TemplateId, template};
use crate::edit::{LayoutEdit, PlanEdit, RideEdit, RiderEdit};
use crate::ride::compare::{against_known, differences};
use crate::ride::export;
use crate::ride::kept::{KnownRide, Remembered};
use crate::ride::measure::{Measure, Who};
use crate::ride::page::{LoadPage, tables};
use crate::ride::profile::{Axis, Profile, STRIPS};
use crate::ride::road::RoadKind;
use crate::rider::{Answer, HandPlace, Later, Side};

fn after(plan: &Plan, edits: &[Edit]) -> Plan {
    edits.iter().fold(plan.clone(), |plan, edit| {
        plan.apply(edit).expect("the edit is possible")
    })
}

/// All shifting and braking with the left hand; the right one rests.
fn one_handed() -> Plan {
    after(
        &template(TemplateId::RoadPlain).plan("Over the pass"),
        &[
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
        ],
    )
}

fn study(plan: &Plan, kind: RoadKind, subjects: Vec<Subject>) -> Study {
    let road = Arc::new(Road::built_in(kind));
    Study::new(road, plan.rides.habits, subjects).expect("it can be ridden")
}

fn outcomes(plan: &Plan, kind: RoadKind, subjects: Vec<Subject>) -> Vec<Outcome> {
    let mut study = study(plan, kind, subjects);
    assert!(study.advance(usize::MAX));
    study.outcomes()
}

fn own(plan: &Plan) -> Subject {
    Subject::layout(plan, plan.current).expect("it is there")
}

#[test]
fn a_study_rides_each_subject_on_both_days_under_all_conditions() {
    let plan = one_handed();
    let ladder = Subject::under(&plan, ShiftPlanKind::Ladder).expect("it has a front");
    let outcomes = outcomes(&plan, RoadKind::Town, vec![own(&plan), ladder]);
    let of: Vec<(&str, Day)> = outcomes
        .iter()
        .map(|o| (o.subject.name.as_str(), o.day))
        .collect();
    let (first, second) = (
        plan.layout().name.as_str(),
        format!("{}, ladder", plan.layout().name),
    );
    assert_eq!(
        of,
        [
            (first, Day::Usual),
            (first, Day::Bad),
            (&second, Day::Usual),
            (&second, Day::Bad),
        ]
    );
    for outcome in &outcomes {
        assert!(outcome.is_finished());
        let span = Measure::PressesPerHour.span(Who::Hand(Side::Left), outcome);
        assert!(span.low <= span.told && span.told <= span.high && span.low < span.high);
        assert!(span.low > 0.0);
    }
}

#[test]
fn a_study_in_slices_comes_to_the_same_and_can_be_stopped() {
    let plan = one_handed();
    let whole = outcomes(&plan, RoadKind::BikePath, vec![own(&plan)]);
    let mut sliced = study(&plan, RoadKind::BikePath, vec![own(&plan)]);
    let (mut slices, mut last) = (0, 0.0);
    while !sliced.advance(3000) {
        assert!(sliced.progress() >= last && sliced.progress() < 1.0);
        last = sliced.progress();
        slices += 1;
        if slices == 1 {
            let partial = sliced.outcomes();
            assert_eq!(partial.len(), 1);
            assert!(!partial[0].is_finished() && partial[0].ride.distance > 1000.0);
            assert_eq!(Remembered::of(&plan, &partial), None);
        }
    }
    assert!(slices > 10);
    assert_eq!(sliced.outcomes(), whole);
}

#[test]
fn what_cannot_be_ridden_says_why() {
    let plan = one_handed();
    let road = Arc::new(Road::built_in(RoadKind::Town));
    let new = |n: usize| {
        let subjects = vec![own(&plan); n];
        Study::new(Arc::clone(&road), plan.rides.habits, subjects).map(|_| ())
    };
    assert_eq!(new(0), Err(RideError::Nothing));
    assert_eq!(new(MOST_SUBJECTS + 1), Err(RideError::TooMany));
    assert!(Subject::layout(&plan, LayoutId(99)).is_err());
    assert!(Subject::under(&plan, ShiftPlanKind::SingleRing).is_err());
}

#[test]
fn load_that_moves_to_the_other_hand_is_said() {
    let both = after(
        &template(TemplateId::RoadPlain).plan("Both"),
        &[
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
            Edit::Rider(RiderEdit::HandDoesAll(Side::Right, None)),
        ],
    );
    let left = after(
        &both,
        &[Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left))],
    );
    let found = outcomes(&both, RoadKind::Rolling, vec![own(&both), own(&left)]);
    let sentences = differences(&found[0], &found[2]);
    let has = |part: &str| sentences.iter().any(|sentence| sentence.contains(part));
    assert!(has("Right hand: presses fall from about"), "{sentences:?}");
    assert!(has("to none an hour."), "{sentences:?}");
    assert!(has("Left hand: presses rise from about"), "{sentences:?}");
    assert!(
        has("Work moves from the right hand to the left hand."),
        "{sentences:?}"
    );
    let same = differences(&found[0], &found[0]);
    assert_eq!(
        same.iter().filter(|s| !s.contains("still come")).count(),
        usize::from(same.len() == 1)
    );
}

#[test]
fn a_bad_day_shows_what_can_no_longer_be_called_up() {
    let tired = RiderEdit::Later(Side::Left, crate::rider::Answer::of(Later::DoNotCountOnIt));
    let plan = after(&one_handed(), &[Edit::Rider(tired)]);
    let found = outcomes(&plan, RoadKind::Town, vec![own(&plan)]);
    assert!(found[0].ride.load.presses() > 0);
    assert_eq!(found[1].ride.load.presses(), 0);
    assert!(found[1].ride.load.missing > 0 && found[1].ride.load.unbraked > 0);
}

#[test]
fn a_ride_is_remembered_until_the_plan_changes() {
    let plan = one_handed();
    let found = outcomes(&plan, RoadKind::Rolling, vec![own(&plan)]);
    let ride = Remembered::of(&plan, &found).expect("it was of this plan");
    let plan = after(&plan, &[Edit::Ride(RideEdit::Remember(ride.clone()))]);
    assert!(!ride.is_stale(&plan), "remembering itself changes nothing");
    let named = after(&plan, &[Edit::Plan(PlanEdit::Name("Another name".into()))]);
    assert!(!ride.is_stale(&named), "nor does a name");
    for edit in [
        Edit::Layout(LayoutEdit::Mirror),
        Edit::Rider(RiderEdit::Later(
            Side::Left,
            crate::rider::Answer::of(Later::OneStepHarder),
        )),
        Edit::Ride(RideEdit::Road(crate::ride::kept::RoadChoice::BuiltIn(
            RoadKind::Town,
        ))),
        Edit::Ride(RideEdit::Habit(
            crate::ride::habits::Habit::LevelPower,
            Some(99),
        )),
    ] {
        assert!(
            ride.is_stale(&after(&plan, std::slice::from_ref(&edit))),
            "{edit:?}"
        );
    }
    // The same rides give the same results.
    let again = outcomes(&plan, RoadKind::Rolling, vec![own(&plan)]);
    assert_eq!(Remembered::of(&plan, &again), Some(ride));
}

#[test]
fn a_remembered_ride_is_kept_in_the_file_and_rules_speak_of_it() {
    let plan = one_handed();
    let found = outcomes(&plan, RoadKind::Rolling, vec![own(&plan)]);
    let ride = Remembered::of(&plan, &found).expect("it was of this plan");
    let known = KnownRide::of("Sunday loop".into(), &found[0]);
    let plan = after(
        &plan,
        &[
            Edit::Ride(RideEdit::Remember(ride)),
            Edit::Ride(RideEdit::Known(Some(known))),
        ],
    );
    let text = crate::document::write(&plan);
    let opened = crate::document::read(&text).expect("it opens").plan;
    assert_eq!(opened, plan);
    let speaks = crate::rules::findings(&opened)
        .iter()
        .any(|f| f.rule == "more-presses-than-fine");
    assert!(
        speaks,
        "at the upper end of the range there are more than as told"
    );
    let bare = after(&plan, &[Edit::Plan(PlanEdit::RemoveHandDetails(None))]);
    assert!(bare.rides.remembered.is_empty() && bare.rides.known.is_none());
}

#[test]
fn demands_are_multiples_of_the_ride_that_was_fine() {
    let plan = one_handed();
    let found = outcomes(&plan, RoadKind::Rolling, vec![own(&plan)]);
    let known = KnownRide::of("Sunday loop".into(), &found[0]);
    let same = against_known(&known, &found[0]);
    assert!(
        same[0].starts_with("Left hand: presses an hour 0."),
        "{same:?}"
    );
    assert!(same[0].contains("–1."), "{same:?}");
    let town = outcomes(&plan, RoadKind::Town, vec![own(&plan)]);
    let times = Measure::PressesPerHour
        .span(Who::Hand(Side::Left), &town[0])
        .told
        / f64::from(known.left.presses_per_hour);
    assert!(times > 1.3, "{times}");
}

#[test]
fn the_page_and_the_tables_say_what_the_ride_says() {
    let plan = one_handed();
    let ladder = Subject::under(&plan, ShiftPlanKind::Ladder).expect("it has a front");
    let road = Road::built_in(RoadKind::Town);
    let found = outcomes(&plan, RoadKind::Town, vec![own(&plan), ladder]);
    let page = LoadPage::of(&plan, &road, &found);
    let text = page.to_text();
    for part in [
        "== Load == Over the pass, revision 1",
        "Town with stops: 10.0 km",
        "Power on the level: not asked, taken as 75 W",
        "left hand | left",
        "right hand",
        "No limit for work is used",
        "A planning aid.",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let span = Measure::Presses.span(Who::Hand(Side::Left), &found[0]);
    let row = page.tables[0]
        .rows
        .iter()
        .find(|row| row[0] == "presses in all");
    let range = format!(
        "{}–{}",
        crate::ride::measure::rounded(span.low),
        crate::ride::measure::rounded(span.high)
    );
    assert_eq!(row.expect("it is told")[1], range);
    assert_eq!(page.differences.len(), 1);
    assert!(page.in_short.iter().all(|said| text.contains(said)));
    assert!(!page.in_short.is_empty());
    assert!(!page.unfinished);
    for word in ["safe", "weak", "fail", "compliant", "normal", "impaired"] {
        assert!(!text.contains(word), "{word}");
    }
}

/// Where braking is most of the work it is not looked for below bursts and
/// rests.
#[test]
fn brake_pulls_stand_beside_the_presses() {
    let plan = one_handed();
    let found = outcomes(&plan, RoadKind::Pass, vec![own(&plan)]);
    let table = &tables(&found)[0];
    let heads: Vec<&str> = table.rows.iter().map(|row| row[0].as_str()).collect();
    assert_eq!(
        heads[..3],
        ["presses an hour", "presses in all", "brake pulls"]
    );
    let never = table.never_words().expect("nothing is kept pressed");
    assert!(never.contains("times a button is kept pressed"), "{never}");
    assert!(!never.contains("longest"), "{never}");
    assert_eq!(Measure::of_most(&found[0].ride.load), Measure::Pulls);
    let hills = outcomes(&plan, RoadKind::Rolling, vec![own(&plan)]);
    assert_eq!(
        Measure::of_most(&hills[0].ride.load),
        Measure::PressesPerHour
    );
}

#[test]
fn exports_have_a_row_for_each_event_and_measure() {
    let plan = one_handed();
    let found = outcomes(&plan, RoadKind::Town, vec![own(&plan)]);
    let events = export::events(&plan, &found[0].ride);
    assert_eq!(events.lines().count(), found[0].ride.events.len() + 1);
    assert!(events.lines().all(|line| line.split(',').count() == 9));
    assert!(events.contains(",rear easier,left,") && events.contains(",brake,left,"));
    let summary = export::summary(&found);
    let presses = format!(
        ",presses in all,{:.2},",
        Measure::Presses.span(Who::Hand(Side::Left), &found[0]).low
    );
    assert!(summary.contains(&presses), "{summary}");
    assert!(summary.contains("right hand"), "both hands always");
}

#[test]
fn names_cannot_become_formulas_or_break_a_row() {
    let edits = [Edit::Plan(PlanEdit::RenameLayout("=1+1, \"x\"".into()))];
    let plan = after(&one_handed(), &edits);
    let found = outcomes(&plan, RoadKind::BikePath, vec![own(&plan)]);
    let summary = export::summary(&found);
    let row = summary.lines().nth(1).expect("there is a row");
    assert!(
        row.starts_with("\" =1+1, \"\"x\"\"\",usual day,left hand,"),
        "{row}"
    );
}

#[test]
fn the_picture_and_its_table_count_every_press() {
    let plan = one_handed();
    let road = Road::built_in(RoadKind::Town);
    let found = outcomes(&plan, RoadKind::Town, vec![own(&plan)]);
    let ride = &found[0].ride;
    for axis in [Axis::Distance, Axis::Time] {
        let profile = Profile::of(&road, ride, &found[0].gearbox, axis);
        assert_eq!(profile.strips.len(), STRIPS);
        let strips: u32 = profile
            .strips
            .iter()
            .map(|s| s.presses[0] + s.presses[1])
            .sum();
        let table: u32 = profile
            .table
            .iter()
            .map(|s| s.hands.presses[0] + s.hands.presses[1])
            .sum();
        assert_eq!((strips, table), (ride.load.presses(), ride.load.presses()));
        for lane in [&profile.height, &profile.speed, &profile.gear] {
            assert!(lane.points.len() > 100 && lane.high > lane.low);
            assert!(
                lane.points
                    .iter()
                    .all(|(x, y)| (0.0..=1.001).contains(x) && (0.0..=1.0).contains(y))
            );
        }
        assert!(
            (4..=14).contains(&profile.ticks.len()),
            "{:?}",
            profile.ticks
        );
    }
}

/// The ladder has no front functions, so nothing presses them; and a front shift
/// that brings its rear shifts along takes no more front presses than one that
/// does not.
#[test]
fn a_plan_that_does_more_by_itself_never_needs_more_front_presses() {
    let plan = after(
        &template(TemplateId::RoadPlain).plan("Both"),
        &[
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
            Edit::Rider(RiderEdit::HandDoesAll(Side::Right, None)),
        ],
    );
    let kinds = [
        ShiftPlanKind::Separate,
        ShiftPlanKind::Paired,
        ShiftPlanKind::Ladder,
    ];
    for road in [RoadKind::Rolling, RoadKind::Pass, RoadKind::Town] {
        let subjects = kinds.map(|kind| Subject::under(&plan, kind).expect("it goes with it"));
        let found = outcomes(&plan, road, subjects.to_vec());
        let front = |n: usize| {
            use crate::ride::event::What;
            let events = found[2 * n].ride.events.iter();
            events
                .filter(|e| matches!(e.what, What::Press { function, .. } if function.is_front()))
                .count()
        };
        assert_eq!(front(2), 0);
        assert!(front(1) <= front(0), "{road}: {} {}", front(1), front(0));
    }
}

#[test]
fn a_ride_is_out_of_date_when_what_it_rests_on_changes_and_not_otherwise() {
    let plan = one_handed();
    let ladder = Subject::under(&plan, ShiftPlanKind::Ladder).expect("it has a front");
    let two = after(
        &plan,
        &[Edit::Plan(PlanEdit::DuplicateLayout("Copy".into()))],
    );
    let (first, second) = (two.layouts[0].id, two.layouts[1].id);
    let first = Subject::layout(&two, first).expect("it is there");
    let second = Subject::layout(&two, second).expect("it is there");
    let renamed = Edit::Plan(PlanEdit::RenameLayout("Another name".into()));
    let renamed = after(&two, &[renamed]);
    for subject in [&first, &second] {
        assert!(!subject.is_stale(&two) && !subject.is_stale(&renamed));
    }
    assert!(!ladder.is_stale(&plan));
    let changed = after(&two, &[Edit::Layout(LayoutEdit::Clear)]);
    assert_eq!(changed.current, changed.layouts[1].id);
    assert!(second.is_stale(&changed) && !first.is_stale(&changed));
    assert!(ladder.is_stale(&changed), "it is of the layout in hand");
}

/// A bad day nobody asked about is ridden as a usual one and said not to be
/// asked, not to be alike.
#[test]
fn the_load_page_says_which_day_was_not_asked() {
    let captions = |plan: &Plan| -> Vec<String> {
        let outcomes = outcomes(plan, RoadKind::BikePath, vec![own(plan)]);
        let tables = tables(&outcomes).into_iter();
        tables.map(|table| table.caption).collect()
    };
    let unasked = one_handed();
    let said = captions(&unasked);
    assert_eq!(said.len(), 1);
    assert!(
        said[0].contains(", usual day; bad day not asked: "),
        "{said:?}"
    );
    let later = |side| Edit::Rider(RiderEdit::Later(side, Answer::of(Later::Same)));
    let asked = after(&unasked, &[later(Side::Left)]);
    let said = captions(&asked);
    assert!(said[0].contains(", usual and bad day alike: "), "{said:?}");
    let both = after(
        &template(TemplateId::RoadPlain).plan("Over the pass"),
        &[
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
            Edit::Rider(RiderEdit::HandDoesAll(Side::Right, None)),
            later(Side::Left),
        ],
    );
    let open = both.rider.hands.bad_day_open();
    assert_eq!(open.as_deref(), Some("bad day not asked of the right hand"));
}
