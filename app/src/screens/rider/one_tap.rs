//! A hand in one tap.

use crate::erase::{act, memo, text};
use leptos::prelude::*;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{Evidence, Hand, HandPlace, Side};

use super::Desk;
use super::hand_map::HandMap;

/// The whole hand in one tap: all of it, resting, off the bar, not asked.
#[component]
pub fn OneTap(side: Side) -> impl IntoView {
    let desk = Desk::here();
    let now = memo(move || desk.rider.with(|rider| in_words(rider.hands.get(side))));
    let name = title_side(side);
    view! {
        <div class="one-tap" role="group" aria-labelledby=format!("one-tap-{side}")>
            <h3 id=format!("one-tap-{side}")>{title(side)}</h3>
            <p>{now}</p>
            <HandMap side/>
            <Preset side label=format!("{name} hand rides, presses and brakes easily")
                stands=|hand| hand.tells(&Hand::does_all(None))
                answers=|side, evidence| RiderEdit::HandDoesAll(side, evidence)/>
            <Preset side label=format!("{name} hand rests on the bar and does nothing else")
                stands=|hand| hand.tells(&Hand::does_nothing(HandPlace::Rests, None))
                answers=|side, evidence| {
                    RiderEdit::HandDoesNothing(side, HandPlace::Rests, evidence)
                }/>
            <Preset side label=format!("{name} hand is off the bar and does nothing")
                stands=|hand| hand.tells(&Hand::does_nothing(HandPlace::OffBar, None))
                answers=|side, evidence| {
                    RiderEdit::HandDoesNothing(side, HandPlace::OffBar, evidence)
                }/>
            <Preset side label=format!("{name} hand: not asked")
                stands=|hand| hand.same_answers(&Hand::default())
                answers=|side, _| RiderEdit::ForgetHand(side)/>
        </div>
    }
}

/// One tap that answers all about a hand; marked while all is as it answered.
#[component]
fn Preset(
    side: Side,
    label: String,
    stands: fn(&Hand) -> bool,
    answers: fn(Side, Option<Evidence>) -> RiderEdit,
) -> impl IntoView {
    let desk = Desk::here();
    let is_taken = memo(move || desk.rider.with(|rider| stands(rider.hands.get(side))));
    let take = move || {
        let evidence = Some(desk.evidence.get_untracked().evidence());
        desk.commit(answers(side, evidence));
    };
    view! {
        <button type="button" class="preset" aria-pressed={text(move || is_taken.get().to_string())}
            on:click={act(take)}>{label}</button>
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
