//! The coverage table in words.

use std::fmt;

use super::capital;
use crate::cockpit::{Bike, Ease, HandPosition};
use crate::coverage::{BrakeCell, BrakePull, Cell, Coverage, Via, Way, WhyNot};
use crate::function::Function;
use crate::rider::Day;
use crate::situation::Situation;

/// Which button or lever serves what from where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverageTable {
    /// The hand positions used: the columns.
    pub positions: Vec<HandPosition>,
    /// Functions first, then wheel brakes.
    pub lines: Vec<CoverageLine>,
    /// What nobody asked about a bad day: "bad day not asked of the left hand".
    pub bad_day_open: Option<String>,
}

impl CoverageTable {
    /// What a line that says nothing of a bad day means.
    pub fn about_bad_day(&self) -> String {
        match &self.bad_day_open {
            None => "Where nothing is said of a bad day, it is the same as a usual one.".into(),
            Some(open) => format!(
                "{}: where nothing is said of a bad day, it is not known.",
                capital(open)
            ),
        }
    }

    /// The heads of the columns in order.
    pub fn heads(&self) -> impl Iterator<Item = String> + '_ {
        self.positions
            .iter()
            .map(|position| capital(&position.to_string()))
    }
}

/// A function's or a wheel brake's line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverageLine {
    /// "Rear easier", "Brake: front wheel".
    pub what: String,
    /// Whether the shift plan needs it; brakes always are.
    pub needed: bool,
    /// One cell for each position.
    pub cells: Vec<CoverageWords>,
}

/// What one cell says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverageWords {
    /// On a usual day.
    pub usual: CoverageAnswer,
    /// On a bad day, where it differs.
    pub bad: Option<CoverageAnswer>,
}

/// How something is called up or braked, or why not.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct CoverageAnswer {
    /// What stands before the balloons: empty, or "only by letting go: ".
    pub before: &'static str,
    /// The balloons of the buttons pressed.
    pub numbers: Vec<usize>,
    /// Hand and contact, or why not.
    pub words: String,
}

impl fmt::Display for CoverageAnswer {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let numbers: Vec<String> = self.numbers.iter().map(usize::to_string).collect();
        let gap = if numbers.is_empty() { "" } else { " " };
        write!(
            f,
            "{}{}{gap}{}",
            self.before,
            numbers.join(" + "),
            self.words
        )
    }
}

pub(super) fn table(situation: &Situation<'_>) -> CoverageTable {
    let (bike, coverage) = (&situation.plan.bike, &situation.coverage);
    let functions = coverage.rows.iter().map(|row| CoverageLine {
        what: capital(&row.function.to_string()),
        needed: row.needed || serves_a_needed_one(situation, row.function),
        cells: cells(coverage, &row.cells, |cell| shift_words(bike, cell)),
    });
    let brakes = coverage.brakes.iter().map(|row| CoverageLine {
        what: format!("Brake: {}", row.wheel),
        needed: true,
        cells: cells(coverage, &row.cells, |cell| brake_words(bike, cell)),
    });
    CoverageTable {
        positions: coverage.positions.clone(),
        lines: functions.chain(brakes).collect(),
        bad_day_open: situation.plan.rider.hands.bad_day_open(),
    }
}

/// Whether a function does for one that the plan needs: a toggle for both front
/// functions.
fn serves_a_needed_one(situation: &Situation<'_>, function: Function) -> bool {
    let needed = situation.plan.needed_functions().iter();
    needed.copied().any(|needed| function.serves(needed))
}

fn cells<T>(
    coverage: &Coverage,
    row: &[T],
    words: impl Fn(&T) -> CoverageAnswer,
) -> Vec<CoverageWords> {
    let of = |position: HandPosition, day: Day| {
        let at = coverage.column(position, day)?;
        row.get(at).map(&words)
    };
    coverage
        .positions
        .iter()
        .map(|position| {
            let usual = of(*position, Day::Usual).unwrap_or_default();
            let bad = of(*position, Day::Bad).filter(|bad| *bad != usual);
            CoverageWords { usual, bad }
        })
        .collect()
}

/// Before what takes a hand off its place.
const BY_LETTING_GO: &str = "only by letting go: ";

fn shift_words(bike: &Bike, cell: &Cell) -> CoverageAnswer {
    match cell {
        Cell::Reached(way) => of_way(bike, way, ""),
        Cell::ByLettingGo(way) => of_way(bike, way, BY_LETTING_GO),
        Cell::No(why) => no(why.to_string()),
    }
}

fn of_way(bike: &Bike, way: &Way, before: &'static str) -> CoverageAnswer {
    let buttons = way.via.buttons();
    let how = match way.via {
        Via::Tap(_) => "",
        Via::Hold(_) => "held, ",
        Via::Chord(_) => "together, ",
    };
    CoverageAnswer {
        before,
        numbers: buttons
            .into_iter()
            .filter_map(|id| bike.balloon(id))
            .collect(),
        words: format!("{how}{} {}{}", way.hand, way.contact, ease(way.ease)),
    }
}

fn brake_words(bike: &Bike, cell: &BrakeCell) -> CoverageAnswer {
    match cell {
        BrakeCell::Reached(pull) => of_pull(bike, pull, ""),
        BrakeCell::ByLettingGo(pull) => of_pull(bike, pull, BY_LETTING_GO),
        BrakeCell::No(WhyNot::NoButton) => no("no lever brakes it".into()),
        BrakeCell::No(_) => CoverageAnswer {
            words: format!(
                "out of reach: {}",
                cell.why_out_of_reach().unwrap_or_default()
            ),
            ..CoverageAnswer::default()
        },
    }
}

fn of_pull(bike: &Bike, pull: &BrakePull, before: &'static str) -> CoverageAnswer {
    let lever = bike
        .control(pull.lever)
        .map_or_else(|| "lever".into(), |lever| lever.place());
    CoverageAnswer {
        before,
        numbers: Vec::new(),
        words: format!("{lever}, {} {}{}", pull.hand, pull.contact, ease(pull.ease)),
    }
}

fn no(why: String) -> CoverageAnswer {
    CoverageAnswer {
        words: format!("no: {why}"),
        ..CoverageAnswer::default()
    }
}

const fn ease(ease: Ease) -> &'static str {
    match ease {
        Ease::Stretch => ", stretch",
        Ease::Natural | Ease::Move | Ease::CrossOver => "",
    }
}
