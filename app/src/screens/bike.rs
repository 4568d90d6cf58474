//! The Bike screen.

use leptos::prelude::*;

/// The Bike screen.
#[component]
pub fn BikeScreen() -> impl IntoView {
    view! { <h1>"Bike"</h1> }
}
