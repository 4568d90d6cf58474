//! The first ride, the cautions, who signs.

use super::{Field, Tick, TickList, capital, listed};
use crate::cockpit::Bike;
use crate::finding::Place;
use crate::function::Function;
use crate::lights::Lights;
use crate::ordered;
use crate::plan::Plan;
use crate::situation::Situation;

/// What every sheet says.
pub const CAUTIONS: &[&str] = &[
    "This sheet is a planning aid. The fitter proves the bike on the stand.",
    "The first ride is on a closed road at walking pace.",
    "Braking law differs by place, above all one lever for both brakes. Ask locally.",
    "How the hands can be used is for a clinician to judge.",
    "Where a maker’s manual says otherwise, the manual wins.",
    "Any change to the bike or the plan ends this proof: check again. Check again after the first 100 km.",
];

/// What every paper about a plan says, proved or not: the cautions but for the
/// last, which is about checks.
pub const ABOUT_A_PLAN: &[&str] = CAUTIONS.split_at(CAUTIONS.len() - 1).0;

/// Printed by the lines to sign.
pub const SIGNATURE_NOTE: &str = "A typed name is not a signature. Sign on paper, with the date. The clinic’s own file is the record.";

/// What is tried before the bike goes on a road (*common practice*): standing
/// still, then at walking pace, stops before shifts.
pub(super) fn first_ride(situation: &Situation<'_>) -> Vec<TickList> {
    vec![
        standing(situation),
        before_riding(),
        stops(&situation.plan.bike),
        shifts(situation),
        after(),
    ]
}

fn standing(situation: &Situation<'_>) -> TickList {
    let ticks = situation
        .positions()
        .iter()
        .map(|position| {
            Tick::plain(format!(
                "{}: each brake, then each function on call",
                capital(&position.to_string())
            ))
        })
        .collect();
    TickList {
        title: "Tried by the rider, bike still",
        note: "Held by a helper; own gloves, shoes, helmet. Found without looking down; the hand stays on where the plan says so.",
        ticks,
    }
}

fn before_riding() -> TickList {
    TickList {
        title: "Before the first ride",
        note: "",
        ticks: vec![
            Tick::plain("Dry, flat, closed to traffic.").with("Place"),
            Tick::plain("A helper walks beside.").with("Name"),
            Tick::plain("The rider mounts and dismounts with a brake held."),
            Tick::plain("The rider says how to stop, before moving off."),
        ],
    }
}

fn stops(bike: &Bike) -> TickList {
    let mut ticks: Vec<Tick> = bike
        .brakes
        .runs
        .iter()
        .filter_map(|run| {
            let lever = bike.control(run.lever).filter(|c| c.has_blade())?;
            Some(
                Tick::of(
                    format!("Stop with the {}", lever.place()),
                    format!("{}: stops straight", listed(&run.wheels)),
                )
                .times(3),
            )
        })
        .collect();
    ticks.push(
        Tick::of(
            "Stop with all brakes, from each position used",
            "stops straight",
        )
        .times(3),
    );
    ticks.push(Tick::plain("Let every brake go and roll on.").times(3));
    TickList {
        title: "Walking pace: stops first",
        note: "No shifting until every stop is ticked.",
        ticks,
    }
}

fn shifts(situation: &Situation<'_>) -> TickList {
    let rows = situation.coverage.rows.iter();
    let called: Vec<(Function, Vec<usize>)> = rows
        .filter(|row| row.function.shifts())
        .map(|row| (row.function, numbers_of(situation.plan, row.function)))
        .collect();
    // What only a toggle does is tried with the toggle: it cannot be asked for a direction.
    let toggle = called
        .iter()
        .find(|(function, _)| *function == Function::FrontToggle);
    let of_the_toggle = |function: Function, numbers: &Vec<usize>| {
        function != Function::FrontToggle && toggle.is_some_and(|(_, same)| same == numbers)
    };
    let ticks = called
        .iter()
        .filter(|(function, numbers)| !of_the_toggle(*function, numbers))
        .map(|(function, numbers)| {
            Tick::plain(capital(&function.to_string()))
                .about(numbers.clone())
                .times(3)
        })
        .collect();
    TickList {
        title: "Walking pace: then shifts",
        note: "One at a time, pedalling lightly.",
        ticks,
    }
}

/// The balloons of the buttons that serve a function; a toggle, and two buttons
/// together, serve both front functions.
fn numbers_of(plan: &Plan, function: Function) -> Vec<usize> {
    let lit = Lights::of(plan, &[Place::Function(function)]);
    let buttons = lit.buttons.iter();
    let mut numbers: Vec<usize> = buttons.filter_map(|id| plan.bike.balloon(*id)).collect();
    ordered::sort(&mut numbers);
    numbers
}

fn after() -> TickList {
    TickList {
        title: "After the ride",
        note: "",
        ticks: vec![
            Tick::plain("What the rider says.").with("In the rider’s words"),
            Tick::plain("Still right: blade gaps, clamps, wires at full lock."),
            Tick::plain("Look again after the first 100 km.").with("Booked for"),
        ],
    }
}

/// Who signs, each with lines to fill in.
pub(super) fn sign_off() -> Vec<(&'static str, Vec<Field>)> {
    let lines = || {
        vec![
            Field::blank("Name"),
            Field::blank("Signature"),
            Field::blank("Date"),
        ]
    };
    vec![
        ("Fitter: wired and working on the stand", lines()),
        ("Rider: tried, bike still and at walking pace", lines()),
        ("Clinician: hand use only, where one takes part", lines()),
    ]
}
