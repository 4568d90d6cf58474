//! Changes to the rider's answers.

use super::EditError;
use crate::cockpit::HandPosition;
use crate::limits::{BLADE_REACH, Span};
use crate::plan::Plan;
use crate::rider::{
    Ability, Answer, Contact, Device, Difficulty, Evidence, Hand, HandPlace, Later, Pressing, Side,
    Use, YesNo,
};
use crate::text::Text;
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

/// A change to the rider's answers.
#[derive(Debug, Clone, PartialEq)]
pub enum RiderEdit {
    /// What the rider is called.
    Nickname(Text),
    /// The rider's own words.
    OwnWords(Text),
    /// One tap: this hand does all of it.
    HandDoesAll(Side, Option<Evidence>),
    /// One tap: this hand does nothing; it rests on the bar or is off it.
    HandDoesNothing(Side, HandPlace, Option<Evidence>),
    /// One tap: nothing was asked about this hand.
    ForgetHand(Side),
    /// What the hand does while riding.
    Place(Side, Answer<HandPlace>),
    /// How hard something is.
    Ability(Side, Ability, Answer<Difficulty>),
    /// How hard pressing with a contact is.
    Contact(Side, Contact, Answer<Difficulty>),
    /// Whether contacts press one by one.
    Pressing(Side, Answer<Pressing>),
    /// Whether the arm moves by itself.
    MovesByItself(Side, Answer<YesNo>),
    /// What becomes of the hand later.
    Later(Side, Answer<Later>),
    /// Farthest blade it can pull from a position.
    BladeReach(Side, HandPosition, Answer<Mm>),
    /// A device on the hand.
    Device(Side, Option<Device>),
    /// How much a hand position is used.
    Position(HandPosition, Answer<Use>),
    /// The side of mounting.
    MountsFrom(Answer<Side>),
    /// The hand that holds a brake while mounting.
    HoldsBrakeMounting(Answer<Side>),
    /// Where the front brake is expected.
    FrontBrakeHabit(Answer<Side>),
    /// Presses during a ride that was fine.
    FineRidePresses(Answer<u16>),
}

impl RiderEdit {
    pub(super) fn label(&self) -> String {
        match self {
            RiderEdit::Nickname(_) => "name the rider".into(),
            RiderEdit::OwnWords(_) => "write the rider's words".into(),
            RiderEdit::HandDoesAll(side, _) => format!("{side} hand does all of it"),
            RiderEdit::HandDoesNothing(side, place, _) => format!("{side} hand {place}"),
            RiderEdit::ForgetHand(side) => format!("forget the {side} hand"),
            RiderEdit::Place(side, _)
            | RiderEdit::Ability(side, ..)
            | RiderEdit::Contact(side, ..)
            | RiderEdit::Pressing(side, _)
            | RiderEdit::MovesByItself(side, _)
            | RiderEdit::Later(side, _)
            | RiderEdit::BladeReach(side, ..)
            | RiderEdit::Device(side, _) => format!("answer about the {side} hand"),
            RiderEdit::Position(position, _) => format!("answer about the {position}"),
            RiderEdit::MountsFrom(_) | RiderEdit::HoldsBrakeMounting(_) => {
                "answer about mounting".into()
            }
            RiderEdit::FrontBrakeHabit(_) => "answer about the front brake".into(),
            RiderEdit::FineRidePresses(_) => "answer about a ride that was fine".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        let rider = &mut plan.rider;
        let hands = &mut rider.hands;
        match self {
            RiderEdit::Nickname(text) => rider.nickname = text.clone(),
            RiderEdit::OwnWords(text) => rider.own_words = text.clone(),
            RiderEdit::HandDoesAll(side, evidence) => {
                *hands.get_mut(*side) = keep_measures(hands.get(*side), Hand::does_all(*evidence));
            }
            RiderEdit::HandDoesNothing(side, place, evidence) => {
                *hands.get_mut(*side) =
                    keep_measures(hands.get(*side), Hand::does_nothing(*place, *evidence));
            }
            RiderEdit::ForgetHand(side) => {
                *hands.get_mut(*side) = Hand::default();
                let hand = ["rider", side.code()];
                plan.unknown.retain(|part| !part.is_under(&hand));
            }
            RiderEdit::Place(side, answer) => hands.get_mut(*side).place = *answer,
            RiderEdit::Ability(side, ability, answer) => {
                hands.get_mut(*side).abilities.set(*ability, *answer);
            }
            RiderEdit::Contact(side, contact, answer) => {
                hands.get_mut(*side).contacts.set(*contact, *answer);
            }
            RiderEdit::Pressing(side, answer) => hands.get_mut(*side).pressing = *answer,
            RiderEdit::MovesByItself(side, answer) => {
                hands.get_mut(*side).moves_by_itself = *answer;
            }
            RiderEdit::Later(side, answer) => hands.get_mut(*side).later = *answer,
            RiderEdit::BladeReach(side, position, answer) => {
                if let Some(mm) = answer.value {
                    within("The reach of a blade", mm, BLADE_REACH)?;
                }
                hands.get_mut(*side).blade_reach.set(*position, *answer);
            }
            RiderEdit::Device(side, device) => hands.get_mut(*side).device = *device,
            RiderEdit::Position(position, answer) => rider.positions.set(*position, *answer),
            RiderEdit::MountsFrom(answer) => rider.mounts_from = *answer,
            RiderEdit::HoldsBrakeMounting(answer) => rider.holds_brake_mounting = *answer,
            RiderEdit::FrontBrakeHabit(answer) => rider.front_brake_habit = *answer,
            RiderEdit::FineRidePresses(answer) => rider.fine_ride_presses = *answer,
        }
        Ok(())
    }
}

/// What was measured on the hand outlives a one-tap answer.
fn keep_measures(before: &Hand, after: Hand) -> Hand {
    Hand {
        blade_reach: before.blade_reach.clone(),
        device: before.device,
        ..after
    }
}

/// Refuses a length outside its span.
pub(super) fn within(what: &'static str, mm: Mm, span: Span) -> Result<(), EditError> {
    if span.holds(mm) {
        Ok(())
    } else {
        Err(EditError::OutOfRange {
            what,
            value: mm.to_string(),
            from: Mm(span.from.into()).to_string(),
            to: Mm(span.to.into()).to_string(),
        })
    }
}
