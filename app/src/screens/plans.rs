//! The Plans screen.

use leptos::prelude::*;

/// The Plans screen.
#[component]
pub fn PlansScreen() -> impl IntoView {
    view! { <h1>"Plans"</h1> }
}
