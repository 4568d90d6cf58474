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
    while version.revision > from.revision {
        let step = records
            .iter()
            .find_map(|record| record.step_to(part, version));
        match step {
            Some(step) => version = step.from,
            None => return false,
        }
        if version == from {
            return true;
        }
    }
    false
}
