//! Words and icons for functions, for what is carried, and for cells.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::coverage::Cell;
use leverwright_core::drawing::icons::Icon;
use leverwright_core::function::Function;
use leverwright_core::layout::Hold;
use leverwright_core::rider::Difficulty;

use super::bench::Bench;
use crate::drawing::IconsView;
use crate::gesture::Load;
pub use crate::words::capitalised;

/// What is carried: "rear easier", "left outer paddle".
pub fn load_words(bench: Bench, load: Load) -> String {
    match load {
        Load::Function(function) => function.words().into(),
        Load::Blank => "blank".into(),
        Load::Button(id) => bench.slot(id).map_or_else(String::new, |slot| slot.place),
    }
}

/// What a hold does: "repeats, 3 cogs", "lights".
pub fn hold_words(hold: Hold) -> String {
    match hold {
        Hold::Repeats(run) => format!("repeats, {run}"),
        Hold::Does(function) => function.to_string(),
    }
}

/// How hard something is: the step in words, or that nobody asked.
pub fn step_words(step: Option<Difficulty>) -> &'static str {
    step.map_or("not asked yet", Vocabulary::words)
}

/// How one hand meets a button: "thumb, stretch, takes effort", or why not.
pub fn cell_words(cell: &Cell) -> String {
    match cell {
        Cell::Reached(way) | Cell::ByLettingGo(way) => {
            format!("{}, {}, {}", way.contact, way.ease, step_words(way.step))
        }
        Cell::No(why) => why.to_string(),
    }
}

/// What a function works on and which way, as icons; `None` is left blank.
#[component]
pub fn FunctionIcons(function: Option<Function>) -> impl IntoView {
    let (what, way) = function.map_or((Icon::Blank, None), Icon::of_function);
    view! {
        <span class="function-icons"><IconsView what way/></span>
    }
}

/// The word of a function, or of none.
pub fn function_words(function: Option<Function>) -> &'static str {
    function.map_or("blank", Vocabulary::words)
}

/// What the name of a function leaves open, in a rider's words.
pub fn gloss(function: Option<Function>) -> impl IntoView + use<> {
    let words = function.and_then(Function::gloss);
    words.map(|words| view! { <span class="gloss"><span class="dash">" – "</span>{words}</span> })
}
