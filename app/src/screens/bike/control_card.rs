//! One control: where it sits, how it is joined, its buttons and its blade.

use crate::erase::{When, act, flag, memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::parts;
use leverwright_core::cockpit::{ButtonPart, ControlId, Link, UnusedPort, Zone};
use leverwright_core::edit::BikeEdit;
use leverwright_core::spot::Spot;

use super::Stand;
use super::blade::BladeSection;
use super::button_row::ButtonRow;
use crate::widgets::{Select, Tick};

/// One control, folded until asked for.
#[component]
pub fn ControlCard(id: ControlId) -> impl IntoView {
    let stand = Stand::here();
    let place = memo(move || stand.control(id, |c| c.place()).unwrap_or_default());
    let state = memo(move || {
        stand
            .control(id, |c| {
                let buttons = match c.buttons.len() {
                    0 => "no buttons".to_owned(),
                    1 => "1 button".to_owned(),
                    n => format!("{n} buttons"),
                };
                let blade = match c.blade {
                    Some(blade) if blade.fitted => ", brake blade",
                    Some(_) => ", blade removed",
                    None => "",
                };
                let plugged = if c.connected { "" } else { ", unplugged" };
                format!("{buttons}{blade}{plugged}")
            })
            .unwrap_or_default()
    });
    let parts = memo(move || {
        stand
            .control(id, |c| c.buttons.iter().map(|b| b.part).collect::<Vec<_>>())
            .unwrap_or_default()
    });
    let has_blade = memo(move || stand.control(id, |c| c.blade.is_some()).unwrap_or(false));
    view! {
        <details class="control-card">
            <summary id={Spot::Control(id).key()}>
                <span class="control-place">{place}</span>
                <span class="quiet">{text(move || format!(" · {}", state.get()))}</span>
            </summary>
            <Joining id/>
            <When holds={flag(move || parts.with(|parts| parts.contains(&ButtonPart::Far)))}>
                <p class="quiet">"Near and far are counted from the hand that rides beside it."</p>
            </When>
            <For each=move || parts.get() key=|part: &ButtonPart| *part let:part>
                <ButtonRow id={leverwright_core::cockpit::ButtonId { control: id, part }}/>
            </For>
            <When holds={flag(move || has_blade.get())}>
                <BladeSection id/>
            </When>
            <div class="row">
                <button on:click={act(move || stand.commit(BikeEdit::Mirror(id)))}>
                    {text(move || format!("Put the {} on the other side", place.get()))}
                </button>
                <button on:click={act(move || stand.commit(BikeEdit::Remove(id)))}>
                    {text(move || format!("Remove the {}", place.get()))}
                </button>
            </div>
        </details>
    }
}

/// Zone, link, plug and port.
#[component]
fn Joining(id: ControlId) -> impl IntoView {
    let stand = Stand::here();
    let zones: Memo<Vec<(Zone, String)>> = memo(move || {
        stand
            .read(|bike| {
                let control = bike.control(id)?;
                let zones = parts::zones_for(bike.bar.kind, control.kind);
                Some(zones.iter().map(|z| (*z, z.words().to_owned())).collect())
            })
            .flatten()
            .unwrap_or_default()
    });
    view! {
        <div class="fields">
            <Select label="Where on the bar" choices=zones
                chosen={memo(move || stand.control(id, |c| c.zone))}
                set={move |zone: Zone| stand.commit(BikeEdit::MoveTo(id, zone))}/>
            <Select label="How it is joined" choices={all::<Link>()}
                chosen={memo(move || stand.control(id, |c| c.link))}
                set={move |link: Link| stand.commit(BikeEdit::Link(id, link))}/>
            <Select label="Its unused port" choices={all::<UnusedPort>()}
                chosen={memo(move || stand.control(id, |c| c.unused_port))}
                set={move |port: UnusedPort| stand.commit(BikeEdit::UnusedPort(id, port))}/>
            <Tick label="Plugged in or paired"
                on={memo(move || stand.control(id, |c| c.connected).unwrap_or(false))}
                set={move |on: bool| stand.commit(BikeEdit::Connect(id, on))}/>
        </div>
    }
}

/// Every item of a vocabulary with its words.
pub fn all<T: Vocabulary + Send + Sync>() -> Signal<Vec<(T, String)>> {
    let items: Vec<(T, String)> = T::ALL
        .iter()
        .map(|item| (*item, item.words().to_owned()))
        .collect();
    Signal::stored(items)
}
