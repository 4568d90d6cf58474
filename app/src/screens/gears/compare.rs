//! All shift plans side by side: what each asks of the hands.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::SideBySide as Table;

use super::desk::GearDesk;
use crate::erase::{memo, view_of};
use crate::words::capitalised;

/// A row for each shift plan, and what one ring would keep and lose.
#[component]
pub fn SideBySide() -> impl IntoView {
    let desk = GearDesk::here();
    let table = memo(move || {
        let band = desk.band.get();
        desk.read(|plan| Table::of(plan, band.middle()))
    });
    view! {
        <section class="gears-compare" aria-labelledby="side-by-side">
            <h2 id="side-by-side">"Shift plans side by side"</h2>
            <p class="quiet">
                "Fewest presses, with the holds of the layout in hand. Times are those of the \
                system, presses following at once."
            </p>
            {view_of(move || table.get().map(|table| rows(&table)))}
        </section>
    }
}

fn rows(table: &Table) -> impl IntoView + use<> {
    let heads = table
        .heads
        .iter()
        .map(|head| view! { <th scope="col">{capitalised(head)}</th> })
        .collect_view();
    let rows = table
        .rows
        .iter()
        .map(|row| {
            let here = row.in_hand.then(|| view! { <small>"in hand"</small> });
            let cells = match &row.cells {
                Ok(cells) => cells
                    .iter()
                    .map(|cell| view! { <td>{cell.clone()}</td> })
                    .collect_view()
                    .into_any(),
                Err(why) => {
                    let columns = (table.heads.len() - 1).to_string();
                    view! { <td class="why-not" colspan=columns>{why.clone()}</td> }.into_any()
                }
            };
            view! {
                <tr class:in-hand=row.in_hand>
                    <th scope="row">{capitalised(row.kind.words())}" "{here}</th>
                    {cells}
                </tr>
            }
        })
        .collect_view();
    let single = table.single_ring.clone();
    view! {
        <div class="table-scroll" tabindex="0" role="region" aria-label="Table of the shift plans">
            <table class="gear-table compare">
                <thead><tr>{heads}</tr></thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
        <p class="single-ring">{single}</p>
    }
}
