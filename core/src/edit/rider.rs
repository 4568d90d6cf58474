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
                *hands.get_mut(*side) =
                    keep_singly_asked(hands.get(*side), Hand::does_all(*evidence));
            }
            RiderEdit::HandDoesNothing(side, place, evidence) => {
                *hands.get_mut(*side) =
                    keep_singly_asked(hands.get(*side), Hand::does_nothing(*place, *evidence));
            }
            RiderEdit::ForgetHand(side) => {
                *hands.get_mut(*side) = Hand::default();
                let hand = ["rider", side.code()];
                plan.unknown.retain(|part| !part.is_under(&hand));
            }
            RiderEdit::Place(side, answer) => said(&mut hands.get_mut(*side).place, *answer),
            RiderEdit::Ability(side, ability, answer) => {
                hands.get_mut(*side).abilities.say(*ability, *answer);
            }
            RiderEdit::Contact(side, contact, answer) => {
                hands.get_mut(*side).contacts.say(*contact, *answer);
            }
            RiderEdit::Pressing(side, answer) => said(&mut hands.get_mut(*side).pressing, *answer),
            RiderEdit::MovesByItself(side, answer) => {
                said(&mut hands.get_mut(*side).moves_by_itself, *answer);
            }
            RiderEdit::Later(side, answer) => said(&mut hands.get_mut(*side).later, *answer),
            RiderEdit::Hurts(side, part, answer) => {
                hands.get_mut(*side).hurts.say(*part, *answer);
            }
            RiderEdit::BladeReach(side, position, answer) => {
                if let Some(mm) = answer.value {
                    within("The reach of a blade", mm, BLADE_REACH)?;
                }
                hands.get_mut(*side).blade_reach.say(*position, *answer);
            }
            RiderEdit::Device(side, device) => {
                let hand = hands.get_mut(*side);
                hand.device = device.map(|device| device.after(hand.device));
            }
            RiderEdit::Position(position, answer) => rider.positions.say(*position, *answer),
            RiderEdit::MountsFrom(answer) => said(&mut rider.mounts_from, *answer),
            RiderEdit::HoldsBrakeMounting(answer) => said(&mut rider.holds_brake_mounting, *answer),
            RiderEdit::FrontBrakeHabit(answer) => said(&mut rider.front_brake_habit, *answer),
            RiderEdit::FineRidePresses(answer) => said(&mut rider.fine_ride_presses, *answer),
        }
        Ok(())
    }
}

/// Puts an answer in place of the one before, which is kept beside it.
fn said<T: Copy>(kept: &mut Answer<T>, answer: Answer<T>) {
    *kept = answer.after(*kept);
}

/// What was measured, or asked singly with its source, outlives a one-tap
/// answer: that fills in the rest. What the hand does while riding is what the
/// tap itself says.
fn keep_singly_asked(before: &Hand, mut after: Hand) -> Hand {
    let singly = |answer: &Answer<Difficulty>| answer.was_asked_singly();
    for (ability, answer) in before.abilities.iter().filter(|(_, a)| singly(a)) {
        after.abilities.set(ability, answer);
    }
    for (contact, answer) in before.contacts.iter().filter(|(_, a)| singly(a)) {
        after.contacts.set(contact, answer);
    }
    keep(&mut after.pressing, before.pressing);
    keep(&mut after.moves_by_itself, before.moves_by_itself);
    keep(&mut after.later, before.later);
    Hand {
        place: after.place.after(before.place),
        hurts: before.hurts.clone(),
        blade_reach: before.blade_reach.clone(),
        device: before.device,
        ..after
    }
}

