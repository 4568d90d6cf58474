//! The stage: the road above, the cockpit below, the acts at the thumb.

use leptos::ev::{MouseEvent, PointerEvent};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::BarSide;
use leverwright_core::practice::{OFFER_STOP_AFTER, Pace, Switch, printed};

use super::cockpit::Cockpit;
use super::desk::{Mode, PracticeDesk, STAGE};
use super::road::Road;
use crate::alone::alone;
use crate::erase::{When, act, flag, memo, text, view_of};
use crate::widgets::Choice;

/// The stage. Nothing else is on the page while the road comes.
#[component]
pub fn Stage() -> impl IntoView {
    alone("stage");
    let desk = PracticeDesk::here();
    let is_paused = flag(move || desk.mode.get() == Mode::Paused);
    let one_side = desk.plan().is_some_and(|plan| {
        let id = untrack(|| desk.layout_of(&plan));
        let layout = plan.layouts.iter().find(|layout| layout.id == id);
        layout.is_some_and(|layout| Switch::one_side(&plan.bike, layout).is_some())
    });
    view! {
        <section class="stage" class:one-side=one_side class:paused=is_paused>
            <div id=STAGE class="stage-front" tabindex="-1" role="application"
                aria-label="Road and cockpit. Press the buttons by their keys; Escape pauses.">
                <div class="stage-head">
                    <Wanted/>
                    <Instruments/>
                </div>
                <div class="stage-road"><Road/></div>
                <Cockpit one_side/>
                <Pads/>
            </div>
            <When holds=is_paused><Pause/></When>
            <When holds={flag(move || desk.mode.get() == Mode::Riding)}><Acts/></When>
        </section>
    }
}

/// What is wanted, how, and what was right last.
#[component]
fn Wanted() -> impl IntoView {
    let desk = PracticeDesk::here();
    let headline = memo(move || desk.shown.with(|shown| shown.headline.clone()));
    let hint = memo(move || desk.shown.with(|shown| shown.hint.clone()));
    let is_wrong = memo(move || desk.shown.with(|shown| shown.is_wrong));
    view! {
        <div class="wanted" class:wrong=move || is_wrong.get()>
            <p class="wanted-what">{headline}</p>
            <p class="wanted-how">
                <span class="good-to-know">{move || desk.last.get()}</span>" "<span>{hint}</span>
            </p>
        </div>
    }
}

/// Gear, cadence, speed.
#[component]
fn Instruments() -> impl IntoView {
    let desk = PracticeDesk::here();
    let gear = memo(move || desk.shown.with(|shown| shown.gear.clone()));
    let cadence = memo(move || desk.shown.with(|shown| shown.cadence));
    let speed = memo(move || desk.shown.with(|shown| shown.speed));
    view! {
        <dl class="instruments">
            <div><dt>"Gear"</dt><dd>{move || gear.get().unwrap_or_else(|| "not entered".into())}</dd></div>
            <div><dt>"Cadence"</dt><dd>{move || match cadence.get() {
                Some(cadence) => format!("{cadence} rpm"),
                None => "–".into(),
            }}</dd></div>
            <div><dt>"Speed"</dt><dd>{move || format!("{} km/h", speed.get())}</dd></div>
        </dl>
    }
}

/// Everything that is pressed, as plain buttons: for voice control and switches,
/// and where paddles are small. They show the keys.
#[component]
fn Pads() -> impl IntoView {
    let desk = PracticeDesk::here();
    let Some(plan) = desk.plan() else {
        return ().into_any();
    };
    let id = untrack(|| desk.layout_of(&plan));
    let Some(layout) = plan.layouts.iter().find(|layout| layout.id == id) else {
        return ().into_any();
    };
    let pads = Switch::live(&plan.bike, layout).into_iter().map(|switch| {
        let number = match switch {
            Switch::Button(id) => plan.bike.balloon(id),
            Switch::Brake(_) => None,
        };
        let side = switch.side(&plan.bike).map_or("", BarSide::code);
        pad(desk, switch, number, switch.place(&plan.bike), side)
    });
    view! { <ul class="practice-pads">{pads.collect_view()}</ul> }.into_any()
}

