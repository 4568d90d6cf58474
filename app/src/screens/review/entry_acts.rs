//! What may be done about an entry: something is added to it, or who wrote it
//! withdraws it. It is never changed.

use leptos::prelude::*;
use leverwright_core::record::{Code, Matter};
use leverwright_core::text::Text;

use super::desk::Desk;
use super::fields::{Problem, Words};
use crate::erase::{memo, text, view_of};
use crate::focus::focus_soon;

/// What was added.
#[component]
pub fn Added(all: Vec<String>) -> impl IntoView {
    let items = all
        .into_iter()
        .map(|words| view! { <p class="review-added">"Added: "{words}</p> });
    items.collect_view()
}

/// Two folded forms.
#[component]
pub fn EntryActs(
    /// The entry.
    id: Code,
    /// What it is, read after the name of each act.
    about: String,
) -> impl IntoView {
    let desk = Desk::here();
    // The name as it stands, so that who mistyped it sees what to type.
    let writer = memo(move || {
        let name = Text::new(&desk.workspace.signer.get());
        let role = desk.workspace.role.get();
        desk.of_plan(|plan| {
            let entry = plan.record.entry(id)?;
            // What is withdrawn is not withdrawn again.
            if plan.record.withdrawn(id).is_some() {
                return None;
            }
            let own = role.is_some_and(|role| entry.is_by(&name, role));
            Some((own, entry.signed()))
        })
    });
    let withdraw = about.clone();
    let withdraw = view_of(move || {
        let (own, signed) = writer.get()?;
        Some(match own {
            true => view! { <NoteForm id withdraws=true about=withdraw.clone()/> }.into_any(),
            false => view! {
                <p class="quiet review-writer">{format!("To be withdrawn only by who wrote it: {signed}.")}</p>
            }
            .into_any(),
        })
    });
    view! {
        <div class="review-acts">
            <NoteForm id withdraws=false about/>
            {withdraw}
        </div>
    }
}

/// An addendum or a withdrawal.
#[component]
fn NoteForm(id: Code, withdraws: bool, about: String) -> impl IntoView {
    let desk = Desk::here();
    let drafts = desk.workspace.drafts;
    let problem = RwSignal::new(String::new());
    let (name, label, go, said) = match withdraws {
        true => (
            "Withdraw it",
            "Why it no longer stands",
            "Record that it is withdrawn",
            "It is withdrawn. It stays on record.",
        ),
        false => (
            "Add to it",
            "What is added",
            "Record the addendum",
            "The addendum is recorded.",
        ),
    };
    let problem_id = format!("review-{}-{id}", if withdraws { "withdraw" } else { "add" });
    let place = problem_id.clone();
    let write = move |_| {
        let words = Text::new(&untrack(|| drafts.note(id, withdraws)));
        let matter = match withdraws {
            true => Matter::Withdrawn {
                what: id,
                reason: words,
            },
            false => Matter::Addendum {
                to: id,
                text: words,
            },
        };
        match desk.write(matter) {
            Ok(()) => {
                drafts.set_note(id, withdraws, String::new());
                desk.workspace.say(said);
                focus_soon("review-records");
            }
            Err(words) => {
                problem.set(words);
                focus_soon(place.clone());
            }
        }
    };
    view! {
        <details class="review-note">
            <summary>{name}<span class="unseen">{about}</span></summary>
            <Words label value=text(move || drafts.note(id, withdraws))
                set=move |words| drafts.set_note(id, withdraws, words)/>
            <Problem id=problem_id words=problem/>
            <button type="button" on:click=write>{go}</button>
        </details>
    }
}
