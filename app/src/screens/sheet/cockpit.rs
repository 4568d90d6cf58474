//! The drawing as printed: black on white, balloons only; the table below says
//! the rest.

use leptos::prelude::*;
use leverwright_core::cockpit::Bike;
use leverwright_core::drawing::{BALLOON, ButtonMark, Margin, Picture, Sheet};

/// Width of the picture in its own units: narrow, so that balloons come out
/// large enough to be read at arm’s length.
const WIDTH: f64 = 440.0;

/// The cockpit with its balloons.
#[component]
pub fn PrintedCockpit(bike: Bike) -> impl IntoView {
    let sheet = Sheet {
        width: WIDTH,
        margin: Margin::Balloons,
    };
    let picture = Picture::of(&bike, sheet);
    let shapes = picture
        .shapes
        .iter()
        .map(|shape| {
            let class = format!("{} {}", shape.ink.class(), shape.tone.class());
            view! { <path class=class d=shape.d.clone()></path> }
        })
        .collect_view();
    let marks = picture.buttons.iter().map(mark).collect_view();
    view! {
        <svg class="sheet-drawing" viewBox=picture.view_box() role="img"
            aria-label="Drawing of the cockpit with the balloon numbers of the table below">
            {shapes}
            {marks}
        </svg>
    }
}

/// Leader line, dot on the button, balloon.
fn mark(mark: &ButtonMark) -> impl IntoView + use<> {
    let points: Vec<String> = mark
        .leader
        .iter()
        .map(|point| format!("{:.1},{:.1}", point.x, point.y))
        .collect();
    let (x, y) = (mark.balloon.x, mark.balloon.y);
    view! {
        <polyline class="leader" points=points.join(" ")></polyline>
        <circle class="dot" cx=mark.anchor.x cy=mark.anchor.y r="2.2"></circle>
        <circle class="ring" cx=x cy=y r=BALLOON></circle>
        <text class="number" x=x y=y dy="0.35em">{mark.number}</text>
    }
}
