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
    /// Whether a part of the hand hurts.
    Hurts(Side, Contact, Answer<YesNo>),
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
            RiderEdit::HandDoesAll(side, _) => {
                format!("{side} hand rides, presses and brakes easily")
            }
            RiderEdit::HandDoesNothing(side, place, _) => format!("{side} hand {place}"),
            RiderEdit::ForgetHand(side) => format!("forget the {side} hand"),
            RiderEdit::Place(side, _)
            | RiderEdit::Ability(side, ..)
            | RiderEdit::Contact(side, ..)
            | RiderEdit::Pressing(side, _)
            | RiderEdit::MovesByItself(side, _)
            | RiderEdit::Later(side, _)
            | RiderEdit::Hurts(side, ..)
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
            RiderEdit::Hurts(side, part, answer) => {
                hands.get_mut(*side).hurts.set(*part, *answer);
            }
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::Edit;
    use crate::plan::Plan;
    use crate::rider::{Acts, QuestionId, Source};
    use crate::vocabulary::Vocabulary;

    fn after(edits: &[RiderEdit]) -> Plan {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        edits
            .iter()
            .try_fold(plan, |plan, edit| plan.apply(&Edit::Rider(edit.clone())))
            .expect("the edits are possible")
    }

    /// What fitter and therapist read on paper: the tap's own words, and nothing
    /// that nobody said.
    #[test]
    fn one_tap_says_what_its_words_say_and_that_it_was_one_tap() {
        let seen = Evidence {
            source: Source::SeenByFitter,
            date: None,
            worn: None,
            in_one_tap: false,
        };
        let at_once = Some(Evidence {
            in_one_tap: true,
            ..seen
        });
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, Some(seen));
        let plan = after(&[rests, RiderEdit::HandDoesAll(Side::Left, Some(seen))]);
        let (left, right) = (&plan.rider.hands.left, &plan.rider.hands.right);
        assert_eq!(left.place, Answer::with(HandPlace::Works, Some(seen)));
        assert_eq!(right.place, Answer::with(HandPlace::Rests, Some(seen)));
        for ability in Ability::ALL {
            let easily = Answer::with(Difficulty::None, at_once);
            let does_not = Answer::with(Difficulty::Complete, at_once);
            let pain = *ability == Ability::Comfort;
            let of = |known: bool, answer| if known { answer } else { Answer::NOT_ASKED };
            assert_eq!(left.abilities.get(*ability), of(!pain, easily), "{ability}");
            let works = ability.is_work();
            assert_eq!(
                right.abilities.get(*ability),
                of(works, does_not),
                "{ability}"
            );
        }
        for unsaid in [Ability::StaysOn, Ability::LetsGo, Ability::Comfort] {
            assert!(!right.abilities.get(unsaid).is_known(), "{unsaid}");
        }
        let steps = |hand: &Hand| [Contact::Thumb, Contact::Ring].map(|c| hand.contacts.value(c));
        assert_eq!(steps(left), [Some(Difficulty::None), None]);
        assert_eq!(steps(right), [Some(Difficulty::Complete); 2]);
        for hand in [left, right] {
            assert!(!hand.moves_by_itself.is_known() && !hand.later.is_known());
        }
        assert!(!right.pressing.is_known());
        assert!(left.works() && !right.works());
        let open = plan.rider.open_questions();
        assert_eq!(
            open.iter().map(|q| q.id).collect::<Vec<_>>(),
            [
                QuestionId::Comfort,
                QuestionId::OnItsOwn,
                QuestionId::Positions
            ]
        );
    }

    #[test]
    fn what_was_measured_outlives_a_one_tap_answer() {
        let device = Device {
            acts: Answer::of(Acts::Pulls),
            ..Device::default()
        };
        let reach = Answer::of(Mm(62.0));
        let plan = after(&[
            RiderEdit::BladeReach(Side::Left, HandPosition::Hoods, reach),
            RiderEdit::Device(Side::Left, Some(device)),
            RiderEdit::HandDoesAll(Side::Left, None),
        ]);
        let hand = &plan.rider.hands.left;
        assert_eq!(hand.blade_reach.get(HandPosition::Hoods), reach);
        assert_eq!(hand.device, Some(device));
    }

    #[test]
    fn not_sure_takes_an_answer_back() {
        let steers = |answer| RiderEdit::Ability(Side::Left, Ability::SteersAlone, answer);
        let told = after(&[steers(Answer::of(Difficulty::None))]);
        let unsure = after(&[
            steers(Answer::of(Difficulty::None)),
            steers(Answer::NOT_ASKED),
        ]);
        assert!(!told.rider.hands.left.abilities.is_empty());
        assert!(unsure.rider.hands.left.abilities.is_empty());
    }

    #[test]
    fn an_absurd_reach_is_refused() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        for mm in [-1.0, 9.0, 201.0, f64::NAN, f64::INFINITY] {
            let edit = RiderEdit::BladeReach(Side::Left, HandPosition::Hoods, Answer::of(Mm(mm)));
            assert!(plan.apply(&Edit::Rider(edit)).is_err(), "{mm}");
        }
    }
}
