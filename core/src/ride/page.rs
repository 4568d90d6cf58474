//! The load page: what rides ask of the hands, on paper for the therapist.

use super::compare::{against_known, differences};
use super::habits::{Conditions, Habit, Habits};
use super::in_short::in_short;
use super::measure::{Measure, Who};
use super::road::Road;
use super::study::Outcome;
use crate::plan::Plan;
use crate::rider::Day;
use crate::sheet::TitleBlock;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

/// What the model takes for granted and leaves out, in plain words.
pub const ASSUMPTIONS: &[&str] = &[
    "Worked out, not measured: a rider of the given weight and power follows the road, shifts to keep pedalling at a comfortable pace, brakes early and gently for bends and known stops, and firmly for sudden ones.",
    "Each number is a range over more and less power, wind from ahead and behind, and earlier and later shifts. The real ride may lie outside it.",
    "Left out: traffic, road surface, tiredness, fear, corners that are not in the track, wrong presses, and everything that hands do besides shifting and braking.",
    "Steps of difficulty are not turned into forces. A press counts as a press, whatever it costs.",
    "No limit for work is used: those were made for hours of one task and leave out what matters on a bike. Compare layouts with each other, and with a ride that was fine.",
];

/// What every load page says.
pub const CAUTIONS: &[&str] = &[
    "A planning aid. It does not say what a hand can bear; the rider and a clinician judge that.",
    "Try a change on a closed road at walking pace first. Local law and makers' manuals come first.",
];

/// A table of the page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LoadTable {
    /// What it is about.
    pub caption: String,
    /// The heads of its columns; the first is of the rows' names.
    pub head: Vec<String>,
    /// Its rows: a name, then a cell for each other column.
    pub rows: Vec<Vec<String>>,
    /// What never happened, so that it needs no row; details of it are passed
    /// over.
    pub never: Vec<String>,
}

impl LoadTable {
    /// What never happened, in a sentence; nothing where everything did.
    pub fn never_words(&self) -> Option<String> {
        (!self.never.is_empty()).then(|| format!("Never on this ride: {}.", self.never.join("; ")))
    }
}

/// The load page.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadPage {
    /// What it is about.
    pub title: TitleBlock,
    /// The road in a sentence.
    pub road: String,
    /// How the rider rides: each habit and what was taken.
    pub habits: Vec<String>,
    /// What the rides ask, in a few sentences.
    pub in_short: Vec<String>,
    /// A table for each subject and day.
    pub tables: Vec<LoadTable>,
    /// What differs between the first subject and each other one.
    pub differences: Vec<(String, Vec<String>)>,
    /// Multiples of the ride that was fine, for each subject.
    pub against_known: Vec<(String, Vec<String>)>,
    /// Whether a ride was stopped before its end.
    pub unfinished: bool,
    /// [`ASSUMPTIONS`].
    pub assumptions: &'static [&'static str],
    /// [`CAUTIONS`].
    pub cautions: &'static [&'static str],
}

impl LoadPage {
    /// The page of outcomes over a road.
    pub fn of(plan: &Plan, road: &Road, outcomes: &[Outcome]) -> LoadPage {
        let situation = Situation::of_layout(plan, plan.layout());
        let usual = || outcomes.iter().filter(|o| o.day == Day::Usual);
        let mut compared = Vec::new();
        if let Some(first) = usual().next() {
            for other in usual().skip(1) {
                let heading = format!("From {} to {}", first.subject.name, other.subject.name);
                compared.push((heading, differences(first, other)));
            }
        }
        let mut against = Vec::new();
        if let Some(known) = &plan.rides.known {
            for outcome in usual() {
                let heading = format!("{}, against {}", outcome.subject.name, known.name);
                against.push((heading, against_known(known, outcome)));
            }
        }
        LoadPage {
            title: TitleBlock::of(&situation),
            road: road_words(road),
            habits: habits(&plan.rides.habits),
            in_short: in_short(outcomes),
            tables: tables(outcomes),
            differences: compared,
            against_known: against,
            unfinished: outcomes.iter().any(|outcome| !outcome.is_finished()),
            assumptions: ASSUMPTIONS,
            cautions: CAUTIONS,
        }
    }

