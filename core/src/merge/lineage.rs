//! Which of two versions was made from the other.

use super::Stand;
use super::join::Piece;
use crate::record::{PartKey, Record, Version};

/// How a part stands between two copies.
pub(super) fn stand(part: &PartKey, my: &Piece, their: &Piece, a: &Record, b: &Record) -> Stand {
    if my.says == their.says {
        return Stand::Same;
    }
    // What never changed since a copy began may have been left out of it: rider
    // details, other layouts.
    let may_be_left_out = part.is_about_hands() || *part == PartKey::Layouts;
    let is_left_out =
        |piece: &Piece| piece.version.revision == 0 && (may_be_left_out || piece.says.is_null());
    let is_older = |old: &Piece, new: &Piece| {
        descends(new.version, old.version, part, [a, b])
            || is_left_out(old) && new.version.revision == 0
    };
    match their.rank() < my.rank() {
        // Theirs never changed at all.
        true if their.version.revision == 0 && my.version.revision > 0 => Stand::MineNewer,
        true if is_older(their, my) => Stand::MineNewer,
        false if is_older(my, their) => Stand::TheirsNewer,
        _ => Stand::BothChanged,
    }
}

/// Whether a version of a part was made from another one, step by step.
fn descends(mut version: Version, from: Version, part: &PartKey, records: [&Record; 2]) -> bool {
    let step_to = |version: Version| {
        records.iter().find_map(|record| {
            // Revisions stand in the order of their numbers.
            let first = (record.revisions).partition_point(|r| r.number < version.revision);
            let of_number = record.revisions[first..]
                .iter()
                .take_while(|r| r.number == version.revision);
            let mut steps = of_number.flat_map(|revision| &revision.parts);
            steps.find(|step| step.part == *part && step.to == version.code)
        })
    };
    while version.revision > from.revision {
        match step_to(version) {
            // A step leads back, or the record was tampered with.
            Some(step) if step.from.revision < version.revision => version = step.from,
            _ => return false,
        }
        if version == from {
            return true;
        }
    }
    false
}
