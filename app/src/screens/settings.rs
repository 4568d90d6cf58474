//! The Settings screen.

use leptos::prelude::*;

/// The Settings screen.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    view! { <h1>"Settings"</h1> }
}
