//! The three checks: what each is for and how it stands.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::proof::{Progress, Proof, ProofState, Run, comes_first};
use leverwright_core::record::Check;

use super::HEADING;
use super::desk::CheckDesk;
use crate::erase::view_of;
use crate::route::Route;
use crate::words::capitalised;
use crate::workspace::Workspace;

/// The way into each check.
#[component]
pub fn Overview() -> impl IntoView {
    let workspace = Workspace::here();
    view! {
        <h1 id=HEADING tabindex="-1">"Stand check"</h1>
        <p class="lead">
            "Prove what was built, one step at a time: first on the stand, then with the rider, \
            then on a first ride. Every step is kept at once; you may stop and come back."
        </p>
        {view_of(move || workspace.plan.get().map(|plan| checks(&plan)))}
    }
}

fn checks(plan: &Plan) -> impl IntoView + use<> {
    let proof = Proof::of(plan);
    let [wired, tried] = proof.words();
    let items = Check::ALL
        .iter()
        .map(|check| card(plan, *check))
        .collect_view();
    view! {
        <section class="proved-now" aria-labelledby="proved-now">
            <h2 id="proved-now">"What is proved"</h2>
            <p class="quiet">{format!("Revision {}, code {}", plan.revision, proof.code)}</p>
            <p>{wired}</p>
            {since(&proof.wired)}
            <p>{tried}</p>
            {since(&proof.tried)}
        </section>
        <ul class="checks">{items}</ul>
        <p class="to-card"><a class="act" href=Route::Card.href()>"Road card"</a></p>
    }
}

/// What changed since it stood.
fn since(state: &ProofState) -> Option<impl IntoView + use<>> {
    let ProofState::Lapsed { since, .. } = state else {
        return None;
    };
    let items = since.iter().map(|difference| {
        let words = format!("{}.", difference.words);
        view! { <li>{words}</li> }
    });
    (!since.is_empty()).then(|| view! { <ul class="since">{items.collect_view()}</ul> })
}

fn card(plan: &Plan, check: Check) -> impl IntoView + use<> {
    let run = Run::of(plan, check);
    let first = comes_first(plan, check);
    let (words, act) = standing(&run);
    let outdated = (run.outdated > 0).then(|| {
        format!(
            "{} steps were done for an earlier revision. The plan changed since, so they no longer count.",
            run.outdated
        )
    });
    let name = capitalised(check.words());
    let begin = match first {
        Some(first) => view! { <p class="comes-first">{first}</p> }.into_any(),
        None => view! {
            <a class="act main" href=CheckDesk::href(check)>{format!("{act} the {check}")}</a>
        }
        .into_any(),
    };
    view! {
        <li>
            <h2>{name}</h2>
            <p>{what_for(check)}</p>
            <p><strong>{words}</strong></p>
            {outdated.map(|words| view! { <p class="outdated">{words}</p> })}
            {begin}
        </li>
    }
}

/// How it stands, and what the way in says.
fn standing(run: &Run) -> (String, &'static str) {
    let (done, of) = run.count();
    match run.progress() {
        Progress::Proved => ("All of it is OK for this revision.".into(), "Look at"),
        Progress::GiveYourWord => (
            "Every step is OK. The last word is open.".into(),
            "Go on with",
        ),
        Progress::MendBrake(_) => ("A brake is to be mended first.".into(), "Go on with"),
        Progress::Differs(count) => (
            format!("{count} of {of} steps to mend and repeat."),
            "Go on",
        ),
        Progress::ChangeLayout => (
            "Something was missed twice in one place.".into(),
            "Go on with",
        ),
        Progress::Next(_) if !run.has_begun() => (format!("{of} steps, none done."), "Begin"),
        Progress::Next(_) => (format!("{done} of {of} steps done."), "Go on with"),
    }
}

const fn what_for(check: Check) -> &'static str {
    match check {
        Check::Stand => {
            "By the shop, bike in the stand. Brakes first, then full lock, every button, blank \
             ones too, and all of it again after switching off and on."
        }
        Check::Rider => {
            "The bike held still or on a trainer; own gloves, eyes up, every position used. Two \
             misses in one place: change the layout there."
        }
        Check::FirstRide => {
            "Dry, flat, closed to traffic, a helper beside. Walking pace; stops before shifts."
        }
    }
}