    /// The whole page as plain text.
    pub fn to_text(&self) -> String {
        let mut lines = vec![format!("== Load == {}", self.title.running_head())];
        lines.extend(self.title.running_fields());
        lines.push(self.road.clone());
        lines.extend(self.habits.iter().cloned());
        if self.unfinished {
            lines.push("Stopped before the end: the numbers are of what was ridden.".into());
        }
        lines.push(String::new());
        lines.push("-- In short --".into());
        lines.extend(self.in_short.iter().cloned());
        for table in &self.tables {
            lines.push(String::new());
            lines.push(format!("-- {} --", table.caption));
            lines.push(table.head.join(" | "));
            lines.extend(table.rows.iter().map(|row| row.join(" | ")));
            lines.extend(table.never_words());
        }
        for (heading, sentences) in self.differences.iter().chain(&self.against_known) {
            lines.push(String::new());
            lines.push(format!("-- {heading} --"));
            lines.extend(sentences.iter().cloned());
        }
        for (heading, sentences) in [
            ("What this is", self.assumptions),
            ("Cautions", self.cautions),
        ] {
            lines.push(String::new());
            lines.push(format!("-- {heading} --"));
            lines.extend(sentences.iter().map(|sentence| (*sentence).to_owned()));
        }
        lines.join("\n") + "\n"
    }
}

/// A road in a sentence: "Rolling road: 30.0 km, climbs 310 m, 7 stops."
pub fn road_words(road: &Road) -> String {
    let stops = match road.stops().len() {
        0 => "no stops known".into(),
        1 => "1 stop".into(),
        n => format!("{n} stops"),
    };
    format!(
        "{}: {:.1} km, climbs {:.0} m, {stops}.",
        road.name,
        road.length() / 1000.0,
        road.ascent()
    )
}

fn habits(habits: &Habits) -> Vec<String> {
    let told = |habit: Habit| match habits.answer(habit) {
        Some(value) => format!("{}: {value} {}", habit.label(), habit.unit()),
        None => {
            let (label, usual, unit) = (habit.label(), habit.usual(), habit.unit());
            format!("{label}: not asked, taken as {usual} {unit}")
        }
    };
    let mut lines: Vec<String> = Habit::ALL.iter().map(|habit| told(*habit)).collect();
    let varied: Vec<&str> = Conditions::SPREAD.iter().map(|c| c.name).collect();
    lines.push(format!("Ridden {}.", varied.join("; ")));
    lines
}

/// The tables of outcomes, in order; a bad day that asks the same as the usual
/// one of its subject shares its table. What nobody asked about a bad day is
/// ridden as on a usual one, and the caption says that it was not asked.
pub fn tables(outcomes: &[Outcome]) -> Vec<LoadTable> {
    let mut tables = Vec::new();
    for days in outcomes.chunk_by(|a, b| a.subject == b.subject) {
        let open = days[0].subject.plan().rider.hands.bad_day_open();
        let named = |outcome: &Outcome| match (outcome.day, &open) {
            (Day::Bad, Some(open)) => table(outcome, open),
            _ => table(outcome, outcome.day.words()),
        };
        let all: Vec<LoadTable> = days.iter().map(named).collect();
        let same = |two: &[LoadTable]| two[0].rows == two[1].rows && two[0].head == two[1].head;
        match (&all[..], days) {
            (two @ [_, _], [first, _]) if same(two) => tables.push(match &open {
                Some(open) => table(first, &format!("usual day; {open}")),
                None => table(first, "usual and bad day alike"),
            }),
            _ => tables.extend(all),
        }
    }
    tables
}

/// The table of one outcome: measures by hand and contact, both hands always.
fn table(outcome: &Outcome, day: &str) -> LoadTable {
    let who = Who::all(&outcome.ride.load);
    let mut head = vec![String::from("Of the whole ride")];
    head.extend(who.iter().map(|who| who.to_string()));
    let (mut rows, mut never) = (Vec::new(), Vec::new());
    for measure in Measure::ALL {
        let told = |who: &Who| matches!(who, Who::Hand(_)) || measure.is_of_contacts();
        let happened = |who: &Who| told(who) && measure.span(*who, outcome).high > 0.0;
        if !who.iter().any(happened) {
            if !measure.is_detail() {
                never.push(measure.to_string());
            }
            continue;
        }
        let cell = |who: &Who| match told(who) {
            true => measure.range(*who, outcome),
            false => String::new(),
        };
        let cells = who.iter().map(cell);
        rows.push([measure.to_string()].into_iter().chain(cells).collect());
    }
    let minutes = outcome.span(&|load| load.hours() * 60.0);
    LoadTable {
        caption: format!(
            "{}, {day}: {:.0}–{:.0} minutes",
            outcome.subject.name, minutes.low, minutes.high
        ),
        head,
        rows,
        never,
    }
}
