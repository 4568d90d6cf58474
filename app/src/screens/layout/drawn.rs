//! The picture itself, and what can be touched on it.

use leptos::prelude::*;
use leverwright_core::drawing::icons::Icon;
use leverwright_core::drawing::pen::Owner;
use leverwright_core::drawing::picture::{BALLOON, ButtonMark, Picture, Shape};

use super::bench::{Answer, Bench};
use super::function::IconMark;
use super::reach::{reach_class, reach_class_of_blade};
use crate::gesture::{Load, Spot};

/// The picture of the cockpit. Slots say in words all that it shows.
#[component]
pub fn Drawn() -> impl IntoView {
    let bench = Bench::here();
    move || {
        let picture = bench.picture.get()?;
        let bike = bench.plan(|plan| plan.bike.name.to_string());
        let label = bike.map(|bike| format!("{bike}, seen from the rider's seat"));
        Some(view! {
            <div class="drawn stays">
                <svg class="drawing" role="img" aria-label=label viewBox=picture.view_box()>
                    <Hatches/>
                    {art(&picture)}
                    {leaders(&picture)}
                    {picture.buttons.iter().map(|mark| view! { <Mark mark=mark.clone()/> }).collect_view()}
                </svg>
            </div>
        })
    }
}

/// The hatches of reach: they differ in pattern, not in colour.
#[component]
fn Hatches() -> impl IntoView {
    let _ = Icon::Hand;
    let _ = IconMark;
    view! {
        <defs>
            <pattern id="hatch-stretch" width="6" height="6" patternUnits="userSpaceOnUse"
                patternTransform="rotate(45)">
                <path class="hatch-line" d="M0 3H6"></path>
            </pattern>
            <pattern id="hatch-move" width="6" height="6" patternUnits="userSpaceOnUse">
                <circle class="hatch-dot" cx="3" cy="3" r="1.4"></circle>
            </pattern>
        </defs>
    }
}

fn art(picture: &Picture) -> impl IntoView + use<> {
    let shapes = picture.shapes.iter().cloned();
    shapes.map(|shape| view! { <Part shape/> }).collect_view()
}

#[component]
fn Part(shape: Shape) -> impl IntoView {
    let bench = Bench::here();
    let class = format!("{} {}", shape.ink.class(), shape.tone.class());
    let (lit, reach) = match shape.owner {
        Some(Owner::Blade(control)) => (
            Some(Memo::new(move |_| {
                bench.lights.with(|lights| lights.controls.contains(&control))
            })),
            Some(Memo::new(move |_| reach_class_of_blade(bench, control))),
        ),
        Some(Owner::Control(control)) => (
            Some(Memo::new(move |_| {
                bench.lights.with(|lights| lights.controls.contains(&control))
            })),
            None,
        ),
        _ => (None, None),
    };
    let class = move || {
        let lit = lit.is_some_and(|lit| lit.get());
        let reach = reach.and_then(|reach| reach.get()).unwrap_or_default();
        format!("{class} {reach}{}", if lit { " lit" } else { "" })
    };
    view! { <path class=class d=shape.d></path> }
}

fn leaders(picture: &Picture) -> impl IntoView + use<> {
    let lines = picture.buttons.iter().map(|mark| {
        let points: Vec<String> = mark
            .leader
            .iter()
            .map(|point| format!("{:.1},{:.1}", point.x, point.y))
            .collect();
        view! { <polyline class="leader" points=points.join(" ")></polyline> }
    });
    lines.collect_view()
}

/// A button: its face, its balloon, and the area that is touched.
#[component]
fn Mark(mark: ButtonMark) -> impl IntoView {
    let bench = Bench::here();
    let id = mark.button;
    let here = Spot::Button(id);
    let load = Load::Button(id);
    let answer = Memo::new(move |_| bench.answer(id));
    let is_over = Memo::new(move |_| bench.over.get() == Some(here));
    let is_lit = Memo::new(move |_| bench.lights.with(|lights| lights.buttons.contains(&id)));
    let reach = Memo::new(move |_| reach_class(bench, id));
    let cell = mark.slot;
    let has_slots = bench.picture.with_untracked(|p| p.as_ref().is_some_and(|p| p.has_slots));
    let balloon_cell = (!has_slots).then(|| {
        view! {
            <rect class="hit" data-spot=here.key() data-load=load.key()
                x=cell.x0 y=cell.y0 width=cell.width() height=cell.height()></rect>
        }
    });
    view! {
        <g class="mark"
            class:lit=move || is_lit.get()
            class:over=move || is_over.get()
            class:takes=move || answer.get() == Some(Answer::Takes)
            class:carried=move || answer.get() == Some(Answer::Carried)
            class:refuses=move || matches!(answer.get(), Some(Answer::Refuses(_)))>
            <path class=move || format!("button-face {}", reach.get().unwrap_or_default())
                d=mark.face.clone()></path>
            <circle class="anchor" cx=mark.anchor.x cy=mark.anchor.y r="2.5"></circle>
            <circle class="balloon" cx=mark.balloon.x cy=mark.balloon.y r=BALLOON></circle>
            <text class="balloon-text" x=mark.balloon.x y=mark.balloon.y>{mark.number}</text>
            <path class="hit" data-spot=here.key() data-load=load.key() d=mark.hit.clone()></path>
            {balloon_cell}
        </g>
    }
}
