//! The coverage table: for each function and each wheel brake, from each hand
//! position, on a usual and on a bad day: which button, hand and contact, how
//! hard, or why not.
//!
//! This is the reasoning that shop, rider and therapist look at, and what most
//! rules ask.

mod brakes;
mod by_hand;
mod press;
mod shifting;

pub use brakes::{BrakeCell, BrakePull, BrakeRow, LeverRow};
pub use by_hand::press_by;
pub use press::presses;
pub use shifting::press_of;

use crate::cockpit::{ButtonId, ControlId, Ease, HandPosition, Wheel};
use crate::function::Function;
use crate::layout::{Chord, Layout};
use crate::plan::Plan;
use crate::rider::{Contact, Day, Difficulty, Side, Standing};
use crate::vocabulary::Vocabulary;

/// How a function is called up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Via {
    /// By a tap.
    Tap(ButtonId),
    /// By keeping the button pressed.
    Hold(ButtonId),
    /// By two buttons together.
    Chord(Chord),
}

impl Via {
    /// The buttons pressed.
    pub fn buttons(&self) -> Vec<ButtonId> {
        match self {
            Via::Tap(id) | Via::Hold(id) => vec![*id],
            Via::Chord(chord) => vec![chord.first, chord.second],
        }
    }
}

/// One way of calling up a function from a position.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Way {
    /// How.
    pub via: Via,
    /// With which hand.
    pub hand: Side,
    /// With which contact.
    pub contact: Contact,
    /// How well it is reached.
    pub ease: Ease,
    /// How hard pressing is; `None`: not asked.
    pub step: Option<Difficulty>,
    /// Why it is reached so, in words for a fitter.
    pub reason: &'static str,
}

impl Way {
    /// Whether the hand stays where it is.
    pub const fn keeps_hold(&self) -> bool {
        matches!(self.ease, Ease::Natural | Ease::Stretch)
    }

    /// Whether the hand presses it at all. Not asked counts as usable; a finding
    /// of its own says that it was not asked.
    pub fn is_usable(&self) -> bool {
        self.step != Some(Difficulty::Complete)
    }

    /// How hard it is, lower is easier, whatever presses.
    pub(crate) fn difficulty(&self) -> (bool, Difficulty, Ease) {
        let (beyond, step, ease, _) = self.effort();
        (beyond, step, ease)
    }

    /// Effort as a rank, lower is easier: what the hand can do comes before how
    /// far it is, and what was not asked counts like step 2 (our judgement).
    fn effort(&self) -> (bool, Difficulty, Ease, Contact) {
        let step = self.step.unwrap_or(Difficulty::Moderate);
        (
            step.standing() != Standing::Able,
            step,
            self.ease,
            self.contact,
        )
    }
}

/// Why a function cannot be called up from a position without letting go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyNot {
    /// No live button has it.
    NoButton,
    /// A button has it, but cannot be programmed so.
    NotProgrammable,
    /// Its buttons are out of reach from here.
    OutOfReach,
    /// A working hand reaches it, but cannot press it.
    HandCannot(Side),
    /// It lies under a hand that does not work.
    UnderIdleHand(Side),
}

impl std::fmt::Display for WhyNot {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            WhyNot::NoButton => f.write_str("no button has it"),
            WhyNot::NotProgrammable => f.write_str("its button cannot be programmed so"),
            WhyNot::OutOfReach => f.write_str("out of reach from here"),
            WhyNot::HandCannot(side) => write!(f, "the {side} hand does not press it"),
            WhyNot::UnderIdleHand(side) => {
                write!(f, "on the {side}, where the hand does not work")
            }
        }
    }
}

/// One cell of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Cell {
    /// The hand stays where it is.
    Reached(Way),
    /// Only by letting go: the hand moves or the other crosses over.
    ByLettingGo(Way),
    /// Not at all.
    No(WhyNot),
}

impl Cell {
    /// The way, if the hand stays where it is.
    pub fn reached(&self) -> Option<&Way> {
        match self {
            Cell::Reached(way) => Some(way),
            _ => None,
        }
    }

    /// The way, letting go or not.
    pub fn way(&self) -> Option<&Way> {
        match self {
            Cell::Reached(way) | Cell::ByLettingGo(way) => Some(way),
            Cell::No(_) => None,
        }
    }
}

/// A function's row of the table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The function.
    pub function: Function,
    /// Whether the shift plan needs it.
    pub needed: bool,
    /// The cells: one for each position and day, positions first, in the order
    /// of [`Coverage::positions`] and of [`Day`].
    pub cells: Vec<Cell>,
}

