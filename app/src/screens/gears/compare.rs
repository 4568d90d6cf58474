//! All shift plans side by side: what each asks of the hands.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::{Gear, Gears, SideBySide as Table};

use super::desk::GearDesk;
use crate::erase::{memo, view_of};
use crate::widgets::Select;
use crate::words::capitalised;

/// A row for each shift plan, and what one ring would keep and lose.
#[component]
pub fn SideBySide() -> impl IntoView {
    let desk = GearDesk::here();
    let (from, to) = (RwSignal::new(None::<Gear>), RwSignal::new(None::<Gear>));
    let way = move |gears: &Gears| {
        let known = |gear: &Gear| gears.has(*gear);
        (
            from.get().filter(known).unwrap_or(gears.easiest()),
            to.get().filter(known).unwrap_or(gears.hardest()),
        )
    };
    let table = memo(move || {
        let band = desk.band.get();
        desk.read(|plan| {
            let way = plan.bike.drivetrain.gears().as_ref().map(way);
            Table::of(plan, band.middle(), way)
        })
    });
    let end = move |last: bool| {
        Signal::derive(move || {
            let (from, to) = desk.read(|plan| plan.bike.drivetrain.gears().as_ref().map(way))??;
            Some(if last { to } else { from })
        })
    };
    let gears = Signal::derive(move || gears_by_ratio(desk));
    view! {
        <section class="gears-compare" aria-labelledby="side-by-side">
            <h2 id="side-by-side">"Shift plans side by side"</h2>
            <p class="quiet">
                "Fewest presses, with the holds of the layout in hand; near the gears named, where a \
                plan has not those. Times are those of the system, presses following at once."
            </p>
            <div class="fields">
                <Select label="From gear" choices=gears chosen=end(false)
                    set={move |gear| from.set(Some(gear))}/>
                <Select label="To gear" choices=gears chosen=end(true)
                    set={move |gear| to.set(Some(gear))}/>
            </div>
            {view_of(move || table.get().map(|table| rows(&table)))}
        </section>
    }
}

/// Every gear with its name, the easiest first.
fn gears_by_ratio(desk: GearDesk) -> Vec<(Gear, String)> {
    let named = |gears: Gears| {
        let all = gears.by_ratio().into_iter();
        all.map(|gear| (gear, gears.words(gear))).collect()
    };
    desk.read(|plan| plan.bike.drivetrain.gears().map(named))
        .flatten()
        .unwrap_or_default()
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
