//! Adds a control at its usual place.

use crate::erase::{act, memo};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::parts;
use leverwright_core::cockpit::{ControlKind, Zone};
use leverwright_core::edit::BikeEdit;
use leverwright_core::rider::Side;

use super::Stand;
use crate::widgets::Select;

/// Chooses kind, zone and side; only what fits the bar is offered.
#[component]
pub fn AddControl() -> impl IntoView {
    let stand = Stand::here();
    let offers = memo(move || {
        stand
            .read(|bike| {
                ControlKind::ALL
                    .iter()
                    .flat_map(|kind| {
                        parts::zones_for(bike.bar.kind, *kind)
                            .iter()
                            .map(move |zone| ((*kind, *zone), format!("{kind}, {zone}")))
                    })
                    .collect::<Vec<((ControlKind, Zone), String)>>()
            })
            .unwrap_or_default()
    });
    let wanted = RwSignal::new(None::<(ControlKind, Zone)>);
    let chosen = memo(move || {
        wanted
            .get()
            .or_else(|| offers.with(|o| o.first().map(|o| o.0)))
    });
    let add = move |side| {
        if let Some((kind, zone)) = chosen.get_untracked() {
            stand.commit(BikeEdit::Add(kind, side, zone));
        }
    };
    view! {
        <div class="add-control">
            <Select label="Add a control" choices=offers chosen
                set={move |what: (ControlKind, Zone)| wanted.set(Some(what))}/>
            <button on:click={act(move || add(Side::Left))}>"Add on the left"</button>
            <button on:click={act(move || add(Side::Right))}>"Add on the right"</button>
        </div>
    }
}
