//! All rules by what they watch over.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::rules::{self, Family, Rule};

use crate::route::Route;
use crate::widgets::SeverityMark;

/// All rules by family.
#[component]
pub fn RuleList() -> impl IntoView {
    let families = Family::ALL
        .iter()
        .map(|family| view! { <FamilyList family=*family/> })
        .collect_view();
    view! {
        <h1>"Rules"</h1>
        <p>
            "What Leverwright looks at, with what each rule says, why, and what to do. Severity \
            here is the heaviest that a rule can weigh; a finding may weigh less."
        </p>
        {families}
    }
}

#[component]
fn FamilyList(family: Family) -> impl IntoView {
    let of_family: Vec<&'static Rule> = rules::ALL
        .iter()
        .copied()
        .filter(|rule| rule.family == family)
        .collect();
    (!of_family.is_empty()).then(|| {
        let items = of_family.into_iter().map(item).collect_view();
        view! {
            <section class="rule-family">
                <h2>{family.words()}</h2>
                <ul class="rule-list">{items}</ul>
            </section>
        }
    })
}

fn item(rule: &'static Rule) -> impl IntoView {
    view! {
        <li>
            <SeverityMark severity=rule.severity/>
            <a href=Route::Rules(Some(rule.id.to_owned())).href()>{rule.title}</a>
        </li>
    }
}
