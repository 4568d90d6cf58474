//! The browser front end: draws, listens, stores. It decides nothing about
//! bikes or hands: that is the core's.

mod drawing;
mod erase;
mod route;
mod screens;
mod shell;
mod today;
mod widgets;
mod workspace;

use leptos::prelude::*;

use shell::Shell;
use workspace::Workspace;

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    provide_context(Workspace::new());
    view! { <Shell/> }
}
