//! The Sheet screen.

use leptos::prelude::*;

/// The Sheet screen.
#[component]
pub fn SheetScreen() -> impl IntoView {
    view! { <h1>"Sheet"</h1> }
}
