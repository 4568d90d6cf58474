//! The rider's own cockpit, pressed by touch on the drawing.

use leptos::ev::{self, PointerEvent};
use leptos::prelude::*;
use leverwright_core::cockpit::{ButtonId, ControlId};
use leverwright_core::drawing::{Look, Margin, Owner, Picture, Sheet};
use leverwright_core::finding::Severity;
use leverwright_core::layout::Layout;
use leverwright_core::ordered::SmallMap;
use leverwright_core::plan::Plan;
use leverwright_core::practice::Switch;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::desk::{Mode, PracticeDesk};
use crate::drawing::{ButtonView, Cockpit as Drawing, Touch};
use crate::erase::memo;

/// Widest and narrowest picture, units.
const WIDEST: f64 = 640.0;
const NARROWEST: f64 = 320.0;

/// What pointers press: which pointer, what.
type Pointers = StoredValue<Vec<(i32, Switch)>>;

/// The drawing; only what is in use, larger, where the other side has nothing.
#[component]
pub fn Cockpit(one_side: bool) -> impl IntoView {
    let desk = PracticeDesk::here();
    let pointers: Pointers = StoredValue::new(Vec::new());
    let picture = memo(move || desk.workspace.plan.get().map(|plan| picture(desk, &plan)));
    let buttons = memo(move || button_views(desk));
    let lit = memo(move || lit_blades(desk));
    let blades = desk.plan().map(|plan| levers(&plan)).unwrap_or_default();
    let blades = StoredValue::new(blades);
    let up = window_event_listener(ev::pointerup, move |event| {
        pointer_up(desk, pointers, &event)
    });
    let lost = window_event_listener(ev::pointercancel, move |event| {
        pointer_up(desk, pointers, &event)
    });
    on_cleanup(move || {
        up.remove();
        lost.remove();
    });
    view! {
        <div class="practice-cockpit" class:close=one_side
            on:pointerdown=move |event| pointer_down(desk, pointers, &event)>
            {move || picture.get().map(|picture| view! {
                <Drawing name="practice-cockpit" own_slots=true numbers_on_buttons=one_side label="The cockpit" buttons lit
                    blades=blades.get_value() picture=Signal::stored(picture)/>
            })}
        </div>
    }
}

fn picture(desk: PracticeDesk, plan: &Plan) -> Picture {
    let Some(layout) = layout(desk, plan) else {
        return Picture::of(&plan.bike, sheet(WIDEST));
    };
    let width = window().inner_width().ok().and_then(|width| width.as_f64());
    let width = width.unwrap_or(WIDEST).clamp(NARROWEST, WIDEST);
    if Switch::one_side(&plan.bike, layout).is_none() {
        return Picture::of(&plan.bike, sheet(width));
    }
    let whole = Picture::of(&plan.bike, sheet(WIDEST));
    let live = Switch::live(&plan.bike, layout).into_iter();
    let owners: Vec<Owner> = live.map(Switch::owner).collect();
    whole.around(&owners)
}

const fn sheet(width: f64) -> Sheet {
    Sheet {
        width,
        margin: Margin::Balloons,
    }
}

fn layout(desk: PracticeDesk, plan: &Plan) -> Option<&Layout> {
    let id = desk.layout_of(plan);
    plan.layouts.iter().find(|layout| layout.id == id)
}

fn button_views(desk: PracticeDesk) -> SmallMap<ButtonId, ButtonView> {
    let Some(plan) = desk.workspace.plan.get() else {
        return SmallMap::new();
    };
    let (lit, down) = desk
        .shown
        .with(|shown| (shown.lit.clone(), shown.down.clone()));
    let Some(layout) = layout(desk, &plan) else {
        return SmallMap::new();
    };
    let views = plan
        .bike
        .buttons()
        .into_iter()
        .filter_map(|(id, control, _)| {
            let switch = Switch::Button(id);
            let touch = match (down.contains(&switch), lit.contains(&switch)) {
                (true, _) => Touch::Down,
                (false, true) => Touch::Wanted,
                _ => Touch::Rest,
            };
            let view = ButtonView {
                look: Look::of(&plan.bike, layout, id)?,
                label: control.place_of(id.part),
                reach: None,
                lit: None,
                touch,
            };
            Some((id, view))
        });
    views.collect()
}

fn levers(plan: &Plan) -> Vec<ControlId> {
    let all = Switch::all(&plan.bike).into_iter();
    all.filter_map(|switch| match switch {
        Switch::Brake(id) => Some(id),
        Switch::Button(_) => None,
    })
    .collect()
}

/// Blades that are wanted or pulled.
fn lit_blades(desk: PracticeDesk) -> Vec<(Owner, Severity)> {
    desk.shown.with(|shown| {
        let switches = shown.lit.iter().chain(&shown.down);
        switches
            .filter_map(|switch| match switch {
                Switch::Brake(id) => Some((Owner::Blade(*id), Severity::GoodToKnow)),
                Switch::Button(_) => None,
            })
            .collect()
    })
}

/// What lies under a pointer.
fn switch_at(desk: PracticeDesk, event: &PointerEvent) -> Option<Switch> {
    let target = event.target()?.dyn_into::<Element>().ok()?;
    let element = target
        .closest("[data-button], [data-brake]")
        .ok()
        .flatten()?;
    let plan = desk.plan()?;
    let key = match element.get_attribute("data-button") {
        Some(id) => format!("button:{id}"),
        None => format!("brake:{}", element.get_attribute("data-brake")?),
    };
    Switch::find(&plan.bike, &key)
}

fn pointer_down(desk: PracticeDesk, pointers: Pointers, event: &PointerEvent) {
    if desk.mode.get_untracked() != Mode::Riding {
        return;
    }
    if let Some(switch) = switch_at(desk, event) {
        // The keys go on to be heard where they were.
        event.prevent_default();
        pointers.update_value(|all| all.push((event.pointer_id(), switch)));
        desk.press(switch);
    }
}

fn pointer_up(desk: PracticeDesk, pointers: Pointers, event: &PointerEvent) {
    let mut ended = Vec::new();
    pointers.update_value(|all| {
        ended = all
            .iter()
            .filter(|(id, _)| *id == event.pointer_id())
            .copied()
            .collect();
        all.retain(|(id, _)| *id != event.pointer_id());
    });
    for (_, switch) in ended {
        desk.let_go(switch);
    }
}
