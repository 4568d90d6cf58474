//! Revisions: the code of what is to be built, and what changed between two.

use serde_json::Value;

use crate::document::{self, pieces};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::record::{Code, PartKey};
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
    let said = document::pieces(plan);
    let mut bike = pieces::find(&said, &PartKey::Bike).clone();
    let mut layout = pieces::find(&said, &PartKey::Layout(layout.id)).clone();
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
    forget(&mut rider, &["nickname", "own_words"]);
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
