//! What people said about a button: the rider's marks, and comments pinned to it.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::finding::{Place, Role};
use leverwright_core::plan::Plan;
use leverwright_core::record::Pin;
use leverwright_core::review::{comments, marks};

use super::super::bench::Bench;
use crate::erase::{memo, view_of};

/// The words, where there are any.
#[component]
pub fn Said(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let said = memo(move || {
        // Until somebody says who sits here, only what everyone sees is shown.
        let role = bench.workspace.role.get().unwrap_or(Role::Shop);
        bench
            .plan(|plan| of_button(plan, id, role))
            .unwrap_or_default()
    });
    view_of(move || {
        let items = said
            .get()
            .into_iter()
            .map(|words| view! { <li>{words}</li> });
        let items = items.collect_view();
        (!said.with(Vec::is_empty)).then(|| {
            view! {
                <section aria-labelledby="menu-said">
                    <h3 id="menu-said">"What was said about it"</h3>
                    <ul>{items}</ul>
                </section>
            }
        })
    })
}

fn of_button(plan: &Plan, id: ButtonId, role: Role) -> Vec<String> {
    let marks = marks(plan).into_iter().filter(|mark| mark.button == id);
    let marks = marks.map(|mark| mark.words(plan));
    let pin = Pin::Place(Place::Button(id));
    let comments = comments(plan, role)
        .into_iter()
        .filter(|comment| comment.on == pin);
    let comments = comments.map(|comment| format!("{} ({})", comment.text, comment.heading()));
    marks.chain(comments).collect()
}
