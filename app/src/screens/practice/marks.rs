//! Hurts, confuses, change: the rider's word on any button.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::record::{Code, Matter};
use leverwright_core::review::{MarkKind, marks, own_words};
use leverwright_core::text::Text;

use super::desk::PracticeDesk;
use super::keep::write;
use crate::erase::{act, memo, view_of};
use crate::words::capitalised;
use crate::workspace::Offer;

/// Every button with its marks, and room for the rider's own words.
#[component]
pub fn Marks() -> impl IntoView {
    let desk = PracticeDesk::here();
    let buttons = memo(move || {
        let plan = desk.workspace.plan.get();
        let all = plan.iter().flat_map(|plan| {
            let buttons = plan.bike.buttons().into_iter();
            buttons.map(|(id, ..)| (id, plan.bike.balloon(id), plan.bike.place_of(id)))
        });
        all.collect::<Vec<_>>()
    });
    view! {
        {view_of(move || {
            let rows = buttons.get().into_iter();
            let rows = rows.map(|(id, number, place)| row(desk, id, number, place));
            view! { <ul class="mark-rows">{rows.collect_view()}</ul> }
        })}
        <OwnWords/>
    }
}

fn row(
    desk: PracticeDesk,
    button: ButtonId,
    number: Option<usize>,
    place: String,
) -> impl IntoView {
    let kinds = MarkKind::ALL
        .iter()
        .map(|kind| mark(desk, button, *kind, &place))
        .collect_view();
    view! {
        <li>
            <span class="key-place">
                {number.map(|number| view! { <span class="balloon-number">{number}</span>" " })}
                {place}
            </span>
            <span class="mark-kinds">{kinds}</span>
        </li>
    }
}

/// The mark that stands for the layout that is practised, if it does.
fn standing(desk: PracticeDesk, button: ButtonId, kind: MarkKind) -> Option<Code> {
    let plan = desk.workspace.plan.get()?;
    let layout = desk.layout_of(&plan);
    let marks = marks(&plan).into_iter();
    let mut marks = marks.filter(|mark| (mark.button, mark.kind) == (button, kind));
    marks
        .find(|mark| mark.holds_for(layout))
        .map(|mark| mark.id)
}

fn mark(
    desk: PracticeDesk,
    button: ButtonId,
    kind: MarkKind,
    place: &str,
) -> impl IntoView + use<> {
    let stands = memo(move || standing(desk, button, kind));
    let words = format!("{}: {place}", capitalised(kind.words()));
    let press = move || match stands.get_untracked() {
        None => {
            let matter = Matter::Mark {
                button,
                kind,
                text: Text::new(""),
            };
            if write(desk, matter) {
                say_marked(desk, button, kind, &words);
            }
        }
        Some(what) => take_back(desk, what, &words),
    };
    view! {
        <button type="button" class="mark-kind" aria-pressed=move || stands.get().is_some().to_string()
            on:click=act(press)>
            {capitalised(kind.words())}<span class="unseen">{format!(" {place}")}</span>
        </button>
    }
}

/// Says what was marked, with the way back.
fn say_marked(desk: PracticeDesk, button: ButtonId, kind: MarkKind, words: &str) {
    let said = words.to_owned();
    let back = Offer::new("Take it back", move || {
        if let Some(what) = untrack(|| standing(desk, button, kind)) {
            take_back(desk, what, &said);
        }
    });
    desk.workspace.say(format!("Marked. {words}."));
    desk.workspace.show(format!("Marked. {words}."), vec![back]);
}

fn take_back(desk: PracticeDesk, what: Code, words: &str) {
    let reason = Text::new("");
    if write(desk, Matter::Withdrawn { what, reason }) {
        desk.workspace.report(format!("Taken back. {words}."));
    }
}

#[component]
fn OwnWords() -> impl IntoView {
    let desk = PracticeDesk::here();
    let field = NodeRef::<html::Textarea>::new();
    let said = memo(move || {
        let plan = desk.workspace.plan.get();
        let words = plan.iter().flat_map(|plan| own_words(plan));
        words
            .map(|words| words.text.to_string())
            .collect::<Vec<_>>()
    });
    let add = move || {
        let Some(field) = field.get_untracked() else {
            return;
        };
        let text = Text::new(&field.value());
        if !text.is_empty() && write(desk, Matter::Words(text)) {
            field.set_value("");
        }
    };
    view! {
        <label class="field">
            <span>"In your own words"</span>
            <textarea rows="3" maxlength="2000" node_ref=field></textarea>
        </label>
        <div class="acts"><button type="button" on:click=act(add)>"Add these words"</button></div>
        {view_of(move || {
            let said = said.get();
            (!said.is_empty()).then(|| view! {
                <h4>"You said"</h4>
                <ul>{said.into_iter().map(|words| view! { <li>{words}</li> }).collect_view()}</ul>
            })
        })}
    }
}
