//! The cockpit beside the text: what is read about lights up on it, and what
//! differs between two revisions is marked.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::{BALLOON, ButtonMark, Owner, Picture, Sheet};
use leverwright_core::finding::{Place, Severity};
use leverwright_core::lights::Lights;
use leverwright_core::ordered::{SmallMap, SmallSet};
use leverwright_core::plan::Plan;
use leverwright_core::record::Pin;
use leverwright_core::slot::Slot;

use super::desk::Desk;
use crate::drawing::{ButtonView, Cockpit, Touch};
use crate::erase::{memo, view_of};
use crate::words::capitalised;

/// Units across: balloons only, the table says the rest.
const WIDTH: f64 = 460.0;

/// The drawing with what each button does, beside the text on wide screens.
#[component]
pub fn Drawn() -> impl IntoView {
    let desk = Desk::here();
    let bike = memo(move || desk.workspace.plan.get().map(|plan| plan.bike.clone()));
    let lights = memo(move || {
        let places = desk.workspace.lit.get();
        desk.of_plan(|plan| Lights::of(plan, &places))
    });
    let buttons = memo(move || {
        let lights = lights.get();
        desk.of_plan(|plan| views(plan, &lights))
    });
    let lit = memo(move || {
        let lights = lights.get();
        let controls = lights.controls.iter();
        let owners = controls.flat_map(|id| [Owner::Control(*id), Owner::Blade(*id)]);
        let work = lights.thumb_work.iter().map(|at| Owner::ThumbWork(*at));
        owners
            .chain(work)
            .map(|owner| (owner, Severity::Check))
            .collect::<Vec<_>>()
    });
    let comments = desk.read(|page| page.comments.clone());
    let slots = view_of(move || {
        let slots = desk.of_plan(Slot::all).into_iter().map(|slot| {
            let pin = Pin::Place(Place::Button(slot.button));
            let said = match comments.with(|all| all.iter().filter(|c| c.on == pin).count()) {
                0 => String::new(),
                1 => " (1 comment)".to_owned(),
                n => format!(" ({n} comments)"),
            };
            let words = format!("{}: {}{said}", capitalised(&slot.place), slot.look.words());
            view! { <li><span class="balloon-number">{slot.number}</span>" "{words}</li> }
        });
        slots.collect_view()
    });
    view! {
        <aside class="review-drawn" aria-label="The cockpit">
            {view_of(move || bike.get().map(|bike| {
                let picture = Picture::of(&bike, Sheet::for_width(WIDTH));
                view! {
                    <Cockpit name="review-cockpit"
                        label="The cockpit with the balloon numbers of the list below"
                        picture=Signal::stored(picture) buttons lit/>
                }
            }))}
            <ul class="review-slots">{slots}</ul>
        </aside>
    }
}

fn views(plan: &Plan, lights: &Lights) -> SmallMap<ButtonId, ButtonView> {
    let slots = Slot::all(plan).into_iter();
    let views = slots.map(|slot| {
        let lit = lights.buttons.contains(&slot.button);
        let view = ButtonView {
            label: slot.place,
            look: slot.look,
            reach: None,
            lit: lit.then_some(Severity::Check),
            touch: Touch::Rest,
        };
        (slot.button, view)
    });
    views.collect()
}

/// The cockpit of a plan with some buttons marked: a filled square in place of
/// the circle.
#[component]
pub fn MarkedCockpit(
    plan: Plan,
    marked: SmallSet<ButtonId>,
    /// What it shows.
    #[prop(into)]
    label: String,
) -> impl IntoView {
    let picture = Picture::of(&plan.bike, Sheet::for_width(WIDTH));
    let shapes = picture.shapes.iter().map(|shape| {
        let class = format!("{} {}", shape.ink.class(), shape.tone.class());
        view! { <path class=class d=shape.d.clone()></path> }
    });
    let balloons = picture
        .buttons
        .iter()
        .map(|mark| balloon(mark, marked.contains(&mark.button)))
        .collect_view();
    view! {
        <svg class="cockpit narrow review-marked" viewBox=picture.view_box() role="img" aria-label=label>
            <g aria-hidden="true">{shapes.collect_view()}{balloons}</g>
        </svg>
    }
}

fn balloon(mark: &ButtonMark, marked: bool) -> impl IntoView + use<> {
    let points = mark.leader.iter().map(|p| format!("{:.1},{:.1}", p.x, p.y));
    let points: Vec<String> = points.collect();
    let (x, y) = (mark.balloon.x, mark.balloon.y);
    // A square as wide as the circle, a little larger so that it is seen first.
    let side = BALLOON * 2.2;
    let outline = match marked {
        true => format!(
            "M{:.1} {:.1}h{side:.1}v{side:.1}h-{side:.1}z",
            x - side / 2.0,
            y - side / 2.0
        ),
        false => format!(
            "M{:.1} {y:.1}a{BALLOON} {BALLOON} 0 1 0 {1:.1} 0a{BALLOON} {BALLOON} 0 1 0 -{1:.1} 0",
            x - BALLOON,
            BALLOON * 2.0
        ),
    };
    let class = if marked {
        "review-balloon differs"
    } else {
        "review-balloon"
    };
    view! {
        <polyline class="leader-line used-leader" points=points.join(" ")></polyline>
        <g class=class>
            <path d=outline></path>
            <text x=format!("{x:.1}") y=format!("{:.1}", y + 4.5)>{mark.number}</text>
        </g>
    }
}
