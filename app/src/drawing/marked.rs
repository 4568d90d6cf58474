//! The cockpit in one layout, some of its buttons marked.

use leptos::prelude::*;
use leverwright_core::cockpit::{Bike, ButtonId, Ease};
use leverwright_core::drawing::{BALLOON, ButtonMark, Look, Owner, Picture, Shape, Sheet};
use leverwright_core::layout::Layout;

use super::cockpit::reach_fill;
use super::patterns::Patterns;

/// Units across: below what has slots, for several stand side by side.
const WIDTH: f64 = 560.0;

/// From the middle of a marked balloon to its corners, units.
const CORNER: f64 = BALLOON + 5.0;

/// The drawing with balloons. A marked button is hatched, and its balloon is a
/// filled diamond.
#[component]
pub fn MarkedCockpit<'a>(
    bike: &'a Bike,
    layout: &'a Layout,
    /// The buttons that are marked.
    marked: &'a [ButtonId],
    /// A name of its own on the page.
    name: String,
    /// What it shows, for a screen reader.
    label: String,
) -> impl IntoView + use<> {
    let picture = Picture::of(bike, Sheet::for_width(WIDTH));
    let runs = picture.shapes.chunk_by(|a, b| a.owner == b.owner);
    let art = runs.map(|run| part(run, bike, layout)).collect_view();
    let is_marked = |mark: &ButtonMark| marked.contains(&mark.button);
    let hatched = picture.buttons.iter().filter(|mark| is_marked(mark));
    let hatched = hatched.map(|mark| {
        let fill = reach_fill(&name, Ease::Stretch);
        view! { <path class="marked-face" d=mark.face.clone() fill=fill></path> }
    });
    let hatched = hatched.collect_view();
    let balloons = picture.buttons.iter();
    let balloons = balloons
        .map(|mark| balloon(mark, is_marked(mark)))
        .collect_view();
    view! {
        <svg class="cockpit narrow marked" viewBox=picture.view_box() role="img" aria-label=label>
            <Patterns prefix=name/>
            <g aria-hidden="true">{art}{hatched}{balloons}</g>
        </svg>
    }
}

fn part(run: &[Shape], bike: &Bike, layout: &Layout) -> impl IntoView + use<> {
    let class = match run[0].owner {
        Some(Owner::Button(id)) => match Look::of(bike, layout, id) {
            Some(look) if look.live => format!("button live {}", look.standing.class()),
            Some(look) => format!("button blank {}", look.standing.class()),
            None => "button".into(),
        },
        _ => String::new(),
    };
    let paths = run.iter().map(|shape| {
        let class = format!("{} {}", shape.ink.class(), shape.tone.class());
        view! { <path class=class d=shape.d.clone()></path> }
    });
    view! { <g class=class>{paths.collect_view()}</g> }
}

fn balloon(mark: &ButtonMark, marked: bool) -> impl IntoView + use<> {
    let points: Vec<String> = (mark.leader.iter())
        .map(|point| format!("{:.1},{:.1}", point.x, point.y))
        .collect();
    let (x, y) = (mark.balloon.x, mark.balloon.y);
    let shape = match marked {
        true => {
            let (top, left) = (y - CORNER, x - CORNER);
            let d = format!("M{x:.1} {top:.1}L{:.1} {y:.1}L{x:.1} {:.1}L{left:.1} {y:.1}Z", x + CORNER, y + CORNER);
            view! { <path class="balloon" d=d></path> }.into_any()
        }
        false => view! {
            <circle class="balloon" cx=format!("{x:.1}") cy=format!("{y:.1}") r=BALLOON.to_string()></circle>
        }
        .into_any(),
    };
    let class = if marked { "marked-mark" } else { "plain-mark" };
    view! {
        <g class=class>
            <polyline class="leader-line" points=points.join(" ")></polyline>
            {shape}
            <text class="balloon-number" x=format!("{x:.1}") y=format!("{y:.1}")>{mark.number}</text>
        </g>
    }
}
