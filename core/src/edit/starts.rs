//! Acts that start or turn a whole layout.

use super::EditError;
use crate::cockpit::{BarSide, ButtonId, Control, Ease, Freedom, Press};
use crate::function::Function;
use crate::layout::{Chord, Layout};
use crate::plan::Plan;
use crate::reach;
use crate::rider::{Ability, Day, Difficulty, HandPlace, Side, Standing};
use crate::vocabulary::Vocabulary;

/// Puts all needed shifting on one side: the buttons that the hand reaches from
/// most of the positions it uses, the easiest first, take the functions in the
/// order of their weight. Where buttons run out, one front toggle serves for
/// both front functions, then two buttons pressed together.
pub(super) fn all_shifting_on(plan: &mut Plan, side: Side) -> Result<(), EditError> {
    let mut buttons = ranked_buttons(plan, side);
    if buttons.is_empty() {
        return Err(EditError::NotPossible(format!(
            "There is no button on the {side} that can be given a function. Add a pod there first."
        )));
    }
    let needed = plan.needed_functions().to_vec();
    let wanted = wanted_functions(&needed, buttons.len());
    let chords = plan.bike.system.chords;
    let bike = plan.bike.clone();
    let layout = plan.layout_mut();
    let old = layout.clone();
    *layout = Layout::blank(old.id, old.name.as_str());
    let pair: Vec<ButtonId> = buttons.iter().take(2).copied().collect();
    for function in &wanted {
        let takes = |id: &ButtonId| bike.button(*id).is_some_and(|(_, b)| b.takes(*function));
        if let Some(at) = buttons.iter().position(takes) {
            layout.taps.insert(buttons.remove(at), *function);
        }
    }
    let toggles = wanted.iter().any(|f| f.is_front());
    let lacks_front = needed.iter().any(|f| f.is_front()) && !toggles;
    if let (true, true, [first, second]) = (lacks_front, chords, &pair[..]) {
        layout.chords.push(Chord {
            first: *first,
            second: *second,
            function: Function::FrontToggle,
        });
    }
    keep_the_rest(layout, &old);
    Ok(())
}

/// What does not shift stays where it was, if its button is still blank.
fn keep_the_rest(layout: &mut Layout, old: &Layout) {
    for (id, function) in &old.taps {
        if !function.shifts() {
            layout.taps.entry(*id).or_insert(*function);
        }
    }
}

fn wanted_functions(needed: &[Function], buttons: usize) -> Vec<Function> {
    if needed.len() <= buttons || !needed.iter().any(|f| f.is_front()) {
        return needed.to_vec();
    }
    let rear = needed.iter().copied().filter(|f| !f.is_front());
    let mut wanted: Vec<Function> = rear.collect();
    if buttons > wanted.len() {
        wanted.push(Function::FrontToggle);
    }
    wanted
}

/// The remappable buttons of a side, best first: reached from most positions,
/// by the ablest contact, most naturally; then in the order of the drawing's
/// parts. Buttons that the hand cannot press at all are left out, unless the
/// hand was not asked about.
fn ranked_buttons(plan: &Plan, side: Side) -> Vec<ButtonId> {
    let positions = plan.positions_used();
    let mut ranked: Vec<_> = plan
        .bike
        .controls
        .iter()
        .filter(|c| c.connected && c.side == BarSide::from(side))
        .flat_map(|c| c.buttons.iter().map(move |b| (c, b)))
        .filter(|(_, b)| b.is_remappable())
        .filter_map(|(c, b)| {
            let best: Vec<_> = positions
                .iter()
                .filter_map(|from| {
                    let hand = plan.rider.hands.get(side);
                    reach::of_button(c, b, *from)
                        .into_iter()
                        .filter(|r| r.ease <= Ease::Stretch)
                        .map(|r| {
                            let step = hand
                                .contact_step(r.contact, Day::Usual)
                                .unwrap_or(Difficulty::None);
                            let swing = match b.press {
                                Press::Sweep => hand
                                    .step(Ability::SwingsPaddle, Day::Usual)
                                    .unwrap_or(Difficulty::None),
                                Press::Short => Difficulty::None,
                            };
                            (step.max(swing), r.ease)
                        })
                        .filter(|(step, _)| step.standing() != Standing::NotUsable)
                        .min()
                })
                .collect();
            let worst = best.iter().max().copied()?;
            let missed = positions.len() - best.len();
            Some(((missed, worst, b.part), c.button_id(b.part)))
        })
        .collect();
    ranked.sort();
    ranked.into_iter().map(|(_, id)| id).collect()
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
        mirrored.holds.insert(across(*id)?, *hold);
    }
    for chord in &old.chords {
        mirrored.chords.push(Chord {
            first: across(chord.first)?,
            second: across(chord.second)?,
            function: chord.function,
        });
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
