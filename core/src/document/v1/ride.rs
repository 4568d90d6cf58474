//! Roads and rides in format 1.

use std::sync::Arc;

use serde_json::{Map, Value};

use super::Id;
use crate::document::code::Code;
use crate::document::list::{Item, Key, List, Table};
use crate::document::number::Whole;
use crate::document::part::{Given, Part, Place, Refused, put};
use crate::document::reader::Reader;
use crate::layout::LayoutId;
use crate::limits::MOST_LAYOUTS;
use crate::ride::habits::{Habit, Habits};
use crate::ride::kept::{self, FineHand, RoadChoice};
use crate::ride::road::{Road, RoadKind};
use crate::rider::Contact;
use crate::text::Text;

type Count = Whole<0, { u16::MAX as u32 }>;

part! {
    /// The road, how the rider rides, and what came of rides.
    pub(super) struct Rides as "a group about rides" {
        /// A road of our own; where it is absent, the imported one is ridden.
        road (default): Given<Code<RoadKind>>,
        imported (default): Given<StoredRoad>,
        habits (default): StoredHabits,
        known (default): Given<KnownRide>,
        /// What came of rides, one for each layout at most.
        remembered (default): Rest,
    }
}

part! {
    /// A ride that was fine.
    struct KnownRide as "a ride that was fine" {
        /// What the rider calls it.
        name: Text,
        left: Fine,
        right: Fine,
    }
}

part! {
    /// What a ride that was fine asked of a hand.
    struct Fine as "what a ride asked of a hand" {
        presses_per_hour: Count,
        worst_ten_minutes: Count,
        /// Minutes at the brake an hour.
        pulled_per_hour: Count,
    }
}

part! {
    /// What came of a ride.
    pub(in crate::document) struct Remembered as "what came of a ride" {
        layout: Id,
        /// What the road is called.
        road: Text,
        minutes: Count,
        /// Marks what the ride was worked out from.
        inputs: Mark,
        /// Marks all that came of it.
        results: Mark,
        left: Figures,
        right: Figures,
    }
}

part! {
    /// What a ride asked of a hand.
    struct Figures as "what a ride asked of a hand" {
        presses: Count,
        least_per_hour: Count,
        most_per_hour: Count,
        worst_ten_minutes: Count,
        bursts: Count,
        longest_burst: Count,
        pulls: Count,
        clashes: Count,
        delays: Count,
        wanted: Count,
        /// Presses by each contact.
        contacts: Table<Code<Contact>, Count>,
    }
}

/// What is left out where there is nothing.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(transparent, inline))]
struct Rest(List<Remembered, MOST_LAYOUTS>);

impl Default for Rest {
    fn default() -> Self {
        Rest(List(Vec::new()))
    }
}

impl Part for Rest {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        Part::read(at, reader).map(Rest)
    }

    fn write(&self) -> Value {
        self.0.write()
    }

    fn is_left_out(&self) -> bool {
        self.0.0.is_empty()
    }
}

impl Item for Remembered {
    const LIST: &'static str = "remembered";
    const NAMED_BY: &'static [&'static str] = &["layout"];

    fn name(&self) -> String {
        self.layout.0.to_string()
    }
}

/// A mark of change: sixteen hexadecimal digits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Mark(u64);

impl Part for Mark {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let text = at.value.as_str();
        text.and_then(|text| u64::from_str_radix(text, 16).ok())
            .map(Mark)
            .filter(|mark| mark.write() == *at.value)
            .ok_or_else(|| reader.expected(at, "sixteen hexadecimal digits"))
    }

    fn write(&self) -> Value {
        format!("{:016x}", self.0).into()
    }
}

/// How the rider rides: numbers within the range of each habit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct StoredHabits(Habits);

impl Part for StoredHabits {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let mut habits = Habits::default();
        for (name, value) in at.group("a table", reader)? {
            let at = at.named(name, value);
            let Some(habit) = <Code<Habit> as Key>::parse(name) else {
                return Err(reader.expected_name(&at, &<Code<Habit> as Key>::expected()));
            };
            let (least, most) = habit.0.range();
            let number = value.as_u64().and_then(|number| u16::try_from(number).ok());
            match number.filter(|number| (least..=most).contains(number)) {
                Some(number) => habits.set(habit.0, Some(number)),
                None => {
                    let what = format!("a whole number from {least} to {most}");
                    return Err(reader.expected(&at, &what));
                }
            }
        }
        Ok(StoredHabits(habits))
    }

    fn write(&self) -> Value {
        let mut table = Map::new();
        for (habit, value) in self.0.iter() {
            table.insert(Code(habit).spell(), value.into());
        }
        table.into()
    }

    fn is_left_out(&self) -> bool {
        self.0 == Habits::default()
    }
}

