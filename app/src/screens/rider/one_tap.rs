//! A hand in one tap.

use crate::erase::{act, memo};
use leptos::prelude::*;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{Hand, HandPlace, Side};

use super::Desk;
use super::hand_map::HandMap;

/// The whole hand in one tap: all of it, resting, off the bar, not asked.
#[component]
pub fn OneTap(side: Side) -> impl IntoView {
    let desk = Desk::here();
    let now = memo(move || desk.rider.with(|rider| in_words(rider.hands.get(side))));
    let evidence = move || Some(desk.evidence.get_untracked().evidence());
    let nothing = move |place| RiderEdit::HandDoesNothing(side, place, evidence());
    view! {
        <div class="one-tap" role="group" aria-labelledby=format!("one-tap-{side}")>
            <h3 id=format!("one-tap-{side}")>{title(side)}</h3>
            <p>{now}</p>
            <HandMap side/>
            <button class="main" on:click={act(move || desk.commit(RiderEdit::HandDoesAll(side, evidence())))}>
                {format!("{} hand rides, presses and brakes easily", title_side(side))}
            </button>
            <button class="main" on:click={act(move || desk.commit(nothing(HandPlace::Rests)))}>
                {format!("{} hand rests on the bar and does nothing else", title_side(side))}
            </button>
            <button class="main" on:click={act(move || desk.commit(nothing(HandPlace::OffBar)))}>
                {format!("{} hand is off the bar and does nothing", title_side(side))}
            </button>
            <button on:click={act(move || desk.commit(RiderEdit::ForgetHand(side)))}>
                {format!("{} hand: not asked", title_side(side))}
            </button>
        </div>
    }
}

fn title_side(side: Side) -> &'static str {
    match side {
        Side::Left => "Left",
        Side::Right => "Right",
    }
}

fn title(side: Side) -> String {
    format!("{} hand", title_side(side))
}

/// What is known of the hand, in a few words.
fn in_words(hand: &Hand) -> String {
    let answered = hand.abilities.iter().count();
    match hand.place.value {
        None if answered == 0 => "Not asked yet.".into(),
        None => format!("{answered} answers so far."),
        Some(HandPlace::Works) => format!("Works on the bar. {answered} answers."),
        Some(place) => format!("This hand {place}."),
    }
}
