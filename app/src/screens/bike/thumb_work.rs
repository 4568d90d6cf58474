//! Other work for a thumb: bell and so on.

use crate::erase::memo;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, ThumbWorkKind};
use leverwright_core::edit::BikeEdit;

use super::Stand;
use crate::widgets::{Choice, Choices};

/// What else a thumb must do, and on which side it sits.
#[component]
pub fn ThumbWorkSection() -> impl IntoView {
    view! {
        <section aria-labelledby="thumb-work">
            <h2 id="thumb-work">"Other work for a thumb"</h2>
            {ThumbWorkKind::ALL.iter().map(|kind| view! { <WorkChoice kind=*kind/> }).collect_view()}
        </section>
    }
}

#[component]
fn WorkChoice(kind: ThumbWorkKind) -> impl IntoView {
    let stand = Stand::here();
    let chosen = memo(move || {
        stand
            .read(|bike| {
                bike.thumb_work
                    .iter()
                    .find(|w| w.kind == kind)
                    .map(|w| w.side)
            })
            .flatten()
    });
    let choices: Choices<BarSide> = BarSide::ALL
        .iter()
        .map(|side| (Some(*side), side.words().to_owned()))
        .chain([(None, "none".to_owned())])
        .collect();
    let choose = Callback::new(move |side: Option<BarSide>| {
        stand.commit(match side {
            Some(side) => BikeEdit::PutThumbWork(kind, side),
            None => BikeEdit::RemoveThumbWork(kind),
        });
    });
    view! {
        <Choice legend=kind.words() name=format!("work-{}", kind.code()) choices chosen choose/>
    }
}
