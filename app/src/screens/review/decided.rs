//! Decisions on record: several may stand side by side, each for its revision.

use leptos::prelude::*;
use leverwright_core::review::{Decided, Standing};

use super::about::lines;
use super::desk::Desk;
use super::entry_acts::{Added, EntryActs};
use crate::erase::view_of;

/// The list, the latest first.
#[component]
pub fn Records() -> impl IntoView {
    let desk = Desk::here();
    let decided = desk.read(|page| page.decided.clone());
    view! {
        <section aria-labelledby="review-records">
            <h2 id="review-records" tabindex="-1">"Decisions on record"</h2>
            {view_of(move || decided.with(Vec::is_empty).then(|| view! {
                <p>"No decision is recorded yet."</p>
            }))}
            <div class="review-decided">
                <For each=move || decided.get() key=|decided| format!("{decided:?}") let:decided>
                    <Record decided/>
                </For>
            </div>
        </section>
    }
}

#[component]
fn Record(decided: Decided) -> impl IntoView {
    let desk = Desk::here();
    let class = match decided.standing {
        Standing::ForThis => "review-record",
        Standing::ForOlder(_) => "review-record older",
        Standing::Withdrawn { .. } => "review-record withdrawn",
    };
    let title = decided.title();
    let facts = desk.of_plan(|plan| decided.review.facts(plan));
    let facts = facts
        .into_iter()
        .map(|(name, words)| view! { <dt>{name}</dt><dd>{words}</dd> })
        .collect_view();
    let about = format!(" to the decision of {}", decided.heading());
    let label = format!("{title}, {}", decided.heading());
    view! {
        <article class=class aria-label=label>
            <h3>{title}</h3>
            <p>{decided.heading()}</p>
            <p class="review-standing"><strong>{decided.standing_words()}</strong></p>
            {lines(decided.changed_since())}
            <dl>{facts}</dl>
            <Added all=decided.addenda.clone()/>
            <EntryActs id=decided.id about/>
        </article>
    }
}
