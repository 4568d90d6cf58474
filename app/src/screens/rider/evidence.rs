//! Where answers come from, set once and kept with each answer that follows.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::rider::{Evidence, Source, Worn};

use super::Desk;
use crate::today::today;
use crate::widgets::Choice;

/// Where answers come from now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EvidenceChoice {
    source: Source,
    worn: Option<Worn>,
}

impl Default for EvidenceChoice {
    fn default() -> Self {
        EvidenceChoice {
            source: Source::Told,
            worn: None,
        }
    }
}

impl EvidenceChoice {
    /// What is kept with an answer given today.
    pub fn evidence(self) -> Option<Evidence> {
        Some(Evidence {
            source: self.source,
            date: today(),
            worn: self.worn,
            in_one_tap: false,
        })
    }
}

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
