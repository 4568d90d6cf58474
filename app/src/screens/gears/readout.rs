//! What is known of the gear that is shown, and what may be done with it.

use leptos::prelude::*;
use leverwright_core::edit::GearEdit;
use leverwright_core::gears::plot::MarkShape;
use leverwright_core::shift_plan::ShiftPlanKind;

use super::desk::GearDesk;
use super::marks::next_by_hardness;
use crate::erase::{act, memo, view_of};

/// The values in a line, with the ways to the next gear.
#[component]
pub fn Readout() -> impl IntoView {
    let desk = GearDesk::here();
    let mark = memo(move || {
        let gear = desk.shown_gear();
        desk.plot.with(|plot| {
            let marks = plot.as_ref()?.marks.iter();
            marks.clone().find(|mark| mark.gear == gear).cloned()
        })
    });
    let words = move || mark.with(|mark| mark.as_ref().map(|mark| mark.words.clone()));
    let walk = move |harder: bool| {
        let to = desk.plot.with_untracked(|plot| {
            next_by_hardness(plot.as_deref()?, untrack(|| desk.shown_gear()), harder)
        });
        match to {
            Some(gear) => {
                desk.shown.set(gear);
                desk.workspace.say(untrack(words).unwrap_or_default());
            }
            None => desk.workspace.say(match harder {
                true => "This is the hardest gear.",
                false => "This is the easiest gear.",
            }),
        }
    };
    let forbidden =
        memo(move || mark.with(|mark| mark.as_ref().map(|m| m.shape == MarkShape::Forbidden)));
    let is_ladder = memo(move || desk.read(|plan| plan.shift_plan == ShiftPlanKind::Ladder));
    view! {
        <div class="gear-readout">
            <p class="gear-words">{words}</p>
            <div class="acts">
                <button type="button" on:click={act(move || walk(false))}>"Easier gear"</button>
                <button type="button" on:click={act(move || walk(true))}>"Harder gear"</button>
                {view_of(move || (is_ladder.get() == Some(true)).then(|| {
                    let is_forbidden = forbidden.get() == Some(true);
                    let name = mark.with(|mark| mark.as_ref().map(|m| {
                        m.words.split(',').next().unwrap_or_default().to_owned()
                    }));
                    let name = name.unwrap_or_default();
                    let label = match is_forbidden {
                        true => format!("Allow {name}"),
                        false => format!("Forbid {name}"),
                    };
                    let forbid = move || {
                        let gear = untrack(|| desk.shown_gear());
                        if desk.commit(GearEdit::Forbid(gear, !is_forbidden)) {
                            desk.workspace.say(untrack(words).unwrap_or_default());
                        }
                    };
                    view! { <button type="button" class="forbid" on:click={act(forbid)}>{label}</button> }
                }))}
            </div>
        </div>
    }
}
