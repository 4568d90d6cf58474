//! The pages of the rules.

use leptos::prelude::*;

/// All rules, or the page of one.
#[component]
pub fn RulesScreen(id: Option<String>) -> impl IntoView {
    view! { <h1>{id.unwrap_or_else(|| "Rules".into())}</h1> }
}
