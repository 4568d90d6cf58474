//! What a decision needs besides what it rests on: changes, each tied to a
//! button, or the terms of a trial.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::review::{Decision, Lack};

use super::desk::Desk;
use super::fields::{Line, Words};
use crate::drafts::DecisionDraft;
use crate::erase::{memo, text, view_of};
use crate::focus::{focus_field_soon, focus_soon};
use crate::widgets::{DateField, Select};

type Draft = RwSignal<DecisionDraft>;

/// Follows the decision that is chosen.
#[component]
pub fn WhatItNeeds(draft: Draft) -> impl IntoView {
    let decision = memo(move || draft.get().decision);
    view_of(move || match decision.get() {
        Some(Decision::AfterChanges) => view! { <Changes draft/> }.into_any(),
        Some(Decision::SupervisedTrial) => view! { <Terms draft/> }.into_any(),
        _ => ().into_any(),
    })
}

#[component]
fn Changes(draft: Draft) -> impl IntoView {
    let desk = Desk::here();
    let chosen = RwSignal::new(None::<ButtonId>);
    let free = memo(move || {
        let taken = draft.get().changes;
        let mut all = desk.buttons();
        all.retain(|(id, _)| !taken.iter().any(|(other, _)| other == id));
        all
    });
    let first = move || free.with(|free| free.first().map(|(id, _)| *id));
    let now = memo(move || {
        let chosen = chosen.get();
        chosen
            .filter(|id| free.with(|free| free.iter().any(|(other, _)| other == id)))
            .or_else(first)
    });
    let add = move |_| {
        if let Some(id) = now.get_untracked() {
            draft.update(|draft| draft.changes.push((id, String::new())));
            focus_field_soon(field(id));
        }
    };
    let buttons = memo(move || {
        let changes = draft.get().changes.into_iter();
        changes.map(|(id, _)| id).collect::<Vec<_>>()
    });
    view! {
        <section class="review-changes" aria-labelledby="review-changes">
            <h3 id="review-changes" tabindex="-1">"The changes, each tied to a button"</h3>
            <For each=move || buttons.get() key=|id| *id let:id>
                <Change draft id/>
            </For>
            <div class="review-add">
                <Select label="Button" choices=Signal::derive(move || free.get())
                    chosen=Signal::derive(move || now.get())
                    set=move |id| chosen.set(Some(id))/>
                <button type="button" id="review-add-change" on:click=add>"Add a change"</button>
            </div>
        </section>
    }
}

fn field(id: ButtonId) -> String {
    format!("review-change-{id}")
}

/// Where what a decision lacks is filled in.
pub fn field_of(lack: Lack) -> String {
    let fixed = match lack {
        Lack::WordsOfChange(button) => return field(button),
        Lack::Changes => "review-add-change",
        Lack::Place => "review-place",
        Lack::Companion => "review-with",
        Lack::StopIf => "review-stop-if",
        Lack::ReviewBy => "review-by",
        Lack::Sight => "review-basis",
        Lack::Actions => "review-actions",
    };
    fixed.into()
}

#[component]
fn Change(draft: Draft, id: ButtonId) -> impl IntoView {
    let desk = Desk::here();
    let all = untrack(|| desk.buttons());
    let place = all.into_iter().find(|(other, _)| *other == id);
    let place = place.map_or_else(
        || "A button that is no longer on the bike".to_owned(),
        |(_, words)| words,
    );
    let about = format!(" on {place}");
    let value = text(move || {
        let changes = draft.get().changes.into_iter();
        let mut own = changes.filter(|(other, _)| *other == id);
        own.next().map(|(_, words)| words).unwrap_or_default()
    });
    let set = move |words: String| {
        draft.update(|draft| {
            if let Some((_, own)) = draft.changes.iter_mut().find(|(other, _)| *other == id) {
                *own = words;
            }
        });
    };
    let remove = move |_| {
        draft.update(|draft| draft.changes.retain(|(other, _)| *other != id));
        focus_soon("review-changes");
    };
    view! {
        <div class="review-change">
            <Words label=format!("{place}: what should change") id=field(id) value set/>
            <button type="button" on:click=remove>
                "Remove the change"<span class="unseen">{about}</span>
            </button>
        </div>
    }
}

#[component]
fn Terms(draft: Draft) -> impl IntoView {
    view! {
        <section aria-labelledby="review-trial">
            <h3 id="review-trial">"The supervised trial"</h3>
            <div class="review-pair">
                <Line label="Where" id="review-place".to_owned() value=text(move || draft.get().place)
                    set=move |words| draft.update(|draft| draft.place = words)/>
                <Line label="With whom" id="review-with".to_owned() value=text(move || draft.get().with)
                    set=move |words| draft.update(|draft| draft.with = words)/>
                <Line label="Stop if" id="review-stop-if".to_owned() value=text(move || draft.get().stop_if)
                    set=move |words| draft.update(|draft| draft.stop_if = words)/>
                <DateField label="Review by" id="review-by".to_owned() value=Signal::derive(move || draft.get().review_by)
                    set=move |date| draft.update(|draft| draft.review_by = date)/>
            </div>
        </section>
    }
}
