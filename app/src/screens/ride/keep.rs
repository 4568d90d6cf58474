//! What is kept of the rides: with the plan, as the ride that was fine, as files.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::edit::{Edit, RideEdit};
use leverwright_core::plan::Plan;
use leverwright_core::ride::export;
use leverwright_core::ride::kept::{KnownRide, Remembered};
use leverwright_core::ride::study::Outcome;
use leverwright_core::text::Text;

use super::desk::{Done, RideDesk};
use crate::erase::view_of;
use crate::storage::download;
use crate::workspace::Workspace;

/// The acts, and what the plan keeps already.
#[component]
pub fn Keep(done: Arc<Done>) -> impl IntoView {
    let (workspace, desk) = (Workspace::here(), RideDesk::here());
    let print = move |_| {
        // A browser without printing leaves the page as it is.
        let _ = window().print();
    };
    let [first, second, third, fourth] = [(); 4].map(|()| Arc::clone(&done));
    view! {
        <h3>"Keep and hand on"</h3>
        <div class="acts">
            <button type="button" class="main" on:click=print>"Print the load page"</button>
            <button type="button" on:click=move |_| keep(workspace, &first)>"Keep with the plan"</button>
            <button type="button" on:click=move |_| fine(workspace, desk, &second)>"This ride was fine"</button>
            <button type="button" on:click=move |_| {
                save(workspace, "ride-summary.csv", &export::summary(&third.outcomes));
            }>"Export the summary"</button>
            <button type="button" on:click=move |_| {
                if let Some(outcome) = shown(desk, &fourth) {
                    let events = export::events(outcome.subject.plan(), &outcome.ride);
                    save(workspace, "ride-events.csv", &events);
                }
            }>"Export the events shown"</button>
        </div>
        {view_of(move || workspace.plan.get().map(|plan| kept(workspace, &plan)))}
    }
}

fn shown(desk: RideDesk, done: &Done) -> Option<&Outcome> {
    done.outcome(desk.shown.get_untracked(), desk.day.get_untracked())
}

fn save(workspace: Workspace, name: &str, text: &str) {
    if download(name, "text/csv", text).is_err() {
        workspace.refuse("The browser did not make the file.");
    }
}

/// Keeps what belongs to the plan as it stands.
fn keep(workspace: Workspace, done: &Done) {
    let Some(plan) = workspace.plan.get_untracked() else {
        return;
    };
    let mut kept = 0;
    for two in done.outcomes.chunk_by(|a, b| a.subject == b.subject) {
        if let Some(ride) = Remembered::of(&plan, two) {
            kept += usize::from(workspace.commit(Edit::Ride(RideEdit::Remember(ride))));
        }
    }
    match kept {
        0 => workspace.tell(
            "Nothing to keep: only rides to the end, of the plan's own layouts as they are now, are kept. Ride one of them to the end first.",
        ),
        _ => workspace.say("Kept with the plan."),
    }
}

fn fine(workspace: Workspace, desk: RideDesk, done: &Done) {
    let Some(outcome) = shown(desk, done) else {
        return;
    };
    let name = Text::new(&format!("{}, {}", done.road.name, outcome.subject.name));
    let known = KnownRide::of(name, outcome);
    if workspace.commit(Edit::Ride(RideEdit::Known(Some(known)))) {
        workspace.say("Noted as the ride that was fine. Other rides are compared with it.");
    }
}

fn kept(workspace: Workspace, plan: &Plan) -> impl IntoView + use<> {
    let known = plan.rides.known.as_ref().map(|known| {
        let said = format!("The ride that was fine: {}.", known.name);
        view! {
            <p>{said}" "<button type="button" on:click=move |_| {
                workspace.commit(Edit::Ride(RideEdit::Known(None)));
            }>"Forget the ride that was fine"</button></p>
        }
    });
    let remembered = &plan.rides.remembered;
    let items = remembered
        .iter()
        .map(|ride| remembered_ride(plan, ride))
        .collect_view();
    let list = (!remembered.is_empty()).then(|| {
        view! {
            <h4>"Kept with the plan"</h4>
            <ul class="kept-rides">{items}</ul>
            <button type="button" on:click=move |_| {
                workspace.commit(Edit::Ride(RideEdit::Forget));
            }>"Forget what was kept"</button>
        }
    });
    view! { {known}{list} }
}

fn remembered_ride(plan: &Plan, ride: &Remembered) -> impl IntoView + use<> {
    let layout = plan.layouts.iter().find(|layout| layout.id == ride.layout);
    let name = layout
        .map(|layout| layout.name.to_string())
        .unwrap_or_default();
    let words = format!(
        "{name}, {}: {} presses in {} minutes",
        ride.road,
        ride.presses(),
        ride.minutes
    );
    let stale = ride.is_stale(plan).then(|| {
        view! {
            " "<strong class="ride-stale">"Out of date: the plan changed since."</strong>
        }
    });
    view! { <li>{words}{stale}</li> }
}
