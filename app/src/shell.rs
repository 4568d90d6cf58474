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

use crate::after_paint::a_frame_behind;
use crate::parts;
use crate::route::{Route, current_route};
use crate::screens::PlansScreen;
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
    let spoken = a_frame_behind(move || workspace.spoken.get());
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
                Route::Plans => Some(view! { <PlansScreen/> }.into_any()),
                other => parts::screen(&other),
            }}
        </main>
        <StatusLine/>
        <Footer/>
        <p class="live unseen" role="status" aria-live="polite">
            {move || spoken.get()}
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
