//! The coverage table in words.

use super::capital;
use crate::cockpit::{Bike, Ease, HandPosition};
use crate::coverage::{BrakeCell, BrakePull, Cell, Coverage, Via, Way, WhyNot};
use crate::rider::Day;
use crate::situation::Situation;

/// Which button or lever serves what from where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CoverageTable {
    /// The hand positions used: the columns.
    pub positions: Vec<HandPosition>,
    /// Functions first, then wheel brakes.
    pub lines: Vec<CoverageLine>,
}

impl CoverageTable {
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
    pub usual: String,
    /// On a bad day, where it differs.
    pub bad: Option<String>,
}

pub(super) fn table(situation: &Situation<'_>) -> CoverageTable {
    let (bike, coverage) = (&situation.plan.bike, &situation.coverage);
    let functions = coverage.rows.iter().map(|row| CoverageLine {
        what: capital(&row.function.to_string()),
        needed: row.needed,
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
    }
}

fn cells<T>(coverage: &Coverage, row: &[T], words: impl Fn(&T) -> String) -> Vec<CoverageWords> {
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

fn shift_words(bike: &Bike, cell: &Cell) -> String {
    match cell {
        Cell::Reached(way) => format!("{}{}", way_words(bike, way), ease(way.ease)),
        Cell::ByLettingGo(way) => {
            format!("only by letting go: {}", way_words(bike, way))
        }
        Cell::No(why) => format!("no: {why}"),
    }
}

fn way_words(bike: &Bike, way: &Way) -> String {
    let numbers: Vec<String> = way
        .via
        .buttons()
        .into_iter()
        .filter_map(|id| bike.balloon(id))
        .map(|number| number.to_string())
        .collect();
    let how = match way.via {
        Via::Tap(_) => "",
        Via::Hold(_) => " held",
        Via::Chord(_) => " together",
    };
    format!("{}{how}, {} {}", numbers.join(" + "), way.hand, way.contact)
}

fn brake_words(bike: &Bike, cell: &BrakeCell) -> String {
    match cell {
        BrakeCell::Reached(pull) => format!("{}{}", pull_words(bike, pull), ease(pull.ease)),
        BrakeCell::ByLettingGo(pull) => {
            format!("only by letting go: {}", pull_words(bike, pull))
        }
        BrakeCell::No(WhyNot::NoButton) => "no: no lever brakes it".into(),
        BrakeCell::No(WhyNot::HandCannot(side)) => {
            format!("no: the {side} hand does not pull it")
        }
        BrakeCell::No(why) => format!("no: {why}"),
    }
}

fn pull_words(bike: &Bike, pull: &BrakePull) -> String {
    let lever = bike
        .control(pull.lever)
        .map_or_else(|| "lever".into(), |lever| lever.place());
    format!("{lever}, {} {}", pull.hand, pull.contact)
}

const fn ease(ease: Ease) -> &'static str {
    match ease {
        Ease::Stretch => ", stretch",
        Ease::Natural | Ease::Move | Ease::CrossOver => "",
    }
}
