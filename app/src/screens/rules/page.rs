//! The page of one rule.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Finding;
use leverwright_core::rules::{Origin, Rule};

use crate::route::Route;
use crate::widgets::{FindingCard, SeverityMark};
use crate::workspace::Workspace;

/// What a rule looks at, why, what to do, where it comes from, and what it says
/// about the open plan.
#[component]
pub fn RulePage(rule: &'static Rule) -> impl IntoView {
    view! {
        <p class="back"><a href=Route::Rules(None).href()>"All rules"</a></p>
        <h1>{rule.title}</h1>
        <p class="rule-weight">
            "Weighs at most: "<SeverityMark severity=rule.severity/>". Then "
            {rule.acceptable.words()}"."
        </p>
        <div class="rule-text">
            <h2>"What it looks at"</h2>
            <p>{rule.what}</p>
            <h2>"Why"</h2>
            <p>{rule.why}</p>
            <h2>"What to do"</h2>
            <p>{rule.remedy}</p>
            <h2>"Where it comes from"</h2>
            <p>{origin(rule.origin)}</p>
        </div>
        <Here id=rule.id/>
    }
}

fn origin(origin: Origin) -> String {
    match origin {
        Origin::CommonPractice => "Common practice among fitters.".to_owned(),
        Origin::OurJudgement => "Our own judgement, no published value.".to_owned(),
        Origin::Published(text) => format!("Published: {text}."),
    }
}

/// What the rule says about the open plan.
#[component]
fn Here(id: &'static str) -> impl IntoView {
    let workspace = Workspace::here();
    let findings = Memo::new(move |_| {
        let derived = workspace.derived.get()?;
        let of_rule = derived.findings.iter().filter(|finding| finding.rule == id);
        Some(of_rule.cloned().collect::<Vec<Finding>>())
    });
    move || {
        let findings = findings.get()?;
        Some(view! {
            <section class="findings" aria-labelledby="here">
                <h2 id="here">"In the open plan"</h2>
                {match findings.is_empty() {
                    true => view! { <p>"Nothing to say."</p> }.into_any(),
                    false => view! { <Cards findings/> }.into_any(),
                }}
            </section>
        })
    }
}

#[component]
fn Cards(findings: Vec<Finding>) -> impl IntoView {
    let acted = Callback::new(|()| ());
    let cards = findings
        .into_iter()
        .map(|finding| view! { <li><FindingCard finding acted/></li> })
        .collect_view();
    view! { <ul class="finding-list">{cards}</ul> }
}
