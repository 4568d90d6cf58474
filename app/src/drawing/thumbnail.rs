//! A small picture of a cockpit, for lists.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{Bike, ButtonId};
use leverwright_core::drawing::{Owner, Thumbnail};
use leverwright_core::finding::Severity;
use leverwright_core::ordered::SmallMap;

use super::cockpit::ButtonView;

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

/// A small picture that shows how the buttons stand: what is lit, taken or
/// carried.
#[component]
pub fn SmallDrawing(
    /// The geometry.
    picture: Thumbnail,
    /// What each button shows.
    #[prop(into)]
    buttons: Signal<SmallMap<ButtonId, ButtonView>>,
    /// What else a finding lights.
    #[prop(into)]
    lit: Signal<Vec<(Owner, Severity)>>,
) -> impl IntoView {
    let runs = picture.shapes.chunk_by(|a, b| a.owner == b.owner);
    let runs = runs.map(|run| {
        let owner = run[0].owner;
        let class = move || match owner {
            Some(Owner::Button(id)) => {
                let class = buttons.with(|all| all.get(&id).map(ButtonView::class));
                format!("button {}", class.unwrap_or_default())
            }
            Some(owner) => lit
                .with(|all| all.iter().find(|(o, _)| *o == owner).map(|(_, s)| *s))
                .map_or_else(|| "part".into(), |s| format!("part lit lit-{}", s.code())),
            None => String::new(),
        };
        let paths = run.iter().map(|shape| {
            let class = format!("{} {}", shape.ink.class(), shape.tone.class());
            view! { <path class=class d=shape.d.clone()></path> }
        });
        view! { <g class=class>{paths.collect_view()}</g> }
    });
    view! {
        <svg class="cockpit small" viewBox=picture.view_box()>{runs.collect_view()}</svg>
    }
}
