//! The rider in format 1.

use serde::{Deserialize, Serialize};

use crate::cockpit::HandPosition;
use crate::document::code::Code;
use crate::document::key::Day;
use crate::document::list::Table;
use crate::document::number::{Length, Whole};
use crate::document::reader::Reader;
use crate::limits::BLADE_REACH;
use crate::rider::{
    self, Ability, Acts, Asked, Contact, Difficulty, HandPlace, Hands, Later, Pressing, Side,
    Source, Use, Worn, YesNo,
};
use crate::units::Mm;

type Reach = Length<{ BLADE_REACH.from }, { BLADE_REACH.to }>;

/// What is known of the rider.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "a rider")]
pub(super) struct Rider {
    /// What the rider is called in the shop.
    nickname: String,
    left: Hand,
    right: Hand,
    /// How much each hand position is used.
    positions: Table<Code<HandPosition>, Known<Code<Use>>>,
    #[serde(default)]
    mounts_from: Answer<Code<Side>>,
    #[serde(default)]
    holds_brake_mounting: Answer<Code<Side>>,
    #[serde(default)]
    front_brake_habit: Answer<Code<Side>>,
    #[serde(default)]
    fine_ride_presses: Answer<Whole<0, { u16::MAX as u32 }>>,
    /// The rider's own words.
    own_words: String,
}

/// What is known of one hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "what is known of a hand")]
struct Hand {
    /// What it does while riding.
    #[serde(default)]
    place: Answer<Code<HandPlace>>,
    /// How hard each thing is; what is absent was not asked.
    abilities: Table<Code<Ability>, Known<Code<Difficulty>>>,
    /// How hard pressing is with each contact; what is absent was not asked.
    contacts: Table<Code<Contact>, Known<Code<Difficulty>>>,
    #[serde(default)]
    pressing: Answer<Code<Pressing>>,
    #[serde(default)]
    moves_by_itself: Answer<Code<YesNo>>,
    #[serde(default)]
    later: Answer<Code<Later>>,
    /// Farthest blade it pulls, in millimetres from the bar, per position.
    blade_reach: Table<Code<HandPosition>, Known<Reach>>,
    device: Option<Device>,
}

/// A device that joins the hand to the bar.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "a device")]
struct Device {
    #[serde(default)]
    releases_in_fall: Answer<Code<YesNo>>,
    #[serde(default)]
    acts: Answer<Code<Acts>>,
}

/// An answer that may be missing: null is *not asked, or not sure*, which is
/// not "no difficulty".
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "Answer_{T}"))]
#[serde(expecting = "an answer such as {\"is\": null}")]
pub(super) struct Answer<T> {
    is: Option<T>,
    #[serde(skip_serializing_if = "Option::is_none")]
    evidence: Option<Evidence>,
}

/// An answer in a table, where what is absent was not asked.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "Known_{T}"))]
#[serde(expecting = "an answer such as {\"is\": …}")]
struct Known<T> {
    is: T,
    #[serde(skip_serializing_if = "Option::is_none")]
    evidence: Option<Evidence>,
}

/// Where an answer came from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "where an answer came from")]
struct Evidence {
    source: Code<Source>,
    date: Option<Day>,
    worn: Option<Code<Worn>>,
}

impl<T> Default for Answer<T> {
    fn default() -> Self {
        Answer {
            is: None,
            evidence: None,
        }
    }
}

impl From<rider::Evidence> for Evidence {
    fn from(evidence: rider::Evidence) -> Self {
        Evidence {
            source: Code(evidence.source),
            date: evidence.date.map(Day),
            worn: evidence.worn.map(Code),
        }
    }
}

impl From<Evidence> for rider::Evidence {
    fn from(evidence: Evidence) -> Self {
        rider::Evidence {
            source: evidence.source.0,
            date: evidence.date.map(|day| day.0),
            worn: evidence.worn.map(|worn| worn.0),
        }
    }
}

impl<T> Answer<T> {
    pub(super) fn written<M: Copy>(answer: rider::Answer<M>, value: impl Fn(M) -> T) -> Self {
        Answer {
            is: answer.value.map(value),
            evidence: answer.evidence.map(Evidence::from),
        }
    }

