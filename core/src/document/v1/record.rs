//! What a plan keeps beside what it says, in format 1.

mod entry;

pub(in crate::document) use entry::{Change, Entry, MixUp, Observed, Pressed};

use std::sync::Arc;

use serde_json::Value;

use crate::document::code::Code;
use crate::document::key::{Day, Digest, PartName};
use crate::document::list::{Item, List};
use crate::document::number::Whole;
use crate::document::part::{Given, Part, Place, Refused};
use crate::document::reader::Reader;
use crate::finding::Role;
use crate::limits::{MOST_KEPT, MOST_PLACES};
use crate::record;
use crate::text::Text;

type Count = Whole<0, { u32::MAX }>;

part! {
    /// Who changed what when, what people wrote, and what merging needs.
    pub(super) struct Record as "a record" {
        /// How often hand details were removed.
        removals: Count,
        /// The version of each part that was changed since the plan began.
        stamps: List<Stamp, MOST_KEPT>,
        /// The changes, oldest first.
        revisions: List<Revision, MOST_KEPT>,
        /// What people wrote, oldest first.
        entries: List<Entry, MOST_KEPT>,
    }
}

part! {
    /// The version of a part.
    pub(in crate::document) struct Stamp as "the version of a part" {
        part: PartName,
        /// The number of the revision that made it.
        revision: Count,
        /// The digest of what it said.
        code: Digest,
        /// What the part says, where the plan cannot show it; null for a part
        /// that was removed.
        held (default): Raw,
    }
}

part! {
    /// A change that was made.
    pub(in crate::document) struct Revision as "a revision" {
        id: Digest,
        number: Count,
        by (default): Text,
        role (default): Given<Code<Role>>,
        date (default): Given<Day>,
        /// What the change is called.
        what (default): Text,
        /// The revision code after it.
        code: Digest,
        parts: List<PartStep, MOST_KEPT>,
    }
}

part! {
    /// What a revision changed in one part.
    pub(in crate::document) struct PartStep as "a changed part" {
        part: PartName,
        /// The number of the revision that made the part as it was.
        from: Count,
        /// The digest before.
        before: Digest,
        /// The digest after.
        after: Digest,
        /// What stood there before, place by place.
        was: List<Was, MOST_PLACES>,
    }
}

part! {
    /// What stood at a place of a part.
    pub(in crate::document) struct Was as "what stood at a place" {
        /// A JSON Pointer (RFC 6901), items of lists by what they are called.
        at: String,
        /// What stood there; absent for nothing.
        value (default): Raw,
    }
}

/// A value that is kept as it came; may be absent.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::document) struct Raw(Option<Value>);

impl Part for Raw {
    fn read(at: &Place<'_>, _: &mut Reader) -> Result<Self, Refused> {
        Ok(Raw(Some(at.value.clone())))
    }

    fn write(&self) -> Value {
        self.0.clone().unwrap_or(Value::Null)
    }

    fn is_left_out(&self) -> bool {
        self.0.is_none()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Raw {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Raw".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({ "description": "Kept as it came." })
    }
}

macro_rules! named {
    ($item:ty, $list:literal, $field:ident, $name:expr) => {
        impl Item for $item {
            const LIST: &'static str = $list;
            const NAMED_BY: &'static [&'static str] = &[stringify!($field)];

            fn name(&self) -> String {
                let name: fn(&$item) -> String = $name;
                name(self)
            }
        }
    };
}

named!(Stamp, "stamps", part, |stamp| stamp.part.0.key());
named!(Revision, "revisions", id, |revision| revision
    .id
    .0
    .to_string());
named!(PartStep, "parts", part, |step| step.part.0.key());
named!(Was, "was", at, |was| was.at.clone());
named!(Entry, "entries", id, |entry| entry.id());

impl Record {
    pub(super) fn written(record: &record::Record) -> Given<Record> {
        let given = (!record.is_empty()).then(|| Record {
            removals: Whole(record.removals),
            stamps: List(record.stamps.iter().map(Stamp::from).collect()),
            revisions: List(
                (record.revisions.iter())
                    .map(|r| Revision::from(r.as_ref()))
                    .collect(),
            ),
            entries: List(
                (record.entries.iter())
                    .map(|e| Entry::from(e.as_ref()))
                    .collect(),
            ),
        });
        Given(given)
    }

    /// The record, its lists in the order that the model keeps.
    pub(super) fn record(self) -> record::Record {
        let mut record = record::Record {
            removals: self.removals.0,
            stamps: self.stamps.0.into_iter().map(record::Stamp::from).collect(),
            revisions: (self.revisions.0.into_iter())
                .map(|r| Arc::new(r.into()))
                .collect(),
            entries: (self.entries.0.into_iter())
                .map(|e| Arc::new(e.into()))
                .collect(),
        };
        record.put_in_order();
        record
    }
}

impl From<&record::Stamp> for Stamp {
    fn from(stamp: &record::Stamp) -> Self {
        Stamp {
            part: PartName(stamp.part.clone()),
            revision: Whole(stamp.version.revision),
            code: Digest(stamp.version.code),
            held: Raw(stamp.held.as_deref().cloned()),
        }
    }
}

impl From<Stamp> for record::Stamp {
    fn from(stamp: Stamp) -> Self {
        record::Stamp {
            part: stamp.part.0,
            version: record::Version {
                revision: stamp.revision.0,
                code: stamp.code.0,
            },
            held: stamp.held.0.map(Arc::new),
        }
    }
}

impl From<&record::Revision> for Revision {
    fn from(revision: &record::Revision) -> Self {
        Revision {
            id: Digest(revision.id),
            number: Whole(revision.number),
            by: revision.by.clone(),
            role: Given(revision.role.map(Code)),
            date: Given(revision.date.map(Day)),
            what: revision.what.clone(),
            code: Digest(revision.code),
            parts: List(revision.parts.iter().map(PartStep::from).collect()),
        }
    }
}

impl From<Revision> for record::Revision {
    fn from(revision: Revision) -> Self {
        record::Revision {
            id: revision.id.0,
            number: revision.number.0,
            by: revision.by,
            role: revision.role.0.map(|role| role.0),
            date: revision.date.0.map(|day| day.0),
            what: revision.what,
            code: revision.code.0,
            parts: (revision.parts.0.into_iter())
                .map(record::PartStep::from)
                .collect(),
        }
    }
}

impl From<&record::PartStep> for PartStep {
    fn from(step: &record::PartStep) -> Self {
        let was = step.was.iter().map(|was| Was {
            at: was.path.clone(),
            value: Raw(was.value.clone()),
        });
        PartStep {
            part: PartName(step.part.clone()),
            from: Whole(step.from.revision),
            before: Digest(step.from.code),
            after: Digest(step.to),
            was: List(was.collect()),
        }
    }
}

impl From<PartStep> for record::PartStep {
    fn from(step: PartStep) -> Self {
        let was = step.was.0.into_iter().map(|was| record::Was {
            path: was.at,
            value: was.value.0,
        });
        record::PartStep {
            part: step.part.0,
            from: record::Version {
                revision: step.from.0,
                code: step.before.0,
            },
            to: step.after.0,
            was: was.collect(),
        }
    }
}
