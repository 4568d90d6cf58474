//! What a screen shows while no plan is open.

use leptos::prelude::*;

use crate::route::Route;

/// Says what to do next.
#[component]
pub fn NoPlan() -> impl IntoView {
    view! {
        <p>"No plan is open. "
            <a href=Route::Plans.href()>"Choose one, or start from a template"</a> "."
        </p>
    }
}
