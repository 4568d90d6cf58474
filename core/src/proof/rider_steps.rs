//! The rider's steps: bike held still, then the first ride (*common practice*:
//! stops before shifts, walking pace first).

use super::{CheckStep, StepKind};
use crate::cockpit::HandPosition;
use crate::coverage::{Cell, Row};
use crate::finding::Place;
use crate::rider::Day;
use crate::situation::Situation;
use crate::text::{capital, list};
use crate::vocabulary::Vocabulary;

pub(super) fn of_check(situation: &Situation<'_>) -> Vec<CheckStep> {
    let mut steps = vec![
        CheckStep::new(
            "ready:still",
            StepKind::Ready,
            "Hold the bike still, or put it on a trainer",
        )
        .shows("the rider sits as when riding; a helper stands by"),
        CheckStep::new(
            "ready:gloves",
            StepKind::Ready,
            "Own gloves, shoes and helmet on; what is worn on the hands, too",
        )
        .shows("nothing catches on a button or a blade"),
    ];
    for position in situation.positions() {
        steps.extend(brakes_from(situation, *position));
        steps.extend(called(situation).filter_map(|row| call(situation, row, *position)));
        steps.extend(both(situation, *position));
    }
    steps
}

/// The functions that are called: what the shift plan needs.
fn called<'a>(situation: &'a Situation<'_>) -> impl Iterator<Item = &'a Row> {
    let rows = situation.coverage.rows.iter();
    rows.filter(|row| row.needed && row.function.shifts())
}

fn brakes_from(situation: &Situation<'_>, position: HandPosition) -> Vec<CheckStep> {
    let wheels = situation.coverage.brakes.iter();
    let reached = wheels.filter(|row| {
        let cell = situation
            .coverage
            .brake_cell(row.wheel, position, Day::Usual);
        cell.is_some_and(|cell| cell.reached().is_some())
    });
    reached
        .map(|row| {
            let wheel = row.wheel;
            CheckStep::new(
                format!("brake:{}:{}", wheel.code(), position.code()),
                StepKind::Brake,
                format!(
                    "{}: “Brake”, {wheel}. Eyes up",
                    capital(&position.to_string())
                ),
            )
            .shows("pulled at once, hard, and let go at once")
            .times(3)
            .at([Place::Wheel(wheel), Place::Position(position)])
        })
        .collect()
}

fn call(situation: &Situation<'_>, row: &Row, position: HandPosition) -> Option<CheckStep> {
    let cell = situation
        .coverage
        .cell(row.function, position, Day::Usual)?;
    let way = situation.callable(cell).then(|| cell.way())??;
    let lets_go = matches!(cell, Cell::ByLettingGo(_));
    let places = way.via.buttons().into_iter().map(Place::Button);
    let expect = if lets_go {
        "right button, first time; the other hand steers meanwhile"
    } else {
        "right button, first time; the hand stays on"
    };
    Some(
        CheckStep::new(
            format!("call:{}:{}", row.function.code(), position.code()),
            StepKind::Call,
            format!(
                "{}: “{}”. Eyes up",
                capital(&position.to_string()),
                capital(&row.function.to_string())
            ),
        )
        .shows(expect)
        .times(3)
        .at(places)
        .at([Place::Position(position)]),
    )
}

fn both(situation: &Situation<'_>, position: HandPosition) -> Option<CheckStep> {
    let row = called(situation).find(|row| {
        matches!(
            row.function,
            crate::function::Function::RearEasier | crate::function::Function::RungDown
        )
    })?;
    let way = situation.reached(row.function, position)?;
    Some(
        CheckStep::new(
            format!("both:{}", position.code()),
            StepKind::BrakeAndShift,
            format!(
                "{}: brake, keep braking, and “{}”",
                capital(&position.to_string()),
                capital(&row.function.to_string())
            ),
        )
        .shows("the brake stays on while the shift is made")
        .times(3)
        .at(way.via.buttons().into_iter().map(Place::Button))
        .at([Place::Position(position)]),
    )
}

pub(super) fn of_first_ride(situation: &Situation<'_>) -> Vec<CheckStep> {
    let ready = |key: &str, act: &str, expect: &str| {
        CheckStep::new(format!("ready:{key}"), StepKind::Ready, act).shows(expect)
    };
    let mut steps = vec![
        ready("place", "Look at the place", "dry, flat, closed to traffic").notes("Where"),
        ready(
            "helper",
            "A helper walks beside",
            "the helper knows when to stop the ride",
        )
        .notes("Who helps"),
        ready(
            "mount",
            "Mount and dismount",
            "a brake is held all the while",
        ),
        ready(
            "say",
            "The rider says how to stop",
            "before moving off, in own words",
        ),
    ];
    let bike = &situation.plan.bike;
    for run in situation.live_runs() {
        let lever = situation.lever_name(run.lever);
        steps.push(
            CheckStep::new(
                format!("stop:{}", run.lever),
                StepKind::Stop,
                format!("Walking pace: stop with the {lever}"),
            )
            .shows(format!("{}: stops straight", list(&run.wheels, "and")))
            .times(3)
            .at([Place::Control(run.lever)]),
        );
    }
    steps.push(
        CheckStep::new(
            "stop:all",
            StepKind::Stop,
            "Walking pace: stop with all brakes, from each position used",
        )
        .shows("stops straight")
        .times(3),
    );
    steps.push(
        CheckStep::new(
            "stop:free",
            StepKind::Stop,
            "Let every brake go and roll on",
        )
        .shows("rolls freely")
        .times(3),
    );
    for row in called(situation) {
        let buttons = bike.buttons().into_iter().map(|(id, ..)| id);
        let with = buttons.filter(|id| {
            situation
                .layout
                .tap(bike, *id)
                .is_some_and(|f| f.serves(row.function))
        });
        steps.push(
            CheckStep::new(
                format!("shift:{}", row.function.code()),
                StepKind::Shift,
                format!("Pedalling lightly: {}", row.function),
            )
            .shows("one shift, when called; the line is kept")
            .times(3)
            .at(with.map(Place::Button)),
        );
    }
    steps.push(
        CheckStep::new(
            "after:bike",
            StepKind::After,
            "Look at blade gaps, clamps, wires at full lock",
        )
        .shows("all as before the ride"),
    );
    steps.push(
        CheckStep::new("after:words", StepKind::After, "The rider says how it was")
            .shows("written down in the rider’s words")
            .notes("In the rider’s words"),
    );
    steps
}
