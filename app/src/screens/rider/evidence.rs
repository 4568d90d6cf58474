//! Where answers come from, set once and kept with each answer that follows.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::rider::{Source, Worn};

use super::Desk;
use crate::erase::{act, text};
use crate::focus::focus_on;
use crate::widgets::Choice;

/// Chooses where the answers that follow come from.
#[component]
pub fn EvidenceBar() -> impl IntoView {
    let desk = Desk::here();
    let sources = Source::ALL
        .iter()
        .map(|s| (Some(*s), s.words().to_owned()))
        .collect();
    let worn = Worn::ALL
        .iter()
        .map(|w| (Some(*w), w.words().to_owned()))
        .chain([(None, "not noted".to_owned())])
        .collect();
    let set_source = Callback::new(move |source: Option<Source>| {
        desk.evidence
            .update(|e| e.source = source.unwrap_or(Source::Told));
    });
    let set_worn = Callback::new(move |worn| desk.evidence.update(|e| e.worn = worn));
    view! {
        <section class="evidence" aria-label="Where the answers come from">
            <Choice legend="The answers that follow were" name="source" choices=sources
                chosen=Signal::derive(move || Some(desk.evidence.get().source))
                choose=set_source/>
            <Choice legend="with" name="worn" choices=worn
                chosen=Signal::derive(move || desk.evidence.get().worn)
                choose=set_worn/>
        </section>
    }
}

/// How answers are kept now: stays in view while one answers, because an answer
/// kept under the wrong name is hard to find later.
#[component]
pub fn EvidenceNow() -> impl IntoView {
    let desk = Desk::here();
    view! {
        <div class="evidence-now" role="group" aria-label="How answers are kept now">
            <p>{text(move || format!("Kept as: {}", desk.evidence.get().evidence().in_words()))}</p>
            <button on:click={act(|| focus_on("input[name='source']:checked"))}>"Change"</button>
        </div>
    }
}
