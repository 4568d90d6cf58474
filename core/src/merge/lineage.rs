//! Which of two versions was made from the other.

use super::Stand;
use super::join::Piece;
use crate::record::{PartKey, Record, Version};

/// How a part stands between two copies.
pub(super) fn stand(part: &PartKey, my: &Piece, their: &Piece, a: &Record, b: &Record) -> Stand {
    if my.says == their.says {
        return Stand::Same;
    }
    let records = [a, b];
    // A copy sent without rider details says nothing of the hands.
    let is_left_out = |piece: &Piece| part.is_about_hands() && piece.version.revision == 0;
    if descends(their.version, my.version, part, records) && my.rank() < their.rank() {
        Stand::TheirsNewer
    } else if descends(my.version, their.version, part, records) && their.rank() < my.rank() {
        Stand::MineNewer
    } else if is_left_out(their) && their.rank() < my.rank() {
        Stand::MineNewer
    } else if is_left_out(my) && my.rank() < their.rank() {
        Stand::TheirsNewer
    } else {
        Stand::BothChanged
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