fn pad(
    desk: PracticeDesk,
    switch: Switch,
    number: Option<usize>,
    place: String,
    side: &'static str,
) -> impl IntoView {
    let key = text(move || {
        let key = desk.keys.with(|keys| keys.key(switch));
        key.map(printed).unwrap_or_default().to_owned()
    });
    let is_down = memo(move || desk.shown.with(|shown| shown.down.contains(&switch)));
    let is_called = memo(move || desk.shown.with(|shown| shown.called.contains(&switch)));
    let is_lit = memo(move || desk.shown.with(|shown| shown.lit.contains(&switch)));
    let down = move |event: PointerEvent| {
        event.prevent_default();
        desk.press(switch);
    };
    // By key, voice or switch there is a click without a pointer.
    let click = move |event: MouseEvent| {
        if event.detail() == 0 {
            desk.click(switch);
        }
    };
    let kind = if switch.is_brake() {
        "pad brake"
    } else {
        "pad"
    };
    view! {
        <li class=side class:called=move || is_called.get()>
            <button type="button" class=kind class:down=move || is_down.get()
                class:wanted-here=move || is_lit.get()
                on:pointerdown=down on:mousedown=|event: MouseEvent| event.prevent_default()
                on:pointerup=move |_| desk.let_go(switch)
                on:pointerleave=move |_| desk.let_go(switch)
                on:pointercancel=move |_| desk.let_go(switch)
                on:click=click>
                {number.map(|number| view! { <span class="balloon-number">{number}</span>" " })}
                <span class="pad-place">{place}</span>
                <kbd class="key" aria-hidden="true">{key}</kbd>
            </button>
        </li>
    }
}

/// Acts at the thumb while the road comes.
#[component]
fn Acts() -> impl IntoView {
    let desk = PracticeDesk::here();
    let chords = desk.has_chords();
    let together = move || desk.together.get();
    view! {
        <div class="stage-acts">
            {chords.then(|| view! {
                <button type="button" aria-pressed=move || together().to_string()
                    on:click=act(move || desk.press_together(!desk.together.get_untracked()))>
                    "Next two together"
                </button>
            })}
            <button type="button" class="main pause" on:click=act(move || desk.pause())>"Pause"</button>
        </div>
    }
}

/// What may be done while it stands.
#[component]
fn Pause() -> impl IntoView {
    let desk = PracticeDesk::here();
    let words = move || match desk.offers_stop.get() {
        true => format!("{} minutes. Stop here, or go on.", OFFER_STOP_AFTER / 60),
        false => "Paused. The road waits.".into(),
    };
    view! {
        <div class="stage-pause">
            <h2 id="practice-paused">{words}</h2>
            <Level/>
            <div class="acts">
                <button type="button" id="practice-go-on" class="main"
                    on:click=act(move || desk.go_on())>"Go on"</button>
                <button type="button" on:click=act(move || desk.stop())>"Stop"</button>
            </div>
        </div>
    }
}

/// How much hurry there is.
#[component]
pub fn Level() -> impl IntoView {
    let desk = PracticeDesk::here();
    let levels = Pace::ALL
        .iter()
        .map(|pace| (Some(*pace), pace.words().to_owned()))
        .collect();
    let choose = Callback::new(move |pace: Option<Pace>| {
        desk.choose(|choices| choices.pace = pace.unwrap_or(choices.pace));
    });
    view! {
        <Choice legend="Level" name="practice-level" choices=levels
            chosen=Signal::derive(move || Some(desk.choices.get().pace)) choose/>
        {view_of(move || {
            let waits = desk.choices.get().pace.seconds().is_none();
            waits.then(|| view! { <p class="quiet level-note">"The road waits until you press."</p> })
        })}
    }
}
