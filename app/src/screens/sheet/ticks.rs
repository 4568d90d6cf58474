//! Lists to tick off.

use leptos::prelude::*;
use leverwright_core::sheet::{Tick, TickList};

use super::page::{Balloons, Boxes, Fill, Part};
use super::table::{Cell, Table, cell, column, text};

/// A list under its heading.
#[component]
pub fn Ticks(list: TickList) -> impl IntoView {
    let TickList { title, note, ticks } = list;
    let expects = ticks.iter().any(|tick| !tick.expect.is_empty());
    let mut columns = vec![column("Done", "boxes"), column("Do", "name")];
    if expects {
        columns.push(column("See", "wide"));
    }
    let rows = ticks.into_iter().map(|tick| row(tick, expects)).collect();
    view! {
        <Part heading=title class=if expects { "sheet-ticks" } else { "sheet-ticks plain" }>
            {(!note.is_empty()).then(|| view! { <p class="sheet-note">{note}</p> })}
            <Table label=title columns rows/>
        </Part>
    }
}

fn row(tick: Tick, expects: bool) -> Vec<Cell> {
    let fields = tick
        .fields
        .iter()
        .map(|field| view! { <span class="sheet-measure">{*field} ": "<Fill/></span> })
        .collect_view();
    let act = view! { <Balloons numbers=tick.numbers/> {tick.act} " " };
    let boxes = cell(view! { <Boxes count=tick.boxes/> });
    if expects {
        let expect = (!tick.expect.is_empty() || !tick.fields.is_empty())
            .then(|| view! { {tick.expect} " " {fields} }.into_any());
        vec![boxes, cell(act), expect]
    } else {
        vec![boxes, cell(view! { {act} {fields} })]
    }
}

/// A cell with one box.
pub fn one_box() -> Cell {
    cell(view! { <Boxes/> })
}

/// A cell with balloons.
pub fn balloons(numbers: Vec<usize>) -> Cell {
    if numbers.is_empty() {
        return text("");
    }
    cell(view! { <Balloons numbers/> })
}
