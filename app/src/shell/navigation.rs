//! The way between screens, with what is missing on each.

mod more;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::sheet::Readiness;
use leverwright_core::tally::Tally;

use crate::focus::go_to;
use crate::route::Route;
use crate::workspace::Workspace;
use more::More;

/// The screens of the main job, in the order in which a shop works; any order
/// is allowed.
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
            <ul>
                {items}
                <More route/>
            </ul>
        </nav>
    }
}

#[component]
fn ScreenLink(screen: Route, route: ReadSignal<Route>) -> impl IntoView {
    let workspace = Workspace::here();
    let id = format!("missing-{}", screen.name().to_ascii_lowercase());
    let name = screen.name();
    let href = screen.href();
    let here = {
        let screen = screen.clone();
        Memo::new(move |_| route.get() == screen)
    };
    let leads_to_findings = screen == Route::Layout;
    let jump = move |event: leptos::ev::MouseEvent| {
        // Whoever is there already wants to see what the link counts.
        if leads_to_findings && here.get_untracked() {
            event.prevent_default();
            go_to("findings");
        }
    };
    let missing = Memo::new(move |_| missing(workspace, &screen).unwrap_or_default());
    view! {
        <li class:here=move || here.get()>
            <a href=href on:click=jump aria-current=move || here.get().then_some("page")
                aria-describedby=id.clone()>{name}</a>
            <span class="missing" id=id>{move || missing.get().words}</span>
            <span class="missing-short" aria-hidden="true">{move || missing.get().short}</span>
        </li>
    }
}

/// What is missing on a screen.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
struct Missing {
    words: String,
    /// For where there is little room.
    short: String,
}

impl Missing {
    fn new(words: String, short: String) -> Self {
        Missing { words, short }
    }

    fn counted(count: usize, one: &str, many: &str, none: &str) -> Self {
        match count {
            0 => Missing::new(none.to_owned(), String::new()),
            1 => Missing::new(format!("1 {one} open"), "1 open".to_owned()),
            n => Missing::new(format!("{n} {many} open"), format!("{n} open")),
        }
    }

    fn of_tally(tally: Tally) -> Self {
        let short = match (tally.must_fix, tally.check) {
            (0, 0) => String::new(),
            (0, n) => format!("{n} to check"),
            (n, _) => format!("{n} to fix"),
        };
        Missing::new(tally.to_string(), short)
    }
}

/// What is missing on a screen; nothing where there is nothing to say.
fn missing(workspace: Workspace, screen: &Route) -> Option<Missing> {
    let (plan, derived) = workspace.settled.get()?;
    match screen {
        Route::Rider => {
            let open = plan.rider.open_questions().len();
            Some(Missing::counted(
                open,
                "question",
                "questions",
                "all answered",
            ))
        }
        Route::Bike => {
            let open = plan.bike.open_points().len();
            Some(Missing::counted(open, "point", "points", "all noted"))
        }
        Route::Layout => Some(Missing::of_tally(Tally::of(&plan, &derived.findings))),
        Route::Sheet => {
            let verdict = Readiness::of(&Tally::of(&plan, &derived.findings)).words();
            Some(Missing::new(verdict.to_owned(), verdict.to_owned()))
        }
        _ => None,
    }
}
