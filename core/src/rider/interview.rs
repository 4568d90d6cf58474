//! The interview: about twelve questions in plain words.

use super::{Ability, Contact, Hand, MAIN_CONTACTS, Rider, Side};
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
    /// The closest open codes of the WHO ICF (2001), for cross-reference only.
    pub icf: &'static [IcfCode],
}

/// An open code of the WHO ICF (2001) with what it is called there.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct IcfCode {
    /// The code: "d4403".
    pub code: &'static str,
    /// What it is about: "releasing".
    pub name: &'static str,
}

impl std::fmt::Display for IcfCode {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.code, self.name)
    }
}

/// What step numbers and codes are, and what they are not.
pub const ICF_NOTE: &str = "Steps 0 to 4 are ordered like the qualifier of the WHO ICF (2001), and each ICF code is the closest one. They are a cross-reference, not clinical ratings.";

const fn icf(code: &'static str, name: &'static str) -> IcfCode {
    IcfCode { code, name }
}

const HAND_AND_ARM_USE: IcfCode = icf("d445", "hand and arm use");
const GRASPING: IcfCode = icf("d4401", "grasping");
const MANIPULATING: IcfCode = icf("d4402", "manipulating");
const RELEASING: IcfCode = icf("d4403", "releasing");
const PULLING: IcfCode = icf("d4450", "pulling");
const PUSHING: IcfCode = icf("d4451", "pushing");
const REACHING: IcfCode = icf("d4452", "reaching");
const RIDING: IcfCode = icf("d4750", "driving human-powered transportation");
const TOUCH: IcfCode = icf("b265", "touch");
const PAIN_IN_UPPER_LIMB: IcfCode = icf("b28014", "pain in upper limb");
const MUSCLE_ENDURANCE: IcfCode = icf("b740", "muscle endurance");
/// From memory.
const MUSCLE_TONE: IcfCode = icf("b735", "muscle tone");
/// From memory; b7651, tremor, lies under it.
const INVOLUNTARY_MOVEMENT: IcfCode = icf("b765", "involuntary movement");

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
        icf: &[HAND_AND_ARM_USE],
    },
    Question {
        id: QuestionId::Holding,
        subject: Subject::EachHand,
        ask: "Does this hand stay where it is?",
        abilities: &[Ability::StaysOn, Ability::Steady],
        icf: &[GRASPING],
    },
    Question {
        id: QuestionId::Steering,
        subject: Subject::EachHand,
        ask: "Can this hand steer?",
        abilities: &[Ability::SteersAlone, Ability::SteersWhileOtherBrakes],
        icf: &[RIDING],
    },
    Question {
        id: QuestionId::Pressing,
        subject: Subject::EachHand,
        ask: "Which parts of this hand press a button, and can one press alone?",
        abilities: &[],
        icf: &[MANIPULATING],
    },
    Question {
        id: QuestionId::Paddle,
        subject: Subject::EachHand,
        ask: "Does this hand swing a long paddle?",
        abilities: &[Ability::SwingsPaddle],
        icf: &[PUSHING],
    },
    Question {
        id: QuestionId::HoldAndLetGo,
        subject: Subject::EachHand,
        ask: "Does this hand keep a button pressed, and let go at once?",
        abilities: &[Ability::KeepsPressed, Ability::LetsGo],
        icf: &[RELEASING],
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
        icf: &[PULLING],
    },
    Question {
        id: QuestionId::Moving,
        subject: Subject::EachHand,
        ask: "Does this hand move along the bar and back without looking?",
        abilities: &[Ability::MovesAlong],
        icf: &[REACHING],
    },
    Question {
        id: QuestionId::Feeling,
        subject: Subject::EachHand,
        ask: "Does this hand tell two buttons apart without looking?",
        abilities: &[Ability::TellsApart],
        icf: &[TOUCH],
    },
    Question {
        id: QuestionId::Comfort,
        subject: Subject::EachHand,
        ask: "Does this hand hurt while riding, or next morning?",
        abilities: &[Ability::Comfort],
        icf: &[PAIN_IN_UPPER_LIMB],
    },
    Question {
        id: QuestionId::OnItsOwn,
        subject: Subject::EachHand,
        ask: "Does this arm tighten or move by itself, and what of it after an hour or in the cold?",
        abilities: &[],
        icf: &[MUSCLE_TONE, INVOLUNTARY_MOVEMENT, MUSCLE_ENDURANCE],
    },
    Question {
        id: QuestionId::Positions,
        subject: Subject::Once,
        ask: "Where do the hands ride, and from which side does the rider mount?",
        abilities: &[],
        icf: &[RIDING],
    },
];

