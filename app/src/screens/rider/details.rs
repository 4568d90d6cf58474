//! What is asked on request only.

use crate::erase::{When, flag, memo, text, view_of};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::HandPosition;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{Acts, Contact, Device, Rider, Side, YesNo};
use leverwright_core::text::Text;
use leverwright_core::units::Mm;

use super::Desk;
use super::hand_column::ContactSteps;
use crate::number::number;
use crate::widgets::{Choice, all_or_not_asked};
use crate::workspace::Workspace;

const FURTHER: &[Contact] = &[
    Contact::Ring,
    Contact::Little,
    Contact::Heel,
    Contact::HandSide,
    Contact::Knuckle,
    Contact::Forearm,
    Contact::ResidualLimb,
    Contact::DeviceTip,
];

/// Further contacts, measures, a device, a ride that was fine.
#[component]
pub fn Details() -> impl IntoView {
    let desk = Desk::here();
    view! {
        <details class="question">
            <summary>
                "On request: further contacts, blade reach, a device, a ride that was fine, own words"
                <strong>{text(move || noted(desk))}</strong>
            </summary>
            <div class="hands">
                {Side::ALL.iter().map(|side| view! { <HandDetails side=*side/> }).collect_view()}
            </div>
            <FineRide/>
        </details>
    }
}

/// What is noted within, so that nobody overlooks it while it is folded.
fn noted(desk: Desk) -> String {
    let count = desk.rider.with(Rider::answers_on_request);
    let words = desk.rider.with(|rider| !rider.own_words.is_empty());
    let answers = match count {
        0 => None,
        1 => Some("1 answer".to_owned()),
        count => Some(format!("{count} answers")),
    };
    let words = words.then(|| "own words".to_owned());
    let noted: Vec<String> = answers.into_iter().chain(words).collect();
    match noted.is_empty() {
        true => " – nothing noted".into(),
        false => format!(" – noted: {}", noted.join(" and ")),
    }
}

#[component]
fn HandDetails(side: Side) -> impl IntoView {
    let desk = Desk::here();
    let positions = memo(move || {
        desk.workspace.plan.with(|plan| {
            plan.as_ref()
                .map(|plan| plan.bike.bar.kind.positions())
                .unwrap_or_default()
        })
    });
    view! {
        <div class="hand" role="group" aria-label=format!("{side} hand, on request")>
            <h3>{format!("{side} hand")}</h3>
            <ContactSteps side contacts=FURTHER/>
            {move || positions.get().iter()
                .map(|p| view! { <BladeReach side position=*p/> }).collect_view()}
            <DeviceChoice side/>
        </div>
    }
}

/// The fitter's measure of how far the hand reaches for a blade.
#[component]
fn BladeReach(side: Side, position: HandPosition) -> impl IntoView {
    let desk = Desk::here();
    let value = memo(move || {
        desk.rider.with(|rider| {
            let reach = rider.hands.get(side).blade_reach.value(position);
            reach.map_or_else(String::new, |mm| mm.0.to_string())
        })
    });
    let set = move |text: String| {
        let reach = desk.answer(number(&text).map(Mm));
        desk.commit(RiderEdit::BladeReach(side, position, reach));
    };
    view! {
        <label class="field">
            <span>{format!("Reaches and pulls a blade this far from the bar, {position} (mm)")}</span>
            <input type="number" inputmode="numeric" min="10" max="200" step="1"
                prop:value=value
                on:change:target=move |ev| set(ev.target().value())/>
        </label>
    }
}

#[component]
fn DeviceChoice(side: Side) -> impl IntoView {
    let desk = Desk::here();
    let device = memo(move || desk.rider.with(|rider| rider.hands.get(side).device));
    let change = move |change: &dyn Fn(&mut Device)| {
        let mut next = device.get_untracked().unwrap_or_default();
        change(&mut next);
        desk.commit(RiderEdit::Device(side, Some(next)));
    };
    let releases = Callback::new(move |value: Option<YesNo>| {
        change(&|device| device.releases_in_fall = desk.answer(value));
    });
    let acts = Callback::new(move |value: Option<Acts>| {
        change(&|device| device.acts = desk.answer(value));
    });
    view! {
        <label class="tick">
            <input type="checkbox" prop:checked={flag(move || device.get().is_some())}
                on:change:target=move |ev| {
                    let device = ev.target().checked().then(Device::default);
                    desk.commit(RiderEdit::Device(side, device));
                }/>
            <span>{format!("A strap, splint or device joins the {side} hand to the bar")}</span>
        </label>
        <When holds={flag(move || device.get().is_some())}>
            <Choice legend="It lets go by itself in a fall, tried and seen"
                name=format!("{}-releases", side.code()) choices=all_or_not_asked()
                chosen=Signal::derive(move || device.get().and_then(|d| d.releases_in_fall.value))
                choose=releases/>
            <Choice legend="It" name=format!("{}-acts", side.code()) choices=all_or_not_asked()
                chosen=Signal::derive(move || device.get().and_then(|d| d.acts.value))
                choose=acts/>
        </When>
    }
}

#[component]
fn FineRide() -> impl IntoView {
    let desk = Desk::here();
    let value = memo(move || {
        desk.rider.with(|rider| {
            rider
                .fine_ride_presses
                .value
                .map_or_else(String::new, |n| n.to_string())
        })
    });
    view! {
        <label class="field">
            <span>"Presses in all during a ride that was fine, as remembered"</span>
            <input type="number" inputmode="numeric" min="0" max="20000" step="1"
                prop:value=value
                on:change:target=move |ev| {
                    let value = ev.target().value().trim().parse().ok();
                    desk.commit(RiderEdit::FineRidePresses(desk.answer(value)));
                }/>
        </label>
    }
}

/// What no question asked, as the rider says it.
#[component]
pub fn OwnWords() -> impl IntoView {
    let desk = Desk::here();
    let words = memo(move || desk.rider.with(|r| r.own_words.as_str().to_owned()));
    let role = Workspace::here().role;
    let locked = memo(move || {
        !desk
            .rider
            .with(|rider| rider.lets_change_own_words(role.get()))
    });
    view! {
        <section class="question" aria-labelledby="own-words">
            <h2 id="own-words">"In the rider's own words"</h2>
            <p class="quiet" id="own-words-about">
                "What hurts, what confuses, what must stay as it is. It is printed on the sheet."
            </p>
            {view_of(move || locked.get().then(|| view! {
                <p>"Only the rider changes these words. Write a comment under Review instead."</p>
            }))}
            <textarea class="own-words" rows="4" readonly=locked maxlength=Text::LIMIT.to_string()
                aria-labelledby="own-words" aria-describedby="own-words-about" prop:value=words
                on:change:target=move |ev| {
                    desk.commit(RiderEdit::OwnWords(Text::new(&ev.target().value())));
                }></textarea>
        </section>
    }
}
