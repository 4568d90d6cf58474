//! Rides as tables for a spreadsheet (CSV, RFC 4180: commas, line ends CR LF).

use std::fmt::Write;

use super::event::{Event, What};
use super::measure::{Measure, Who};
use super::simulation::Ride;
use super::study::Outcome;
use crate::coverage::Via;
use crate::plan::Plan;
use crate::vocabulary::Vocabulary;

/// One field, quoted where it must be. A leading sign that a spreadsheet would
/// take for a formula is quoted by a blank before it.
fn field(text: &str) -> String {
    let guarded = match text.as_bytes().first() {
        Some(b'=' | b'+' | b'-' | b'@') => format!(" {text}"),
        _ => text.to_owned(),
    };
    if guarded.contains([',', '"', '\r', '\n']) {
        format!("\"{}\"", guarded.replace('"', "\"\""))
    } else {
        guarded
    }
}

/// What each outcome asks of whom: a row for each measure, with its range.
pub fn summary(outcomes: &[Outcome]) -> String {
    let mut text = String::from("ridden,day,of,measure,lowest,as told,highest\r\n");
    for outcome in outcomes {
        let name = field(&outcome.subject.name);
        for who in Who::all(&outcome.ride.load) {
            for measure in Measure::ALL {
                if matches!(who, Who::Contact(..)) && !measure.is_of_contacts() {
                    continue;
                }
                let span = measure.span(who, outcome);
                let measure = field(measure.words());
                let _ = write!(
                    text,
                    "{name},{},{who},{measure},{:.2},{:.2},{:.2}\r\n",
                    outcome.day, span.low, span.told, span.high
                );
            }
        }
    }
    text
}

/// What happened on a ride, a row for each event.
pub fn events(plan: &Plan, ride: &Ride) -> String {
    let mut text =
        String::from("seconds,metres,km/h,what,hand,contact,with,lasts seconds,clash\r\n");
    for event in &ride.events {
        row(plan, event, &mut text);
    }
    text
}

fn row(plan: &Plan, event: &Event, text: &mut String) {
    let hand = event.what.hand().map_or("", Vocabulary::words);
    let (what, contact, with, lasts, clash) = match event.what {
        What::Press {
            function,
            via,
            contact,
            held,
            clash,
            ..
        } => {
            let buttons = via.buttons();
            let places: Vec<String> = buttons.iter().map(|b| plan.bike.place_of(*b)).collect();
            let with = match via {
                Via::Chord(_) => places.join(" with "),
                _ => places.concat(),
            };
            (function.words(), contact.words(), with, held, clash.words())
        }
        What::Pull {
            lever,
            contact,
            seconds,
            ..
        } => {
            let place = plan.bike.control(lever).map(|control| control.place());
            (
                "brake",
                contact.words(),
                place.unwrap_or_default(),
                seconds,
                "",
            )
        }
        What::Delay {
            function, seconds, ..
        } => (
            "shift put off for braking",
            "",
            function.to_string(),
            seconds,
            "",
        ),
        What::Move { to, .. } => ("hand moves", "", to.to_string(), 0.0, ""),
        What::Off { .. } => ("hand leaves its place", "", String::new(), 0.0, ""),
        What::Wanted { seconds, .. } => (
            "brake wanted while the hand is away",
            "",
            String::new(),
            seconds,
            "",
        ),
        What::Missing { function } => (
            "shift cannot be called up",
            "",
            function.to_string(),
            0.0,
            "",
        ),
        What::NoBrake => ("no hand brakes", "", String::new(), 0.0, ""),
    };
    let (time, at, speed) = (event.time, event.at, event.speed * 3.6);
    let with = field(&with);
    let _ = write!(
        text,
        "{time:.1},{at:.0},{speed:.1},{what},{hand},{contact},{with},{lasts:.1},{clash}\r\n"
    );
}
