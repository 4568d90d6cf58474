//! The decision: one of five, what it needs, and what it rests on.

use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Role;
use leverwright_core::record::Matter;
use leverwright_core::review::{Basis, Decision, NotAssessed, Review, ReviewEvent};
use leverwright_core::rider::{Side, Worn, YesNo};
use leverwright_core::sheet::SIGNATURE_NOTE;
use leverwright_core::text::Text;

use super::desk::Desk;
use super::fields::{Labelled, Line, Problem, Ticks, Words, put};
use super::trial::{WhatItNeeds, field_of};
use crate::drafts::DecisionDraft;
use crate::erase::{flag, memo, text, view_of};
use crate::focus::{focus_field_soon, focus_soon};
use crate::widgets::{Choice, DateField, seen};
use crate::words::capitalised;

/// The form, unless somebody else sits here.
#[component]
pub fn Decide() -> impl IntoView {
    let desk = Desk::here();
    let by_another = memo(move || {
        desk.workspace
            .role
            .get()
            .is_some_and(|role| role != Role::Clinician)
    });
    view! {
        <section class="review-decide" aria-labelledby="review-decide">
            <h2 id="review-decide" tabindex="-1">"The decision"</h2>
            {view_of(move || match by_another.get() {
                true => view! {
                    <p>"A decision is for a clinician to write. You can write a comment."</p>
                }
                .into_any(),
                false => view! { <Form/> }.into_any(),
            })}
        </section>
    }
}

type Draft = RwSignal<DecisionDraft>;

#[component]
fn Form() -> impl IntoView {
    let desk = Desk::here();
    let draft = desk.workspace.drafts.decision;
    let problem = RwSignal::new(String::new());
    let record = move |event: SubmitEvent| {
        event.prevent_default();
        match written(desk, draft) {
            Ok(()) => {
                problem.set(String::new());
                draft.set(DecisionDraft::default());
                desk.workspace
                    .say("The decision is recorded for this revision.");
                focus_soon("review-records");
            }
            Err((field, words)) => {
                problem.set(words);
                focus_field_soon(field);
            }
        }
    };
    view! {
        <form class="review-form" on:submit=record novalidate>
            <Chosen draft/>
            <WhatItNeeds draft/>
            <RestsOn draft/>
            <Outlook draft/>
            <p class="quiet">
                {SIGNATURE_NOTE}" What is recorded is never changed; you can add to it or withdraw it."
            </p>
            <Problem id="review-decide-problem" words=problem/>
            <button type="submit" class="main">"Record the decision"</button>
        </form>
    }
}

/// Writes the decision down; where something is missing, the field that lacks
/// it and what to do.
fn written(desk: Desk, draft: Draft) -> Result<(), (String, String)> {
    let review = draft.with_untracked(DecisionDraft::review);
    let review = review.map_err(|(field, words)| (field.to_owned(), words.to_owned()))?;
    let lacking = review.lacks().map(field_of);
    let outcome = desk.write(Matter::Review(Box::new(review)));
    outcome.map_err(|words| {
        let role_is_open = desk.workspace.role.with_untracked(Option::is_none);
        let nameless = Text::new(&desk.workspace.signer.get_untracked()).is_empty();
        let field = match lacking {
            _ if role_is_open => "review-role".into(),
            Some(field) => field,
            None if nameless => "review-signer".into(),
            None => "review-decide-problem".into(),
        };
        (field, words)
    })
}

#[component]
fn Chosen(draft: Draft) -> impl IntoView {
    let decisions = Decision::ALL.iter();
    let decisions = decisions.map(|one| (Some(*one), capitalised(one.words())));
    let choose = Callback::new(move |one| draft.update(|draft| draft.decision = one));
    view! {
        <div class="review-decisions">
            <Choice legend="Your decision" name="review-decision" choices=decisions.collect()
                chosen=Signal::derive(move || draft.get().decision) choose/>
        </div>
    }
}

/// Basis, actions, what was worn, bike, conditions.
#[component]
fn RestsOn(draft: Draft) -> impl IntoView {
    let bases = Basis::ALL.iter();
    let bases = bases.map(|one| (Some(*one), one.words().to_owned()));
    let set_basis = Callback::new(move |one| draft.update(|draft| draft.basis = one));
    let set_worn = Callback::new(move |one| draft.update(|draft| draft.worn = one));
    let worn = Worn::ALL.iter();
    let worn = worn.map(|one| (Some(*one), one.words().to_owned()));
    let worn = worn.chain([(None, "not noted".to_owned())]);
    let actions = Side::ALL.iter().map(|side| {
        let boxes = Review::actions().map(|action| {
            let item = (*side, action);
            ticked(
                draft,
                action.words(),
                move |draft| draft.seen.contains(&item),
                move |draft, on| put(&mut draft.seen, item, on),
            )
        });
        let legend = format!("Actions seen, {side} hand");
        view! { <Ticks legend boxes=boxes.collect()/> }
    });
    view! {
        <h3>"What it rests on"</h3>
        <Choice legend="Basis" name="review-basis" choices=bases.collect()
            chosen=Signal::derive(move || draft.get().basis) choose=set_basis/>
        <div class="review-actions" id="review-actions">{actions.collect_view()}</div>
        <Choice legend="Worn" name="review-worn" choices=worn.collect()
            chosen=Signal::derive(move || draft.get().worn) choose=set_worn/>
        <div class="review-pair">
            <Line label="On which bike" value=text(move || draft.get().bike)
                set=move |words| draft.update(|draft| draft.bike = words)/>
            <Words label="Under which conditions it holds" value=text(move || draft.get().conditions)
                set=move |words| draft.update(|draft| draft.conditions = words)/>
        </div>
    }
}

/// What was left out, whether the rider agrees, when to look again.
#[component]
fn Outlook(draft: Draft) -> impl IntoView {
    let left_out = NotAssessed::ALL.iter().map(|item| {
        ticked(
            draft,
            item.words(),
            move |draft| draft.not_assessed.contains(item),
            move |draft, on| put(&mut draft.not_assessed, *item, on),
        )
    });
    let events = ReviewEvent::ALL.iter().map(|event| {
        ticked(
            draft,
            event.words(),
            move |draft| draft.again_after.contains(event),
            move |draft, on| put(&mut draft.again_after, *event, on),
        )
    });
    let agrees =
        Callback::new(move |one: Option<YesNo>| draft.update(|draft| draft.rider_agrees = one));
    view! {
        <Ticks legend="Not assessed" boxes=left_out.collect()/>
        <Choice legend="The rider agrees" name="review-agrees"
            choices=seen("yes", "no", "not asked")
            chosen=Signal::derive(move || draft.get().rider_agrees) choose=agrees/>
        <h3>"Review again"</h3>
        <DateField label="On" value=Signal::derive(move || draft.get().again_on)
            set=move |date| draft.update(|draft| draft.again_on = date)/>
        <Ticks legend="Or after" boxes=events.collect()/>
    }
}

fn ticked(
    draft: Draft,
    words: &str,
    read: impl Fn(&DecisionDraft) -> bool + Send + Sync + 'static,
    write: impl Fn(&mut DecisionDraft, bool) + Send + Sync + 'static,
) -> Labelled {
    let on = flag(move || draft.with(|draft| read(draft)));
    let set = Callback::new(move |on| draft.update(|draft| write(draft, on)));
    (capitalised(words), on, set)
}
