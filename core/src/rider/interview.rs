//! The interview: about twelve questions in plain words.

use super::{Ability, Hand, MAIN_CONTACTS, Rider, Side};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// A question's stable name.
    pub enum QuestionId as "question" {
        /// What the hand does while riding.
        Place = "place", "on the bar";
        /// Stays on, keeps steady.
        Holding = "holding", "holding on";
        /// Steers alone, and under the other hand's braking.
        Steering = "steering", "steering";
        /// Which contacts press.
        Pressing = "pressing", "pressing";
        /// Swings a long paddle.
        Paddle = "paddle", "long paddle";
        /// Keeps pressed, lets go.
        HoldAndLetGo = "hold-and-let-go", "keeping pressed and letting go";
        /// Brakes.
        Braking = "braking", "braking";
        /// Moves along the bar.
        Moving = "moving", "moving along the bar";
        /// Tells buttons apart.
        Feeling = "feeling", "telling apart";
        /// Pain.
        Comfort = "comfort", "pain";
        /// Moves by itself; after an hour or in the cold.
        OnItsOwn = "on-its-own", "effort, startle, cold";
        /// Hand positions, mounting.
        Positions = "positions", "hand positions";
    }
}

/// What a question is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Subject {
    /// Asked of each hand.
    EachHand,
    /// Asked once.
    Once,
}

/// One question of the interview.
#[derive(Debug, PartialEq, Eq)]
pub struct Question {
    /// Its name.
    pub id: QuestionId,
    /// Whether it is asked of each hand or once.
    pub subject: Subject,
    /// The question as put to the rider.
    pub ask: &'static str,
    /// The abilities it answers, asked step by step.
    pub abilities: &'static [Ability],
    /// The closest open code of the WHO ICF (2001), for cross-reference only.
    pub icf: &'static str,
}

/// The interview in order (common practice; wording ours).
///
/// The ICF codes are the closest ones listed in WHO ICF 2001, a
/// cross-reference and not a rating.
pub const QUESTIONS: &[Question] = &[
    Question {
        id: QuestionId::Place,
        subject: Subject::EachHand,
        ask: "While riding, does this hand work on the bar, rest on it, or stay off it?",
        abilities: &[],
        icf: "d445",
    },
    Question {
        id: QuestionId::Holding,
        subject: Subject::EachHand,
        ask: "Does this hand stay where it is?",
        abilities: &[Ability::StaysOn, Ability::Steady],
        icf: "d4401",
    },
    Question {
        id: QuestionId::Steering,
        subject: Subject::EachHand,
        ask: "Can this hand steer?",
        abilities: &[Ability::SteersAlone, Ability::SteersWhileOtherBrakes],
        icf: "d4750",
    },
    Question {
        id: QuestionId::Pressing,
        subject: Subject::EachHand,
        ask: "Which parts of this hand press a button, and can one press alone?",
        abilities: &[],
        icf: "d4402",
    },
    Question {
        id: QuestionId::Paddle,
        subject: Subject::EachHand,
        ask: "Does this hand swing a long paddle?",
        abilities: &[Ability::SwingsPaddle],
        icf: "d4451",
    },
    Question {
        id: QuestionId::HoldAndLetGo,
        subject: Subject::EachHand,
        ask: "Does this hand keep a button pressed, and let go at once?",
        abilities: &[Ability::KeepsPressed, Ability::LetsGo],
        icf: "d4403",
    },
    Question {
        id: QuestionId::Braking,
        subject: Subject::EachHand,
        ask: "Can this hand brake?",
        abilities: &[
            Ability::BrakesHard,
            Ability::BrakesLong,
            Ability::ReleasesBrake,
        ],
        icf: "d4450",
    },
    Question {
        id: QuestionId::Moving,
        subject: Subject::EachHand,
        ask: "Does this hand move along the bar and back without looking?",
        abilities: &[Ability::MovesAlong],
        icf: "d4452",
    },
    Question {
        id: QuestionId::Feeling,
        subject: Subject::EachHand,
        ask: "Does this hand tell two buttons apart without looking?",
        abilities: &[Ability::TellsApart],
        icf: "b265",
    },
    Question {
        id: QuestionId::Comfort,
        subject: Subject::EachHand,
        ask: "Does this hand hurt while riding, or next morning?",
        abilities: &[Ability::Comfort],
        icf: "b28014",
    },
    Question {
        id: QuestionId::OnItsOwn,
        subject: Subject::EachHand,
        ask: "Does this arm tighten or move by itself, and what of it after an hour or in the cold?",
        abilities: &[],
        icf: "b760",
    },
    Question {
        id: QuestionId::Positions,
        subject: Subject::Once,
        ask: "Where do the hands ride, and from which side does the rider mount?",
        abilities: &[],
        icf: "d4750",
    },
];

impl Question {
    /// Whether everything the question asks has an answer, as far as it matters.
    pub fn answered(&self, rider: &Rider) -> bool {
        match self.subject {
            Subject::EachHand => Side::ALL.iter().all(|side| !self.is_open_for(rider, *side)),
            Subject::Once => !rider.positions.is_empty() && rider.mounts_from.is_known(),
        }
    }

    /// Whether the question matters for one hand and is not answered for it.
    pub fn is_open_for(&self, rider: &Rider, side: Side) -> bool {
        self.matters_for(rider.hands.get(side)) && !self.answered_for(rider, side)
    }

    /// Whether the question matters for a hand. A hand that rests or is off the
    /// bar does no work: only that it does so is asked. What lies live under a
    /// resting hand is a finding by itself.
    pub fn matters_for(&self, hand: &Hand) -> bool {
        self.id == QuestionId::Place || hand.works()
    }

    /// Whether the question is answered for one hand.
    pub fn answered_for(&self, rider: &Rider, side: Side) -> bool {
        let hand = rider.hands.get(side);
        let own = match self.id {
            QuestionId::Place => hand.place.is_known(),
            QuestionId::Pressing => {
                hand.pressing.is_known()
                    && MAIN_CONTACTS
                        .iter()
                        .all(|c| hand.contacts.value(*c).is_some())
            }
            QuestionId::OnItsOwn => hand.moves_by_itself.is_known() && hand.later.is_known(),
            _ => true,
        };
        own && self
            .abilities
            .iter()
            .all(|ability| hand.abilities.value(*ability).is_some())
    }
}