/// The coverage table of one layout.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Coverage {
    /// The positions of the bar that the rider uses, or that are taken as used
    /// while the rider has not been asked.
    pub positions: Vec<HandPosition>,
    /// A row for each function that is needed or given to a button.
    pub rows: Vec<Row>,
    /// A row for each wheel brake.
    pub brakes: Vec<BrakeRow>,
    /// A row for each brake lever, its blade fitted or removed.
    pub levers: Vec<LeverRow>,
}

impl Coverage {
    /// The table for a layout of the plan.
    pub fn of(plan: &Plan, layout: &Layout) -> Coverage {
        let positions = plan.positions_used();
        let levers = brakes::lever_rows(plan, &positions);
        let columns = positions.len() * Day::ALL.len();
        Coverage {
            rows: rows(plan, layout, &positions, |_, _| None),
            brakes: brakes::wheel_rows(plan, columns, &levers),
            levers,
            positions,
        }
    }

    /// As [`Coverage::of`], for a plan that came from one whose table is known: where the bike and the
    /// rider are the same, so are the brakes, and functions that are called up as before.
    pub(crate) fn after(
        (before, before_layout, coverage): (&Plan, &Layout, &Coverage),
        plan: &Plan,
        layout: &Layout,
    ) -> Coverage {
        if before.bike != plan.bike || before.rider != plan.rider {
            return Coverage::of(plan, layout);
        }
        let ways_before = shifting::Ways::of(before, before_layout);
        Coverage {
            rows: rows(plan, layout, &coverage.positions, |ways, function| {
                let same = ways.serve_alike(&ways_before, function);
                same.then(|| coverage.row(function)).flatten()
            }),
            brakes: coverage.brakes.clone(),
            levers: coverage.levers.clone(),
            positions: coverage.positions.clone(),
        }
    }

    /// A function's row.
    pub fn row(&self, function: Function) -> Option<&Row> {
        self.rows.iter().find(|row| row.function == function)
    }

    /// A cell; `None` where the table has no such row or position.
    pub fn cell(&self, function: Function, position: HandPosition, day: Day) -> Option<&Cell> {
        let row = self.row(function)?;
        row.cells.get(self.column(position, day)?)
    }

    /// A wheel brake's row.
    pub fn brake(&self, wheel: Wheel) -> Option<&BrakeRow> {
        self.brakes.iter().find(|row| row.wheel == wheel)
    }

    /// A wheel brake's cell; `None` where the table has no such row or position.
    pub fn brake_cell(&self, wheel: Wheel, position: HandPosition, day: Day) -> Option<&BrakeCell> {
        let row = self.brake(wheel)?;
        row.cells.get(self.column(position, day)?)
    }

    /// Every pull of a lever from a position, those that do not count included.
    pub fn pulls(&self, lever: ControlId, position: HandPosition, day: Day) -> &[BrakePull] {
        let row = self.levers.iter().find(|row| row.lever == lever);
        row.zip(self.column(position, day))
            .and_then(|(row, column)| row.cells.get(column))
            .map_or(&[], Vec::as_slice)
    }

    /// Where in a row the cell of a position and day stands.
    pub fn column(&self, position: HandPosition, day: Day) -> Option<usize> {
        let at = self.positions.iter().position(|p| *p == position)?;
        Some(at * Day::ALL.len() + day as usize)
    }

    /// The columns in order.
    pub fn columns(&self) -> impl Iterator<Item = (HandPosition, Day)> + '_ {
        self.positions
            .iter()
            .flat_map(|position| Day::ALL.iter().map(move |day| (*position, *day)))
    }

    /// The needed functions' best ways from each position on a usual day, with
    /// the hand staying where it is.
    pub fn usual_ways(&self) -> impl Iterator<Item = (Function, HandPosition, &Way)> {
        self.rows.iter().filter(|row| row.needed).flat_map(|row| {
            self.positions.iter().filter_map(|position| {
                let cell = row.cells.get(self.column(*position, Day::Usual)?)?;
                Some((row.function, *position, cell.reached()?))
            })
        })
    }
}

