//! Acts that start or turn a whole layout.

use super::EditError;
use crate::cockpit::{BarSide, Bike, ButtonId, Control, Freedom};
use crate::function::Function;
use crate::layout::{Chord, Layout};
use crate::plan::Plan;
use crate::rider::{HandPlace, Side};
use crate::suggest_button;
use crate::vocabulary::Vocabulary;

/// Puts all needed shifting on one side: the buttons that the hand reaches from
/// most of the positions it uses, the easiest first, take the functions in the
/// order of their weight. Where buttons run out, one front toggle serves for
/// both front functions, then two buttons pressed together.
pub(super) fn all_shifting_on(plan: &mut Plan, side: Side) -> Result<(), EditError> {
    let mut buttons = suggest_button::reached_by(plan, side);
    let pair = (buttons.first().copied(), buttons.get(1).copied());
    if buttons.is_empty() {
        return Err(nothing_to_press(plan, side));
    }
    let bike = plan.bike.clone();
    let needed = plan.needed_functions();
    let wanted = wanted_functions(needed, buttons.len(), &bike);
    let layout = plan.layout_mut();
    let old = layout.clone();
    *layout = Layout::blank(old.id, old.name.as_str());
    for function in wanted {
        if let Some(at) = buttons.iter().position(|id| bike.can_do(*id, function)) {
            layout.taps.insert(buttons.remove(at), function);
        }
    }
    let lacks_front = needed.iter().any(|f| f.is_front())
        && !layout.taps.values().any(|function| function.is_front());
    if let (true, (Some(first), Some(second))) = (lacks_front, pair) {
        let chord = Chord {
            first,
            second,
            function: Function::FrontToggle,
        };
        layout
            .chords
            .extend(chord.is_buildable(&bike).then_some(chord));
    }
    keep_the_rest(layout, &old);
    Ok(())
}

/// Why nothing can go on a side.
fn nothing_to_press(plan: &Plan, side: Side) -> EditError {
    let there = |c: &Control| c.connected && c.side == BarSide::from(side);
    let any = plan.bike.controls.iter().filter(|c| there(c));
    EditError::NotPossible(if any.flat_map(|c| &c.buttons).any(|b| b.is_remappable()) {
        format!(
            "The {side} hand presses no button there that can be given a function. Choose the other side, or add a pod that it reaches."
        )
    } else {
        format!(
            "There is no button on the {side} that can be given a function. Add a pod there first."
        )
    })
}

/// What does not shift stays where it was, if its button is still blank.
fn keep_the_rest(layout: &mut Layout, old: &Layout) {
    for (id, function) in &old.taps {
        if !function.shifts() {
            layout.taps.entry(*id).or_insert(*function);
        }
    }
}

/// The needed functions; where buttons run out, one toggle in place of both
/// front functions.
fn wanted_functions(needed: &[Function], buttons: usize, bike: &Bike) -> Vec<Function> {
    let mut wanted = needed.to_vec();
    if needed.len() > buttons && needed.iter().any(|f| f.is_front()) {
        wanted.retain(|f| !f.is_front());
        if bike.system.functions.contains(&Function::FrontToggle) && buttons > wanted.len() {
            wanted.push(Function::FrontToggle);
        }
    }
    wanted
}

/// Exchanges left and right: each button takes what its counterpart on the
/// other side had. What has no counterpart, or a counterpart that cannot take
/// it, is refused rather than dropped.
pub(super) fn mirror_layout(plan: &mut Plan) -> Result<(), EditError> {
    let bike = &plan.bike;
    let across = |id: ButtonId| -> Result<ButtonId, EditError> {
        let (control, _) = bike.button(id).ok_or_else(|| EditError::NoSuchButton {
            place: id.part.to_string(),
        })?;
        if control.side == BarSide::Centre {
            return Ok(id);
        }
        counterpart(&bike.controls, control, id).ok_or_else(|| {
            EditError::NotPossible(format!(
                "The {} has no counterpart on the other side. Clear it first, or add the control there.",
                control.place_of(id.part)
            ))
        })
    };
    let old = plan.layout().clone();
    let mut mirrored = Layout::blank(old.id, old.name.as_str());
    for (id, function) in &old.taps {
        let to = across(*id)?;
        super::layout::may_take(bike, to, *function)?;
        mirrored.taps.insert(to, *function);
    }
    for (id, hold) in &old.holds {
        let to = across(*id)?;
        super::layout::may_hold(bike, to, *hold)?;
        mirrored.holds.insert(to, *hold);
    }
    for chord in &old.chords {
        let chord = Chord {
            first: across(chord.first)?,
            second: across(chord.second)?,
            function: chord.function,
        };
        super::layout::may_chord(bike, &chord)?;
        mirrored.chords.push(chord);
    }
    *plan.layout_mut() = mirrored;
    Ok(())
}

fn counterpart(controls: &[Control], control: &Control, id: ButtonId) -> Option<ButtonId> {
    controls
        .iter()
        .find(|c| {
            c.side == control.side.mirrored()
                && (c.kind, c.zone) == (control.kind, control.zone)
                && c.button(id.part).is_some()
        })
        .map(|c| c.button_id(id.part))
}

/// Leaves blank what lies under a hand that does not work; what is fixed there
/// is unplugged where its control has nothing else.
pub(super) fn blank_under_resting_hands(plan: &mut Plan) {
    let idle: Vec<BarSide> = Side::ALL
        .iter()
        .filter(|side| {
            matches!(
                plan.rider.hands.get(**side).place.value,
                Some(HandPlace::Rests)
            )
        })
        .map(|side| BarSide::from(*side))
        .collect();
    let mut blanked = Vec::new();
    for control in &mut plan.bike.controls {
        if !idle.contains(&control.side) {
            continue;
        }
        blanked.extend(control.buttons.iter().map(|b| control.button_id(b.part)));
        let fixed = |freedom: &Freedom| !matches!(freedom, Freedom::Free | Freedom::Limited(_));
        if !control.buttons.is_empty() && control.buttons.iter().all(|b| fixed(&b.freedom)) {
            control.connected = false;
        }
    }
    let layout = plan.layout_mut();
    for id in blanked {
        layout.clear(id);
    }
}
