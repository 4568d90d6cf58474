//! The questions that are not answered in steps.

use crate::erase::{memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{Answer, Hand, Side};
use std::fmt::Display;

use super::Desk;
use super::said::said;
use crate::widgets::{Choice, all_or_not_asked};

/// A choice about one hand from a whole vocabulary.
#[component]
fn HandChoice<T: Vocabulary + Display + Send + Sync>(
    side: Side,
    legend: &'static str,
    #[prop(optional)] legend_unseen: bool,
    name: &'static str,
    read: fn(&Hand) -> Answer<T>,
    edit: fn(Side, Answer<T>) -> RiderEdit,
) -> impl IntoView {
    let desk = Desk::here();
    let answer = move || desk.rider.with(|rider| read(rider.hands.get(side)));
    let chosen = memo(move || answer().value);
    let choose = Callback::new(move |value: Option<T>| {
        desk.commit(edit(side, desk.answer(value)));
    });
    view! {
        <Choice legend legend_unseen name=format!("{}-{name}", side.code()) choices={all_or_not_asked::<T>()}
            chosen choose note={text(move || said(&answer()))}/>
    }
}

/// What the hand does while riding.
#[component]
pub fn PlaceChoice(side: Side) -> impl IntoView {
    view! {
        <HandChoice side legend="This hand" legend_unseen=true name="place"
            read=|hand: &Hand| hand.place edit=RiderEdit::Place/>
    }
}

/// Whether contacts press one by one.
#[component]
pub fn PressingChoice(side: Side) -> impl IntoView {
    view! {
        <HandChoice side legend="They press" name="pressing"
            read=|hand: &Hand| hand.pressing edit=RiderEdit::Pressing/>
    }
}

/// Whether the arm moves by itself.
#[component]
pub fn MovesChoice(side: Side) -> impl IntoView {
    view! {
        <HandChoice side legend="tightens or moves by itself" name="moves"
            read=|hand: &Hand| hand.moves_by_itself edit=RiderEdit::MovesByItself/>
    }
}

/// What becomes of the hand later.
#[component]
pub fn LaterChoice(side: Side) -> impl IntoView {
    view! {
        <HandChoice side legend="after an hour or in the cold" name="later"
            read=|hand: &Hand| hand.later edit=RiderEdit::Later/>
    }
}
