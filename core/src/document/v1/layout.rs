//! A layout in format 1.

use serde_json::{Map, Value};

use super::{Id, map};
use crate::document::code::Code;
use crate::document::key::{ButtonKey, Run};
use crate::document::list::{Item, List, Table};
use crate::document::part::{Part, Place, Refused, put};
use crate::document::reader::Reader;
use crate::function::Function;
use crate::layout::{self, LayoutId};
use crate::limits::MOST_CHORDS;
use crate::text::Text;

part! {
    /// One assignment of functions to buttons. A button that is absent is blank.
    pub(in crate::document) struct Layout as "a layout" {
        id: Id,
        name: Text,
        /// What a tap does.
        taps: Table<ButtonKey, Code<Function>>,
        /// What keeping a button pressed does.
        holds: Table<ButtonKey, Hold>,
        /// What two buttons together do.
        chords: List<Chord, MOST_CHORDS>,
    }
}

/// What keeping a button pressed does.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Hold {
    /// It repeats the tap, over this many cogs.
    Repeats(Run),
    /// It does something else.
    Does(Code<Function>),
}

const REPEATS: &str = "repeats";
const DOES: &str = "does";

impl Part for Hold {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let what = "a hold such as {\"repeats\": 3} or {\"does\": \"lights\"}";
        let group = at.group(what, reader)?;
        reader.keep_unknown(at, group, &[REPEATS, DOES]);
        let repeats: Option<Run> = at.field_or_default(group, REPEATS, reader)?;
        let does: Option<Code<Function>> = at.field_or_default(group, DOES, reader)?;
        match (repeats, does) {
            (Some(run), None) => Ok(Hold::Repeats(run)),
            (None, Some(function)) => Ok(Hold::Does(function)),
            _ => Err(reader.refuse(at, "expected either “repeats” or “does”")),
        }
    }

    fn write(&self) -> Value {
        let mut group = Map::new();
        match self {
            Hold::Repeats(run) => put(&mut group, REPEATS, run),
            Hold::Does(function) => put(&mut group, DOES, function),
        }
        group.into()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Hold {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Hold".into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let run = generator.subschema_for::<Run>();
        let function = generator.subschema_for::<Code<Function>>();
        schemars::json_schema!({
            "description": "What keeping a button pressed does: it repeats the tap, over this many cogs, or does something else.",
            "type": "object",
            "properties": { REPEATS: run, DOES: function },
            "oneOf": [{ "required": [REPEATS] }, { "required": [DOES] }],
        })
    }
}

part! {
    /// Two buttons pressed together.
    pub(in crate::document) struct Chord as "two buttons pressed together" {
        first: ButtonKey,
        second: ButtonKey,
        function: Code<Function>,
    }
}

impl Item for Layout {
    const LIST: &'static str = "layouts";
    const NAMED_BY: &'static [&'static str] = &["id"];

    fn name(&self) -> String {
        self.id.0.to_string()
    }
}

impl Item for Chord {
    const LIST: &'static str = "chords";
    const NAMED_BY: &'static [&'static str] = &["first", "second"];

    /// The same in either order.
    fn name(&self) -> String {
        let (a, b) = (self.first.0, self.second.0);
        format!("{} and {}", a.min(b), a.max(b))
    }
}

impl From<layout::Hold> for Hold {
    fn from(hold: layout::Hold) -> Self {
        match hold {
            layout::Hold::Repeats(run) => Hold::Repeats(Run(run)),
            layout::Hold::Does(function) => Hold::Does(Code(function)),
        }
    }
}

impl From<Hold> for layout::Hold {
    fn from(hold: Hold) -> Self {
        match hold {
            Hold::Repeats(run) => layout::Hold::Repeats(run.0),
            Hold::Does(function) => layout::Hold::Does(function.0),
        }
    }
}

impl From<&layout::Layout> for Layout {
    fn from(layout: &layout::Layout) -> Self {
        let chords = layout.chords.iter().map(|chord| Chord {
            first: ButtonKey(chord.first),
            second: ButtonKey(chord.second),
            function: Code(chord.function),
        });
        Layout {
            id: layout.id.0.into(),
            name: layout.name.clone(),
            taps: (layout.taps.iter())
                .map(|(id, function)| (ButtonKey(*id), Code(*function)))
                .collect(),
            holds: (layout.holds.iter())
                .map(|(id, hold)| (ButtonKey(*id), (*hold).into()))
                .collect(),
            chords: List(chords.collect()),
        }
    }
}

impl From<Layout> for layout::Layout {
    fn from(layout: Layout) -> Self {
        let chords = layout.chords.0.into_iter().map(|chord| layout::Chord {
            first: chord.first.0,
            second: chord.second.0,
            function: chord.function.0,
        });
        layout::Layout {
            id: LayoutId(layout.id.into()),
            name: layout.name,
            taps: map(layout.taps.0, |key, function| (key.0, function.0)),
            holds: map(layout.holds.0, |key, hold| (key.0, hold.into())),
            chords: chords.collect(),
        }
    }
}
