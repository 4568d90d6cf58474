//! What the rider feels of a front shift with its rear shifts.

use leptos::prelude::*;
use leverwright_core::gears::NetStepTable;

use super::desk::GearDesk;
use crate::erase::view_of;

/// A table for each front change: from every cog, by the number of rear shifts.
#[component]
pub fn NetSteps() -> impl IntoView {
    let desk = GearDesk::here();
    view! {
        <details class="net-steps">
            <summary>"The step that the legs feel, from every cog"</summary>
            {view_of(move || {
                let tables = desk.read(NetStepTable::all).unwrap_or_default();
                tables.iter().map(table).collect_view()
            })}
        </details>
    }
}

fn table(table: &NetStepTable) -> impl IntoView + use<> {
    let heads = table
        .counts
        .iter()
        .map(|count| {
            let chosen = *count == table.chosen;
            let words = if chosen { "in hand" } else { "" };
            view! { <th scope="col" class:chosen=chosen>{*count}" "<small>{words}</small></th> }
        })
        .collect_view();
    let rows = table
        .rows
        .iter()
        .map(|(from, steps)| {
            let cells = table
                .counts
                .iter()
                .zip(steps)
                .map(|(count, step)| {
                    let chosen = *count == table.chosen;
                    view! { <td class:chosen=chosen>{step.clone()}</td> }
                })
                .collect_view();
            view! { <tr><th scope="row">{from.clone()}</th>{cells}</tr> }
        })
        .collect_view();
    let label = table.title.clone();
    view! {
        <div class="table-scroll" tabindex="0" role="region" aria-label=label>
            <table class="gear-table">
                <caption>{table.title.clone()}</caption>
                <thead><tr><th scope="col">"From"</th>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}