/// A row for each function that is needed or given to a button; its cells are those of a row that is
/// known already, where there is one.
fn rows<'k>(
    plan: &Plan,
    layout: &Layout,
    positions: &[HandPosition],
    known: impl Fn(&shifting::Ways<'_>, Function) -> Option<&'k Row>,
) -> Vec<Row> {
    let ways = shifting::Ways::of(plan, layout);
    let needed = plan.needed_functions();
    Function::ALL
        .iter()
        .filter(|function| needed.contains(function) || ways.has(**function))
        .map(|function| Row {
            function: *function,
            needed: needed.contains(function),
            cells: match known(&ways, *function) {
                Some(row) => row.cells.clone(),
                None => positions
                    .iter()
                    .flat_map(|position| Day::ALL.iter().map(move |day| (*position, *day)))
                    .map(|(position, day)| ways.cell(*function, position, day))
                    .collect(),
            },
        })
        .collect()
}

impl Plan {
    /// The positions in which the rider is taken to ride: those answered as
    /// mostly or sometimes. While there are none, the bar's usual ones, without
    /// those answered as never unless nothing else is left: a rider rides
    /// somewhere, and a table without columns would have nothing to say.
    pub fn positions_used(&self) -> Vec<HandPosition> {
        use crate::rider::Use;
        let bar = self.bike.bar.kind;
        let answer = |p: &HandPosition| self.rider.positions.value(*p);
        let of = |positions: &[HandPosition], used: fn(Option<Use>) -> bool| -> Vec<HandPosition> {
            let of_bar = positions.iter().copied();
            of_bar.filter(|p| used(answer(p))).collect()
        };
        let used = of(bar.positions(), |u| {
            matches!(u, Some(Use::Mostly | Use::Sometimes))
        });
        if !used.is_empty() {
            return used;
        }
        let not_ruled_out = of(bar.usual_positions(), |u| u.is_none());
        if not_ruled_out.is_empty() {
            bar.usual_positions().to_vec()
        } else {
            not_ruled_out
        }
    }
}

/// Every way of calling up a function from a position, hard and far ones
/// included, in no particular order. The table keeps only the best.
pub fn ways_to(
    plan: &Plan,
    layout: &Layout,
    function: Function,
    position: HandPosition,
    day: Day,
) -> Vec<Way> {
    let ways = shifting::Ways::of(plan, layout);
    let vias = ways.vias(function);
    vias.iter()
        .flat_map(|via| ways.ways_of(*via, position, day))
        .collect()
}

/// The needed functions from the positions in use on a day: the part of the table that decides where
/// buttons are best given away.
pub(crate) fn needed_from<'a>(
    plan: &'a Plan,
    layout: &Layout,
    day: Day,
) -> impl Iterator<Item = (Function, HandPosition, Cell)> + use<'a> {
    let ways = shifting::Ways::of(plan, layout);
    let positions = plan.positions_used();
    let needed = plan.needed_functions().iter();
    let all: Vec<(Function, HandPosition)> = needed
        .flat_map(|function| positions.iter().map(|position| (*function, *position)))
        .collect();
    all.into_iter()
        .map(move |(function, position)| (function, position, ways.cell(function, position, day)))
}

/// How one chord of a layout is pressed from a position, whatever else calls up
/// its function.
pub fn chord_cell(
    plan: &Plan,
    layout: &Layout,
    chord: Chord,
    position: HandPosition,
    day: Day,
) -> Cell {
    shifting::Ways::of(plan, layout).cell_of(&[Via::Chord(chord)], position, day)
}

/// The cell that several ways make: the easiest with which the hand stays where
/// it is, else the easiest with a hand that lets go while the other steers, else
/// the easiest at all; none where no way is usable.
fn easiest(plan: &Plan, ways: &[Way]) -> Option<Cell> {
    let usable = || ways.iter().filter(|way| way.is_usable());
    let stays = usable().filter(|way| way.keeps_hold());
    if let Some(way) = stays.min_by_key(|way| way.effort()) {
        return Some(Cell::Reached(*way));
    }
    let hands = &plan.rider.hands;
    usable()
        .min_by_key(|way| (!hands.steer_without(way.hand), way.effort()))
        .map(|way| Cell::ByLettingGo(*way))
}

/// The harder of two steps. What is known to be impossible stays so, whatever
/// was not asked; otherwise one thing not asked makes the whole not asked.
fn harder(a: Option<Difficulty>, b: Option<Difficulty>) -> Option<Difficulty> {
    match (a, b) {
        (Some(a), Some(b)) => Some(a.max(b)),
        (Some(Difficulty::Complete), None) | (None, Some(Difficulty::Complete)) => {
            Some(Difficulty::Complete)
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests;
