//! The slot of one button: what it does, and a way to everything else about it.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::Rect;
use leverwright_core::slot::Slot;

use super::bench::{Answer, Bench};
use super::hands_on::slot_id;
use super::reach::reach_words;
use super::words::{FunctionIcons, function_words, gloss, hold_words};
use crate::after_paint::a_frame_behind;
use crate::changes::changes_of;
use crate::gesture::{Load, Spot};

/// A slot: in the margin beside the drawing, or a row under it.
#[component]
pub fn SlotView(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let shown = changes_of(move || bench.seen(id));
    let seat = Memo::new(move |_| {
        let picture = bench.picture.get().filter(|picture| picture.has_slots)?;
        Some(picture.button(id)?.slot)
    });
    let state = Memo::new(move |_| {
        let blank = if shown.with(is_live) { "" } else { " blank" };
        format!("{blank}{}", state_class(bench, id))
    });
    let side = move |length: fn(&Rect) -> f64| {
        move || seat.with(|seat| seat.as_ref().map(|seat| format!("{:.1}px", length(seat))))
    };
    view! {
        <li class=move || format!("slot{}", state.get()) data-button=id.to_string()
            style:left=side(|seat| seat.x0) style:top=side(|seat| seat.y0)
            style:width=side(Rect::width) style:height=side(Rect::height)>
            <Face id shown/>
            <ToMenu id shown/>
            <Why id/>
        </li>
    }
}

/// Whether a tap does anything.
fn is_live(slot: &Option<Slot>) -> bool {
    slot.as_ref().is_some_and(|slot| slot.look.live)
}

/// How the slot looks: lit by a finding, under a drag, what it answers.
fn state_class(bench: Bench, id: ButtonId) -> String {
    let mut class = String::new();
    let is_lit = bench.lights.with(|lights| lights.buttons.contains(&id));
    if let (true, Some(weight)) = (is_lit, bench.weight.get()) {
        class += " lit lit-";
        class += weight.code();
    }
    bench.shown.with(|carrying| {
        if carrying.over == Some(Spot::Button(id)) {
            class += " over";
        }
        class += match carrying.answer(id) {
            None => "",
            Some(Answer::Takes) => " takes",
            Some(Answer::Carried) => " carried",
            Some(Answer::Refuses(_)) => " refuses",
        };
        if carrying.is_foreseen(id) {
            class += " foreseen";
        }
    });
    class
}

/// The part that is tapped, dragged and walked to.
#[component]
fn Face(id: ButtonId, shown: RwSignal<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let load = Load::Button(id);
    let reach = Memo::new(move |_| reach_words(bench, id));
    let notes = a_frame_behind(move || shown.with(|slot| slot.as_ref().map(notes)));
    view! {
        <button type="button" class="face" id=slot_id(id) data-load=load.key()
            class:live=move || shown.with(is_live)
            class:reached=move || reach.with(Option::is_some)
            tabindex=move || if bench.stop.get() == Some(id) { "0" } else { "-1" }
            aria-pressed=move || bench.shown.with(|c| c.load == Some(load)).to_string()
            aria-describedby="how-to-carry">
            {move || shown.with(|slot| slot.as_ref().map(says))}
            {move || notes.get().filter(|notes| !notes.is_empty()).map(|notes| view! {
                <span class="notes"><span class="unseen">", "</span>{notes}</span>
            })}
            {move || reach.get().map(|words| view! { <span class="notes reach">{words}</span> })}
        </button>
    }
}

/// Number, place and what a tap does. The side is read out only, for the eye sees it.
fn says(slot: &Slot) -> impl IntoView + use<> {
    let side = slot.side.words();
    view! {
        <span class="balloon-number">{slot.number}</span>
        <span class="place"><span class="unseen">" "{side}" "</span>{slot.look.place.clone()}</span>
        <span class="grip"><FunctionIcons function=slot.look.function/></span>
        <span class="now">" "{slot.look.words()}{gloss(slot.look.function)}</span>
    }
}

/// How it stands, what it was, its hold and its chords.
fn notes(slot: &Slot) -> String {
    let was = slot.was.map(|was| format!("was {}", function_words(was)));
    let hold = slot.hold.map(|hold| format!("hold: {}", hold_words(hold)));
    let chords = slot.chords.iter();
    let chords = chords.map(|chord| format!("with another: {}", chord.function));
    let standing = slot.look.standing.words().into_iter();
    let notes = standing.chain(was).chain(hold).chain(chords);
    notes.collect::<Vec<_>>().join(", ")
}

/// The way to the button's menu.
#[component]
fn ToMenu(id: ButtonId, shown: RwSignal<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let about = move || shown.with(|s| s.as_ref().map(|s| format!(" {} {}", s.number, s.place)));
    view! {
        <button type="button" class="to-menu" aria-haspopup="dialog"
            tabindex=move || if bench.stop.get() == Some(id) { "0" } else { "-1" }
            on:click=move |_| bench.menu.set(Some(id))>
            "Menu"<span class="unseen">{about}</span>
        </button>
    }
}

/// Why the button refuses, told at the spot.
#[component]
fn Why(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    move || {
        let (_, why) = bench.told.get().filter(|(at, _)| *at == id)?;
        Some(view! { <Refusal why/> })
    }
}

/// A refusal, until it is dismissed.
#[component]
fn Refusal(why: String) -> impl IntoView {
    let bench = Bench::here();
    view! {
        <p class="why">
            <span>{why}</span>
            <button type="button" on:click=move |_| bench.why.set(None)>"OK"</button>
        </p>
    }
}
