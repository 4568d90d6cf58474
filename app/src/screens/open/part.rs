//! One part of two copies, and what becomes of it.

use leptos::prelude::*;
use leverwright_core::merge::{Choice as What, MergePart};
use leverwright_core::{Vocabulary, record::PartKey};

use super::merge::Chosen;
use crate::widgets::Choice;
use crate::words::capitalised;

/// What differs in a part, in words, and the choice.
#[component]
pub fn PartChoice(part: MergePart, chosen: Chosen) -> impl IntoView {
    let name = capitalised(&part.name);
    let differences = part
        .differences
        .iter()
        .map(|difference| view! { <li>{difference.words.clone()}</li> })
        .collect_view();
    let choice = match part.choices.is_empty() {
        true => view! { <p class="decided">{part.decided()}</p> }.into_any(),
        false => view! { <Choose part=part.clone() chosen/> }.into_any(),
    };
    view! {
        <li class="merge-part">
            <h4>{name}</h4>
            <p class="stand">{capitalised(part.stand.words())}". From yours to theirs:"</p>
            <ul class="differences">{differences}</ul>
            {choice}
        </li>
    }
}

#[component]
fn Choose(part: MergePart, chosen: Chosen) -> impl IntoView {
    let key = part.part.clone();
    let name = format!("merge-{}", key.key());
    let choices = part.choices.iter();
    let choices = choices.map(|what| (Some(*what), what.words().to_owned()));
    let usual = part.usual;
    let now = {
        let key = key.clone();
        Signal::derive(move || Some(chosen.with(|chosen| choice_of(chosen, &key).unwrap_or(usual))))
    };
    let choose = move |what: Option<What>| {
        let Some(what) = what else { return };
        chosen.update(|chosen| {
            chosen.retain(|(part, _)| *part != key);
            chosen.push((key.clone(), what));
        });
    };
    view! {
        <Choice legend=format!("What becomes of the {}", part.name) legend_unseen=true name
            choices=choices.collect() chosen=now choose/>
    }
}

fn choice_of(chosen: &[(PartKey, What)], key: &PartKey) -> Option<What> {
    let found = chosen.iter().find(|(part, _)| part == key);
    found.map(|(_, what)| *what)
}
