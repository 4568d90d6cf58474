use proptest::prelude::*;

use super::*;
use crate::Vocabulary;
use crate::catalogue::{TemplateId, template};
use crate::cockpit::{Button, Freedom};
use crate::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use crate::plan::Plan;
use crate::ride::event::Clash;
use crate::ride::road::{Bend, RoadKind, Stop, StopKind};
use crate::rider::{Contact, Day, Difficulty, Hand, HandPlace, Hands, Rider};
use crate::shift_plan::ShiftPlanKind;

fn able(id: TemplateId) -> Plan {
    let mut plan = template(id).plan("Test");
    plan.rider = Rider {
        hands: Hands {
            left: Hand::does_all(None),
            right: Hand::does_all(None),
        },
        ..Rider::default()
    };
    plan
}

fn after(plan: &Plan, edits: &[Edit]) -> Plan {
    edits.iter().fold(plan.clone(), |plan, edit| {
        plan.apply(edit).expect("the edit is possible")
    })
}

fn inputs(plan: &Plan, road: Road) -> Inputs {
    Inputs {
        road: Arc::new(road),
        gearbox: Arc::new(Gearbox::of(plan).expect("it has gears")),
        grasp: Arc::new(Grasp::of(plan, plan.layout(), Day::Usual)),
        habits: Habits::default(),
        conditions: Conditions::AS_TOLD,
    }
}

fn ride(plan: &Plan, road: Road) -> Ride {
    let mut simulation = Simulation::new(&inputs(plan, road));
    // Ten hours are more than any of our own roads take.
    assert!(simulation.advance(72_000) > 0, "it comes to the end");
    simulation.ride()
}

fn presses(ride: &Ride) -> impl Iterator<Item = (f64, f64, Clash)> {
    ride.events.iter().filter_map(|event| match event.what {
        What::Press { held, clash, .. } => Some((event.at, held, clash)),
        _ => None,
    })
}

#[test]
fn every_road_is_ridden_to_its_end_with_energy_accounted_for() {
    for kind in RoadKind::ALL {
        for id in [TemplateId::RoadPlain, TemplateId::Gravel] {
            let ride = ride(&able(id), Road::built_in(*kind));
            assert!(ride.finished && !ride.events_cut);
            assert!(
                ride.energy.unaccounted() < 0.005,
                "{kind}: {:?}",
                ride.energy
            );
            assert!(
                (600..=MOST_TRACE).contains(&ride.trace.len()),
                "{}",
                ride.trace.len()
            );
            assert!(ride.events.is_sorted_by(|a, b| a.time <= b.time));
            let kmh = ride.distance / ride.seconds * 3.6;
            assert!((8.0..24.0).contains(&kmh), "{kind}: {kmh} km/h");
        }
    }
}

#[test]
fn a_steady_rider_goes_as_fast_as_the_balance_says() {
    let heights = vec![0.0; 1001];
    let bends = vec![Bend::Straight; 1001];
    let road = Road::new("Flat".into(), 10_000.0, &heights, bends, Vec::new());
    let ride = ride(&able(TemplateId::RoadPlain), road.expect("it is a road"));
    let middle = ride.trace[ride.trace.len() / 2].speed;
    let steady = Habits::default().level_speed();
    assert!(
        (middle / steady - 1.0).abs() < 0.002,
        "{middle} against {steady}"
    );
}

#[test]
fn the_same_ride_comes_out_twice_and_in_slices() {
    let plan = able(TemplateId::RoadPlain);
    let inputs = inputs(&plan, Road::built_in(RoadKind::Town));
    let whole = {
        let mut simulation = Simulation::new(&inputs);
        simulation.step_until(f64::INFINITY);
        simulation.ride()
    };
    let mut sliced = Simulation::new(&inputs);
    let mut last = 0.0;
    while sliced.advance(97) == 0 {
        assert!(sliced.progress() >= last);
        last = sliced.progress();
    }
    assert_eq!(sliced.ride(), whole);
}

