//! The pages of the rules.

mod list;
mod page;

use leptos::prelude::*;
use leverwright_core::rules;

use crate::route::Route;
use list::RuleList;
use page::RulePage;

/// All rules, or the page of one.
#[component]
pub fn RulesScreen(id: Option<String>) -> impl IntoView {
    let Some(id) = id else {
        return view! { <RuleList/> }.into_any();
    };
    match rules::rule(&id) {
        Some(rule) => view! { <RulePage rule/> }.into_any(),
        None => view! {
            <h1>"No such rule"</h1>
            <p>
                "There is no rule of that name. "
                <a href=Route::Rules(None).href()>"See all rules"</a> "."
            </p>
        }
        .into_any(),
    }
}
