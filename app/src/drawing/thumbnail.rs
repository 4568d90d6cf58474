//! A small picture of a cockpit, for lists.

use leptos::prelude::*;
use leverwright_core::cockpit::Bike;
use leverwright_core::drawing::Thumbnail;

/// Room for a small picture, CSS pixels.
const SIZE: (f64, f64) = (200.0, 110.0);

/// The cockpit of a bike, beside words that say the same.
#[component]
pub fn ThumbnailView(bike: Bike) -> impl IntoView {
    let picture = Thumbnail::of(&bike, SIZE.0, SIZE.1);
    let shapes = picture
        .shapes
        .iter()
        .map(|shape| {
            let class = format!("{} {}", shape.ink.class(), shape.tone.class());
            view! { <path class=class d=shape.d.clone()></path> }
        })
        .collect_view();
    view! {
        <svg class="cockpit thumbnail" viewBox=picture.view_box() aria-hidden="true">{shapes}</svg>
    }
}
