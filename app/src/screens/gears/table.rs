//! The pictures as a table.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::gears::plot::GearTable;

use super::desk::GearDesk;
use crate::erase::view_of;

/// All gears from the easiest to the hardest. Written only while it is unfolded.
#[component]
pub fn SameAsTable() -> impl IntoView {
    let desk = GearDesk::here();
    let is_open = RwSignal::new(false);
    let details = NodeRef::<html::Details>::new();
    let toggled = move |_| {
        let open = details
            .get_untracked()
            .is_some_and(|details| details.open());
        is_open.set(open);
    };
    view! {
        <details class="gears-table" node_ref=details on:toggle=toggled>
            <summary>"All gears as a table"</summary>
            {view_of(move || is_open.get().then(|| {
                let band = desk.band.get();
                let table = desk.read(|plan| GearTable::of(plan, band));
                match table {
                    Some(Ok(table)) => gear_table(&table).into_any(),
                    Some(Err(error)) => view! { <p>{error.to_string()}</p> }.into_any(),
                    None => ().into_any(),
                }
            }))}
        </details>
    }
}

fn gear_table(table: &GearTable) -> impl IntoView + use<> {
    let heads = table
        .heads
        .iter()
        .map(|head| view! { <th scope="col">{head.clone()}</th> })
        .collect_view();
    let rows = table
        .rows
        .iter()
        .map(|row| {
            let cells = row
                .cells
                .iter()
                .skip(1)
                .map(|cell| view! { <td>{cell.clone()}</td> })
                .collect_view();
            view! { <tr><th scope="row">{row.cells[0].clone()}</th>{cells}</tr> }
        })
        .collect_view();
    view! {
        <div class="table-scroll" tabindex="0" role="region" aria-label="Table of all gears">
            <table class="gear-table">
                <thead><tr>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}
