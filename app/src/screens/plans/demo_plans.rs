//! Demo plans to look around in.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{Demo, DemoId, demo};

use crate::drawing::ThumbnailView;
use crate::route::Route;
use crate::storage::Library;

/// The demo plans with their stories.
#[component]
pub fn DemoPlans() -> impl IntoView {
    let items = DemoId::ALL
        .iter()
        .map(|id| view! { <DemoItem demo=demo(*id)/> })
        .collect_view();
    view! {
        <section class="demo-plans" aria-labelledby="demo-plans">
            <h2 id="demo-plans">"Demo plans"</h2>
            <p>"Invented riders and bikes, to look around in. Each opens as a new plan."</p>
            <ul>{items}</ul>
        </section>
    }
}

/// Opens a demo plan and goes on to its layout.
#[component]
fn DemoItem(demo: Demo) -> impl IntoView {
    let library = Library::here();
    let Demo {
        id,
        title,
        story,
        plan,
    } = demo;
    let about = format!("demo-{}", id.code());
    let bike = plan.bike.clone();
    let start = move |_| {
        library.start_afresh(&plan);
        Route::Layout.go();
    };
    view! {
        <li>
            <button type="button" class="template" aria-describedby=about.clone() on:click=start>
                <ThumbnailView bike/>
                <span>{title}</span>
            </button>
            <p id=about>{story}</p>
        </li>
    }
}
