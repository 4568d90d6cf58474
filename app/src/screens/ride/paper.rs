//! The load page: what is printed for the therapist, and the same as text.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::ride::page::{LoadPage, LoadTable};

use super::desk::Done;
use super::tables::{load_table, sentences};
use crate::alone::alone;
use crate::erase::view_of;
use crate::workspace::Workspace;

/// Out of sight until it is printed.
#[component]
pub fn LoadPaper(done: Arc<Done>) -> impl IntoView {
    let workspace = Workspace::here();
    view_of(move || {
        let plan = workspace.plan.get()?;
        let page = LoadPage::of(&plan, &done.road, &done.outcomes);
        let text = page.to_text();
        Some(view! {
            <details class="as-text ride-part">
                <summary>"The load page as plain text"</summary>
                <label class="field">
                    <span>"To copy or to have read out"</span>
                    <textarea readonly rows="14" prop:value=text></textarea>
                </label>
            </details>
            {paper(&page)}
        })
    })
}

fn paper(page: &LoadPage) -> impl IntoView + use<> {
    alone("load");
    let partial = page.unfinished.then(|| {
        view! {
            <p><strong>"Stopped before the end: the numbers are of what was ridden."</strong></p>
        }
    });
    let title = page
        .title
        .running_fields()
        .map(|field| view! { <li>{field}</li> })
        .collect_view();
    let said = page
        .differences
        .iter()
        .chain(&page.against_known)
        .map(|(heading, said)| sentences(heading, said))
        .collect_view();
    let fixed = |all: &'static [&'static str]| {
        all.iter()
            .map(|said| (*said).to_owned())
            .collect::<Vec<_>>()
    };
    view! {
        <article class="load-page" aria-label="Load page">
            <h2>"Load page"</h2>
            <p><strong>{page.title.running_head()}</strong></p>
            <ul class="load-title">{title}</ul>
            <p>{page.road.clone()}</p>
            <p>{page.habits.join(". ")}</p>
            {partial}
            {sentences("In short", &page.in_short)}
            {said}
            {page.tables.iter().map(paper_table).collect_view()}
            {sentences("What this is", &fixed(page.assumptions))}
            {sentences("Cautions", &fixed(page.cautions))}
        </article>
    }
}

fn paper_table(table: &LoadTable) -> impl IntoView + use<> {
    let never = table.never_words().map(|words| view! { <p>{words}</p> });
    view! { {load_table(table)} {never} }
}
