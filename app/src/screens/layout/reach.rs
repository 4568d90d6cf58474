//! What a chosen hand reaches, laid over the drawing and told in words.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{ButtonId, ControlId, HandPosition};
use leverwright_core::coverage::{BrakeCell, Cell, press_by};
use leverwright_core::rider::{Contact, Side};

use super::bench::{Bench, Reaching};
use super::words::{ease_class, step_words};
use crate::widgets::Choice;

/// Chooses the hand and the place from which it reaches.
#[component]
pub fn ReachBar() -> impl IntoView {
    let bench = Bench::here();
    let hand = RwSignal::new(None::<Side>);
    let position = RwSignal::new(None::<HandPosition>);
    let positions = Memo::new(move |_| {
        bench
            .plan(|plan| plan.positions_used())
            .unwrap_or_default()
    });
    let from = Memo::new(move |_| {
        let chosen = position.get();
        let all = positions.get();
        chosen.filter(|p| all.contains(p)).or(all.first().copied())
    });
    let set = move || {
        let reaching = hand.get_untracked().zip(from.get_untracked());
        bench
            .reaching
            .set(reaching.map(|(hand, from)| Reaching { hand, from }));
    };
    let hands = vec![
        (None, "off".to_owned()),
        (Some(Side::Left), "left hand".to_owned()),
        (Some(Side::Right), "right hand".to_owned()),
    ];
    let froms = move || {
        let choices = positions.get().into_iter();
        choices.map(|p| (Some(p), p.words().to_owned())).collect::<Vec<_>>()
    };
    view! {
        <section class="reach-bar" aria-labelledby="reach">
            <h2 id="reach">"Reach"</h2>
            <div class="choices">
                <Choice legend="Show what a hand reaches" name="reach-hand" choices=hands
                    chosen=hand choose=move |side| { hand.set(side); set(); }/>
                <Show when=move || hand.get().is_some()>
                    <Choice legend="from the" name="reach-from" choices=froms()
                        chosen=from choose=move |from| { position.set(from); set(); }/>
                </Show>
            </div>
            <Key/>
        </section>
    }
}

/// What the hatches mean.
#[component]
fn Key() -> impl IntoView {
    let bench = Bench::here();
    let swatch = |class: &'static str, words: &'static str| {
        view! {
            <li>
                <svg class="swatch drawing" viewBox="0 0 24 24" aria-hidden="true">
                    <rect class=format!("button-face {class}") x="1" y="1" width="22" height="22"></rect>
                </svg>
                {words}
            </li>
        }
    };
    view! {
        <Show when=move || bench.reaching.get().is_some()>
            <ul class="key" aria-label="Key">
                {swatch("reach-natural", "natural")}
                {swatch("reach-stretch", "stretch")}
                {swatch("reach-move", "hand must move")}
                {swatch("reach-none", "not reached")}
            </ul>
        </Show>
    }
}

fn cell(bench: Bench, id: ButtonId) -> Option<Cell> {
    let Reaching { hand, from } = bench.reaching.get()?;
    let day = bench.day.get();
    bench.plan(|plan| press_by(plan, hand, id, from, day))
}

fn brake_cell(bench: Bench, lever: ControlId) -> Option<BrakeCell> {
    let Reaching { hand, from } = bench.reaching.get()?;
    let day = bench.day.get();
    let derived = bench.workspace.derived.get()?;
    let column = derived.coverage.column(from, day)?;
    let row = derived.coverage.levers.iter().find(|row| row.lever == lever)?;
    Some(row.by_hand(hand, column))
}

/// How the shown hand reaches a button: "reach: thumb, stretch".
pub fn reach_words(bench: Bench, id: ButtonId) -> Option<String> {
    Some(cell_words(&cell(bench, id)?))
}

/// How one hand meets a button, in words.
pub fn cell_words(cell: &Cell) -> String {
    match cell {
        Cell::Reached(way) | Cell::ByLettingGo(way) => {
            format!("{}, {}, {}", way.contact, way.ease, step_words(way.step))
        }
        Cell::No(why) => why.to_string(),
    }
}

/// The class by which a button's face is hatched.
pub fn reach_class(bench: Bench, id: ButtonId) -> Option<&'static str> {
    Some(match cell(bench, id)? {
        Cell::Reached(way) | Cell::ByLettingGo(way) => ease_class(way.ease),
        Cell::No(_) => "reach-none",
    })
}

/// The class by which a blade is hatched.
pub fn reach_class_of_blade(bench: Bench, lever: ControlId) -> Option<&'static str> {
    Some(match brake_cell(bench, lever)? {
        BrakeCell::Reached(pull) | BrakeCell::ByLettingGo(pull) => ease_class(pull.ease),
        BrakeCell::No(_) => "reach-none",
    })
}

/// How the shown hand pulls a lever, in words: what, and how well.
pub fn pull_words(bench: Bench, lever: ControlId) -> Option<String> {
    let words = |contact: Contact, ease: &dyn std::fmt::Display| format!("{contact}, {ease}");
    Some(match brake_cell(bench, lever)? {
        BrakeCell::Reached(pull) | BrakeCell::ByLettingGo(pull) => {
            words(pull.contact, &pull.ease)
        }
        BrakeCell::No(why) => why.to_string(),
    })
}
