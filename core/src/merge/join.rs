//! The join of two copies: the later version of each part, and everything that
//! people wrote.

use std::sync::Arc;

use serde_json::Value;

use crate::document::{self, DocumentError, pieces};
use crate::layout::{Layout, LayoutId};
use crate::limits::{MOST_ACCEPTED, MOST_LAYOUTS};
use crate::plan::{Plan, UnknownPart};
use crate::record::{Code, PartKey, Record, Revision, Stamp, Version, is_fuller};

/// Two copies of a plan as one, the later version of each part: the same
/// whichever comes first, whatever was merged before, however often.
///
/// # Errors
/// When together they are more than a plan holds.
pub fn join(a: &Plan, b: &Plan) -> Result<Plan, DocumentError> {
    let (mut left, mut right) = (State::of(a), State::of(b));
    State::forget_removed(&mut left, &mut right);
    let parts = left.parts_with(&right);
    let pieces = parts.iter().map(|part| {
        let (a, b) = (left.piece(part), right.piece(part));
        if b.rank() > a.rank() { b } else { a }
    });
    let pieces = pieces.collect();
    let mut record = left.record;
    record.removals = record.removals.max(right.record.removals);
    record.take_entries(&right.record);
    take_revisions(&mut record, &right.record);
    let unknown = join_unknown(&a.unknown, &b.unknown);
    show(pieces, record, a.revision.max(b.revision), &unknown)
}

/// A plan that shows again what it held back and can show now.
pub(crate) fn show_what_is_held(plan: Plan) -> Plan {
    let is_held = |stamp: &Stamp| stamp.held.as_ref().is_some_and(|held| !held.is_null());
    if !plan.record.stamps.iter().any(is_held) {
        return plan;
    }
    join(&plan, &plan).unwrap_or(plan)
}

/// A copy taken apart.
pub(super) struct State {
    pieces: Vec<Piece>,
    record: Record,
}

/// A part of a copy with its version.
#[derive(Debug, Clone)]
pub(super) struct Piece {
    pub(super) part: PartKey,
    pub(super) version: Version,
    /// What it says; null for nothing.
    pub(super) says: Value,
    text: String,
    amount: usize,
}

impl Piece {
    fn new(part: &PartKey, version: Option<Version>, says: Value) -> Piece {
        let text = says.to_string();
        Piece {
            part: part.clone(),
            version: version.unwrap_or_else(|| Version {
                revision: 0,
                code: Code::of(&text),
            }),
            amount: amount(&says),
            // Nothing is less than anything.
            text: if says.is_null() { String::new() } else { text },
            says,
        }
    }

    /// Later versions are higher. Of the same version, and of how two plans
    /// began, the fuller is higher: a copy may have been sent without details.
    pub(super) fn rank(&self) -> (u32, Option<Code>, usize, &str) {
        let code = (self.version.revision > 0).then_some(self.version.code);
        (self.version.revision, code, self.amount, &self.text)
    }
}

/// How many things a value says; what is empty says nothing.
fn amount(value: &Value) -> usize {
    match value {
        Value::Null => 0,
        Value::Bool(_) | Value::Number(_) => 1,
        Value::String(text) => usize::from(!text.is_empty()),
        Value::Array(items) => items.iter().map(amount).sum(),
        Value::Object(group) => group.values().map(amount).sum(),
    }
}

impl State {
    pub(super) fn of(plan: &Plan) -> State {
        let said = document::pieces(plan);
        let stamps = plan.record.stamps.iter();
        let mut pieces: Vec<Piece> = stamps
            .map(|stamp| {
                let says = match &stamp.held {
                    Some(held) => held.as_ref().clone(),
                    None => pieces::find(&said, &stamp.part).clone(),
                };
                Piece::new(&stamp.part, Some(stamp.version), says)
            })
            .collect();
        let unstamped = said
            .into_iter()
            .filter(|(part, _)| plan.record.stamp(part).is_none());
        pieces.extend(unstamped.map(|(part, says)| Piece::new(&part, None, says)));
        pieces.sort_unstable_by(|a, b| a.part.cmp(&b.part));
        State {
            pieces,
            record: plan.record.clone(),
        }
    }

    /// What was said of the hands in the copy in which they were removed less
    /// often is forgotten.
    pub(super) fn forget_removed(a: &mut State, b: &mut State) {
        let older = match a.record.removals.cmp(&b.record.removals) {
            std::cmp::Ordering::Less => a,
            std::cmp::Ordering::Greater => b,
            std::cmp::Ordering::Equal => return,
        };
        older.pieces.retain(|piece| !piece.part.is_about_hands());
        older.record = older.record.without_hand_details();
    }

    /// The parts of both, in order.
    pub(super) fn parts_with(&self, other: &State) -> Vec<PartKey> {
        let all = self.pieces.iter().chain(&other.pieces);
        let mut parts: Vec<PartKey> = all.map(|piece| piece.part.clone()).collect();
        parts.sort_unstable();
        parts.dedup();
        parts
    }

