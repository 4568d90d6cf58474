//! The slot of one button: what it does, and a way to everything else about it.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::icons::Icon;
use leverwright_core::slot::{Binding, Slot};

use super::bench::{Answer, Bench};
use super::function::{FunctionIcon, IconMark, function_words};
use super::hands_on::{first_stop, slot_id};
use super::reach::reach_words;
use super::words::hold_words;
use crate::gesture::{Load, Spot};

/// A slot: in the margin beside the drawing, or a row under it.
#[component]
pub fn SlotView(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let slot = Memo::new(move |_| bench.slot(id));
    let seat = Memo::new(move |_| {
        let picture = bench.picture.get().filter(|picture| picture.has_slots)?;
        Some(picture.button(id)?.slot)
    });
    let answer = Memo::new(move |_| bench.answer(id));
    let here = Spot::Button(id);
    let is_over = Memo::new(move |_| bench.over.get() == Some(here));
    let is_lit = Memo::new(move |_| bench.lights.with(|lights| lights.buttons.contains(&id)));
    let px = |length: Option<f64>| length.map(|length| format!("{length:.1}px"));
    view! {
        <li class="slot" data-spot=here.key()
            class:lit=move || is_lit.get()
            class:over=move || is_over.get()
            class:takes=move || answer.get() == Some(Answer::Takes)
            class:carried=move || answer.get() == Some(Answer::Carried)
            class:refuses=move || matches!(answer.get(), Some(Answer::Refuses(_)))
            class:blank=move || slot.with(|s| s.as_ref().is_some_and(|s| s.tap.is_none()))
            style:left=move || px(seat.get().map(|seat| seat.x0))
            style:top=move || px(seat.get().map(|seat| seat.y0))
            style:width=move || px(seat.get().map(|seat| seat.width()))
            style:height=move || px(seat.get().map(|seat| seat.height()))>
            <Face id slot/>
            <MenuButton id slot/>
            <Why id/>
        </li>
    }
}

/// The part that is tapped, dragged and walked to.
#[component]
fn Face(id: ButtonId, slot: Memo<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let load = Load::Button(id);
    let is_carried = move || bench.load.get() == Some(load);
    let tab_stop = Memo::new(move |_| first_stop(bench) == Some(id));
    let reach = Memo::new(move |_| reach_words(bench, id));
    let read = move |read: fn(&Slot) -> AnyView| slot.get().as_ref().map(read);
    view! {
        <button type="button" class="face" id=slot_id(id) data-load=load.key()
            tabindex=move || if tab_stop.get() { "0" } else { "-1" }
            aria-pressed=move || is_carried().to_string()
            aria-describedby="how-to-carry">
            {move || read(number)}
            <span class="grip">{move || read(icon)}</span>
            <span class="says">
                {move || read(place)}
                {move || read(now)}
                {move || read(more)}
                {move || reach.get().map(|words| view! { <span class="reach">" "{words}</span> })}
            </span>
        </button>
    }
}

fn number(slot: &Slot) -> AnyView {
    view! { <span class="balloon-number">{slot.number}</span>" " }.into_any()
}

fn icon(slot: &Slot) -> AnyView {
    view! { <FunctionIcon function=slot.tap/> }.into_any()
}

/// Where it is; the side is read out only, for the eye sees it.
fn place(slot: &Slot) -> AnyView {
    let (side, part) = match slot.place.split_once(' ') {
        Some((side @ ("left" | "right"), part)) => (Some(side.to_owned()), part.to_owned()),
        _ => (None, slot.place.clone()),
    };
    let side = side.map(|side| view! { <span class="unseen">{side}" "</span> });
    view! { <span class="place">{side}{part}</span>" " }.into_any()
}

/// What a tap does.
fn now(slot: &Slot) -> AnyView {
    let words = function_words(slot.tap);
    let binding = match slot.binding {
        Binding::Fixed => {
            Some(view! { <IconMark icon=Icon::Fixed/><span class="unseen">" fixed"</span> }
                .into_any())
        }
        Binding::Copies(_) => {
            Some(view! { <IconMark icon=Icon::Copies/><span class="unseen">" copied"</span> }
                .into_any())
        }
        Binding::Open | Binding::Limited => None,
    };
    view! { <span class="now">{words}{binding}</span> }.into_any()
}

/// Hold, chords, what it was, whether it is unplugged.
fn more(slot: &Slot) -> AnyView {
    let hold = slot.hold.map(|hold| format!("hold: {}", hold_words(hold)));
    let chords = slot
        .chords
        .iter()
        .map(|chord| format!("with another: {}", chord.function));
    let unplugged = (!slot.connected).then(|| "unplugged".to_owned());
    let was = slot
        .was
        .map(|was| format!("was {}", function_words(was)));
    let notes: Vec<String> = unplugged
        .into_iter()
        .chain(was)
        .chain(hold)
        .chain(chords)
        .collect();
    if notes.is_empty() {
        return ().into_any();
    }
    view! { <span class="notes">" "{notes.join(", ")}</span> }.into_any()
}

/// The way to the button's menu.
#[component]
fn MenuButton(id: ButtonId, slot: Memo<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let about = move || slot.with(|s| s.as_ref().map(|s| format!(" {} {}", s.number, s.place)));
    view! {
        <button type="button" class="to-menu" aria-haspopup="dialog"
            tabindex=move || if first_stop(bench) == Some(id) { "0" } else { "-1" }
            on:click=move |_| bench.menu.set(Some(id))>
            <span class="dots" aria-hidden="true"></span>
            <span class="label">"Menu"</span><span class="unseen">{about}</span>
        </button>
    }
}

/// Why the button refused, told at the spot.
#[component]
fn Why(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let told = Memo::new(move |_| {
        let dragged_over = bench.over.get() == Some(Spot::Button(id));
        match bench.answer(id) {
            Some(Answer::Refuses(why)) if dragged_over => Some(why),
            _ => bench
                .why
                .with(|why| why.as_ref().filter(|(at, _)| *at == id).map(|(_, w)| w.clone())),
        }
    });
    move || {
        told.get().map(|why| {
            view! {
                <p class="why">
                    <span>{why}</span>
                    <button type="button" on:click=move |_| bench.why.set(None)>"OK"</button>
                </p>
            }
        })
    }
}
