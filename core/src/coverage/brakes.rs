//! Who pulls which brake lever from where, and so how each wheel is braked.

use super::WhyNot;
use crate::cockpit::{BarSide, Control, ControlId, Ease, HandPosition, Wheel};
use crate::plan::Plan;
use crate::reach;
use crate::rider::{Ability, Acts, Contact, Day, Difficulty, Hand, Side, Standing};
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

impl BrakePull {
    /// Whether the hand stays where it is and pulls.
    pub fn counts(&self) -> bool {
        self.keeps_hold() && self.is_usable()
    }

    /// Whether the hand stays where it is.
    pub const fn keeps_hold(&self) -> bool {
        matches!(self.ease, Ease::Natural | Ease::Stretch)
    }

    /// Whether it is the far hand, crossing over.
    pub const fn crosses_over(&self) -> bool {
        matches!(self.ease, Ease::CrossOver)
    }

    /// Whether the hand pulls at all.
    pub fn is_usable(&self) -> bool {
        self.step != Some(Difficulty::Complete)
    }

    /// How hard it is, lower is easier.
    pub(crate) fn difficulty(&self) -> (bool, Difficulty, Ease, Contact) {
        self.effort()
    }

    /// Effort as a rank, lower is easier; what was not asked counts like step 2
    /// (our judgement).
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

/// A brake lever's row: who pulls it from where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeverRow {
    /// The lever. Its blade may have been removed: then it tells who would pull
    /// it.
    pub lever: ControlId,
    /// Every pull, those that do not count included, in the order of
    /// [`super::Coverage::columns`].
    pub cells: Vec<Vec<BrakePull>>,
}

impl LeverRow {
    /// How one hand best pulls it from the position and on the day of a column,
    /// or why it does not.
    pub fn by_hand(&self, hand: Side, column: usize) -> BrakeCell {
        let cell = self.cells.get(column).map_or(&[][..], Vec::as_slice);
        let own = || cell.iter().filter(move |pull| pull.hand == hand);
        let best = |counts: fn(&BrakePull) -> bool| {
            let counting = own().filter(|pull| counts(pull));
            counting.min_by_key(|pull| pull.effort()).copied()
        };
        match (best(BrakePull::counts), best(BrakePull::is_usable)) {
            (Some(pull), _) => BrakeCell::Reached(pull),
            (None, Some(pull)) => BrakeCell::ByLettingGo(pull),
            (None, None) if own().next().is_some() => BrakeCell::No(WhyNot::HandCannot(hand)),
            (None, None) => BrakeCell::No(WhyNot::OutOfReach),
        }
    }
}

