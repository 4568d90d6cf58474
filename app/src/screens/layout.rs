//! The Layout screen.

mod walk;

use leptos::prelude::*;

/// The Layout screen.
#[component]
pub fn LayoutScreen() -> impl IntoView {
    view! { <h1>"Layout"</h1> }
}