    /// A part; absent ones say nothing.
    pub(super) fn piece(&self, part: &PartKey) -> Piece {
        let at = self.pieces.binary_search_by(|piece| piece.part.cmp(part));
        at.map_or_else(
            |_| Piece::new(part, None, Value::Null),
            |at| self.pieces[at].clone(),
        )
    }
}

/// The plan that shows as much of the pieces as a plan can; its record holds
/// the rest.
fn show(
    pieces: Vec<Piece>,
    mut record: Record,
    revision: u32,
    unknown: &[UnknownPart],
) -> Result<Plan, DocumentError> {
    let mut shown: pieces::Pieces = Vec::with_capacity(pieces.len());
    for piece in pieces.iter().filter(|piece| !piece.says.is_null()) {
        shown.push((piece.part.clone(), piece.says.clone()));
    }
    keep_latest(&mut shown, &pieces, MOST_LAYOUTS, |part| {
        matches!(part, PartKey::Layout(_))
    });
    keep_latest(&mut shown, &pieces, MOST_ACCEPTED, |part| {
        matches!(part, PartKey::Accepted(_))
    });
    keep_one_layout(&mut shown, &pieces);
    let plan = document::assemble(&shown, revision)?;
    let said = document::pieces(&plan);
    record.stamps.clear();
    for piece in pieces {
        let held = *pieces::find(&said, &piece.part) != piece.says;
        if held || piece.version.revision > 0 {
            record.stamps.push(Stamp {
                part: piece.part,
                version: piece.version,
                held: held.then(|| Arc::new(piece.says)).or_else(|| {
                    // A part that is gone is remembered as gone.
                    (piece.text.is_empty()).then(|| Arc::new(Value::Null))
                }),
            });
        }
    }
    Ok(Plan {
        record,
        unknown: with_those_of_record(plan.unknown, unknown),
        ..plan
    })
}

/// Keeps the latest of more parts of a kind than a plan holds.
fn keep_latest(
    shown: &mut pieces::Pieces,
    pieces: &[Piece],
    most: usize,
    is_of_kind: fn(&PartKey) -> bool,
) {
    let mut of_kind: Vec<&Piece> = pieces
        .iter()
        .filter(|piece| is_of_kind(&piece.part) && !piece.says.is_null())
        .collect();
    if of_kind.len() <= most {
        return;
    }
    of_kind.sort_unstable_by(|a, b| (b.rank(), &b.part).cmp(&(a.rank(), &a.part)));
    let dropped = &of_kind[most..];
    shown.retain(|(part, _)| !dropped.iter().any(|piece| piece.part == *part));
}

/// A plan has at least one layout: where each was removed in some copy, a blank
/// one stands in the place of the last.
fn keep_one_layout(shown: &mut pieces::Pieces, pieces: &[Piece]) {
    let is_layout = |part: &PartKey| matches!(part, PartKey::Layout(_));
    if shown.iter().any(|(part, _)| is_layout(part)) {
        return;
    }
    let last = pieces.iter().rev().find_map(|piece| match piece.part {
        PartKey::Layout(id) => Some(id),
        _ => None,
    });
    let id = last.unwrap_or(LayoutId(1));
    let blank = document::layout(&Layout::blank(id, "Layout 1"));
    super::set(shown, &PartKey::Layout(id), blank);
}

fn take_revisions(record: &mut Record, other: &Record) {
    for theirs in &other.revisions {
        let key = |revision: &Revision| (revision.number, revision.id);
        match (record.revisions).binary_search_by_key(&key(theirs), |mine| key(mine)) {
            Err(at) => record.revisions.insert(at, theirs.clone()),
            Ok(at) => {
                let mine = &mut record.revisions[at];
                // The same one, with details left out on one side.
                if !Arc::ptr_eq(mine, theirs)
                    && is_fuller(&document::revision(theirs), &document::revision(mine))
                {
                    *mine = theirs.clone();
                }
            }
        }
    }
    let more = record
        .revisions
        .len()
        .saturating_sub(Record::MOST_REVISIONS);
    record.revisions.drain(..more);
}

/// The unknown parts of a record, in which nothing is lost.
fn join_unknown(a: &[UnknownPart], b: &[UnknownPart]) -> Vec<UnknownPart> {
    let is_of_record = |part: &&UnknownPart| part.is_under(&["record"]);
    let mut all: Vec<UnknownPart> = a.iter().chain(b).filter(is_of_record).cloned().collect();
    all.sort_unstable_by(|a, b| {
        let key = |part: &UnknownPart| (part.path.clone(), part.value.to_string());
        key(a).cmp(&key(b))
    });
    all.dedup_by(|a, b| a.path == b.path);
    all
}

/// Unknown parts with those of the record.
pub(super) fn with_those_of_record(
    mut unknown: Vec<UnknownPart>,
    record: &[UnknownPart],
) -> Vec<UnknownPart> {
    unknown.extend(
        record
            .iter()
            .filter(|part| part.is_under(&["record"]))
            .cloned(),
    );
    unknown.sort_unstable_by(|a, b| a.path.cmp(&b.path));
    unknown
}
