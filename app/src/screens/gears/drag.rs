//! Crossovers in the picture: taken by pointer, or moved by keys like a slider.

use leptos::ev::{KeyboardEvent, PointerEvent, TouchEvent};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, GearEdit};
use leverwright_core::gears::plot::{CrossoverLine, GearPlot};
use leverwright_core::gears::{Crossover, CrossoverEnd, Direction};
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::crossovers::{Which, crossover, move_one, which};
use super::desk::GearDesk;
use super::drawn::{head, place};
use crate::erase::{memo, text};

/// What is being dragged: where it began.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Drag {
    pointer: i32,
    /// The crossover as it was.
    from: Crossover,
    /// Where its leaving gear lay, and the pointer, in pixels.
    x: f64,
    pointer_x: f64,
    /// User units of a pixel.
    units: f64,
}

/// A line with its handle for each crossover.
#[component]
pub fn CrossoverHandles() -> impl IntoView {
    let desk = GearDesk::here();
    let all = memo(move || which(desk));
    let drag = RwSignal::new(None::<Drag>);
    view! {
        <For each=move || all.get() key=|which| *which let:which>
            <Handle which drag/>
        </For>
    }
}

#[component]
fn Handle(which: Which, drag: RwSignal<Option<Drag>>) -> impl IntoView {
    let desk = GearDesk::here();
    let line = memo(move || {
        desk.plot.with(|plot| {
            let lines = plot.as_ref()?.crossovers.iter();
            lines
                .clone()
                .find(|line| Which::of(line.crossover) == which)
                .cloned()
        })
    });
    let read = move |read: fn(&CrossoverLine) -> String| {
        text(move || line.with(|line| line.as_ref().map(read).unwrap_or_default()))
    };
    let is_dragged =
        memo(move || drag.with(|drag| drag.is_some_and(|drag| Which::of(drag.from) == which)));
    let last = memo(move || {
        desk.read(|plan| plan.bike.cogs())
            .unwrap_or(1)
            .saturating_sub(1)
    });
    let now = read(|line| line.crossover.from.cog.to_string());
    let way = which.way.code();
    view! {
        <g class="crossover" class:dragged=move || is_dragged.get()>
            <path class=format!("way {way}") d=read(|line| line.d.clone())></path>
            <path class="way-head" d=read(|line| head(line.to, line.crossover.way))></path>
            <g class="handle" role="slider" tabindex="0" id=which.name("handle")
                aria-label={text(move || which.title(desk))}
                aria-valuemin="0" aria-valuemax=move || last.get().to_string()
                aria-valuenow=now aria-valuetext=read(|line| line.words.clone())
                transform=read(|line| place(line.handle))
                on:keydown=move |event| key_down(desk, which, drag, &event)
                on:pointerdown=move |event| pointer_down(desk, which, drag, &event)
                on:pointermove=move |event| pointer_move(desk, drag, &event)
                on:pointerup=move |event| pointer_up(desk, drag, &event)
                on:pointercancel=move |_| give_up(desk, drag)
                on:touchmove=move |event: TouchEvent| {
                    // What a finger moves must not scroll the page besides.
                    if drag.with_untracked(Option::is_some) {
                        event.prevent_default();
                    }
                }>
                <path class="hit" d="M-22 -22H22V22H-22z"></path>
                <circle class="knob" r="12"></circle>
                <path class="arrows" d="M-7 0H7M-4 -3.5L-7.5 0L-4 3.5M4 -3.5L7.5 0L4 3.5"></path>
                <text class="way-word" x=if which.way == Direction::Up { "19" } else { "-19" } y="4.5">
                    {which.way.words()}
                </text>
            </g>
        </g>
    }
}

