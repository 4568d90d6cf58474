//! What rides under the pointer while it drags.

use leptos::prelude::*;

use super::bench::{Answer, Bench};
use super::words::{FunctionIcons, function_words, load_words};
use crate::gesture::{Load, Spot};

/// The load under the pointer, with what letting it go there would do.
#[component]
pub fn Ghost() -> impl IntoView {
    let bench = Bench::here();
    let dragged = Memo::new(move |_| bench.drag_at().and(bench.load.get()));
    let place = move || {
        let at = bench.drag_at();
        at.map(|at| format!("translate({:.0}px, {:.0}px)", at.x, at.y))
    };
    move || {
        let load = dragged.get()?;
        let function = match load {
            Load::Function(function) => Some(function),
            Load::Blank => None,
            Load::Button(id) => bench.slot(id).and_then(|slot| slot.look.function),
        };
        Some(view! {
            <div class="ghost" aria-hidden="true" style:transform=place>
                <p class="load">
                    <FunctionIcons function/>
                    {function_words(function)}
                </p>
                <p class="outcome">{move || outcome(bench, load)}</p>
            </div>
        })
    }
}

fn outcome(bench: Bench, load: Load) -> String {
    let spot = bench.over.get();
    match (spot, load) {
        (Some(Spot::Button(id)), _) => {
            let place = load_words(bench, Load::Button(id));
            match bench.answer(id) {
                Some(Answer::Takes) => format!("to the {place}"),
                Some(Answer::Refuses(_)) => format!("not on the {place}"),
                Some(Answer::Carried) | None => "back".into(),
            }
        }
        (Some(Spot::Tray | Spot::Away), Load::Button(_)) => "leaves the button blank".into(),
        _ => "changes nothing".into(),
    }
}
