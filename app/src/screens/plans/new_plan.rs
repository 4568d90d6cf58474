//! Templates to start from.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::BarKind;
use leverwright_core::plan::Plan;

use crate::drawing::ThumbnailView;
use crate::route::Route;
use crate::storage::Library;

/// The templates, grouped by bar.
#[component]
pub fn NewPlan() -> impl IntoView {
    let groups = BarKind::ALL
        .iter()
        .map(|bar| view! { <BarGroup bar=*bar/> })
        .collect_view();
    view! {
        <section class="new-plan" aria-labelledby="new-plan">
            <h2 id="new-plan">"New plan"</h2>
            <div class="bar-groups">{groups}</div>
        </section>
    }
}

#[component]
fn BarGroup(bar: BarKind) -> impl IntoView {
    let plans: Vec<Plan> = TemplateId::ALL
        .iter()
        .map(|id| template(*id).plan(id.words()))
        .filter(|plan| plan.bike.bar.kind == bar)
        .collect();
    (!plans.is_empty()).then(|| {
        let items = plans
            .into_iter()
            .map(|plan| view! { <li><StartButton plan/></li> })
            .collect_view();
        view! {
            <section>
                <h3 class="bar-kind">{bar.words()}</h3>
                <ul class="templates">{items}</ul>
            </section>
        }
    })
}

/// Starts a plan from another and goes on to the rider.
#[component]
fn StartButton(plan: Plan) -> impl IntoView {
    let library = Library::here();
    let words = plan.name.to_string();
    let bike = plan.bike.clone();
    let start = move |_| {
        library.start_afresh(&plan);
        Route::Rider.go();
    };
    view! {
        <button type="button" class="template" on:click=start>
            <ThumbnailView bike/>
            <span>{words}</span>
        </button>
    }
}