fn keep<T>(after: &mut Answer<T>, before: Answer<T>) {
    if before.was_asked_singly() {
        *after = before;
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
    use crate::rider::{Acts, Before, QuestionId, Source, Worn};
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
                QuestionId::Holding,
                QuestionId::HoldAndLetGo,
                QuestionId::Comfort,
                QuestionId::OnItsOwn,
                QuestionId::Positions
            ]
        );
    }

    /// One tap turns no answer that a fitter or clinician saw into something
    /// nobody said, while what an earlier tap filled in gives way.
    #[test]
    fn one_tap_fills_in_only_what_nobody_asked_singly() {
        let seen = |source| {
            Some(Evidence {
                source,
                date: None,
                worn: Some(Worn::Splint),
                in_one_tap: false,
            })
        };
        let clinician = seen(Source::SeenByClinician);
        let brakes = Answer::with(Difficulty::Severe, clinician);
        let thumb = Answer::with(Difficulty::Moderate, clinician);
        let cold = Answer::with(Later::OneStepHarder, clinician);
        let told = seen(Source::Told);
        let plan = after(&[
            RiderEdit::HandDoesNothing(Side::Left, HandPlace::Rests, told),
            RiderEdit::Ability(Side::Left, Ability::BrakesHard, brakes),
            RiderEdit::Contact(Side::Left, Contact::Thumb, thumb),
            RiderEdit::Later(Side::Left, cold),
            RiderEdit::HandDoesAll(Side::Left, told),
        ]);
        let hand = &plan.rider.hands.left;
        assert_eq!(hand.abilities.get(Ability::BrakesHard).value, brakes.value);
        assert_eq!(hand.abilities.get(Ability::BrakesHard).evidence, clinician);
        assert_eq!(hand.contacts.get(Contact::Thumb).evidence, clinician);
        assert_eq!(hand.later, cold);
        assert_eq!(hand.place.value, Some(HandPlace::Works));
        let steers = hand.abilities.get(Ability::SteersAlone);
        assert_eq!(steers.value, Some(Difficulty::None), "filled in anew");
        assert_eq!(hand.contacts.value(Contact::Ring), None, "and taken back");
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

    /// A clinician's correction leaves the fitter's word readable; correcting
    /// one's own word on the same day replaces it; the same said anew by somebody
    /// else is theirs from then on.
    #[test]
    fn a_correction_keeps_who_said_what_before() {
        let seen = |source, worn| {
            Some(Evidence {
                source,
                date: crate::text::Date::new(2031, 4, 30),
                worn,
                in_one_tap: false,
            })
        };
        let fitter = seen(Source::SeenByFitter, None);
        let clinician = seen(Source::SeenByClinician, Some(Worn::Splint));
        let brakes = |step, evidence| {
            let answer = Answer::with(step, evidence);
            RiderEdit::Ability(Side::Left, Ability::BrakesHard, answer)
        };
        let now = |edits: &[RiderEdit]| {
            let hand = &after(edits).rider.hands.left;
            hand.abilities.get(Ability::BrakesHard)
        };
        let (easily, effort) = (Difficulty::None, Difficulty::Moderate);
        let by_fitter = Some(Before {
            value: easily,
            evidence: fitter,
        });
        let corrected = [brakes(easily, fitter), brakes(effort, clinician)];
        assert_eq!(now(&corrected).before, by_fitter);
        let again = [&corrected[..], &[brakes(Difficulty::Severe, clinician)]].concat();
        assert_eq!(now(&again).value, Some(Difficulty::Severe));
        assert_eq!(now(&again).before, by_fitter);
        let confirmed = now(&[brakes(easily, fitter), brakes(easily, clinician)]);
        assert_eq!(
            (confirmed.value, confirmed.evidence),
            (Some(easily), clinician)
        );
        assert_eq!(confirmed.before, by_fitter);
        let same = now(&[brakes(easily, fitter), brakes(easily, fitter)]);
        assert_eq!(same, Answer::with(easily, fitter));
    }

    #[test]
    fn every_answer_keeps_the_one_before() {
        let evidence = Some(Evidence {
            source: Source::Told,
            date: None,
            worn: None,
            in_one_tap: false,
        });
        let left = Side::Left;
        let later = |evidence| RiderEdit::Later(left, Answer::with(Later::Same, evidence));
        let moves = |evidence| RiderEdit::MovesByItself(left, Answer::with(YesNo::No, evidence));
        let mounts = |evidence| RiderEdit::MountsFrom(Answer::with(left, evidence));
        let rider = after(&[
            later(None),
            later(evidence),
            moves(None),
            moves(evidence),
            mounts(None),
            mounts(evidence),
        ]);
        let rider = rider.rider;
        assert!(rider.hands.left.later.before.is_some());
        assert!(rider.hands.left.moves_by_itself.before.is_some());
        assert!(rider.mounts_from.before.is_some());
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
