//! The gear card: gears, ladder and steps on one page.

use leptos::prelude::*;
use leverwright_core::sheet::{GearCard, Page, TitleBlock};

use super::page::{Part, SheetPage, known_or_fill};
use super::table::{Table, column, text};
use crate::screens::gears::{gears_on_paper, steps_on_paper};

/// Pictures first, the same in numbers below.
#[component]
pub fn GearPage(card: GearCard, title: TitleBlock) -> impl IntoView {
    let facts = card
        .facts
        .into_iter()
        .map(|field| (field.label.to_owned(), field.value));
    let settings = card.settings.into_iter().map(|s| (s.what, s.value));
    let asks = card
        .asks
        .into_iter()
        .map(|line| view! { <li>{line}</li> })
        .collect_view();
    let mut kinds = vec!["name"];
    kinds.resize(card.table.heads.len(), "quantity");
    if let Some(last) = kinds.last_mut() {
        *last = "wide";
    }
    let heads = card.table.heads.iter().zip(kinds);
    let columns = heads
        .map(|(head, kind)| column(head.clone(), kind))
        .collect();
    let rows = card.table.rows.into_iter();
    let rows = rows
        .map(|row| row.cells.into_iter().map(text).collect())
        .collect();
    view! {
        <SheetPage page=Page::Gears title>
            <p class="sheet-gears-what">{card.drivetrain}</p>
            <div class="sheet-gears">{gears_on_paper(&card.plot)}</div>
            <p class="sheet-note">{card.summary}</p>
            <div class="sheet-gear-steps">
                <div class="sheet-gears">{steps_on_paper(&card.steps)}</div>
                <div>
                    <Part heading="Set up as" class="plain">{facts_list(settings.collect())}</Part>
                    <Part heading="Drivetrain" class="plain">{facts_list(facts.collect())}</Part>
                </div>
            </div>
            <Part heading="Asks of the hands" class="plain"><ul class="sheet-gear-asks">{asks}</ul></Part>
            <section class="sheet-gear-table"><Table label="All gears" columns rows/></section>
        </SheetPage>
    }
}

/// What is known, and lines for what is not.
fn facts_list(facts: Vec<(String, Option<String>)>) -> impl IntoView {
    let items = facts
        .into_iter()
        .map(|(what, value)| view! { <li>{what}": "<strong>{known_or_fill(value)}</strong></li> })
        .collect_view();
    view! { <ul>{items}</ul> }
}
