//! Differences in sentences, and every number as tables.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::ride::in_short;
use leverwright_core::ride::page::{LoadPage, LoadTable, tables};
use leverwright_core::ride::study::Outcome;

use super::desk::Done;
use crate::erase::view_of;
use crate::workspace::Workspace;

/// What the hands do, and why, in a few sentences.
pub fn in_short(outcomes: &[Outcome]) -> impl IntoView + use<> {
    let said = in_short::in_short(outcomes).into_iter();
    let said = said.map(|said| view! { <li>{said}</li> }).collect_view();
    view! { <ul class="ride-short">{said}</ul> }
}

/// What differs, and how it stands against the ride that was fine.
#[component]
pub fn Differences(done: Arc<Done>) -> impl IntoView {
    let workspace = Workspace::here();
    view_of(move || {
        let plan = workspace.plan.get()?;
        let page = LoadPage::of(&plan, &done.road, &done.outcomes);
        let all = page.differences.iter().chain(&page.against_known);
        Some(
            all.map(|(heading, said)| sentences(heading, said))
                .collect_view(),
        )
    })
}

/// A heading with its sentences.
pub fn sentences(heading: &str, said: &[String]) -> impl IntoView + use<> {
    let items = said
        .iter()
        .map(|said| view! { <li>{said.clone()}</li> })
        .collect_view();
    view! {
        <div class="differences">
            <h3>{heading.to_owned()}</h3>
            <ul>{items}</ul>
        </div>
    }
}

/// A table for each subject and day, the first one open.
#[component]
pub fn Tables(done: Arc<Done>) -> impl IntoView {
    let tables = tables(&done.outcomes)
        .iter()
        .enumerate()
        .map(|(at, table)| {
            let label = table.caption.clone();
            view! {
                <details class="ride-numbers" open=at == 0>
                    <summary>{table.caption.clone()}</summary>
                    <div class="table-scroll" tabindex="0" role="region" aria-label=label>
                        {load_table(table)}
                    </div>
                    {table.never_words().map(|words| view! { <p class="quiet">{words}</p> })}
                </details>
            }
        })
        .collect_view();
    view! {
        <h3>"All numbers"</h3>
        <p class="quiet">"A range such as 6–20 covers pedalling harder and easier, wind from ahead and from behind, \
            and shifting earlier and later."</p>
        {tables}
    }
}

/// One table.
pub fn load_table(table: &LoadTable) -> impl IntoView + use<> {
    let head = table
        .head
        .iter()
        .map(|head| view! { <th scope="col">{head.clone()}</th> })
        .collect_view();
    let rows = table
        .rows
        .iter()
        .map(|row| {
            let cells = row
                .iter()
                .skip(1)
                .map(|cell| view! { <td>{cell.clone()}</td> })
                .collect_view();
            view! { <tr><th scope="row">{row[0].clone()}</th>{cells}</tr> }
        })
        .collect_view();
    view! {
        <table class="ride-table load">
            <caption>{table.caption.clone()}</caption>
            <thead><tr>{head}</tr></thead>
            <tbody>{rows}</tbody>
        </table>
    }
}
