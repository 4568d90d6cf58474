//! The revision, what changed since the last review, where the answers came
//! from, what was not asked.

use leptos::prelude::*;
use leverwright_core::review::ReviewPage;
use leverwright_core::text::list;

use super::desk::Desk;
use crate::erase::view_of;

/// The first part of the page.
#[component]
pub fn About() -> impl IntoView {
    let desk = Desk::here();
    view! {
        <section aria-labelledby="review-about">
            <h2 id="review-about">"Revision and answers"</h2>
            {view_of(move || desk.page.get().map(|page| told(&page)))}
        </section>
    }
}

fn told(page: &ReviewPage) -> impl IntoView + use<> {
    let since = page.since.as_ref().map(|(_, since)| since.clone());
    let changed = since.unwrap_or_default().into_iter();
    let changed: Vec<String> = changed.map(|differs| differs.words).collect();
    let not_asked = match page.not_asked.len() {
        0 => "Everything that matters was asked.".to_owned(),
        1 => "1 thing was not asked yet, which is not “no difficulty”:".to_owned(),
        n => format!("{n} things were not asked yet, which is not “no difficulty”:"),
    };
    view! {
        <p class="review-revision"><strong>{page.revision_words()}</strong></p>
        <h3>"Since the last review"</h3>
        <p>{page.since_words()}</p>
        {lines(changed)}
        <h3>"Where the answers came from"</h3>
        <p>{page.sources.words()}</p>
        <h3>"What was not asked"</h3>
        <p>{not_asked}</p>
        {lines(page.not_asked_words())}
        <p class="quiet">
            {format!("This plan asks nobody about {}.", list(page.not_assessed, "and"))}
        </p>
    }
}

/// A list, or nothing where it is empty.
pub fn lines(all: Vec<String>) -> AnyView {
    if all.is_empty() {
        return ().into_any();
    }
    let items = all.into_iter().map(|words| view! { <li>{words}</li> });
    view! { <ul class="review-lines">{items.collect_view()}</ul> }.into_any()
}
