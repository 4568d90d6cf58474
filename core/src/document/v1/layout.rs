//! A layout in format 1.

use serde::{Deserialize, Serialize};

use super::Id;
use crate::document::code::Code;
use crate::document::key::{ButtonKey, Run};
use crate::document::list::{Item, List, Table};
use crate::document::reader::Reader;
use crate::function::Function;
use crate::layout::{self, LayoutId};
use crate::limits::MOST_CHORDS;

/// One assignment of functions to buttons. A button that is absent is blank.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "a layout")]
pub(in crate::document) struct Layout {
    id: Id,
    name: String,
    /// What a tap does.
    taps: Table<ButtonKey, Code<Function>>,
    /// What keeping a button pressed does.
    holds: Table<ButtonKey, Hold>,
    /// What two buttons together do.
    chords: List<Chord, MOST_CHORDS>,
}

/// What keeping a button pressed does: it repeats the tap, or does something
/// else.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(
    try_from = "EitherHold",
    expecting = "a hold such as {\"repeats\": 3} or {\"does\": \"lights\"}"
)]
#[cfg_attr(feature = "schema", schemars(with = "EitherHold"))]
struct Hold {
    #[serde(skip_serializing_if = "Option::is_none")]
    repeats: Option<Run>,
    #[serde(skip_serializing_if = "Option::is_none")]
    does: Option<Code<Function>>,
}

/// A hold as it stands in a file, before it is known to say one thing.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(
    feature = "schema",
    schemars(rename = "Hold", extend("oneOf" = [
        { "required": ["repeats"], "properties": { "repeats": { "not": { "type": "null" } } } },
        { "required": ["does"], "properties": { "does": { "not": { "type": "null" } } } },
    ]))
)]
#[serde(expecting = "a hold such as {\"repeats\": 3} or {\"does\": \"lights\"}")]
struct EitherHold {
    /// It repeats the tap, over this many cogs.
    repeats: Option<Run>,
    /// It does something else.
    does: Option<Code<Function>>,
}

/// Two buttons pressed together.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "two buttons pressed together")]
pub(in crate::document) struct Chord {
    first: ButtonKey,
    second: ButtonKey,
    function: Code<Function>,
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

impl TryFrom<EitherHold> for Hold {
    type Error = &'static str;

    fn try_from(EitherHold { repeats, does }: EitherHold) -> Result<Self, Self::Error> {
        if repeats.is_some() == does.is_some() {
            return Err("expected either “repeats” or “does”");
        }
        Ok(Hold { repeats, does })
    }
}

impl From<layout::Hold> for Hold {
    fn from(hold: layout::Hold) -> Self {
        let (repeats, does) = match hold {
            layout::Hold::Repeats(run) => (Some(Run(run)), None),
            layout::Hold::Does(function) => (None, Some(Code(function))),
        };
        Hold { repeats, does }
    }
}

impl Hold {
    fn hold(self) -> Option<layout::Hold> {
        let repeats = self.repeats.map(|run| layout::Hold::Repeats(run.0));
        repeats.or(self.does.map(|code| layout::Hold::Does(code.0)))
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
            name: layout.name.to_string(),
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

impl Layout {
    pub(super) fn layout(self, at: usize, reader: &mut Reader) -> layout::Layout {
        let chords = self.chords.0.into_iter().map(|chord| layout::Chord {
            first: chord.first.0,
            second: chord.second.0,
            function: chord.function.0,
        });
        layout::Layout {
            id: LayoutId(self.id.into()),
            name: reader.text(&format!("layouts[{at}].name"), &self.name),
            taps: (self.taps.0.into_iter())
                .map(|(key, code)| (key.0, code.0))
                .collect(),
            holds: (self.holds.0.into_iter())
                .filter_map(|(key, hold)| Some((key.0, hold.hold()?)))
                .collect(),
            chords: chords.collect(),
        }
    }
}