/// An imported road: no coordinates, no times.
#[derive(Debug, Clone, PartialEq)]
struct StoredRoad(Arc<Road>);

const NAME: &str = "name";
const LENGTH: &str = "length";
const HEIGHTS: &str = "heights";
const BENDS: &str = "bends";

impl Part for StoredRoad {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let group = at.group("an imported road", reader)?;
        reader.keep_unknown(at, group, &[NAME, LENGTH, HEIGHTS, BENDS]);
        let name: Text = at.field(group, NAME, reader)?;
        let Metres(length) = at.field(group, LENGTH, reader)?;
        let heights: String = at.field(group, HEIGHTS, reader)?;
        let bends: String = at.field(group, BENDS, reader)?;
        match Road::unpack(name, length, &heights, &bends, Vec::new()) {
            Ok(road) => Ok(StoredRoad(Arc::new(road))),
            Err(error) => Err(reader.refuse(at, error.to_string())),
        }
    }

    fn write(&self) -> Value {
        let mut group = Map::new();
        put(&mut group, NAME, &self.0.name);
        put(&mut group, LENGTH, &Metres(self.0.length()));
        put(&mut group, HEIGHTS, &self.0.packed_heights());
        put(&mut group, BENDS, &self.0.packed_bends());
        group.into()
    }
}

/// A length in metres; what it may be, the road knows.
struct Metres(f64);

impl Part for Metres {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let number = at.value.as_f64().map(Metres);
        number.ok_or_else(|| reader.expected(at, "a number of metres"))
    }

    fn write(&self) -> Value {
        self.0.into()
    }
}

#[cfg(feature = "schema")]
mod schema {
    use super::{BENDS, HEIGHTS, Habit, LENGTH, Mark, NAME, StoredHabits, StoredRoad};
    use crate::ride::road::{LONGEST, SHORTEST};
    use crate::vocabulary::Vocabulary;
    use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
    use std::borrow::Cow;

    impl JsonSchema for Mark {
        fn schema_name() -> Cow<'static, str> {
            "Mark".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "A mark of change.",
                "type": "string",
                "pattern": "^[0-9a-f]{16}$",
            })
        }
    }

    impl JsonSchema for StoredHabits {
        fn schema_name() -> Cow<'static, str> {
            "Habits".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            let mut habits = serde_json::Map::new();
            for habit in Habit::ALL {
                let (least, most) = habit.range();
                let words = format!("{}, in {}; absent was not asked.", habit, habit.unit());
                let schema = serde_json::json!({
                    "description": words, "type": "integer", "minimum": least, "maximum": most,
                });
                habits.insert(habit.code().to_owned(), schema);
            }
            json_schema!({
                "description": "How the rider rides.",
                "type": "object",
                "properties": habits,
                "additionalProperties": false,
            })
        }
    }

    impl JsonSchema for StoredRoad {
        fn schema_name() -> Cow<'static, str> {
            "ImportedRoad".into()
        }

        fn json_schema(_: &mut SchemaGenerator) -> Schema {
            json_schema!({
                "description": "An imported road, without coordinates and times.",
                "type": "object",
                "properties": {
                    NAME: { "type": "string" },
                    LENGTH: {
                        "description": "In metres.",
                        "type": "number", "minimum": SHORTEST, "maximum": LONGEST,
                    },
                    HEIGHTS: {
                        "description": "Heights in centimetres at even distances: the first one, then differences, each with how often it comes: 6800,-2,0*12.",
                        "type": "string",
                    },
                    BENDS: {
                        "description": "The bend at each height: how often it comes and its code: 120straight,3tight.",
                        "type": "string",
                    },
                },
                "required": [NAME, LENGTH, HEIGHTS, BENDS],
            })
        }
    }
}

/// The group, where there is something to say.
pub(super) fn given(rides: &kept::Rides) -> Given<Rides> {
    Given((*rides != kept::Rides::default()).then(|| rides.into()))
}

