//! Notes each change: which parts it touched, and how they were before.

use std::sync::Arc;

use serde_json::Value;

use super::{Code, Desk, PartKey, PartStep, Record, Revision, Stamp, Version};
use crate::document::{self, pieces};
use crate::plan::Plan;
use crate::revision;
use crate::text::Text;

/// Notes in `next`, whose revision number is set, how it came from `before`.
/// Entries alone are no revision.
pub(crate) fn stamp(before: &Plan, next: &mut Plan, what: &str, desk: &Desk) {
    let old = document::pieces(before);
    let new = document::pieces(next);
    let mut steps = Vec::new();
    pieces::side_by_side(&old, &new, |part, was, now| {
        if was != now {
            steps.push((part.clone(), step(before, part, was, now)));
        }
    });
    if steps.is_empty() {
        return;
    }
    let number = next.revision;
    if next.record.removals > before.record.removals {
        // What was removed is not kept as what was before, either.
        steps.retain(|(part, _)| !matches!(part, PartKey::Accepted(_)));
        for (_, step) in steps.iter_mut().filter(|(part, _)| part.is_about_hands()) {
            step.was.clear();
        }
    }
    for (part, step) in &steps {
        next.record.set_stamp(Stamp {
            part: part.clone(),
            version: step.version(number),
            // A part that is gone is remembered as gone.
            held: pieces::find(&new, part)
                .is_null()
                .then(|| Arc::new(Value::Null)),
        });
    }
    let mut revision = Revision {
        id: Code::of(""),
        number,
        by: desk.by.clone(),
        role: desk.role,
        date: desk.date,
        what: Text::new(what),
        code: revision::code_from(&new, next, next.layout()),
        parts: steps.into_iter().map(|(_, step)| step).collect(),
    };
    revision.id = id(&revision);
    keep(&mut next.record, revision);
}

fn step(before: &Plan, part: &PartKey, was: &Value, now: &Value) -> PartStep {
    PartStep {
        part: part.clone(),
        from: version(&before.record, part, was),
        to: Code::of(&now.to_string()),
        was: pieces::differences(was, now),
    }
}

/// The version of a part that says this.
pub(crate) fn version(record: &Record, part: &PartKey, says: &Value) -> Version {
    record.version(part).unwrap_or_else(|| Version {
        revision: 0,
        code: Code::of(&says.to_string()),
    })
}

fn id(revision: &Revision) -> Code {
    let Revision {
        number, by, what, ..
    } = revision;
    let mut text = format!("{number} {by} {what}");
    for step in &revision.parts {
        text.push_str(&format!(
            " {} {} {} {}",
            step.part.key(),
            step.from.revision,
            step.from.code,
            step.to
        ));
    }
    Code::of(&text)
}

fn keep(record: &mut Record, revision: Revision) {
    record.revisions.push(Arc::new(revision));
    if record.revisions.len() > Record::MOST_REVISIONS {
        record.revisions.remove(0);
    }
}

/// A revision without what stood in parts about the hands, and without its
/// name, which may speak of them. That the parts changed stays.
pub(super) fn without_hands(revision: &Revision) -> Revision {
    let mut revision = revision.clone();
    revision.what = Text::new("change about the rider");
    for step in &mut revision.parts {
        if step.part.is_about_hands() {
            step.was.clear();
        }
    }
    revision
        .parts
        .retain(|step| !matches!(step.part, PartKey::Accepted(_)));
    revision
}
