//! The rider in format 1.

use crate::cockpit::HandPosition;
use crate::document::code::Code;
use crate::document::key::Day;
use crate::document::list::Table;
use crate::document::number::{Length, Whole};
use crate::document::part::Given;
use crate::limits::BLADE_REACH;
use crate::rider::{
    self, Ability, Acts, Asked, Contact, Difficulty, HandPlace, Hands, Later, Pressing, Side,
    Source, Use, Worn, YesNo,
};
use crate::text::Text;
use crate::units::Mm;

type Reach = Length<{ BLADE_REACH.from }, { BLADE_REACH.to }>;

part! {
    /// What is known of the rider.
    pub(super) struct Rider as "a rider" {
        /// What the rider is called in the shop.
        nickname: Text,
        left: Hand,
        right: Hand,
        /// How much each hand position is used.
        positions: Table<Code<HandPosition>, Known<Code<Use>>>,
        mounts_from (default): Answer<Code<Side>>,
        holds_brake_mounting (default): Answer<Code<Side>>,
        front_brake_habit (default): Answer<Code<Side>>,
        fine_ride_presses (default): Answer<Whole<0, { u16::MAX as u32 }>>,
        /// The rider's own words.
        own_words: Text,
        /// The day on which everything about the hands was removed.
        hand_details_removed (default): Given<Day>,
    }
}

part! {
    /// What is known of one hand.
    struct Hand as "what is known of a hand" {
        /// What it does while riding.
        place (default): Answer<Code<HandPlace>>,
        /// How hard each thing is; what is absent was not asked.
        abilities: Table<Code<Ability>, Known<Code<Difficulty>>>,
        /// How hard pressing is with each contact; what is absent was not asked.
        contacts: Table<Code<Contact>, Known<Code<Difficulty>>>,
        pressing (default): Answer<Code<Pressing>>,
        moves_by_itself (default): Answer<Code<YesNo>>,
        later (default): Answer<Code<Later>>,
        /// Farthest blade it pulls, in millimetres from the bar, per position.
        blade_reach: Table<Code<HandPosition>, Known<Reach>>,
        device (default): Option<Device>,
        /// Which part hurts; absent where nothing was said.
        hurts (default): Given<Table<Code<Contact>, Known<Code<YesNo>>>>,
    }
}

part! {
    /// A device that joins the hand to the bar.
    struct Device as "a device" {
        releases_in_fall (default): Answer<Code<YesNo>>,
        acts (default): Answer<Code<Acts>>,
    }
}

part! {
    /// An answer that may be missing: null is *not asked, or not sure*, which is
    /// not "no difficulty".
    #[cfg_attr(feature = "schema", schemars(rename = "Answer_{T}"))]
    pub(super) struct Answer<T> as "an answer such as {\"is\": null}" {
        is (default): Option<T>,
        evidence (default): Given<Evidence>,
        before (default): Given<Before<T>>,
    }
}

part! {
    /// An answer in a table, where what is absent was not asked.
    #[cfg_attr(feature = "schema", schemars(rename = "Known_{T}"))]
    struct Known<T> as "an answer such as {\"is\": …}" {
        is: T,
        evidence (default): Given<Evidence>,
        before (default): Given<Before<T>>,
    }
}

part! {
    /// What was said before somebody else, on another day or wearing something
    /// else, said it anew.
    #[cfg_attr(feature = "schema", schemars(rename = "Before_{T}"))]
    pub(super) struct Before<T> as "an earlier answer such as {\"is\": …}" {
        is: T,
        evidence (default): Given<Evidence>,
    }
}

part! {
    /// Where an answer came from.
    struct Evidence as "where an answer came from" {
        source: Code<Source>,
        date (default): Option<Day>,
        worn (default): Option<Code<Worn>>,
        /// Whether one tap answered many things together; absent if not.
        in_one_tap (default): Given<bool>,
    }
}

impl From<rider::Evidence> for Evidence {
    fn from(evidence: rider::Evidence) -> Self {
        Evidence {
            source: Code(evidence.source),
            date: evidence.date.map(Day),
            worn: evidence.worn.map(Code),
            in_one_tap: Given(evidence.in_one_tap.then_some(true)),
        }
    }
}

impl From<Evidence> for rider::Evidence {
    fn from(evidence: Evidence) -> Self {
        rider::Evidence {
            source: evidence.source.0,
            date: evidence.date.map(|day| day.0),
            worn: evidence.worn.map(|worn| worn.0),
            in_one_tap: evidence.in_one_tap.0.unwrap_or(false),
        }
    }
}

impl<T> Default for Answer<T> {
    fn default() -> Self {
        Answer {
            is: None,
            evidence: Given(None),
            before: Given(None),
        }
    }
}

impl<T> Answer<T> {
    pub(super) fn written<M: Copy>(answer: rider::Answer<M>, value: impl Fn(M) -> T) -> Self {
        Answer {
            is: answer.value.map(&value),
            evidence: Given(answer.evidence.map(Evidence::from)),
            before: Before::written(answer.before, value),
        }
    }

    pub(super) fn read<M>(self, value: impl Fn(T) -> M) -> rider::Answer<M> {
        rider::Answer {
            value: self.is.map(&value),
            evidence: self.evidence.0.map(rider::Evidence::from),
            before: self.before.0.map(|before| before.read(value)),
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
        rider::Answer {
            value: Some(value(self.is)),
            evidence: self.evidence.0.map(rider::Evidence::from),
            before: self.before.0.map(|before| before.read(value)),
        }
    }
}

impl<T> Before<T> {
    fn written<M: Copy>(before: Option<rider::Before<M>>, value: impl Fn(M) -> T) -> Given<Self> {
        Given(before.map(|before| Before {
            is: value(before.value),
            evidence: Given(before.evidence.map(Evidence::from)),
        }))
    }

    fn read<M>(self, value: impl Fn(T) -> M) -> rider::Before<M> {
        rider::Before {
            value: value(self.is),
            evidence: self.evidence.0.map(rider::Evidence::from),
        }
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
                evidence: Given(answer.evidence.map(Evidence::from)),
                before: Before::written(answer.before, &value),
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
            nickname: rider.nickname.clone(),
            left: (&rider.hands.left).into(),
            right: (&rider.hands.right).into(),
            positions: table(&rider.positions, Code),
            mounts_from: Answer::of(rider.mounts_from),
            holds_brake_mounting: Answer::of(rider.holds_brake_mounting),
            front_brake_habit: Answer::of(rider.front_brake_habit),
            fine_ride_presses: Answer::written(rider.fine_ride_presses, Whole::from),
            own_words: rider.own_words.clone(),
            hand_details_removed: Given(rider.hand_details_removed.map(Day)),
        }
    }
}

impl From<Rider> for rider::Rider {
    fn from(stored: Rider) -> Self {
        rider::Rider {
            nickname: stored.nickname,
            hands: Hands {
                left: stored.left.into(),
                right: stored.right.into(),
            },
            positions: asked(stored.positions, |code| code.0),
            mounts_from: stored.mounts_from.answer(),
            holds_brake_mounting: stored.holds_brake_mounting.answer(),
            front_brake_habit: stored.front_brake_habit.answer(),
            fine_ride_presses: stored.fine_ride_presses.read(u16::from),
            own_words: stored.own_words,
            hand_details_removed: stored.hand_details_removed.0.map(|day| day.0),
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
            hurts: Given((!hand.hurts.is_empty()).then(|| table(&hand.hurts, Code))),
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
            hurts: (hand.hurts.0).map_or_else(Asked::default, |hurts| asked(hurts, |code| code.0)),
        }
    }
}
