//! Parts, wires, order of work, stand check.

use leptos::prelude::*;
use leverwright_core::sheet::{Page, PartLine, Sheet, WireLine};
use std::sync::Arc;

use super::page::{Fill, Group, Part, SheetPage};
use super::table::{Cell, Table, column, text};
use super::ticks::{Ticks, balloons, one_box};

/// The page for the bench.
#[component]
pub fn WorkPage(sheet: Arc<Sheet>) -> impl IntoView {
    let checks = sheet
        .stand_check
        .iter()
        .map(|list| view! { <Ticks list=list.clone()/> })
        .collect_view();
    view! {
        <SheetPage page=Page::Work title=sheet.title.clone()>
            <Parts parts=sheet.parts.clone()/>
            <Wires wires=sheet.wires.clone()/>
            <Ticks list=sheet.work.clone()/>
            <Group heading="Stand check">{checks}</Group>
        </SheetPage>
    }
}

#[component]
fn Parts(parts: Vec<PartLine>) -> impl IntoView {
    let columns = vec![
        column("There", "choice"),
        column("Order", "choice"),
        column("Quantity", "quantity"),
        column("Part", "name"),
        column("For", "wide"),
    ];
    let rows = parts
        .into_iter()
        .map(|part| {
            vec![
                one_box(),
                one_box(),
                text(part.quantity.to_string()),
                text(part.part),
                text(part.purpose),
            ]
        })
        .collect();
    view! {
        <Part heading="Parts">
            <Table label="Parts" columns rows/>
        </Part>
    }
}

#[component]
fn Wires(wires: Vec<WireLine>) -> impl IntoView {
    let columns = vec![
        column("Done", "boxes"),
        column("No.", "number"),
        column("Control", "name"),
        column("Do", "do"),
        column("Hub and port", "written"),
        column("Length at full lock + 30 mm", "written"),
    ];
    let rows = wires.into_iter().map(wire_row).collect();
    view! {
        <Part heading="Wires" class="sheet-wires">
            <Table label="Wires" columns rows/>
        </Part>
    }
}

fn wire_row(line: WireLine) -> Vec<Cell> {
    let mut act = format!("{}, {}", line.link, line.act());
    if !line.unused_port.is_empty() {
        act = format!("{act}; {}", line.unused_port);
    }
    let written = || line.measure.then(|| view! { <Fill/> }.into_any());
    vec![
        one_box(),
        balloons(line.numbers.clone()),
        text(line.control.clone()),
        text(act),
        written(),
        written(),
    ]
}
