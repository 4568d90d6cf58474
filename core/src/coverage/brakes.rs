//! Ways of braking each wheel.

use super::WhyNot;
use crate::cockpit::{BarSide, ControlId, Ease, HandPosition, Wheel};
use crate::plan::Plan;
use crate::reach;
use crate::rider::{Ability, Contact, Day, Difficulty, Side, Standing};
use crate::vocabulary::Vocabulary;

/// One way of braking a wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BrakePull {
    /// The lever.
    pub lever: ControlId,
    /// With which hand.
    pub hand: Side,
    /// With which finger first.
    pub contact: Contact,
    /// How well it is reached.
    pub ease: Ease,
    /// How hard braking hard is for this hand; `None`: not asked.
    pub step: Option<Difficulty>,
    /// Why it is reached so.
    pub reason: &'static str,
}

/// One cell of a wheel brake's row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BrakeCell {
    /// The hand stays where it is.
    Reached(BrakePull),
    /// Only by letting go.
    ByLettingGo(BrakePull),
    /// Not at all.
    No(WhyNot),
}

impl BrakeCell {
    /// The pull, if the hand stays where it is.
    pub fn reached(&self) -> Option<&BrakePull> {
        match self {
            BrakeCell::Reached(pull) => Some(pull),
            _ => None,
        }
    }
}

/// A wheel brake's row: cells in the order of
/// [`super::Coverage::columns`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BrakeRow {
    /// The wheel.
    pub wheel: Wheel,
    /// The cells.
    pub cells: Vec<BrakeCell>,
}

pub(super) fn rows(plan: &Plan, positions: &[HandPosition]) -> Vec<BrakeRow> {
    plan.bike
        .brakes
        .wheels
        .iter()
        .map(|brake| BrakeRow {
            wheel: brake.wheel,
            cells: positions
                .iter()
                .flat_map(|position| Day::ALL.iter().map(move |day| (*position, *day)))
                .map(|(position, day)| cell(plan, brake.wheel, position, day))
                .collect(),
        })
        .collect()
}

fn cell(plan: &Plan, wheel: Wheel, position: HandPosition, day: Day) -> BrakeCell {
    let levers: Vec<ControlId> = plan
        .bike
        .brakes
        .levers_of(wheel)
        .map(|run| run.lever)
        .filter(|id| plan.bike.control(*id).is_some_and(|c| c.has_blade()))
        .collect();
    if levers.is_empty() {
        return BrakeCell::No(WhyNot::NoButton);
    }
    let all: Vec<BrakePull> = levers
        .iter()
        .flat_map(|lever| pulls(plan, *lever, position, day))
        .collect();
    let usable = |pull: &&BrakePull| pull.step != Some(Difficulty::Complete);
    let stays = |pull: &&BrakePull| matches!(pull.ease, Ease::Natural | Ease::Stretch);
    let best = |pulls: Vec<BrakePull>| pulls.into_iter().min_by_key(effort);
    if let Some(pull) = best(all.iter().filter(stays).filter(usable).copied().collect()) {
        return BrakeCell::Reached(pull);
    }
    if let Some(pull) = best(all.iter().filter(usable).copied().collect()) {
        return BrakeCell::ByLettingGo(pull);
    }
    BrakeCell::No(match all.first() {
        Some(pull) => WhyNot::HandCannot(pull.hand),
        None => levers
            .iter()
            .find_map(|id| plan.bike.control(*id)?.side.hand())
            .filter(|side| !plan.rider.hands.get(*side).works())
            .map_or(WhyNot::OutOfReach, WhyNot::UnderIdleHand),
    })
}

fn effort(pull: &BrakePull) -> (bool, Difficulty, Ease, Contact) {
    let step = pull.step.unwrap_or(Difficulty::Moderate);
    (
        step.standing() != Standing::Able,
        step,
        pull.ease,
        pull.contact,
    )
}

/// How each working hand pulls one lever. Braking asks of the whole hand what
/// [`Ability::BrakesHard`] says; the contact only tells which finger leads, and
/// one that does not press at all does not pull either.
fn pulls(plan: &Plan, lever: ControlId, position: HandPosition, day: Day) -> Vec<BrakePull> {
    let Some(control) = plan.bike.control(lever) else {
        return Vec::new();
    };
    let mut pulls = Vec::new();
    for side in Side::ALL {
        let hand = plan.rider.hands.get(*side);
        if !hand.works() {
            continue;
        }
        let own = control.side == BarSide::from(*side) || control.side == BarSide::Centre;
        for reach in reach::of_blade(control, position) {
            let finger = hand.contact_step(reach.contact, day);
            let grip = hand.step(Ability::BrakesHard, day);
            let step = if finger == Some(Difficulty::Complete) {
                finger
            } else {
                grip
            };
            pulls.push(BrakePull {
                lever,
                hand: *side,
                contact: reach.contact,
                ease: if own { reach.ease } else { Ease::CrossOver },
                step,
                reason: reach.reason,
            });
        }
    }
    pulls
}
