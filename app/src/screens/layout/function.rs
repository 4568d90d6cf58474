//! A function as its icon and its word.

use leptos::prelude::*;
use leverwright_core::drawing::icons::{Icon, VIEW_BOX};
use leverwright_core::function::Function;

/// One icon of the set; always beside a word.
#[component]
pub fn IconMark(icon: Icon) -> impl IntoView {
    view! {
        <svg class="icon" viewBox=VIEW_BOX aria-hidden="true">
            <path class="icon-strokes" d=icon.strokes()></path>
            <path class="icon-solid" d=icon.solid()></path>
        </svg>
    }
}

/// What a function works on and which way, as icons.
#[component]
pub fn FunctionIcon(
    /// The function; `None` is left blank.
    function: Option<Function>,
) -> impl IntoView {
    let (what, way) = function.map_or((Icon::Blank, None), Icon::of_function);
    view! {
        <span class="function-icon">
            <IconMark icon=what/>
            {way.map(|way| view! { <IconMark icon=way/> })}
        </span>
    }
}

/// The word of a function, or of none.
pub fn function_words(function: Option<Function>) -> &'static str {
    use leverwright_core::Vocabulary;
    function.map_or("blank", Vocabulary::words)
}
