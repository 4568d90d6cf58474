//! What a chosen hand reaches, laid over the drawing and told in words.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{ButtonId, Control, Ease};
use leverwright_core::coverage::{BrakeCell, Cell, press_by};
use leverwright_core::rider::Side;

use super::bench::{Bench, Reaching};
use super::cockpit::PICTURE;
use super::words::{capitalised, step_words};
use crate::drawing::reach_fill;
use crate::widgets::Select;

/// Chooses whose reach is shown, and from where.
#[component]
pub fn ShowReach() -> impl IntoView {
    let bench = Bench::here();
    let choices = Memo::new(move |_| {
        let positions = bench.plan(|plan| plan.positions_used()).unwrap_or_default();
        let reaching = Side::ALL.iter().flat_map(|hand| {
            let from = positions.iter();
            from.map(|from| Reaching {
                hand: *hand,
                from: *from,
            })
        });
        let words = |r: Reaching| format!("{} hand, from the {}", r.hand, r.from);
        let shown = reaching.map(|reaching| (Some(reaching), words(reaching)));
        [(None, "off".to_owned())]
            .into_iter()
            .chain(shown)
            .collect::<Vec<_>>()
    });
    // A position that the rider uses no longer is shown no longer.
    let chosen = Memo::new(move |_| {
        let reaching = bench.reaching.get();
        choices
            .with(|all| all.iter().any(|(choice, _)| *choice == reaching))
            .then_some(reaching)
    });
    view! {
        <Select label="Show reach" choices chosen set=move |reaching| bench.reaching.set(reaching)/>
    }
}

/// What the hatches mean, and how brake levers are pulled.
#[component]
pub fn ReachKey() -> impl IntoView {
    let bench = Bench::here();
    let swatch = |ease: Option<Ease>| {
        let fill = ease.map_or_else(|| "none".into(), |ease| reach_fill(PICTURE, ease));
        view! {
            <li>
                <svg class="cockpit swatch" viewBox="0 0 24 24" aria-hidden="true">
                    <rect class="swatch-face" x="1" y="1" width="22" height="22"></rect>
                    <rect class="reach" x="1" y="1" width="22" height="22" fill=fill></rect>
                </svg>
                {ease.map_or("not reached", Vocabulary::words)}
            </li>
        }
    };
    view! {
        <Show when=move || bench.reaching.get().is_some()>
            <div class="reach-key">
            <ul class="key" aria-label="What the hatches mean">
                {Ease::ALL.iter().map(|ease| swatch(Some(*ease))).chain([swatch(None)]).collect_view()}
            </ul>
            <ul class="pulls" aria-label="Brake levers">
                {move || pulls(bench).into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
            </ul>
            </div>
        </Show>
    }
}

fn cell(bench: Bench, id: ButtonId) -> Option<Cell> {
    let Reaching { hand, from } = bench.reaching.get()?;
    let day = bench.day.get();
    bench.plan(|plan| press_by(plan, hand, id, from, day))
}

/// How the shown hand reaches a button, in few words: the slot has little room,
/// the menu tells all.
pub fn reach_words(bench: Bench, id: ButtonId) -> Option<String> {
    let cell = cell(bench, id)?;
    Some(match cell.way() {
        Some(way) => {
            let contact = way.contact.words().trim_end_matches(" finger");
            format!("{contact}, {}", short(way.ease))
        }
        None => "not reached".into(),
    })
}

fn short(ease: Ease) -> &'static str {
    match ease {
        Ease::Natural | Ease::Stretch => ease.words(),
        Ease::Move => "must move",
        Ease::CrossOver => "cross over",
    }
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
