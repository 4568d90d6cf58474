//! Who presses and pulls what from where: the coverage table as a ride asks it.

use crate::cockpit::{ControlId, HandPosition, HoldRun};
use crate::coverage::{Cell, Coverage, Via, press_of};
use crate::function::Function;
use crate::layout::{Hold, Layout};
use crate::plan::Plan;
use crate::rider::{Ability, Contact, Day, Difficulty, Side, Use};
use crate::vocabulary::Vocabulary;

/// How one function is called up from one position.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Doing {
    /// How.
    pub via: Via,
    /// With which hand.
    pub hand: Side,
    /// With which contact.
    pub contact: Contact,
    /// Whether the hand leaves its place for it.
    pub lets_go: bool,
    /// How many shifts one hold makes at most; `None`: no hold repeats it, or
    /// the hand does not hold well enough.
    pub hold: Option<u8>,
}

/// How one lever is pulled from one position.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pull {
    /// The lever.
    pub lever: ControlId,
    /// With which hand.
    pub hand: Side,
    /// With which finger first.
    pub contact: Contact,
    /// Whether the hand leaves its place for it.
    pub lets_go: bool,
}

/// What can be done from one position.
#[derive(Debug, Clone, PartialEq)]
pub struct Grip {
    /// The position.
    pub position: HandPosition,
    /// How much of the time it is used.
    pub used: Use,
    doings: Vec<(Function, Doing)>,
    /// The levers pulled to brake.
    pub pulls: Vec<Pull>,
    /// Whether every wheel brake is pulled without letting go.
    pub brakes: bool,
}

/// What the hands do from each position on one day.
#[derive(Debug, Clone, PartialEq)]
pub struct Grasp {
    /// The positions in use, at least one.
    pub grips: Vec<Grip>,
    /// The hands that move along when the position changes.
    pub moving: Vec<Side>,
}

/// A hold of three seconds is asked about; a hold that runs longer than this
/// many shifts is not made by anybody who watches the road (our judgement).
const LONGEST_HOLD: u8 = 8;

impl Grasp {
    /// Of a layout on a day.
    pub fn of(plan: &Plan, layout: &Layout, day: Day) -> Grasp {
        let coverage = Coverage::of(plan, layout);
        let grips = coverage.positions.iter().map(|position| {
            let mut doings = Vec::new();
            for function in Function::ALL.iter().filter(|f| f.shifts()) {
                let cell = coverage.cell(*function, *position, day);
                doings.extend(cell.and_then(|cell| {
                    Some((*function, doing(plan, layout, cell, *position, day)?))
                }));
            }
            let (pulls, brakes) = pulls(plan, &coverage, *position, day);
            Grip {
                position: *position,
                used: used(plan, &coverage.positions, *position),
                doings,
                pulls,
                brakes,
            }
        });
        let sides = Side::ALL.iter().copied();
        Grasp {
            grips: grips.collect(),
            moving: sides
                .filter(|side| plan.rider.hands.get(*side).works())
                .collect(),
        }
    }
}

/// How much a position is used, as answered; while nothing is answered, mostly
/// the first one that the bar is meant for (*common practice*).
fn used(plan: &Plan, positions: &[HandPosition], position: HandPosition) -> Use {
    let first = positions.first() == Some(&position);
    let usual = if first { Use::Mostly } else { Use::Sometimes };
    plan.rider.positions.value(position).unwrap_or(usual)
}

impl Grip {
    /// How a function is called up from here; `None`: not at all.
    pub fn doing(&self, function: Function) -> Option<&Doing> {
        let found = self.doings.iter().find(|(own, _)| *own == function);
        found.map(|(_, doing)| doing)
    }
}

fn doing(
    plan: &Plan,
    layout: &Layout,
    cell: &Cell,
    position: HandPosition,
    day: Day,
) -> Option<Doing> {
    let way = cell.way()?;
    Some(Doing {
        via: way.via,
        hand: way.hand,
        contact: way.contact,
        lets_go: !way.keeps_hold(),
        hold: hold(plan, layout, way.via, way.hand, position, day),
    })
}

/// How far a hold on the same button carries, if the hand keeps pressed and lets
/// go well enough to choose it over taps.
fn hold(
    plan: &Plan,
    layout: &Layout,
    via: Via,
    side: Side,
    position: HandPosition,
    day: Day,
) -> Option<u8> {
    let Via::Tap(button) = via else { return None };
    let Some(hold @ Hold::Repeats(run)) = layout.holds.get(&button) else {
        return None;
    };
    let hand = plan.rider.hands.get(side);
    let well = |ability| {
        let step = hand.step(ability, day).unwrap_or(Difficulty::Moderate);
        step <= Difficulty::Moderate
    };
    let reached = press_of(plan, button, position, day).reached().is_some();
    let able = reached && well(Ability::KeepsPressed) && well(Ability::LetsGo);
    let cogs = match run {
        HoldRun::Cogs(cogs) => *cogs,
        HoldRun::ToEnd => LONGEST_HOLD,
    };
    (able && hold.is_buildable(&plan.bike, button)).then_some(cogs.min(LONGEST_HOLD))
}

/// The levers that are pulled from a position, each once, and whether they brake
/// every wheel without letting go.
fn pulls(plan: &Plan, coverage: &Coverage, position: HandPosition, day: Day) -> (Vec<Pull>, bool) {
    use crate::coverage::BrakeCell;
    let mut pulls: Vec<Pull> = Vec::new();
    let mut all = !plan.bike.brakes.wheels.is_empty();
    for row in &coverage.brakes {
        let cell = coverage.brake_cell(row.wheel, position, day);
        let pull = match cell {
            Some(BrakeCell::Reached(pull)) => Some((pull, false)),
            Some(BrakeCell::ByLettingGo(pull)) => Some((pull, true)),
            _ => None,
        };
        all &= matches!(pull, Some((_, false)));
        if let Some((pull, lets_go)) = pull
            && !pulls.iter().any(|known| known.lever == pull.lever)
        {
            pulls.push(Pull {
                lever: pull.lever,
                hand: pull.hand,
                contact: pull.contact,
                lets_go,
            });
        }
    }
    // Who brakes with a lever at hand does not let go for another one.
    if pulls.iter().any(|pull| !pull.lets_go) {
        pulls.retain(|pull| !pull.lets_go);
    }
    (pulls, all)
}
