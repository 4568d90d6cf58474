//! Words for what is carried and for what slots and cells show.

use leverwright_core::Vocabulary;
use leverwright_core::cockpit::Ease;
use leverwright_core::layout::Hold;
use leverwright_core::rider::Difficulty;

use super::bench::Bench;
use crate::gesture::Load;

/// With a capital letter in front.
pub fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// What is carried: "rear easier", "left outer paddle".
pub fn load_words(bench: Bench, load: Load) -> String {
    match load {
        Load::Function(function) => function.words().into(),
        Load::Blank => "blank".into(),
        Load::Button(id) => bench
            .slot(id)
            .map_or_else(String::new, |slot| slot.place),
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

/// The class by which the drawing hatches a button.
pub fn ease_class(ease: Ease) -> &'static str {
    match ease {
        Ease::Natural => "reach-natural",
        Ease::Stretch => "reach-stretch",
        Ease::Move | Ease::CrossOver => "reach-move",
    }
}
