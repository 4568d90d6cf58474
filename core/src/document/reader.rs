//! What is found while a file becomes a plan: notes for the reader, and the
//! first thing that cannot be.

use serde_json::{Map, Value};

use super::error::tidy;
use super::part::{Part, Place, Refused, Step};
use super::{DocumentError, unknown};
use crate::cockpit::{Bike, ButtonId, ControlId, Freedom};
use crate::plan::{Plan, UnknownPart};
use crate::shift_plan::ShiftPlanKind;
use crate::text::Text;

vocabulary! {
    /// What a note is about.
    pub enum NoteKind as "note" {
        /// Something was changed so that it can be kept.
        Mended = "mended", "mended";
        /// Something this version does not know is kept as it came.
        Unknown = "unknown", "not known";
        /// Something names what is not there; it is kept and does nothing.
        Loose = "loose", "names nothing";
    }
}

/// Something that people should know about a file that was opened.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// What it is about.
    pub kind: NoteKind,
    /// The place inside the plan: `layouts[0].name`.
    pub place: String,
    /// A sentence for the reader.
    pub words: String,
}

/// Longest name of an accepted finding, in characters.
pub(super) const LONGEST_FINDING: usize = 2000;

/// Unknown parts named in a note; the others are counted.
const MOST_NAMED: usize = 5;

/// Unknown parts that are kept; a file with more is not ours.
const MOST_UNKNOWN: usize = 1000;

/// Collects what is found on the way from a file to a plan.
#[derive(Default)]
pub(super) struct Reader {
    pub(super) notes: Vec<Note>,
    refused: Option<DocumentError>,
    unknown: Vec<UnknownPart>,
    /// The places of the first unknown parts.
    named: Vec<String>,
}

impl Reader {
    /// Notes something about a place.
    pub(super) fn note(&mut self, kind: NoteKind, place: &str, words: String) {
        self.notes.push(Note {
            kind,
            place: place.to_owned(),
            words,
        });
    }

    /// Something cannot be; what was refused first is what people are told.
    pub(super) fn refuse(&mut self, at: &Place<'_>, what: impl Into<String>) -> Refused {
        let place = match at.to_string() {
            top if top.is_empty() => "plan".into(),
            place => place,
        };
        self.refuse_at(&place, what)
    }

    /// The same, with the place in words.
    pub(super) fn refuse_at(&mut self, place: &str, what: impl Into<String>) -> Refused {
        self.refused
            .get_or_insert_with(|| DocumentError::at(place, what));
        Refused
    }

    /// Something else was expected at a place.
    pub(super) fn expected(&mut self, at: &Place<'_>, what: &str) -> Refused {
        let found = match at.value {
            Value::Null => "nothing".into(),
            Value::Object(_) => "a group in braces".into(),
            Value::Array(_) => "a list".into(),
            Value::String(text) => quoted(text),
            other => other.to_string(),
        };
        self.refuse(at, format!("expected {what}, found {found}"))
    }

    /// Another name was expected in a table.
    pub(super) fn expected_name(&mut self, at: &Place<'_>, what: &str) -> Refused {
        let found = match at.step {
            Step::Named(name) => quoted(name),
            Step::Top | Step::Item(_) => "nothing".into(),
        };
        self.refuse(at, format!("expected {what}, found {found}"))
    }

    /// Something is missing in a group.
    pub(super) fn missing(&mut self, at: &Place<'_>, name: &str) -> Refused {
        self.refuse(at, format!("“{name}” is missing"))
    }

    /// Keeps what this version does not know of a group.
    pub(super) fn keep_unknown(
        &mut self,
        at: &Place<'_>,
        group: &Map<String, Value>,
        known: &[&str],
    ) {
        for (name, value) in group {
            if !known.contains(&name.as_str()) {
                let at = at.named(name, value);
                if self.named.len() < MOST_NAMED {
                    self.named.push(tidy(&at.to_string()));
                }
                self.unknown.push(unknown::part(&at));
            }
        }
    }

    /// What this version does not know, noted, in an order of its own: the
    /// order of lists does not matter.
    pub(super) fn take_unknown(&mut self) -> Vec<UnknownPart> {
        let mut unknown = std::mem::take(&mut self.unknown);
        if unknown.len() > MOST_UNKNOWN {
            let found = unknown.len();
            self.refuse_at(
                "plan",
                format!(
                    "expected at most {MOST_UNKNOWN} parts that this version does not know, found {found}"
                ),
            );
        }
        unknown.sort_unstable_by(|a, b| a.path.cmp(&b.path));
        if let Some(first) = self.named.first().cloned() {
            let named = self.named.join(", ");
            let words = match unknown.len() - self.named.len() {
                0 => format!("This version does not know {named}. It is kept as it came."),
                more => format!(
                    "This version does not know {named} and {more} more. They are kept as they came."
                ),
            };
            self.note(NoteKind::Unknown, &first, words);
        }
        unknown
    }

    /// What was read with the notes on it, or what was refused.
    pub(super) fn done<T>(self, read: Result<T, Refused>) -> Result<(T, Vec<Note>), DocumentError> {
        match (self.refused, read) {
            (None, Ok(read)) => Ok((read, self.notes)),
            (Some(error), _) => Err(error),
            (None, Err(Refused)) => Err(DocumentError::at("plan", "it cannot be read")),
        }
    }