impl From<&kept::Rides> for Rides {
    fn from(rides: &kept::Rides) -> Self {
        let usual = rides.choice == RoadChoice::default() && rides.imported.is_none();
        let built_in = match rides.choice {
            RoadChoice::BuiltIn(kind) if !usual => Some(Code(kind)),
            _ => None,
        };
        Rides {
            road: Given(built_in),
            imported: Given(rides.imported.clone().map(StoredRoad)),
            habits: StoredHabits(rides.habits),
            known: Given(rides.known.as_ref().map(KnownRide::from)),
            remembered: Rest(List(
                rides.remembered.iter().map(Remembered::from).collect(),
            )),
        }
    }
}

impl From<Rides> for kept::Rides {
    fn from(stored: Rides) -> Self {
        let imported = stored.imported.0.map(|road| road.0);
        let choice = match (stored.road.0, &imported) {
            (Some(kind), _) => RoadChoice::BuiltIn(kind.0),
            (None, Some(_)) => RoadChoice::Imported,
            (None, None) => RoadChoice::default(),
        };
        kept::Rides {
            choice,
            imported,
            habits: stored.habits.0,
            known: stored.known.0.map(kept::KnownRide::from),
            remembered: (stored.remembered.0.0.into_iter())
                .map(kept::Remembered::from)
                .collect(),
        }
    }
}

impl From<&kept::KnownRide> for KnownRide {
    fn from(known: &kept::KnownRide) -> Self {
        KnownRide {
            name: known.name.clone(),
            left: known.left.into(),
            right: known.right.into(),
        }
    }
}

impl From<KnownRide> for kept::KnownRide {
    fn from(stored: KnownRide) -> Self {
        kept::KnownRide {
            name: stored.name,
            left: stored.left.into(),
            right: stored.right.into(),
        }
    }
}

impl From<FineHand> for Fine {
    fn from(fine: FineHand) -> Self {
        Fine {
            presses_per_hour: fine.presses_per_hour.into(),
            worst_ten_minutes: fine.worst_ten_minutes.into(),
            pulled_per_hour: fine.pulled_per_hour.into(),
        }
    }
}

impl From<Fine> for FineHand {
    fn from(stored: Fine) -> Self {
        FineHand {
            presses_per_hour: stored.presses_per_hour.into(),
            worst_ten_minutes: stored.worst_ten_minutes.into(),
            pulled_per_hour: stored.pulled_per_hour.into(),
        }
    }
}

impl From<&kept::Remembered> for Remembered {
    fn from(ride: &kept::Remembered) -> Self {
        Remembered {
            layout: ride.layout.0.into(),
            road: ride.road.clone(),
            minutes: ride.minutes.into(),
            inputs: Mark(ride.inputs),
            results: Mark(ride.results),
            left: (&ride.left).into(),
            right: (&ride.right).into(),
        }
    }
}

impl From<Remembered> for kept::Remembered {
    fn from(stored: Remembered) -> Self {
        kept::Remembered {
            layout: LayoutId(stored.layout.into()),
            road: stored.road,
            minutes: stored.minutes.into(),
            inputs: stored.inputs.0,
            results: stored.results.0,
            left: stored.left.into(),
            right: stored.right.into(),
        }
    }
}

impl From<&kept::HandFigures> for Figures {
    fn from(hand: &kept::HandFigures) -> Self {
        let contacts = hand.contacts.iter();
        Figures {
            presses: hand.presses.into(),
            least_per_hour: hand.presses_per_hour.0.into(),
            most_per_hour: hand.presses_per_hour.1.into(),
            worst_ten_minutes: hand.worst_ten_minutes.into(),
            bursts: hand.bursts.into(),
            longest_burst: hand.longest_burst.into(),
            pulls: hand.pulls.into(),
            clashes: hand.clashes.into(),
            delays: hand.delays.into(),
            wanted: hand.wanted.into(),
            contacts: contacts.map(|(c, n)| (Code(*c), Count::from(*n))).collect(),
        }
    }
}

impl From<Figures> for kept::HandFigures {
    fn from(stored: Figures) -> Self {
        let contacts = stored.contacts.0.into_iter();
        kept::HandFigures {
            presses: stored.presses.into(),
            presses_per_hour: (stored.least_per_hour.into(), stored.most_per_hour.into()),
            worst_ten_minutes: stored.worst_ten_minutes.into(),
            bursts: stored.bursts.into(),
            longest_burst: stored.longest_burst.into(),
            pulls: stored.pulls.into(),
            clashes: stored.clashes.into(),
            delays: stored.delays.into(),
            wanted: stored.wanted.into(),
            contacts: contacts.map(|(c, n)| (c.0, n.into())).collect(),
        }
    }
}