impl Question {
    /// The closest ICF codes in words: "closest ICF code d4403 releasing".
    pub fn icf_words(&self) -> String {
        let codes: Vec<String> = self.icf.iter().map(IcfCode::to_string).collect();
        let plural = if codes.len() == 1 { "code" } else { "codes" };
        format!("closest ICF {plural} {}", codes.join(", "))
    }

    /// The question that asks about an ability.
    pub fn about(ability: Ability) -> Option<&'static Question> {
        QUESTIONS.iter().find(|q| q.abilities.contains(&ability))
    }

    /// The question of this name.
    pub fn named(id: QuestionId) -> Option<&'static Question> {
        QUESTIONS.iter().find(|q| q.id == id)
    }

    /// Whether everything the question asks has an answer, as far as it matters.
    pub fn answered(&self, rider: &Rider) -> bool {
        match self.subject {
            Subject::EachHand => Side::ALL.iter().all(|side| !self.is_open_for(rider, *side)),
            Subject::Once => !rider.positions.is_empty() && rider.mounts_from.is_known(),
        }
    }

    /// Whether something of the question that matters for one hand has no answer.
    pub fn is_open_for(&self, rider: &Rider, side: Side) -> bool {
        !self.open_items(rider.hands.get(side)).is_empty()
    }

    /// The hands for which something of the question has no answer.
    pub fn open_hands(&self, rider: &Rider) -> Vec<Side> {
        let asks = self.subject == Subject::EachHand;
        let sides = Side::ALL.iter().copied();
        sides
            .filter(|side| asks && self.is_open_for(rider, *side))
            .collect()
    }

    /// What of the question matters for a hand. A hand off the bar does no work:
    /// only that it does so is asked. Of one that rests on it, what decides
    /// whether it stays, brushes or presses what is near: what lies live under
    /// it is a finding by itself.
    pub fn items(&self, hand: &Hand) -> Vec<Item> {
        let contacts = MAIN_CONTACTS.iter().map(|contact| Item::Contact(*contact));
        let own: Vec<Item> = match self.id {
            QuestionId::Place => vec![Item::Place],
            QuestionId::Pressing => contacts.chain([Item::Pressing]).collect(),
            QuestionId::OnItsOwn => vec![Item::MovesByItself, Item::Later],
            _ => Vec::new(),
        };
        let abilities = self.abilities.iter().map(|ability| Item::Ability(*ability));
        let all = own.into_iter().chain(abilities);
        all.filter(|item| item.matters_for(hand)).collect()
    }

    /// What of the question matters for a hand and has no answer.
    pub fn open_items(&self, hand: &Hand) -> Vec<Item> {
        let items = self.items(hand).into_iter();
        items.filter(|item| !item.is_answered(hand)).collect()
    }
}

/// One thing that a question asks of a hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Item {
    /// What it does while riding.
    Place,
    /// How hard something is.
    Ability(Ability),
    /// How hard pressing with a contact is.
    Contact(Contact),
    /// Whether contacts press one by one.
    Pressing,
    /// Whether the arm moves by itself.
    MovesByItself,
    /// What becomes of it after an hour or in the cold.
    Later,
}

impl Item {
    /// Whether it matters for a hand; see [`Question::items`].
    fn matters_for(self, hand: &Hand) -> bool {
        let of_resting = matches!(
            self,
            Item::Ability(Ability::StaysOn | Ability::Steady | Ability::LetsGo)
                | Item::MovesByItself
                | Item::Later
        );
        self == Item::Place || hand.works() || (of_resting && hand.on_bar())
    }

    fn is_answered(self, hand: &Hand) -> bool {
        match self {
            Item::Place => hand.place.is_known(),
            Item::Ability(ability) => hand.abilities.value(ability).is_some(),
            Item::Contact(contact) => hand.contacts.value(contact).is_some(),
            Item::Pressing => hand.pressing.is_known(),
            Item::MovesByItself => hand.moves_by_itself.is_known(),
            Item::Later => hand.later.is_known(),
        }
    }
}

impl std::fmt::Display for Item {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Item::Place => write!(f, "{}", QuestionId::Place),
            Item::Ability(ability) => write!(f, "{ability}"),
            Item::Contact(contact) => write!(f, "pressing with the {contact}"),
            Item::Pressing => f.write_str("whether one presses alone"),
            Item::MovesByItself => f.write_str("whether the arm moves by itself"),
            Item::Later => f.write_str("after an hour or in the cold"),
        }
    }
}