/// One cell of a wheel brake's row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BrakeCell {
    /// The hand stays where it is.
    Reached(BrakePull),
    /// Only by letting go: the hand of that side moves along the bar first, and
    /// in what one hand does, it crosses over.
    ByLettingGo(BrakePull),
    /// Not at all. A wheel whose lever only the far hand would pull, crossing
    /// over, is out of reach, too: a brake is wanted at once.
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

    /// Why a wheel's brake is out of reach: "the left hand does not pull it";
    /// `None` where a hand pulls it from where it is.
    pub fn why_out_of_reach(&self) -> Option<String> {
        Some(match self {
            BrakeCell::Reached(_) => return None,
            BrakeCell::ByLettingGo(pull) if pull.ease == Ease::CrossOver => {
                format!("the {} hand would have to let go and cross over", pull.hand)
            }
            BrakeCell::ByLettingGo(pull) => {
                format!("the {} hand would have to move first", pull.hand)
            }
            BrakeCell::No(WhyNot::NoButton) => "no lever brakes it".into(),
            BrakeCell::No(WhyNot::HandCannot(side)) => {
                format!("the {side} hand does not pull it")
            }
            BrakeCell::No(WhyNot::UnderIdleHand(side)) => {
                format!("its lever is on the {side}, where the hand does not work")
            }
            BrakeCell::No(WhyNot::OutOfReach | WhyNot::NotProgrammable) => {
                "no hand meets its blade from there".into()
            }
        })
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

/// A row for each lever that has a blade or had one.
pub(super) fn lever_rows(plan: &Plan, positions: &[HandPosition]) -> Vec<LeverRow> {
    plan.bike
        .controls
        .iter()
        .filter(|control| control.blade.is_some())
        .map(|control| LeverRow {
            lever: control.id,
            cells: positions
                .iter()
                .flat_map(|position| Day::ALL.iter().map(move |day| (*position, *day)))
                .map(|(position, day)| pulls(plan, control, position, day))
                .collect(),
        })
        .collect()
}

/// A row for each wheel brake.
pub(super) fn wheel_rows(plan: &Plan, columns: usize, levers: &[LeverRow]) -> Vec<BrakeRow> {
    let wheels = plan.bike.brakes.wheels.iter();
    wheels
        .map(|brake| {
            let pulled_by: Vec<&LeverRow> = plan
                .bike
                .brakes
                .levers_of(brake.wheel)
                .filter(|run| plan.bike.control(run.lever).is_some_and(|c| c.has_blade()))
                .filter_map(|run| levers.iter().find(|row| row.lever == run.lever))
                .collect();
            BrakeRow {
                wheel: brake.wheel,
                cells: (0..columns)
                    .map(|column| cell(plan, &pulled_by, column))
                    .collect(),
            }
        })
        .collect()
}

fn cell(plan: &Plan, levers: &[&LeverRow], column: usize) -> BrakeCell {
    if levers.is_empty() {
        return BrakeCell::No(WhyNot::NoButton);
    }
    let all = || {
        levers
            .iter()
            .filter_map(|row| row.cells.get(column))
            .flatten()
    };
    let best = |counts: fn(&BrakePull) -> bool| {
        all()
            .filter(|pull| counts(pull))
            .min_by_key(|pull| pull.effort())
    };
    if let Some(pull) = best(BrakePull::counts) {
        return BrakeCell::Reached(*pull);
    }
    // The far hand crossing over is no way of braking: what counts is the hand
    // of the lever's own side, and why it does not pull.
    if let Some(pull) = best(|pull| pull.is_usable() && !pull.crosses_over()) {
        return BrakeCell::ByLettingGo(*pull);
    }
    BrakeCell::No(match all().find(|pull| !pull.crosses_over()) {
        Some(pull) => WhyNot::HandCannot(pull.hand),
        None => levers
            .iter()
            .find_map(|row| plan.bike.control(row.lever)?.side.hand())
            .filter(|side| !plan.rider.hands.get(*side).works())
            .map_or(WhyNot::OutOfReach, WhyNot::UnderIdleHand),
    })
}

/// How each working hand pulls one lever. Braking asks of the whole hand what
/// [`Ability::BrakesHard`] says; the contact tells which finger leads. One that
/// presses only with great effort pulls no easier, and one that does not press
/// at all does not pull either (our judgement, until the pull was tried).
fn pulls(plan: &Plan, control: &Control, position: HandPosition, day: Day) -> Vec<BrakePull> {
    let mut pulls = Vec::new();
    for side in Side::ALL {
        let hand = plan.rider.hands.get(*side);
        if !hand.works() {
            continue;
        }
        let own = control.side == BarSide::from(*side) || control.side == BarSide::Centre;
        for reach in reach::of_blade(control, position).filter(|r| may_pull(hand, r.contact)) {
            let finger = hand.contact_step(reach.contact, day);
            let grip = hand.step(Ability::BrakesHard, day);
            let step = match finger {
                Some(finger) if finger.standing() != Standing::Able => {
                    Some(grip.map_or(finger, |grip| grip.max(finger)))
                }
                _ => grip,
            };
            pulls.push(BrakePull {
                lever: control.id,
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

/// Digits pull until said otherwise; a device once it was answered about, and
/// not one that only pushes.
fn may_pull(hand: &Hand, contact: Contact) -> bool {
    let acts = hand.device.and_then(|device| device.acts.value);
    contact.is_digit() || hand.contacts.value(contact).is_some() && acts != Some(Acts::Pushes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::coverage::Coverage;

    #[test]
    fn each_hand_pulls_its_own_lever_and_crosses_over_for_the_other() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let coverage = Coverage::of(&plan, plan.layout());
        let column = coverage.column(HandPosition::Hoods, Day::Usual);
        let column = column.expect("the hoods are a usual position");
        for row in &coverage.levers {
            let side = plan.bike.control(row.lever).and_then(|c| c.side.hand());
            let side = side.expect("a lever has a side");
            assert!(row.by_hand(side, column).reached().is_some());
            let across = row.by_hand(side.other(), column);
            assert!(matches!(across, BrakeCell::ByLettingGo(pull) if pull.ease == Ease::CrossOver));
        }
    }
}
