//! The way between screens, with what is missing on each.

use leptos::prelude::*;
use leverwright_core::tally::Tally;

use crate::route::Route;
use crate::workspace::Workspace;

/// The screens, in the order in which a shop works; any order is allowed.
const SCREENS: [Route; 5] = [
    Route::Plans,
    Route::Rider,
    Route::Bike,
    Route::Layout,
    Route::Sheet,
];

/// Links to the screens. What is missing is each link's description.
#[component]
pub fn Navigation(route: ReadSignal<Route>) -> impl IntoView {
    let items = SCREENS
        .map(|screen| view! { <ScreenLink screen route/> })
        .collect_view();
    view! {
        <nav class="screens" aria-label="Screens">
            <ul>{items}</ul>
        </nav>
    }
}

#[component]
fn ScreenLink(screen: Route, route: ReadSignal<Route>) -> impl IntoView {
    let workspace = Workspace::here();
    let id = format!("missing-{}", screen.name().to_lowercase());
    let name = screen.name();
    let href = screen.href();
    let here = {
        let screen = screen.clone();
        Memo::new(move |_| route.get() == screen)
    };
    let missing = Memo::new(move |_| missing(workspace, &screen));
    view! {
        <li class:here=move || here.get()>
            <a href=href aria-current=move || here.get().then_some("page")
                aria-describedby=id.clone()>{name}</a>
            <span class="missing" id=id>{move || missing.get()}</span>
        </li>
    }
}

/// What is missing on a screen, in words; nothing where there is nothing to say.
fn missing(workspace: Workspace, screen: &Route) -> Option<String> {
    let plan = workspace.plan.get()?;
    match screen {
        Route::Rider => Some(match plan.rider.open_questions().len() {
            0 => "all answered".to_owned(),
            1 => "1 question open".to_owned(),
            n => format!("{n} questions open"),
        }),
        Route::Bike => Some(match plan.bike.open_points().len() {
            0 => "all noted".to_owned(),
            1 => "1 point open".to_owned(),
            n => format!("{n} points open"),
        }),
        Route::Layout => {
            let derived = workspace.derived.get()?;
            Some(Tally::of(&plan, &derived.findings).to_string())
        }
        _ => None,
    }
}
