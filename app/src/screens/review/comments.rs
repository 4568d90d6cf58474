//! Comments: each pinned to something, each with its readers.

use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::record::Matter;
use leverwright_core::review::{Audience, CommentLine};
use leverwright_core::text::Text;

use super::desk::Desk;
use super::entry_acts::{Added, EntryActs};
use super::fields::{Problem, Words};
use crate::drafts::CommentDraft;
use crate::erase::{memo, text, view_of};
use crate::focus::focus_soon;
use crate::widgets::{Choice, Select};
use crate::words::capitalised;

/// What was said, and the form to say more.
#[component]
pub fn Comments() -> impl IntoView {
    let desk = Desk::here();
    let comments = desk.read(|page| page.comments.clone());
    view! {
        <section aria-labelledby="review-comments">
            <h2 id="review-comments" tabindex="-1">"Comments"</h2>
            {view_of(move || comments.with(Vec::is_empty).then(|| view! { <p>"No comment yet."</p> }))}
            <ul class="review-comments">
                <For each=move || comments.get() key=|comment| format!("{comment:?}") let:comment>
                    <Comment comment/>
                </For>
            </ul>
            <Write/>
        </section>
    }
}

#[component]
fn Comment(comment: CommentLine) -> impl IntoView {
    let desk = Desk::here();
    let on = desk.of_plan(|plan| capitalised(&comment.on.words(plan)));
    let about = format!(" to the comment on {on}");
    view! {
        <li>
            <p class="review-on"><strong>{on}</strong>" "<span class="quiet">{comment.heading()}</span></p>
            <p>{comment.text.to_string()}</p>
            <Added all=comment.addenda/>
            <EntryActs id=comment.id about/>
        </li>
    }
}

#[component]
fn Write() -> impl IntoView {
    let desk = Desk::here();
    let draft = desk.workspace.drafts.comment;
    let problem = RwSignal::new(String::new());
    let write = move |event: SubmitEvent| {
        event.prevent_default();
        let now = draft.get_untracked();
        let matter = Matter::Comment {
            on: now.on,
            audience: now.audience,
            text: Text::new(&now.text),
        };
        match desk.write(matter) {
            Ok(()) => {
                problem.set(String::new());
                draft.set(CommentDraft::default());
                desk.workspace.say("The comment is recorded.");
                focus_soon("review-comments");
            }
            Err(words) => {
                problem.set(words);
                focus_soon("review-comment-problem");
            }
        }
    };
    let pins = memo(move || desk.pins());
    let audiences = Audience::ALL.iter();
    let audiences = audiences.map(|who| (Some(*who), who.words().to_owned()));
    let set_audience = Callback::new(move |who: Option<Audience>| {
        if let Some(who) = who {
            draft.update(|draft| draft.audience = who);
        }
    });
    view! {
        <form class="review-form" on:submit=write novalidate>
            <h3>"Write a comment"</h3>
            <Select label="About" choices=Signal::derive(move || pins.get())
                chosen=Signal::derive(move || Some(draft.get().on))
                set=move |on| draft.update(|draft| draft.on = on)/>
            <Choice legend="Who sees it" name="review-audience" choices=audiences.collect()
                chosen=Signal::derive(move || Some(draft.get().audience)) choose=set_audience/>
            <Words label="Comment" id="review-comment-text".to_owned() rows=3
                value=text(move || draft.get().text)
                set=move |words| draft.update(|draft| draft.text = words)/>
            <Problem id="review-comment-problem" words=problem/>
            <button type="submit">"Record the comment"</button>
        </form>
    }
}
