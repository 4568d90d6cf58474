//! Revisions: the code of what is to be built, what changed between two, and
//! the plan as it was.

mod words;

use serde_json::Value;

use crate::cockpit::ButtonId;
use crate::document;
use crate::document::pieces::{self, Pieces};
use crate::finding::Place;
use crate::layout::Layout;
use crate::ordered::SmallSet;
use crate::plan::Plan;
use crate::record::{Code, PartKey, Record, Version};
use crate::rider::Side;

/// The revision code of the layout in hand.
pub fn code(plan: &Plan) -> Code {
    code_of(plan, plan.layout())
}

/// The revision code of a layout: the digest of everything that is built and
/// programmed for it (bike, brakes, system, shift plan, buttons), and of the
/// hand positions it serves. Names, dates and what the hands can do leave it
/// alone, so that a copy without rider details has the same code.
pub fn code_of(plan: &Plan, layout: &Layout) -> Code {
    code_from(&document::pieces(plan), plan, layout)
}

/// As [`code_of`], for a plan that is taken apart already.
pub(crate) fn code_from(said: &Pieces, plan: &Plan, layout: &Layout) -> Code {
    let mut bike = pieces::find(said, &PartKey::Bike).clone();
    let mut layout = pieces::find(said, &PartKey::Layout(layout.id)).clone();
    forget(&mut bike, &["as_found"]);
    forget(&mut bike["bike"], &["name"]);
    forget(&mut bike["bike"]["system"], &["name", "origin"]);
    forget(&mut layout, &["id", "name"]);
    let positions: Vec<String> = (plan.rider.positions.iter())
        .filter_map(|(position, used)| Some(format!("{position} {}", used.value?)))
        .collect();
    Code::of(&format!("{bike}{layout}{}", positions.join(",")))
}

/// The digest of what is known of the hands: another one means that answers
/// changed.
pub fn hands_code(plan: &Plan) -> Code {
    let said = document::pieces(plan);
    let mut rider = pieces::find(&said, &PartKey::Rider).clone();
    forget(
        &mut rider,
        &["nickname", "own_words", "rides", "hand_details_removed"],
    );
    let [left, right] = [Side::Left, Side::Right].map(|s| pieces::find(&said, &PartKey::Hand(s)));
    let reach = pieces::find(&said, &PartKey::Reach);
    Code::of(&format!("{rider}{left}{right}{reach}"))
}

fn forget(group: &mut Value, names: &[&str]) {
    if let Value::Object(group) = group {
        for name in names {
            group.shift_remove(*name);
        }
    }
}

/// One thing that differs between two states of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// The part in which it differs.
    pub part: PartKey,
    /// What differs, without a full stop: "Left inner paddle: “rung up”, was
    /// blank".
    pub words: String,
    /// Where on the drawing.
    pub places: Vec<Place>,
}

/// A plan as it was.
#[derive(Debug, Clone, PartialEq)]
pub struct Past {
    /// The plan, without what was written into its record.
    pub plan: Plan,
    /// Whether all of it is known; false where the record does not reach back,
    /// or hand details were removed since.
    pub is_whole: bool,
}

/// What differs from one state of a plan to another.
pub fn differences(before: &Plan, after: &Plan) -> Vec<Difference> {
    let (a, b) = (document::pieces(before), document::pieces(after));
    let mut found = Vec::new();
    pieces::side_by_side(&a, &b, |part, was, now| {
        found.extend(differences_of_part(part, was, now, before, after));
    });
    found
}

/// Two revisions side by side.
#[derive(Debug, Clone, PartialEq)]
pub struct Between {
    /// The earlier.
    pub before: Past,
    /// The later.
    pub after: Past,
    /// What differs, from the earlier to the later.
    pub differences: Vec<Difference>,
    /// The buttons that differ.
    pub buttons: SmallSet<ButtonId>,
}

/// What differs between two revisions of a plan, whichever is named first; 0
/// is the plan as it began. `None` where one of them cannot be told.
pub fn between(plan: &Plan, one: u32, other: u32) -> Option<Between> {
    let before = plan_at(plan, one.min(other))?;
    let after = plan_at(plan, one.max(other))?;
    let differences = differences(&before.plan, &after.plan);
    let places = differences.iter().flat_map(|differs| &differs.places);
    let buttons = places.filter_map(|place| match place {
        Place::Button(button) => Some(*button),
        _ => None,
    });
    Some(Between {
        buttons: buttons.collect(),
        before,
        after,
        differences,
    })
}

/// What differs in one part.
pub(crate) fn differences_of_part(
    part: &PartKey,
    was: &Value,
    now: &Value,
    before: &Plan,
    after: &Plan,
) -> Vec<Difference> {
    let mut found: Vec<Difference> = Vec::new();
    for change in pieces::differences(was, now) {
        let names = pieces::steps(&change.path);
        // An answer and where it came from are told in one sentence.
        let (names, was) = match words::answer_of(part, &names) {
            Some(answer) => (answer, pieces::at(was, answer)),
            None => (&names[..], change.value.as_ref()),
        };
        let now = pieces::at(now, names);
        let (words, places) = words::Change {
            part,
            names,
            was,
            now,
            before,
            after,
        }
        .told();
        if !found.iter().any(|known| known.words == words) {
            found.push(Difference {
                part: part.clone(),
                words,
                places,
            });
        }
    }
    found
}

/// The plan as it was at a revision, looking back from a plan that came after.
/// `None` where nothing of it can be told.
pub fn plan_at(plan: &Plan, revision: u32) -> Option<Past> {
    let mut is_whole = true;
    let mut said = document::pieces(plan);
    let gone = plan.record.stamps.iter().map(|stamp| &stamp.part);
    let gone: Vec<PartKey> = gone
        .filter(|part| pieces::find(&said, part).is_null())
        .cloned()
        .collect();
    said.extend(gone.into_iter().map(|part| (part, Value::Null)));
    for (part, value) in &mut said {
        let Some(version) = plan.record.version(part) else {
            continue;
        };
        is_whole &= look_back(&plan.record, part, value, version, revision);
    }
    said.retain(|(_, value)| !value.is_null());
    said.sort_unstable_by(|(a, _), (b, _)| a.cmp(b));
    let plan = document::assemble(&said, revision).ok()?;
    Some(Past { plan, is_whole })
}

/// Takes back what was made in a part after a revision; whether all of it could
/// be.
fn look_back(
    record: &Record,
    part: &PartKey,
    value: &mut Value,
    mut version: Version,
    revision: u32,
) -> bool {
    while version.revision > revision {
        let Some(step) = record.step_to(part, version) else {
            return false;
        };
        if step.was.is_empty() {
            return false;
        }
        pieces::put_was(value, &step.was);
        version = step.from;
    }
    true
}

#[cfg(test)]
mod tests;
