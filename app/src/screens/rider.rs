//! The Rider screen.

use leptos::prelude::*;

/// The Rider screen.
#[component]
pub fn RiderScreen() -> impl IntoView {
    view! { <h1>"Rider"</h1> }
}
