//! One icon.

use leptos::prelude::*;
use leverwright_core::drawing::icons::{Icon, VIEW_BOX};

/// An icon as an inline picture of the height of the text beside it, which says the word.
#[component]
pub fn IconView(
    /// Which one.
    icon: Icon,
) -> impl IntoView {
    view! {
        <svg class="icon" viewBox=VIEW_BOX aria-hidden="true" focusable="false">
            <IconShape icon/>
        </svg>
    }
}

/// The lines of an icon, for use inside another picture.
#[component]
pub fn IconShape(
    /// Which one.
    icon: Icon,
) -> impl IntoView {
    view! {
        <path class="icon-stroke" d=icon.strokes()></path>
        <path class="icon-solid" d=icon.solid()></path>
    }
}
