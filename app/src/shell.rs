//! The frame around every screen.

mod arrival;
mod footer;
mod masthead;
mod navigation;
mod newer_version;
mod notices;
mod status;
mod undo;

pub mod crash;

use leptos::html;
use leptos::prelude::*;

use crate::route::{Route, current_route};
use crate::screens::{
    BikeScreen, CardScreen, CompareScreen, GearsScreen, LayoutScreen, OpenScreen, PlansScreen,
    PracticeScreen, ReviewScreen, RideScreen, RiderScreen, RulesScreen, SettingsScreen,
    ShareScreen, SheetScreen, StandScreen,
};
use crate::storage::Library;
use crate::workspace::Workspace;
use arrival::announce_arrival;
use footer::Footer;
use masthead::Masthead;
use navigation::Navigation;
use newer_version::keep_in_browser;
use notices::Notices;
use status::StatusLine;
use undo::{UndoBar, listen_for_undo_keys};

/// Heading, way between screens, acts on the whole plan, messages, and the
/// screen itself.
#[component]
pub fn Shell() -> impl IntoView {
    let route = current_route();
    let workspace = Workspace::here();
    let main = NodeRef::<html::Main>::new();
    listen_for_undo_keys(workspace);
    keep_in_browser(workspace, Library::here());
    announce_arrival(route, main);
    view! {
        <SkipLink main/>
        <header class="top">
            <Masthead/>
            <div class="dock">
                <Navigation route/>
                <UndoBar/>
            </div>
        </header>
        <Notices/>
        <main id="main" tabindex="-1" node_ref=main>
            {move || match route.get() {
                Route::Plans => view! { <PlansScreen/> }.into_any(),
                Route::Rider => view! { <RiderScreen/> }.into_any(),
                Route::Bike => view! { <BikeScreen/> }.into_any(),
                Route::Layout => view! { <LayoutScreen/> }.into_any(),
                Route::Gears => view! { <GearsScreen/> }.into_any(),
                Route::Ride => view! { <RideScreen/> }.into_any(),
                Route::Compare => view! { <CompareScreen/> }.into_any(),
                Route::Review => view! { <ReviewScreen/> }.into_any(),
                Route::Practice => view! { <PracticeScreen/> }.into_any(),
                Route::Sheet => view! { <SheetScreen/> }.into_any(),
                Route::Share => view! { <ShareScreen/> }.into_any(),
                Route::Open => view! { <OpenScreen/> }.into_any(),
                Route::Stand => view! { <StandScreen/> }.into_any(),
                Route::Card => view! { <CardScreen/> }.into_any(),
                Route::Settings => view! { <SettingsScreen/> }.into_any(),
                Route::Rules(id) => view! { <RulesScreen id/> }.into_any(),
            }}
        </main>
        <StatusLine/>
        <Footer/>
        <p class="live unseen" role="status" aria-live="polite">
            {move || workspace.spoken.get()}
        </p>
    }
}

/// The first stop of the keyboard: past everything that is on each screen.
#[component]
fn SkipLink(main: NodeRef<html::Main>) -> impl IntoView {
    let skip = move |event: leptos::ev::MouseEvent| {
        // The address names the screen, so the link must not change it.
        event.prevent_default();
        if let Some(main) = main.get_untracked() {
            let _ = main.focus();
        }
    };
    view! { <a class="skip" href="#main" on:click=skip>"Skip to the screen"</a> }
}
