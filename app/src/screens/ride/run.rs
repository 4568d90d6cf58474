//! What is ridden, and riding it.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::layout::LayoutId;
use leverwright_core::ride::study::{Pick, Subject};
use leverwright_core::shift_plan::ShiftPlanKind;

use super::desk::RideDesk;
use crate::erase::{flag, view_of};
use crate::widgets::Tick;
use crate::workspace::Workspace;

/// Layouts and shift plans to compare, and the button that rides them.
#[component]
pub fn Run() -> impl IntoView {
    let workspace = Workspace::here();
    let layouts = Memo::new(move |_| {
        let plan = workspace.plan.get();
        let named = |plan: &leverwright_core::plan::Plan| {
            let layouts = plan.layouts.iter();
            layouts
                .map(|layout| (layout.id, layout.name.to_string()))
                .collect::<Vec<_>>()
        };
        plan.map_or_else(Vec::new, |plan| named(&plan))
    });
    let kinds = Memo::new(move |_| {
        let plan = workspace.plan.get();
        let goes = |kind: &ShiftPlanKind| {
            plan.as_ref()
                .is_some_and(|plan| Subject::under(plan, *kind).is_ok())
        };
        ShiftPlanKind::ALL
            .iter()
            .copied()
            .filter(goes)
            .collect::<Vec<_>>()
    });
    view! {
        <section class="ride-run ride-part" aria-labelledby="ride-run">
            <h2 id="ride-run">"What to ride"</h2>
            <p class="quiet">"Press “Ride” to ride the layout you work on. To compare, tick up to four first."</p>
            <div class="picks">
                <fieldset>
                    <legend>"Layouts"</legend>
                    {view_of(move || layouts.get().into_iter()
                        .map(|(id, name)| view! { <PickLayout id name/> }).collect_view())}
                </fieldset>
                <fieldset>
                    <legend>"The layout you work on, shifted as"</legend>
                    {view_of(move || kinds.get().into_iter()
                        .map(|kind| pick(Pick::Under(kind), kind.words().to_owned())).collect_view())}
                </fieldset>
            </div>
            <Ride/>
        </section>
    }
}

#[component]
fn PickLayout(id: LayoutId, name: String) -> impl IntoView {
    pick(Pick::Layout(id), name)
}

fn pick(pick: Pick, label: String) -> impl IntoView {
    let picks = RideDesk::here().picks;
    let on = flag(move || picks.with(|picks| picks.contains(&pick)));
    let set = move |on: bool| {
        picks.update(|picks| {
            picks.retain(|other| *other != pick);
            if on {
                picks.push(pick);
            }
        });
    };
    view! { <Tick label on set/> }
}

#[component]
fn Ride() -> impl IntoView {
    let (desk, workspace) = (RideDesk::here(), Workspace::here());
    let is_running = Memo::new(move |_| desk.running.get().is_some());
    let percent = move || (desk.running.get().unwrap_or(0.0) * 100.0).floor();
    // One button, so that the focus stays where it is.
    let press = move |_| match is_running.get_untracked() {
        true => desk.stop(workspace),
        false => desk.start(workspace),
    };
    let label = move || if is_running.get() { "Stop" } else { "Ride" };
    view! {
        <div class="acts">
            <button type="button" class="main" on:click=press>{label}</button>
            {view_of(move || is_running.get().then(|| view! {
                <div class="ride-progress">
                    <span class="track" aria-hidden="true">
                        <span class="fill" style:width=move || format!("{}%", percent())></span>
                    </span>
                    <span>{move || format!("{} % ridden", percent())}</span>
                </div>
            }))}
        </div>
    }
}
