//! The way to where something is noted.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::Bike;
use leverwright_core::spot::Spot;

use crate::focus::focus_field_soon;
use crate::route::Route;

/// A link to a field, with its screen unless that is the one shown.
#[component]
pub fn SpotLink(spot: Spot, bike: Bike) -> impl IntoView {
    let screen = spot.screen();
    let here = Route::now() == Route::of(screen);
    let words = if here {
        spot.words(&bike)
    } else {
        format!("{}: {}", screen.words(), spot.words(&bike))
    };
    // Within a screen the address may stay the same, and then nothing arrives.
    let lead = move |_| {
        if here {
            focus_field_soon(spot.key());
        }
    };
    view! { <a href=Route::href_of(spot) on:click=lead>{words}</a> }
}

/// A list of links, each to one field.
#[component]
pub fn SpotList(#[prop(into)] label: String, spots: Vec<Spot>, bike: Bike) -> impl IntoView {
    let links = spots
        .into_iter()
        .map(|spot| view! { <li><SpotLink spot bike=bike.clone()/></li> })
        .collect_view();
    view! {
        <div class="spots" role="group" aria-label=label.clone()>
            <p aria-hidden="true">{label.clone()}</p>
            <ul>{links}</ul>
        </div>
    }
}
