//! The name of the program and of the open plan, and where the plan is kept.

use leptos::prelude::*;

use crate::after_paint::a_frame_behind;
use crate::route::Route;
use crate::storage::Library;
use crate::workspace::Workspace;

/// What stands on top of every screen.
#[component]
pub fn Masthead() -> impl IntoView {
    let workspace = Workspace::here();
    let library = Library::here();
    let name = Memo::new(move |_| {
        workspace
            .plan
            .with(|plan| plan.as_ref().map(|plan| plan.name.to_string()))
    });
    let standing = a_frame_behind(move || library.standing());
    let kept = move || {
        let standing = standing.get().map(|standing| standing.words());
        let elsewhere = library
            .is_open_elsewhere()
            .then_some("open in another tab, too");
        [standing, elsewhere]
            .into_iter()
            .flatten()
            .collect::<Vec<_>>()
            .join(", ")
    };
    view! {
        <div class="masthead">
            <a class="brand" href=Route::Plans.href()>"Leverwright"</a>
            <Show when=move || name.with(Option::is_some)>
                <p class="open-plan">
                    <span class="plan-name">{move || name.get()}</span>
                    <span class="kept quiet">{kept}</span>
                </p>
            </Show>
        </div>
    }
}