    pub(super) fn read<M>(self, value: impl Fn(T) -> M) -> rider::Answer<M> {
        rider::Answer {
            value: self.is.map(value),
            evidence: self.evidence.map(rider::Evidence::from),
        }
    }
}

impl<T: Copy> Answer<Code<T>> {
    pub(super) fn of(answer: rider::Answer<T>) -> Self {
        Answer::written(answer, Code)
    }

    pub(super) fn answer(self) -> rider::Answer<T> {
        self.read(|code| code.0)
    }
}

impl<T> Known<T> {
    fn read<M>(self, value: impl Fn(T) -> M) -> rider::Answer<M> {
        rider::Answer::with(value(self.is), self.evidence.map(rider::Evidence::from))
    }
}

fn table<K: Ord + Copy, M: Copy, T>(
    asked: &Asked<K, M>,
    value: impl Fn(M) -> T,
) -> Table<Code<K>, Known<T>> {
    asked
        .iter()
        .filter_map(|(key, answer)| {
            let known = Known {
                is: value(answer.value?),
                evidence: answer.evidence.map(Evidence::from),
            };
            Some((Code(key), known))
        })
        .collect()
}

fn asked<K: Ord + Copy, M: Copy, T>(
    table: Table<Code<K>, Known<T>>,
    value: impl Fn(T) -> M,
) -> Asked<K, M> {
    (table.0.into_iter())
        .map(|(key, known)| (key.0, known.read(&value)))
        .collect()
}

impl From<&rider::Rider> for Rider {
    fn from(rider: &rider::Rider) -> Self {
        Rider {
            nickname: rider.nickname.to_string(),
            left: (&rider.hands.left).into(),
            right: (&rider.hands.right).into(),
            positions: table(&rider.positions, Code),
            mounts_from: Answer::of(rider.mounts_from),
            holds_brake_mounting: Answer::of(rider.holds_brake_mounting),
            front_brake_habit: Answer::of(rider.front_brake_habit),
            fine_ride_presses: Answer::written(rider.fine_ride_presses, Whole::from),
            own_words: rider.own_words.to_string(),
        }
    }
}

impl Rider {
    pub(super) fn rider(self, reader: &mut Reader) -> rider::Rider {
        rider::Rider {
            nickname: reader.text("rider.nickname", &self.nickname),
            hands: Hands {
                left: self.left.into(),
                right: self.right.into(),
            },
            positions: asked(self.positions, |code| code.0),
            mounts_from: self.mounts_from.answer(),
            holds_brake_mounting: self.holds_brake_mounting.answer(),
            front_brake_habit: self.front_brake_habit.answer(),
            fine_ride_presses: self.fine_ride_presses.read(u16::from),
            own_words: reader.text("rider.own_words", &self.own_words),
        }
    }
}

impl From<&rider::Hand> for Hand {
    fn from(hand: &rider::Hand) -> Self {
        Hand {
            place: Answer::of(hand.place),
            abilities: table(&hand.abilities, Code),
            contacts: table(&hand.contacts, Code),
            pressing: Answer::of(hand.pressing),
            moves_by_itself: Answer::of(hand.moves_by_itself),
            later: Answer::of(hand.later),
            blade_reach: table(&hand.blade_reach, Reach::from),
            device: hand.device.map(|device| Device {
                releases_in_fall: Answer::of(device.releases_in_fall),
                acts: Answer::of(device.acts),
            }),
        }
    }
}

impl From<Hand> for rider::Hand {
    fn from(hand: Hand) -> Self {
        rider::Hand {
            place: hand.place.answer(),
            abilities: asked(hand.abilities, |code| code.0),
            contacts: asked(hand.contacts, |code| code.0),
            pressing: hand.pressing.answer(),
            moves_by_itself: hand.moves_by_itself.answer(),
            later: hand.later.answer(),
            blade_reach: asked(hand.blade_reach, Mm::from),
            device: hand.device.map(|device| rider::Device {
                releases_in_fall: device.releases_in_fall.answer(),
                acts: device.acts.answer(),
            }),
        }
    }
}
