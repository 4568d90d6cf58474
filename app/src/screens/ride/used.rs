//! The cockpit, its buttons filled by how much they are pressed.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::{BALLOON, ButtonMark, Picture, Sheet};
use leverwright_core::ride::study::Outcome;
use leverwright_core::ride::used::Used;

use super::digits::patterns;

/// Units across: below what has slots.
const WIDTH: f64 = 620.0;

const NAME: &str = "ride-cockpit";

/// The drawing, and the counts beside it.
#[component]
pub fn UsedCockpit(outcome: Outcome) -> impl IntoView {
    let plan = outcome.subject.plan();
    let picture = Picture::of(&plan.bike, Sheet::for_width(WIDTH));
    let used = Used::of(&outcome.ride);
    let shapes = picture
        .shapes
        .iter()
        .map(|shape| {
            let class = format!("{} {}", shape.ink.class(), shape.tone.class());
            view! { <path class=class d=shape.d.clone()></path> }
        })
        .collect_view();
    let faces = picture
        .buttons
        .iter()
        .map(|mark| face(mark, &used))
        .collect_view();
    let balloons = picture
        .buttons
        .iter()
        .map(|mark| balloon(mark, &used))
        .collect_view();
    let counts = picture
        .buttons
        .iter()
        .map(|mark| {
            let presses = used.buttons.get(&mark.button).copied().unwrap_or(0);
            count(
                Some(mark.number),
                &plan.bike.place_of(mark.button),
                presses,
                "presses",
            )
        })
        .collect_view();
    let pulls = used
        .levers
        .iter()
        .map(|(lever, pulls)| {
            let place = plan.bike.control(*lever).map(|control| control.place());
            count(
                None,
                &format!("{}, brake", place.unwrap_or_default()),
                *pulls,
                "pulls",
            )
        })
        .collect_view();
    view! {
        <div class="ride-cockpit">
            <svg class="cockpit narrow" viewBox=picture.view_box() role="img"
                aria-label="The cockpit, each button filled by how much it is pressed">
                {patterns(NAME)}
                <g aria-hidden="true">{shapes}{faces}{balloons}</g>
            </svg>
            <div>
                <p class="quiet">"Solid: pressed most. Hatched: less. Dots: little. Plain: never. The counts are of one ride, with nothing varied:"</p>
                <ul class="used-list">{pulls}{counts}</ul>
            </div>
        </div>
    }
}

fn count(number: Option<usize>, place: &str, times: u32, what: &str) -> impl IntoView + use<> {
    let number = number
        .map(|number| format!("{number} "))
        .unwrap_or_default();
    view! {
        <li>
            <span><strong>{number}</strong>{place.to_owned()}</span>
            <span class="count">{format!("{times} {what}")}</span>
        </li>
    }
}

fn fill(button: ButtonId, used: &Used) -> Option<String> {
    let level = used.button(button)?;
    Some(format!("url(#{NAME}-{})", level.code()))
}

fn face(mark: &ButtonMark, used: &Used) -> impl IntoView + use<> {
    let fill = fill(mark.button, used).unwrap_or_else(|| "none".into());
    view! { <path class="used-face" d=mark.face.clone() fill=fill></path> }
}

fn balloon(mark: &ButtonMark, used: &Used) -> impl IntoView + use<> {
    let points: Vec<String> = mark
        .leader
        .iter()
        .map(|p| format!("{:.1},{:.1}", p.x, p.y))
        .collect();
    let (x, y) = (mark.balloon.x, mark.balloon.y);
    let is_used = used.buttons.get(&mark.button).is_some();
    view! {
        <polyline class="leader-line used-leader" points=points.join(" ")></polyline>
        <circle class="used-balloon" class:pressed=is_used
            cx=format!("{x:.1}") cy=format!("{y:.1}") r=BALLOON.to_string()></circle>
        <text class="used-number" class:pressed=is_used x=format!("{x:.1}") y=format!("{:.1}", y + 4.5)>
            {mark.number}
        </text>
    }
}
