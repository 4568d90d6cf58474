//! A plan that came: what it is, and what becomes of it.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::document::Opened;
use leverwright_core::plan::Plan;
use leverwright_core::rules;
use leverwright_core::sheet::Readiness;
use leverwright_core::situation::Situation;
use leverwright_core::summary;
use leverwright_core::tally::Tally;
use std::sync::Arc;

use super::merge::MergeWith;
use crate::arrivals::{Arrivals, Origin};
use crate::drawing::ThumbnailView;
use crate::focus::focus_soon;
use crate::route::Route;
use crate::screens::plans::SharedComputer;
use crate::storage::Library;

/// The plan in short, then the choice: beside what is here, or into a copy.
#[component]
pub fn Came(from: Origin, opened: Opened) -> impl IntoView {
    let library = Library::here();
    let copies = library.copies_of(&opened.plan);
    let heading = match (&from, copies.is_empty()) {
        (Origin::Link, true) => "A plan came by link",
        (Origin::Link, false) => "A plan came by link, and a copy of it is here",
        (Origin::File(_), _) => "A plan came as a file, and a copy of it is here",
    };
    let alone = copies.is_empty();
    let opened = Arc::new(opened);
    let plan = opened.plan.clone();
    view! {
        <section aria-labelledby="came">
            <h2 id="came">{heading}</h2>
            <InShort plan/>
            {(!alone).then(|| view! {
                <MergeWith theirs=Arc::new(opened.plan.clone()) copies/>
            })}
            <NewPlan from opened alone/>
        </section>
    }
}

/// Name, drawing, a sentence for each hand, how far it is.
#[component]
fn InShort(plan: Plan) -> impl IntoView {
    let situation = Situation::of(&plan);
    let said = summary::of(&situation);
    let tally = Tally::of(&plan, &rules::findings_in(&situation));
    let verdict = format!("{}: {tally}", Readiness::of(&tally).words());
    let details = match plan.has_hand_details() {
        true => "It came with rider details.",
        false => "It came without rider details: what the hands can do is not asked yet.",
    };
    view! {
        <div class="came">
            <ThumbnailView bike=plan.bike.clone()/>
            <div>
                <p class="came-name"><strong>{plan.name.to_string()}</strong>", revision "{plan.revision}</p>
                <p>{said.left}" "{said.right}{said.centre.map(|centre| format!(" {centre}"))}</p>
                <p class="quiet">{plan.bike.in_short()}". "{verdict}". "{details}</p>
            </div>
        </div>
    }
}

/// As a plan of its own, or not at all.
#[component]
fn NewPlan(
    from: Origin,
    opened: Arc<Opened>,
    /// Whether that is the only way.
    alone: bool,
) -> impl IntoView {
    let (library, arrivals) = (Library::here(), Arrivals::here());
    let take_in = move |_| {
        library.take_in(&from, Opened::clone(&opened));
        go_on(arrivals, Route::Layout);
    };
    let leave = move |_| {
        go_on(arrivals, Route::Plans);
    };
    let words = match alone {
        true => "Open as a new plan",
        false => "Open as a new plan instead",
    };
    view! {
        {alone.then(|| view! { <SharedComputer/> })}
        <div class="acts">
            <button type="button" class:main=alone on:click=take_in>{words}</button>
            <button type="button" on:click=leave>"Do not open it"</button>
        </div>
    }
}

/// To what came next, or else to another screen.
pub fn go_on(arrivals: Arrivals, to: Route) {
    match arrivals.settle() {
        true => focus_soon("main"),
        false => to.go(),
    }
}
