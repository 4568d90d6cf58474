//! What rides under the pointer while it drags.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::tally::Tally;

use super::bench::{Answer, Bench};
use super::words::{FunctionIcons, function_words, load_words};
use crate::after_paint::a_frame_behind;
use crate::gesture::{At, Load, Spot, put};

/// The load under the pointer, with what letting it go there would do.
#[component]
pub fn Ghost() -> impl IntoView {
    let bench = Bench::here();
    let dragged = Memo::new(move |_| bench.shown.with(|c| c.load.filter(|_| c.drags)));
    // Where it was let go it stays until it goes.
    let at = Memo::new(move |last: Option<&Option<At>>| {
        bench.drag_at().or_else(|| last.copied().flatten())
    });
    let place = move || {
        let at = at.get();
        at.map(|at| format!("translate({:.0}px, {:.0}px)", at.x, at.y))
    };
    // As far to the right as there is room for its words.
    let nudge = move || {
        let at = at.get();
        at.map(|at| format!("min(0.75rem, 100vw - 100% - 1rem - {:.0}px) 0.75rem", at.x))
    };
    move || {
        let load = dragged.get()?;
        let function = match load {
            Load::Function(function) => Some(function),
            Load::Blank => None,
            // What it did when it was picked up.
            Load::Button(id) => untrack(|| bench.slot(id)).and_then(|slot| slot.look.function),
        };
        let outcome = a_frame_behind(move || outcome(bench, load));
        Some(view! {
            <div class="ghost" aria-hidden="true" style:transform=place>
                <p class="load">
                    <FunctionIcons function/>
                    {function_words(function)}
                </p>
                <p class="outcome" style:translate=nudge>{move || outcome.get()}</p>
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
                Some(Answer::Takes) => match foreseen(bench, load, id) {
                    Some(tally) => format!("to the {place}: {tally}"),
                    None => format!("to the {place}"),
                },
                Some(Answer::Refuses(_)) => format!("not on the {place}"),
                Some(Answer::Carried) | None => "back".into(),
            }
        }
        (Some(Spot::Tray | Spot::Away), Load::Button(_)) => "leaves the button blank".into(),
        _ => "changes nothing".into(),
    }
}

/// How many findings would stand then, once that is worked out.
fn foreseen(bench: Bench, load: Load, id: ButtonId) -> Option<Tally> {
    let edit = put(load, Spot::Button(id))?;
    bench.workspace.tally_after(&edit)
}
