//! What a chosen hand reaches, laid over the drawing and told in words.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{ButtonId, Control, Ease, HandPosition};
use leverwright_core::coverage::{BrakeCell, Cell, press_by};
use leverwright_core::rider::Side;

use super::bench::{Bench, Reaching};
use super::cockpit::PICTURE;
use super::words::{capitalised, cell_words, step_words};
use crate::drawing::reach_fill;
use crate::widgets::Choice;

/// Chooses the hand and the place from which it reaches.
#[component]
pub fn ReachBar() -> impl IntoView {
    let bench = Bench::here();
    let hand = RwSignal::new(None::<Side>);
    let position = RwSignal::new(None::<HandPosition>);
    let positions =
        Memo::new(move |_| bench.plan(|plan| plan.positions_used()).unwrap_or_default());
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
        choices
            .map(|p| (Some(p), p.words().to_owned()))
            .collect::<Vec<_>>()
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

/// What the hatches mean, and how brake levers are pulled.
#[component]
fn Key() -> impl IntoView {
    let bench = Bench::here();
    let swatch = |ease: Option<Ease>| {
        let fill = ease.map_or_else(|| "none".into(), |ease| reach_fill(PICTURE, ease));
        view! {
            <li>
                <svg class="swatch" viewBox="0 0 24 24" aria-hidden="true">
                    <rect class="swatch-face" x="1" y="1" width="22" height="22"></rect>
                    <rect class="reach" x="1" y="1" width="22" height="22" fill=fill></rect>
                </svg>
                {ease.map_or("not reached", Vocabulary::words)}
            </li>
        }
    };
    view! {
        <Show when=move || bench.reaching.get().is_some()>
            <ul class="key" aria-label="What the hatches mean">
                {Ease::ALL.iter().map(|ease| swatch(Some(*ease))).chain([swatch(None)]).collect_view()}
            </ul>
            <ul class="pulls" aria-label="Brake levers">
                {move || pulls(bench).into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
            </ul>
        </Show>
    }
}

fn cell(bench: Bench, id: ButtonId) -> Option<Cell> {
    let Reaching { hand, from } = bench.reaching.get()?;
    let day = bench.day.get();
    bench.plan(|plan| press_by(plan, hand, id, from, day))
}

/// How the shown hand reaches a button, in words.
pub fn reach_words(bench: Bench, id: ButtonId) -> Option<String> {
    Some(cell_words(&cell(bench, id)?))
}

/// How well the shown hand reaches a button.
pub fn reach_of(bench: Bench, id: ButtonId) -> Option<Ease> {
    Some(cell(bench, id)?.way()?.ease)
}

/// How the shown hand pulls each brake lever, in words.
fn pulls(bench: Bench) -> Vec<String> {
    let (Some(Reaching { hand, from }), Some(derived)) =
        (bench.reaching.get(), bench.workspace.derived.get())
    else {
        return Vec::new();
    };
    let coverage = &derived.coverage;
    let Some(column) = coverage.column(from, bench.day.get()) else {
        return Vec::new();
    };
    let levers = coverage.levers.iter().filter_map(|row| {
        let place = bench.plan(|plan| {
            let control = plan.bike.control(row.lever);
            control
                .filter(|control| control.has_blade())
                .map(Control::place)
        });
        let how = match row.by_hand(hand, column) {
            BrakeCell::Reached(pull) | BrakeCell::ByLettingGo(pull) => {
                format!("{}, {}, {}", pull.contact, pull.ease, step_words(pull.step))
            }
            BrakeCell::No(why) => why.to_string(),
        };
        Some(format!("{}: {how}.", capitalised(&place??)))
    });
    levers.collect()
}
