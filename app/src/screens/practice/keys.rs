//! Keys that stand for buttons: heard while the road comes, shown and changed.

use leptos::ev::{self, KeyboardEvent};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::practice::{Switch, printed};
use leverwright_core::rider::Side;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::desk::{Learning, Mode, PracticeDesk};
use super::pad::PadButton;
use crate::erase::{act, text, view_of};
use crate::widgets::Choice;

/// Hears keys for as long as the screen is there.
pub fn listen(desk: PracticeDesk) {
    let down = window_event_listener(ev::keydown, move |event| key_down(desk, &event));
    let up = window_event_listener(ev::keyup, move |event| {
        if desk.mode.get_untracked() == Mode::Riding
            && let Some(switch) = switch(desk, &event)
        {
            desk.let_go(switch);
        }
    });
    on_cleanup(move || {
        down.remove();
        up.remove();
    });
}

fn key_down(desk: PracticeDesk, event: &KeyboardEvent) {
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    if matches!(desk.learning.get_untracked(), Some(Learning::Key(_))) && event.key() != "Tab" {
        desk.learn_key(&event.code());
        return event.prevent_default();
    }
    if desk.mode.get_untracked() != Mode::Riding {
        return;
    }
    if event.key() == "Escape" {
        event.prevent_default();
        return desk.pause();
    }
    // Enter and the space bar press what has the focus.
    let presses_focus = event.code() == "Space" && is_on(event, "button, a, summary");
    if presses_focus || is_on(event, "input, select, textarea") {
        return;
    }
    if let Some(switch) = switch(desk, event) {
        event.prevent_default();
        if !event.repeat() {
            desk.press(switch);
        }
    }
}

fn is_on(event: &KeyboardEvent, selector: &str) -> bool {
    let element = event.target().and_then(|t| t.dyn_into::<Element>().ok());
    element.is_some_and(|element| element.closest(selector).ok().flatten().is_some())
}

fn switch(desk: PracticeDesk, event: &KeyboardEvent) -> Option<Switch> {
    desk.keys.with_untracked(|keys| keys.switch(&event.code()))
}

/// The set of keys, each of which can be changed, and the buttons of a
/// controller.
#[component]
pub fn Keys() -> impl IntoView {
    let desk = PracticeDesk::here();
    let hands = Side::ALL
        .iter()
        .map(|side| (Some(*side), format!("{side} hand")))
        .collect();
    let choose = Callback::new(move |side: Option<Side>| {
        desk.choose(|choices| choices.hand = side.unwrap_or(choices.hand));
    });
    view! {
        <details class="practice-keys">
            <summary>"Keys, game controller, switch box"</summary>
            <p class="quiet">
                "Each button has a key under the finger that presses it on the bike. Letters are \
                named as on an English keyboard; the place counts. Escape pauses."
            </p>
            <Choice legend="Hand on the keys" name="practice-hand" choices=hands
                chosen=Signal::derive(move || Some(desk.choices.get().hand)) choose/>
            {view_of(move || rows(desk))}
            <div class="acts">
                <button type="button" on:click=act(move || desk.usual_keys())>"Keys as usual"</button>
            </div>
        </details>
    }
}

fn rows(desk: PracticeDesk) -> Option<impl IntoView> {
    let plan = desk.workspace.plan.get()?;
    let layout = desk.layout_of(&plan);
    let layout = plan.layouts.iter().find(|known| known.id == layout)?;
    let live = Switch::live(&plan.bike, layout).into_iter();
    let rows = live.map(|switch| {
        let number = match switch {
            Switch::Button(id) => plan.bike.balloon(id),
            Switch::Brake(_) => None,
        };
        row(desk, switch, number, switch.place(&plan.bike))
    });
    Some(view! { <ul class="key-rows">{rows.collect_view()}</ul> })
}

fn row(desk: PracticeDesk, switch: Switch, number: Option<usize>, place: String) -> impl IntoView {
    let key = text(move || {
        let key = desk.keys.with(|keys| keys.key(switch));
        key.map(printed).unwrap_or("none").to_owned()
    });
    let pad = text(move || {
        let pads = desk.pads.get();
        let known = pads.iter().find(|(other, _)| *other == switch);
        known.map_or_else(String::new, |(_, at)| PadButton::words(*at))
    });
    let waits = move |learning| desk.learning.get() == Some(learning);
    let key_label = move || match waits(Learning::Key(switch)) {
        true => "Press the key you want",
        false => "Change the key",
    };
    let pad_label = move || match waits(Learning::Pad(switch)) {
        true => "Press the button you want",
        false => "Use a controller button",
    };
    let about = place.clone();
    let about_pad = place.clone();
    view! {
        <li>
            <span class="key-place">
                {number.map(|number| view! { <span class="balloon-number">{number}</span>" " })}
                {place}
            </span>
            <kbd class="key">{key}</kbd>
            <button type="button" on:click=act(move || desk.learning.set(Some(Learning::Key(switch))))>
                {key_label}<span class="unseen">{format!(" for {about}")}</span>
            </button>
            <button type="button" on:click=act(move || desk.learn_pad(switch))>
                {pad_label}<span class="unseen">{format!(" for {about_pad}")}</span>
            </button>
            <span class="key-pad quiet">{pad}</span>
        </li>
    }
}
