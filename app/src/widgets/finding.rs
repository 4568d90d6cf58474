//! One finding: what it says, where, and what to do about it.

mod accept;
mod fix;

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::finding::{Acceptable, Finding, Fix};
use leverwright_core::rules;
use leverwright_core::spot::Screen;

use crate::route::Route;
use crate::widgets::{SeverityMark, SpotList};
use crate::workspace::Workspace;
use accept::{AcceptForm, Accepted, Lapsed};
pub use fix::FixButton;

/// A finding as a card. Its places light up while pointer or focus is on it.
#[component]
pub fn FindingCard(
    /// The finding.
    finding: Finding,
    /// Called after a fix or a decision, when the card may have gone: the place
    /// to put the focus.
    #[prop(into)]
    acted: Callback<()>,
    /// Fixes that stand above all cards, not to be said again in each.
    #[prop(optional)]
    shared: Option<Memo<Vec<Fix>>>,
) -> impl IntoView {
    let workspace = Workspace::here();
    // Plain values: the browser tells of a lost focus even after the card's own
    // signals are gone.
    let places = Arc::new(finding.places.clone());
    let light = {
        let places = Arc::clone(&places);
        move || workspace.lit.set(places.to_vec())
    };
    let darken = move || {
        if workspace.lit.with_untracked(|lit| *lit == *places) {
            workspace.lit.set(Vec::new());
        }
    };
    // A card that goes takes its light along.
    on_cleanup(darken.clone());
    let (light_too, darken_too) = (light.clone(), darken.clone());
    let accepted = workspace
        .seen
        .with_untracked(|seen| seen.as_ref()?.plan.acceptance_of(&finding).cloned());
    let fixes = fixes_of(workspace, finding.clone());
    let title = title(workspace, &finding);
    // An open finding stands under a heading that says its severity.
    let severity_said = accepted.is_none();
    let lapsed = workspace
        .seen
        .with_untracked(|seen| seen.as_ref()?.plan.lapsed_acceptance_of(&finding).cloned())
        .map(|acceptance| view! { <Lapsed acceptance/> });
    let decision = match accepted {
        Some(acceptance) => view! { <Accepted acceptance title=title.clone() acted/> }.into_any(),
        None if finding.acceptable == Acceptable::Never => view! {
            <p class="quiet">"This can never be accepted: it must be fixed."</p>
        }
        .into_any(),
        None => {
            view! { <AcceptForm finding=finding.clone() title=title.clone() acted/> }.into_any()
        }
    };
    view! {
        <article class="finding" aria-label=title
            on:pointerenter=move |_| light() on:pointerleave=move |_| darken()
            on:focusin=move |_| light_too() on:focusout=move |_| darken_too()>
            <p class="says">
                <span aria-hidden=severity_said.then_some("true")>
                    <SeverityMark severity=finding.severity/>
                </span>
                " "{finding.message.clone()}
            </p>
            <Places finding=finding.clone()/>
            {move || {
                let (own, above) = told_once(fixes.get(), shared);
                view! { <Fixes fixes=own above acted/> }
            }}
            <Noted finding=finding.clone()/>
            {lapsed}
            <div class="more">
                {decision}
                <AboutRule id=finding.rule key=finding.key()/>
            </div>
        </article>
    }
}

/// What would remove a finding as things stand: other changes alter that while
/// the finding says the same.
fn fixes_of(workspace: Workspace, shown: Finding) -> Memo<Vec<Fix>> {
    Memo::new(move |_| {
        let seen = workspace.seen.get();
        let mut findings = seen.iter().flat_map(|seen| &seen.derived.findings);
        let same = findings.find(|found| {
            (found.rule, &found.places, &found.message)
                == (shown.rule, &shown.places, &shown.message)
        });
        same.map_or_else(Vec::new, |found| found.fixes.clone())
    })
}

/// The fixes that are not shared, and whether any other is.
fn told_once(mut fixes: Vec<Fix>, shared: Option<Memo<Vec<Fix>>>) -> (Vec<Fix>, bool) {
    let all = fixes.len();
    if let Some(shared) = shared {
        shared.with(|shared| fixes.retain(|fix| shared.iter().all(|one| one.edit != fix.edit)));
    }
    let above = fixes.len() < all;
    (fixes, above)
}

/// What a finding is called: its rule, and the places that tell it from others
/// of the same rule.
fn title(workspace: Workspace, finding: &Finding) -> String {
    let title = rules::rule(finding.rule).map_or(finding.rule, |rule| rule.title);
    let places: Vec<String> = workspace.plan.with_untracked(|plan| {
        let bike = plan.as_ref().map(|plan| &plan.bike);
        let words = |bike| finding.places.iter().map(move |place| place.words(bike));
        bike.map_or_else(Vec::new, |bike| words(bike).collect())
    });
    match places.is_empty() {
        true => title.to_owned(),
        false => format!("{title}: {}", places.join(", ")),
    }
}

/// Where it is, with the balloon numbers of the drawing.
#[component]
fn Places(finding: Finding) -> impl IntoView {
    let places = Workspace::here().plan.with_untracked(|plan| {
        let Some(plan) = plan else { return Vec::new() };
        finding
            .places
            .iter()
            .map(|place| (place.balloon(&plan.bike), place.words(&plan.bike)))
            .collect()
    });
    let items = places
        .into_iter()
        .map(|(balloon, words)| {
            let number = balloon.map(|n| view! { <span class="balloon-number">{n}</span>" " });
            view! { <li>{number}{words}</li> }
        })
        .collect_view();
    (!finding.places.is_empty())
        .then(|| view! { <ul class="places" aria-label="Places">{items}</ul> })
}

/// Where it is noted or mended, unless that is the screen it stands on.
#[component]
fn Noted(finding: Finding) -> impl IntoView {
    let plan = Workspace::here().plan.get_untracked()?;
    let mut spots = finding.spots(&plan);
    let on_layout = Route::now() == Route::Layout;
    spots.retain(|spot| !(on_layout && spot.screen() == Screen::Layout));
    let bike = plan.bike.clone();
    (!spots.is_empty()).then(|| view! { <SpotList label="Noted under" spots bike/> })
}

/// What would remove it, best first, each a button; what stands above the list already is only told of.
#[component]
fn Fixes(fixes: Vec<Fix>, above: bool, acted: Callback<()>) -> impl IntoView {
    let buttons = fixes
        .into_iter()
        .map(|fix| view! { <FixButton fix acted/> })
        .collect_view();
    view! {
        <div class="fixes">{buttons}</div>
        {above.then(|| view! { <p class="quiet">"A change for several, above, answers it."</p> })}
    }
}

/// The way to the rule's page.
#[component]
fn AboutRule(id: &'static str, key: String) -> impl IntoView {
    let workspace = Workspace::here();
    let link = format!("why-{key}");
    let name = link.clone();
    let title = rules::rule(id).map_or(id, |rule| rule.title);
    view! {
        <p class="about-rule">
            <a id=link href=Route::Rules(Some(id.to_owned())).href()
                on:click=move |_| workspace.left_at.set(Some(name.clone()))>
                "Why"<span class="unseen">": "{title}</span>
            </a>
        </p>
    }
}

/// Makes a decision about a finding, and says so.
fn decide(workspace: Workspace, edit: PlanEdit, said: &str, acted: Callback<()>) {
    if !untrack(|| workspace.foresees()) && workspace.commit(Edit::Plan(edit)) {
        workspace.say(format!("{said} {}.", workspace.tally().unwrap_or_default()));
        acted.run(());
    }
}
