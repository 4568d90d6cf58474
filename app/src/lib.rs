//! The browser front end: draws, listens, stores. It decides nothing about
//! bikes or hands: that is the core's.

mod after_paint;
mod alone;
mod arrivals;
mod changes;
mod drafts;
mod drawing;
mod erase;
mod evidence;
mod focus;
mod gesture;
mod number;
mod observe;
mod parts;
mod repeated_taps;
mod route;
mod screens;
mod settings;
mod shell;
mod slices;
mod start;
mod storage;
mod today;
mod widgets;
mod words;
mod workspace;

use leptos::prelude::*;

pub use shell::crash::{show as show_crash, tell_on_panic};
pub use start::start;

use arrivals::Arrivals;
use repeated_taps::filter_taps;
use screens::RideDesk;
use settings::Settings;
use shell::Shell;
use storage::Library;
use workspace::Workspace;

/// The whole page.
#[component]
pub fn App() -> impl IntoView {
    let workspace = Workspace::new();
    // Before all else, so that nothing can leave it in the address.
    let arrivals = Arrivals::new();
    arrivals.take_from_address(workspace);
    provide_context(arrivals);
    let settings = Settings::load();
    provide_context(workspace);
    provide_context(settings);
    provide_context(RideDesk::new(workspace));
    provide_context(Library::load(workspace));
    filter_taps(settings);
    view! { <Shell/> }
}
