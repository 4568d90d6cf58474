//! Icons.

use leptos::prelude::*;
use leverwright_core::drawing::icons::{Icon, VIEW_BOX};

/// What something works on and which way, as one inline picture of the height of the text beside
/// it, which says the words.
///
/// A change alters what is drawn, not how many elements there are: that would cost every drop time.
#[component]
pub fn IconsView(
    /// What it works on.
    what: Icon,
    /// Which way, smaller and all strokes; may be missing.
    way: Option<Icon>,
) -> impl IntoView {
    let view_box = if way.is_some() { BOTH } else { VIEW_BOX };
    view! {
        <svg class="icon" viewBox=view_box aria-hidden="true" focusable="false">
            <IconShape icon=what/>
            <path class="icon-stroke" transform=BESIDE d=way.map_or("", Icon::strokes)></path>
        </svg>
    }
}

/// Room for an icon and one of four fifths of its size, beside it at mid-height.
const BOTH: &str = "0 0 43.2 24";
const BESIDE: &str = "translate(24 2.4) scale(0.8)";

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