    /// Looks up everything the plan names. A lever or a layout in hand that is
    /// not there is refused; what is said of a missing button is kept with a
    /// note, and a rule speaks of it.
    pub(super) fn look_up(&mut self, plan: &Plan) {
        self.layouts(plan);
        self.brakes(&plan.bike);
        self.copies(&plan.bike);
        self.shift_plan(plan);
        for (at, acceptance) in plan.accepted.iter().enumerate() {
            if acceptance.finding.chars().count() > LONGEST_FINDING {
                self.refuse_at(
                    &format!("accepted[{at}].finding"),
                    format!("expected at most {LONGEST_FINDING} characters"),
                );
            }
        }
        self.loose(&plan.bike, "as_found", plan.as_found.keys().copied());
    }

    fn layouts(&mut self, plan: &Plan) {
        if plan.layouts.is_empty() {
            self.refuse_at("layouts", "a plan has at least one layout");
        } else if !plan.layouts.iter().any(|l| l.id == plan.current) {
            let current = plan.current.0;
            self.refuse_at(
                "current",
                format!("there is no layout with the id {current}"),
            );
        }
        if let Some(chosen) = &plan.chosen
            && !plan.layouts.iter().any(|l| l.id == chosen.layout)
        {
            let id = chosen.layout.0;
            self.refuse_at("chosen", format!("there is no layout with the id {id}"));
        }
        for (at, layout) in plan.layouts.iter().enumerate() {
            for (c, chord) in layout.chords.iter().enumerate() {
                if chord.first == chord.second {
                    self.refuse_at(
                        &format!("layouts[{at}].chords[{c}]"),
                        "expected two different buttons",
                    );
                }
            }
            let place = format!("layouts[{at}]");
            self.loose(&plan.bike, &place, layout.buttons_named());
        }
    }

    fn brakes(&mut self, bike: &Bike) {
        for (at, run) in bike.brakes.runs.iter().enumerate() {
            self.lever(bike, run.lever, &format!("bike.brakes.runs[{at}].lever"));
        }
        for (at, pair) in bike.brakes.together.iter().enumerate() {
            let place = format!("bike.brakes.together[{at}]");
            self.lever(bike, pair.first, &format!("{place}.first"));
            self.lever(bike, pair.second, &format!("{place}.second"));
        }
    }

    fn lever(&mut self, bike: &Bike, id: ControlId, place: &str) {
        match bike.control(id) {
            None => {
                self.refuse_at(place, format!("there is no control with the id {id}"));
            }
            Some(control) if control.blade.is_none() => {
                self.refuse_at(place, format!("control {id} has no brake blade"));
            }
            Some(_) => {}
        }
    }

    fn copies(&mut self, bike: &Bike) {
        for (at, control) in bike.controls.iter().enumerate() {
            for (b, button) in control.buttons.iter().enumerate() {
                let Freedom::Copies(original) = button.freedom else {
                    continue;
                };
                let place = format!("bike.controls[{at}].buttons[{b}].copies");
                if original == control.button_id(button.part) {
                    self.refuse_at(&place, "a button cannot copy itself");
                } else {
                    self.loose(bike, &place, [original]);
                }
            }
        }
    }

    fn shift_plan(&mut self, plan: &Plan) {
        let rings = plan.bike.rings();
        if (plan.shift_plan == ShiftPlanKind::SingleRing) == plan.bike.has_front_derailleur() {
            self.refuse_at(
                "shift_plan",
                format!(
                    "the {} plan does not go with bike.rings, which is {rings}",
                    plan.shift_plan
                ),
            );
        }
    }

    fn loose(&mut self, bike: &Bike, place: &str, buttons: impl IntoIterator<Item = ButtonId>) {
        let missing: Vec<String> = (buttons.into_iter())
            .filter(|id| bike.button(*id).is_none())
            .map(|id| id.to_string())
            .collect();
        if !missing.is_empty() {
            let words = format!(
                "It names buttons that are not on the bike: {}. They are kept and do nothing.",
                tidy(&missing.join(", "))
            );
            self.note(NoteKind::Loose, place, words);
        }
    }
}

fn quoted(text: &str) -> String {
    format!("\"{}\"", tidy(text))
}

/// Text made fit to keep, with a note where that changed it.
impl Part for Text {
    fn read(at: &Place<'_>, reader: &mut Reader) -> Result<Self, Refused> {
        let raw = at.text("a text", reader)?;
        let text = Text::new(raw);
        if text.as_str() != raw {
            let what = if raw.chars().count() > Text::LIMIT {
                format!("It was longer than {} characters and was cut.", Text::LIMIT)
            } else {
                "Blanks at its ends and characters that do not print were taken out.".into()
            };
            reader.note(NoteKind::Mended, &at.to_string(), what);
        }
        Ok(text)
    }

    fn write(&self) -> Value {
        self.as_str().into()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Text {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Text".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "type": "string" })
    }
}

/// What a value alone reads as.
#[cfg(test)]
pub(super) fn reads<T: Part>(value: &Value) -> Option<T> {
    T::read(&Place::top(value), &mut Reader::default()).ok()
}
