//! Templates to start from.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::{BarKind, Bike};

use crate::drawing::ThumbnailView;
use crate::parts::{Part, desk, once_here};
use crate::route::Route;
use crate::storage::Library;
use crate::workspace::Workspace;

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
    let bikes: Vec<(TemplateId, Bike)> = TemplateId::ALL
        .iter()
        .map(|id| (*id, template(*id).bike))
        .filter(|(_, bike)| bike.bar.kind == bar)
        .collect();
    (!bikes.is_empty()).then(|| {
        let items = bikes
            .into_iter()
            .map(|(id, bike)| view! { <li><StartButton id bike/></li> })
            .collect_view();
        view! {
            <section>
                <h3 class="bar-kind">{bar.words()}</h3>
                <ul class="templates">{items}</ul>
            </section>
        }
    })
}

/// Starts a plan from a template and goes on to the rider.
#[component]
fn StartButton(id: TemplateId, bike: Bike) -> impl IntoView {
    let (library, workspace) = (Library::here(), Workspace::here());
    let start = move |_| {
        once_here(Part::Desk, workspace, move || {
            library.start_afresh(&(desk().from_template)(id));
            Route::Rider.go();
        });
    };
    view! {
        <button type="button" class="template" on:click=start>
            <ThumbnailView bike/>
            <span>{id.words()}</span>
        </button>
    }
}
