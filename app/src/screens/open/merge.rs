//! Two copies of a plan become one, part by part.

use leptos::prelude::*;
use leverwright_core::merge::{Choice, Merge, MergePart, Stand};
use leverwright_core::plan::Plan;
use leverwright_core::record::PartKey;
use std::sync::Arc;

use super::came::go_on;
use super::part::PartChoice;
use crate::arrivals::Arrivals;
use crate::erase::{memo, view_of};
use crate::route::Route;
use crate::storage::{Library, PlanId};
use crate::widgets::Select;
use crate::workspace::Workspace;

/// What somebody chose for each part.
pub type Chosen = RwSignal<Vec<(PartKey, Choice)>>;

/// The copy it goes into, what differs, and the act.
#[component]
pub fn MergeWith(theirs: Arc<Plan>, copies: Vec<(PlanId, Arc<Plan>)>) -> impl IntoView {
    let library = Library::here();
    let workspace = Workspace::here();
    let first = copies.first().map(|(id, _)| id.clone());
    let into = RwSignal::new(first);
    let names: Vec<(PlanId, String)> = copies
        .iter()
        .map(|(id, plan)| {
            (
                id.clone(),
                format!("{}, revision {}", plan.name, plan.revision),
            )
        })
        .collect();
    let several = names.len() > 1;
    let merge = memo(move || {
        // What is changed here meanwhile counts.
        workspace.plan.track();
        let mine = library.copy(&into.get()?)?;
        Some((mine.name.to_string(), Arc::new(Merge::of(&mine, &theirs))))
    });
    let set_into = move |id: PlanId| into.set(Some(id));
    view! {
        {several.then(|| view! {
            <Select label="Put together with" choices=Signal::stored(names.clone())
                chosen=Signal::derive(move || into.get()) set=set_into/>
        })}
        {view_of(move || {
            let (name, merge) = merge.get()?;
            let id = into.get_untracked()?;
            Some(view! { <Parts id name merge/> })
        })}
    }
}

/// The parts that differ, those to be decided on first.
#[component]
fn Parts(id: PlanId, name: String, merge: Arc<Merge>) -> impl IntoView {
    let chosen: Chosen = RwSignal::new(Vec::new());
    let (mine_newer, others): (Vec<MergePart>, Vec<MergePart>) = merge
        .changed()
        .cloned()
        .partition(|part| part.stand == Stand::MineNewer);
    let (asked, taken): (Vec<MergePart>, Vec<MergePart>) = others
        .into_iter()
        .partition(|part| part.stand == Stand::BothChanged);
    let count = asked.len() + taken.len();
    let said = merge.said(&name);
    let said = said.into_iter().map(|said| view! { <li>{said}</li> });
    let first = list(asked.into_iter().chain(taken), chosen);
    let stays = (!mine_newer.is_empty()).then(|| {
        let words = match mine_newer.len() {
            1 => "Newer in yours: 1 part stays as it is".to_owned(),
            n => format!("Newer in yours: {n} parts stay as they are"),
        };
        view! {
            <details class="mine-newer">
                <summary>{words}</summary>
                {list(mine_newer.into_iter(), chosen)}
            </details>
        }
    });
    view! {
        <h3>"What differs from yours"</h3>
        <ul class="merge-said">{said.collect_view()}</ul>
        {(count > 0).then_some(first)}
        {stays}
        <Act id name merge chosen/>
    }
}

fn list(parts: impl Iterator<Item = MergePart>, chosen: Chosen) -> impl IntoView {
    let parts = parts.map(|part| view! { <PartChoice part chosen/> });
    view! { <ul class="merge-parts">{parts.collect_view()}</ul> }
}

/// Makes one of the two.
#[component]
fn Act(id: PlanId, name: String, merge: Arc<Merge>, chosen: Chosen) -> impl IntoView {
    let (library, arrivals) = (Library::here(), Arrivals::here());
    let workspace = Workspace::here();
    if merge.is_idle() {
        let open = move |_| {
            if library.open(&id) {
                go_on(arrivals, Route::Layout);
            }
        };
        return view! {
            <div class="acts">
                <button type="button" class="main" on:click=open>"Go on with yours"</button>
            </div>
        }
        .into_any();
    }
    let put_together = move |_| {
        let made = merge.make(&chosen.get_untracked(), &workspace.desk());
        match made {
            Ok(plan) => {
                if library.take_over(&id, plan) {
                    go_on(arrivals, Route::Layout);
                    workspace.report(format!(
                        "“{name}” and the copy are put together. Undo takes it back."
                    ));
                }
            }
            Err(error) => workspace.refuse(&format!("The two were not put together. {error}")),
        }
    };
    view! {
        <div class="acts">
            <button type="button" class="main" on:click=put_together>"Put the two together"</button>
        </div>
    }
    .into_any()
}
