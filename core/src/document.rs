//! Plans as files: JSON with a format number.
//!
//! [`write()`] gives the text of a file, [`read`] the plan in one, or a
//! [`DocumentError`] that names the place of the fault and the cure. Only this
//! module knows how files look: each format has frozen structs of its own
//! (`v1`), and a migration leads from each older format to the next.
//!
//! What a file may not be: larger than [`MOST_BYTES`], nested deeper than a
//! plan, with the same name twice in one group or the same id twice in one
//! list, with numbers that no bike has, with more controls, layouts or chords
//! than [`crate::limits`] allow. It may not name a lever or a layout in hand
//! that is not there: those are refused, because the brakes would silently not
//! be what the file says. A tap, hold, chord or copy of a missing button is kept
//! with a [`Note`] and does nothing. A function on a fixed, copying or limited
//! button is kept as it is. Rules speak of both.
//!
//! Fields that this version does not know are kept in [`Plan::unknown`] and
//! written back to their owner while it is there.
//!
//! ```
//! use leverwright_core::catalogue::{TemplateId, template};
//! use leverwright_core::document;
//!
//! let plan = template(TemplateId::Gravel).plan("Over the pass");
//! let opened = document::read(document::write(&plan))?;
//! assert_eq!(opened.plan, plan);
//! # Ok::<(), document::DocumentError>(())
//! ```

#[macro_use]
mod part;

mod code;
mod error;
mod key;
mod list;
mod migrate;
mod number;
mod parse;
pub(crate) mod pieces;
mod reader;
mod unknown;
mod v1;

pub use error::DocumentError;
pub(crate) use pieces::{assemble, pieces};
pub use reader::{Note, NoteKind};
pub(crate) use unknown::drop_ownerless;

use serde_json::Value;

use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::Record;
use crate::rider::Answer;
use crate::text::Text;
use part::{Part, Place};
use reader::Reader;

/// The format that this version writes.
pub const FORMAT: u64 = 1;

/// The largest file that is opened, in bytes; a full plan has some hundred
/// thousand.
pub const MOST_BYTES: usize = 2_000_000;

/// A plan from a file, and what people should know about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Opened {
    /// The plan.
    pub plan: Plan,
    /// What was mended, is not known or names nothing.
    pub notes: Vec<Note>,
}

/// The plan as the text of a file, with line breaks, in the format
/// [`FORMAT`]. [`read`] gives the same plan again.
pub fn write(plan: &Plan) -> String {
    let file = value(plan);
    let text = format!("{file:#}\n");
    // Many small unknown parts may grow large with their line breaks.
    if text.len() > MOST_BYTES {
        file.to_string()
    } else {
        text
    }
}

/// The plan as the text of a file on one line.
pub(crate) fn compact(plan: &Plan) -> String {
    value(plan).to_string()
}

/// The plan as a file has it, before it is text.
pub(crate) fn value(plan: &Plan) -> Value {
    let mut file = current(plan);
    unknown::put_back(&mut file, &plan.unknown);
    file
}

/// Reads the bytes or the text of a file.
///
/// # Errors
/// When the file is not a plan, not whole, of a newer format, or says what
/// cannot be: see [`DocumentError`]. Never panics, whatever the bytes.
pub fn read(file: impl AsRef<[u8]>) -> Result<Opened, DocumentError> {
    let opened = read_value(parse::json(file.as_ref())?)?;
    // What is opened must be there to open again after it was saved.
    let bytes = write(&opened.plan).len();
    if bytes > MOST_BYTES {
        return Err(DocumentError::TooLarge {
            bytes,
            most: MOST_BYTES,
        });
    }
    Ok(opened)
}

/// Reads a plan from the value that stands in a file.
pub(crate) fn read_value(file: Value) -> Result<Opened, DocumentError> {
    let Value::Object(mut file) = file else {
        return Err(DocumentError::NotAPlan);
    };
    if !file.contains_key("leverwright") {
        return Err(DocumentError::NotAPlan);
    }
    let mut reader = Reader::default();
    for change in migrate::run(&mut file, migrate::ALL)? {
        let words = format!("The file was brought up to date: {change}.");
        reader.note(NoteKind::Mended, "format", words);
    }
    let file = Value::Object(file);
    let document = v1::Document::read(&Place::top(&file), &mut reader);
    let unknown = reader.take_unknown();
    let plan = document.map(|document| {
        document.look_through(&mut reader);
        let plan = Plan {
            unknown,
            ..document.into()
        };
        reader.look_up(&plan);
        plan
    });
    let (plan, notes) = reader.done(plan)?;
    Ok(Opened { plan, notes })
}

/// What the plan says in the current format, unknown parts left out.
fn current(plan: &Plan) -> Value {
    v1::Document::from(plan).write()
}

/// What a ride of a layout is worked out from, as text in the current format:
/// the same text, the same ride.
pub(crate) fn ridden(plan: &Plan, layout: LayoutId) -> String {
    let mut plan = plan.clone();
    plan.layouts.retain(|own| own.id == layout);
    for own in &mut plan.layouts {
        own.name = Text::default();
    }
    plan.current = layout;
    (plan.name, plan.job, plan.date, plan.revision) = (Text::default(), Text::default(), None, 0);
    plan.rider.nickname = Text::default();
    plan.rider.own_words = Text::default();
    plan.rider.fine_ride_presses = Answer::NOT_ASKED;
    plan.as_found.clear();
    plan.accepted.clear();
    plan.rides.known = None;
    plan.rides.remembered.clear();
    plan.chosen = None;
    plan.record = Record::default();
    current(&plan).to_string()
}

/// An entry of the record as a file has it.
pub(crate) fn entry(entry: &crate::record::Entry) -> String {
    v1::Entry::from(entry).write().to_string()
}

/// A revision as a file has it.
pub(crate) fn revision(revision: &crate::record::Revision) -> String {
    v1::Revision::from(revision).write().to_string()
}

/// A layout as a file has it.
pub(crate) fn layout(layout: &crate::layout::Layout) -> Value {
    v1::Layout::from(layout).write()
}

/// The JSON Schema (draft 2020-12) of the current format, as text.
#[cfg(feature = "schema")]
pub fn schema() -> String {
    format!("{:#}\n", schemars::schema_for!(v1::Document).as_value())
}

#[cfg(test)]
mod tests {
    use super::{read, write};
    use crate::testing;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_is_written_reads_as_the_same_plan(plan in testing::plan()) {
            let text = write(&plan);
            let opened = read(&text).map_err(|error| TestCaseError::fail(error.to_string()))?;
            prop_assert_eq!(&opened.plan, &plan);
            prop_assert_eq!(opened.notes, Vec::new());
        }

        /// Strays that no edit would make are kept as they are or refused.
        #[test]
        fn what_goes_against_the_bike_is_never_changed(plan in testing::plan_from_document()) {
            if let Ok(opened) = read(write(&plan)) {
                prop_assert_eq!(opened.plan, plan);
            }
        }
    }
}