#[test]
fn a_ride_that_is_stopped_keeps_what_came_of_it() {
    let plan = able(TemplateId::RoadPlain);
    let mut simulation = Simulation::new(&inputs(&plan, Road::built_in(RoadKind::Rolling)));
    simulation.step_until(1200.0);
    let half = simulation.ride();
    assert!(!half.finished && half.distance > 2_000.0 && half.seconds == 1200.0);
    assert!(half.load.presses() > 5);
    let whole = ride(&plan, Road::built_in(RoadKind::Rolling));
    let by_then = |event: &&Event| event.time < 1000.0;
    let early: Vec<&Event> = whole.events.iter().filter(by_then).collect();
    assert_eq!(
        early,
        half.events.iter().filter(by_then).collect::<Vec<_>>()
    );
}

#[test]
fn gears_keep_the_cadence_in_the_band_on_a_long_climb() {
    let ride = ride(
        &able(TemplateId::RoadPlain),
        Road::built_in(RoadKind::Rolling),
    );
    let plan = able(TemplateId::RoadPlain);
    let gearbox = Gearbox::of(&plan).expect("it has gears");
    let (low, high) = Habits::default().band();
    let rides = ride.trace.iter().filter(|s| s.speed > 3.0 && s.speed < 8.0);
    let cadences: Vec<f64> = rides
        .map(|s| 60.0 * s.speed / gearbox.gears()[s.gear].development)
        .collect();
    let inside = cadences
        .iter()
        .filter(|c| (0.9 * low..=1.1 * high).contains(*c));
    assert!(inside.count() * 10 > cadences.len() * 8);
}

/// A road with one stop in its middle.
fn road_with(kind: StopKind) -> Road {
    let stop = Stop { at: 2_500.0, kind };
    let road = Road::new(
        "Test".into(),
        5_000.0,
        &[10.0; 501],
        vec![Bend::Straight; 501],
        vec![stop],
    );
    road.expect("it is a road")
}

#[test]
fn a_known_stop_is_shifted_down_for_before_braking() {
    let ride = ride(&able(TemplateId::RoadPlain), road_with(StopKind::Halt));
    let pull = ride
        .events
        .iter()
        .find(|e| matches!(e.what, What::Pull { .. }));
    let braked_at = pull.expect("it is braked").at;
    let before = presses(&ride).filter(|(at, ..)| (2_300.0..braked_at).contains(at));
    assert!(before.count() >= 3);
    assert!(presses(&ride).all(|(_, _, clash)| clash == Clash::No));
    assert_eq!(ride.load.right.delays, 0);
    let stands = ride.trace.iter().map(|s| s.speed).fold(f64::MAX, f64::min);
    assert!(stands < 1.0);
}

#[test]
fn a_sudden_stop_makes_a_hand_that_does_both_shift_late() {
    let ride = ride(&able(TemplateId::RoadPlain), road_with(StopKind::Sudden));
    assert!(
        ride.load.right.delays > 0,
        "the index finger brakes and shifts"
    );
    let after_stop = presses(&ride).filter(|(at, ..)| (2_500.0..2_540.0).contains(at));
    assert!(after_stop.count() > 0, "it sets off in too hard a gear");
}

/// Where another contact of the braking hand shifts, it does so before a stand.
#[test]
fn a_thumb_shifts_while_the_finger_brakes() {
    let plan = able(TemplateId::FlatDouble);
    let ride = ride(&plan, road_with(StopKind::Sudden));
    assert!(ride.load.right.work.clashes > 0);
    assert_eq!(ride.load.right.same_contact, 0);
}

#[test]
fn a_hand_that_rests_does_nothing_and_is_shown() {
    let plan = after(
        &able(TemplateId::RoadPlain),
        &[
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
        ],
    );
    let ride = ride(&plan, Road::built_in(RoadKind::Rolling));
    assert!(ride.load.left.work.presses > 50);
    let right = &ride.load.right;
    assert_eq!(
        (right.work.presses, right.work.pulls, right.moves),
        (0, 0, 0)
    );
}

