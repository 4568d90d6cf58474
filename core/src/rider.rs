//! The rider: what each hand can do, as answered, and by whose eyes.
//!
//! Never a diagnosis, a birth date, or anything about attention, vision,
//! cognition, seizures or medicines: those are not assessed here.

mod ability;
mod answer;
mod contact;
mod difficulty;
mod hand;
mod interview;

pub use ability::Ability;
pub use answer::{Answer, Asked, Before, Evidence, Source, Worn, YesNo};
pub use contact::{Contact, MAIN_CONTACTS};
pub use difficulty::{Difficulty, Standing};
pub use hand::{Acts, Day, Device, Hand, HandPlace, Hands, Later, Pressing};
pub use interview::{ICF_NOTE, IcfCode, Item, QUESTIONS, Question, QuestionId, Subject};

use crate::cockpit::HandPosition;
use crate::finding::Role;
use crate::text::{Date, Text};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// The left or the right side, as the rider sees it from the saddle.
    pub enum Side as "side" {
        /// The rider's left.
        Left = "left", "left";
        /// The rider's right.
        Right = "right", "right";
    }
}

impl Side {
    /// The other side.
    pub const fn other(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        }
    }
}

vocabulary! {
    /// How much of the riding time a hand position is used.
    pub enum Use as "use" {
        /// Most of the time.
        Mostly = "mostly", "mostly";
        /// Now and then.
        Sometimes = "sometimes", "sometimes";
        /// Not at all.
        Never = "never", "never";
    }
}

/// What is known of the rider.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Rider {
    /// What the rider is called in the shop; never a full identity.
    pub nickname: Text,
    /// What each hand can do.
    pub hands: Hands,
    /// How much each hand position is used.
    pub positions: Asked<HandPosition, Use>,
    /// The side from which the rider mounts.
    pub mounts_from: Answer<Side>,
    /// The hand that holds a brake while mounting.
    pub holds_brake_mounting: Answer<Side>,
    /// The side on which the rider expects the front brake, by habit or by the
    /// custom of the place.
    pub front_brake_habit: Answer<Side>,
    /// Presses in all during "a ride that was fine", as the rider remembers it.
    pub fine_ride_presses: Answer<u16>,
    /// The rider's own words.
    pub own_words: Text,
    /// The day on which everything about the hands was removed, so that nobody
    /// takes what is missing for what was never asked.
    pub hand_details_removed: Option<Date>,
}

impl Rider {
    /// Whether somebody in this role may change the rider's own words: only the
    /// rider, once something is written. Who never said in what role they work
    /// is taken for the rider or for who writes down what the rider says.
    pub fn lets_change_own_words(&self, role: Option<Role>) -> bool {
        self.own_words.is_empty() || role.is_none_or(|role| role == Role::Rider)
    }

    /// How many questions of the interview have at least one answer missing.
    pub fn open_questions(&self) -> Vec<&'static Question> {
        QUESTIONS.iter().filter(|q| !q.answered(self)).collect()
    }

    /// How many questions are still open, and for which hand where only one has any.
    pub fn open_words(&self) -> String {
        let open = self.open_questions();
        let mut hands: Vec<Side> = open.iter().flat_map(|q| q.open_hands(self)).collect();
        hands.dedup();
        let of = match hands.as_slice() {
            [side] if open.len() > 1 => format!(", none of them about the {} hand", side.other()),
            _ => String::new(),
        };
        match open.len() {
            0 => "Every question is answered.".into(),
            1 => "1 question is still open.".into(),
            n => format!("{n} questions are still open{of}."),
        }
    }

    /// How many answers are known of those that are asked on request only:
    /// further contacts, blade reach, devices, a ride that was fine.
    pub fn answers_on_request(&self) -> usize {
        let of_hand = |side: &Side| {
            let hand = self.hands.get(*side);
            let further = hand.contacts.iter();
            let further = further.filter(|(contact, _)| !MAIN_CONTACTS.contains(contact));
            let device = usize::from(hand.device.is_some());
            further.count() + hand.blade_reach.iter().count() + device
        };
        Side::ALL.iter().map(of_hand).sum::<usize>()
            + usize::from(self.fine_ride_presses.is_known())
    }

    /// Everything about the hands removed on this day. The nickname and the
    /// positions stay; who saw the positions, when and wearing what goes, because
    /// it tells of a visit and of a splint or device.
    pub fn without_hand_details(&self, on: Option<Date>) -> Rider {
        Rider {
            nickname: self.nickname.clone(),
            positions: self.positions.bare(),
            hand_details_removed: on,
            ..Rider::default()
        }
    }
}

/// The digits from thumb to little finger, in order.
pub fn digits() -> impl Iterator<Item = Contact> {
    Contact::ALL.iter().copied().filter(|c| c.is_digit())
}

#[cfg(test)]
mod tests {
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, RiderEdit};
    use crate::rider::Side;

    #[test]
    fn open_questions_are_told_with_the_hand_that_is_done() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let all = plan.rider.open_questions().len();
        let said = |words: &str| format!("{all} questions are still open{words}.");
        assert_eq!(plan.rider.open_words(), said(""));
        let left = Edit::Rider(RiderEdit::HandDoesNothing(
            Side::Left,
            super::HandPlace::OffBar,
            None,
        ));
        let plan = plan.apply(&left).expect("one tap answers");
        assert_eq!(
            plan.rider.open_words(),
            said(", none of them about the left hand")
        );
        let holding = super::QUESTIONS
            .iter()
            .find(|q| q.id == super::QuestionId::Holding);
        let holding = holding.expect("it is asked");
        assert_eq!(holding.open_hands(&plan.rider), [Side::Right]);
        let right = RiderEdit::HandDoesNothing(Side::Right, super::HandPlace::OffBar, None);
        let plan = plan.apply(&Edit::Rider(right)).expect("one tap answers");
        assert_eq!(plan.rider.open_words(), "1 question is still open.");
    }
}