/// Arrows move the crossover; with Shift the landing alone.
fn key_down(desk: GearDesk, which: Which, drag: RwSignal<Option<Drag>>, event: &KeyboardEvent) {
    let harder = match event.key().as_str() {
        "ArrowRight" | "ArrowUp" => true,
        "ArrowLeft" | "ArrowDown" => false,
        "Escape" => return give_up(desk, drag),
        _ => return,
    };
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    event.prevent_default();
    let end = match event.shift_key() {
        true => CrossoverEnd::Lands,
        false => CrossoverEnd::Leaves,
    };
    move_one(desk, which, end, harder);
}

fn pointer_down(desk: GearDesk, which: Which, drag: RwSignal<Option<Drag>>, event: &PointerEvent) {
    let Some(handle) = event
        .current_target()
        .and_then(|t| t.dyn_into::<Element>().ok())
    else {
        return;
    };
    if event.button() != 0 || !event.is_primary() {
        return;
    }
    // Fails only for a pointer that is up again.
    let _ = handle.set_pointer_capture(event.pointer_id());
    let begun = desk.plot.with_untracked(|plot| {
        let plot = plot.as_deref()?;
        let from = crossover(plot, which)?;
        let mark = plot.marks.iter().find(|mark| mark.gear == from.from)?;
        let frame = handle.closest("svg").ok()??.get_bounding_client_rect();
        Some(Drag {
            pointer: event.pointer_id(),
            from,
            x: mark.at.0,
            pointer_x: f64::from(event.client_x()),
            units: plot.size.0 / frame.width(),
        })
    });
    drag.set(begun);
}

/// Shows the crossover at the cog nearest to the pointer, if it works there.
fn pointer_move(desk: GearDesk, drag: RwSignal<Option<Drag>>, event: &PointerEvent) {
    let Some(dragged) = drag
        .get_untracked()
        .filter(|d| d.pointer == event.pointer_id())
    else {
        return;
    };
    let x = dragged.x + (f64::from(event.client_x()) - dragged.pointer_x) * dragged.units;
    let wanted = desk.plot.with_untracked(|plot| {
        let plot = plot.as_deref()?;
        let cog = cog_at(plot, dragged.from.from.ring, x)?;
        let gears = untrack(|| desk.read(|plan| plan.bike.drivetrain.gears()))??;
        let cogs = dragged.from.leaving(&gears, cog);
        (cogs != dragged.from.cog_move())
            .then(|| GearEdit::Crossover(dragged.from.pair(), dragged.from.way, cogs))
            .map_or(Some(None), |edit| Some(Some(edit)))
    });
    let Some(wanted) = wanted else { return };
    if desk.draft.with_untracked(|draft| *draft == wanted) {
        return;
    }
    let works = match &wanted {
        None => true,
        Some(edit) => desk.workspace.plan.with_untracked(|plan| {
            plan.as_ref()
                .is_some_and(|plan| plan.apply(&Edit::Gears(edit.clone())).is_ok())
        }),
    };
    if works {
        desk.draft.set(wanted);
    }
}

/// The cog of a ring whose mark is nearest.
fn cog_at(plot: &GearPlot, ring: u8, x: f64) -> Option<u8> {
    let marks = plot.marks.iter().filter(|mark| mark.gear.ring == ring);
    let nearest = marks.min_by(|a, b| {
        let far = |at: (f64, f64)| (at.0 - x).abs();
        far(a.at).total_cmp(&far(b.at))
    });
    nearest.map(|mark| mark.gear.cog)
}

fn pointer_up(desk: GearDesk, drag: RwSignal<Option<Drag>>, event: &PointerEvent) {
    if drag
        .get_untracked()
        .is_none_or(|d| d.pointer != event.pointer_id())
    {
        return;
    }
    drag.set(None);
    let draft = desk.draft.get_untracked();
    if let Some(edit) = draft {
        desk.commit(edit);
    }
    desk.draft.set(None);
}

fn give_up(desk: GearDesk, drag: RwSignal<Option<Drag>>) {
    drag.set(None);
    desk.draft.set(None);
}