#[test]
fn one_hand_presses_less_under_a_ladder_than_under_separate() {
    let one_handed = after(
        &able(TemplateId::RoadPlain),
        &[
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
        ],
    );
    let ladder = PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder);
    let ladder = after(&one_handed, &[Edit::Plan(ladder)]);
    let ladder = after(
        &ladder,
        &[Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left))],
    );
    let road = || Road::built_in(RoadKind::Rolling);
    let (separate, ladder) = (ride(&one_handed, road()), ride(&ladder, road()));
    assert_eq!(ladder.load.missing, 0);
    assert!(ladder.load.presses() > 0);
    // Fewer of one kind or the other: what is missing was never pressed.
    let wanted = |ride: &Ride| ride.load.presses() + ride.load.missing;
    assert!(
        wanted(&ladder) <= wanted(&separate),
        "{:?} {:?}",
        ladder.load,
        separate.load
    );
}

#[test]
fn a_hold_takes_the_place_of_many_taps() {
    use crate::cockpit::HoldRun;
    use crate::layout::Hold;
    let plan = able(TemplateId::RoadPlain);
    let mut edits = Vec::new();
    for id in plan.layout().taps.keys() {
        let repeats = Some(Hold::Repeats(HoldRun::Cogs(5)));
        edits.push(Edit::Layout(LayoutEdit::Hold(*id, repeats)));
    }
    let holds = after(&plan, &edits);
    let road = || Road::built_in(RoadKind::Town);
    let (taps, holds) = (ride(&plan, road()), ride(&holds, road()));
    assert_eq!(taps.load.right.work.holds, 0);
    let work = &holds.load.right.work;
    assert!(work.holds > 5 && work.longest_hold >= 1.0);
    assert!(holds.load.presses() * 3 < taps.load.presses() * 2);
    // A hand that does not let go at once is left to tap.
    let slow = RiderEdit::Ability(
        Side::Right,
        crate::rider::Ability::LetsGo,
        crate::rider::Answer::of(Difficulty::Severe),
    );
    let slow = after(&plan, &[&edits[..], &[Edit::Rider(slow)]].concat());
    assert_eq!(ride(&slow, road()).load.right.work.holds, 0);
}

#[test]
fn without_a_brake_the_ride_says_so_and_goes_on() {
    let plan = able(TemplateId::RoadPlain);
    let bare: Vec<Edit> = (plan.bike.controls.iter())
        .filter(|control| control.has_blade())
        .map(|control| Edit::Bike(BikeEdit::BladeFitted(control.id, false)))
        .collect();
    let ride = ride(&after(&plan, &bare), Road::built_in(RoadKind::Town));
    assert!(ride.finished && ride.load.unbraked > 5);
    assert_eq!(ride.load.left.work.pulls + ride.load.right.work.pulls, 0);
}

#[test]
fn memory_is_bounded_on_a_long_ride() {
    let town = Road::built_in(RoadKind::Town);
    let long = town.repeated(40).expect("400 km");
    let ride = {
        let plan = able(TemplateId::RoadPlain);
        let mut simulation = Simulation::new(&inputs(&plan, long));
        simulation.step_until(f64::INFINITY);
        simulation.ride()
    };
    assert!(ride.finished && ride.events_cut);
    assert_eq!(ride.events.len(), MOST_EVENTS);
    assert!(ride.trace.len() <= MOST_TRACE);
    assert!(ride.load.presses() > 10_000, "counting goes on");
}

#[test]
fn whoever_cannot_ride_a_slope_walks_it() {
    let heights: Vec<f64> = (0..=100).map(|n| f64::from(n) * 2.5).collect();
    let road = Road::new(
        "Wall".into(),
        1_000.0,
        &heights,
        vec![Bend::Straight; 101],
        Vec::new(),
    );
    let mut inputs = inputs(&able(TemplateId::RoadPlain), road.expect("25 % is a road"));
    inputs.habits.set(Habit::ClimbPower, Some(40));
    inputs.habits.set(Habit::Headwind, Some(50));
    let mut simulation = Simulation::new(&inputs);
    assert!(simulation.advance(10_000) > 0, "it comes to the end");
    let ride = simulation.ride();
    assert!(ride.walked > 900.0, "{}", ride.walked);
}

/// A road of random slopes up to the steepest, bends and stops.
fn road(steepest: f64) -> impl Strategy<Value = Road> {
    let place = (-steepest..steepest, prop::sample::select(Bend::ALL));
    let stop = (0.01..0.99, prop::sample::select(StopKind::ALL));
    let stops = prop::collection::vec(stop, 0..6);
    (500.0..6_000.0, prop::collection::vec(place, 10..60), stops).prop_map(
        |(length, places, stops)| {
            let (slopes, bends): (Vec<f64>, Vec<Bend>) = places.into_iter().unzip();
            let spacing = length / (slopes.len() - 1) as f64;
            let mut height = 100.0;
            let rise = |slope: f64| {
                height += slope * spacing;
                height
            };
            let heights: Vec<f64> = slopes.into_iter().map(rise).collect();
            let stops = stops.into_iter().map(|(share, kind)| Stop {
                at: share * length,
                kind,
            });
            let road = Road::new("Random".into(), length, &heights, bends, stops.collect());
            road.expect("it is a road")
        },
    )
}

fn mirrored(load: &Load) -> Load {
    let mut load = load.clone();
    std::mem::swap(&mut load.left, &mut load.right);
    for (side, ..) in &mut load.contacts {
        *side = side.other();
    }
    load.contacts
        .sort_by_key(|(side, contact, _): &(Side, Contact, _)| (*side, *contact));
    load
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn no_road_hangs(road in road(0.5)) {
        let plan = able(TemplateId::RoadPlain);
        let mut simulation = Simulation::new(&inputs(&plan, road));
        prop_assert!(simulation.advance(60_000) > 0, "{:?}", simulation.motion);
    }

    /// On roads as steep as people ride.
    #[test]
    fn energy_is_accounted_for_on_any_road(road in road(0.15)) {
        let plan = able(TemplateId::RoadPlain);
        let mut simulation = Simulation::new(&inputs(&plan, road.clone()));
        prop_assert!(simulation.advance(60_000) > 0, "{:?}", simulation.motion);
        let ride = simulation.ride();
        prop_assert!(ride.energy.unaccounted() < 0.005, "{:?}", ride.energy);
    }

    /// Where both hands could press the same just as well, the table takes one
    /// of them; so one hand does nothing here, or each has functions of its own.
    #[test]
    fn a_mirrored_rider_and_layout_give_mirrored_loads(
        id in prop::sample::select(TemplateId::ALL),
        idle in prop::option::weighted(0.8, prop::sample::select(Side::ALL)),
        road in road(0.15)
    ) {
        let mut plan = able(if idle.is_some() { id } else { TemplateId::RoadPlain });
        // What a sprint button does depends on the side it is fitted to.
        let fixed = |(.., button): (_, _, &Button)| matches!(button.freedom, Freedom::Fixed(_));
        prop_assume!(!plan.bike.buttons().into_iter().any(fixed));
        if let Some(side) = idle {
            let rests = RiderEdit::HandDoesNothing(side, HandPlace::Rests, None);
            let moved = LayoutEdit::AllShiftingOn(side.other());
            plan = after(&plan, &[Edit::Rider(rests)]);
            plan = plan.apply(&Edit::Layout(moved)).unwrap_or(plan);
        }
        let mut mirror = after(&plan, &[Edit::Bike(BikeEdit::MirrorAll)]);
        mirror.rider.hands = plan.rider.hands.mirrored();
        let run = |plan: &Plan| {
            let mut simulation = Simulation::new(&inputs(plan, road.clone()));
            simulation.advance(60_000);
            simulation.ride().load
        };
        prop_assert_eq!(run(&plan), mirrored(&run(&mirror)));
    }

    /// What any plan brings is ridden to the end.
    #[test]
    fn any_plan_is_ridden(plan in crate::testing::plan_from_document()) {
        if Gearbox::of(&plan).is_err() {
            return Ok(());
        }
        let mut simulation = Simulation::new(&inputs(&plan, road_with(StopKind::Halt)));
        prop_assert!(simulation.advance(60_000) > 0);
        let _ = simulation.ride();
    }
}
