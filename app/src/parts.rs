//! The parts in which the program comes.
//!
//! The first shows the list of plans and lets one be chosen: it is all that a
//! first visit waits for. What works at an open plan follows at once, the
//! further screens when one of them is gone to. In builds that are not split
//! everything is there from the start.
//!
//! What the first part calls by its own name is linked into it. So it reaches
//! what works at an open plan through [`desk`] alone; `cargo xtask size` tells
//! when something slipped in.

mod desk;
mod fetch;
mod further;

use std::sync::OnceLock;

use leptos::prelude::*;

use crate::route::Route;
use crate::workspace::{Offer, Workspace};
pub use desk::Desk;
pub use fetch::NotFetched;
use further::Further;

/// A part that comes after the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Part {
    /// What works at an open plan, with the screens of the main job.
    Desk,
    /// The further screens, which need the desk, too.
    Further,
}

static DESK: OnceLock<Desk> = OnceLock::new();
static FURTHER: OnceLock<Further> = OnceLock::new();

impl Part {
    /// What a screen needs; `None`: the first part is enough.
    pub fn of(route: &Route) -> Option<Part> {
        match route {
            Route::Plans => None,
            Route::Rider | Route::Bike | Route::Layout | Route::Sheet => Some(Part::Desk),
            _ => Some(Part::Further),
        }
    }

    /// Whether it can be used.
    pub fn is_here(self) -> bool {
        let further = self == Part::Desk || FURTHER.get().is_some();
        fetch::comes_with_the_first() || (DESK.get().is_some() && further)
    }

    /// Fetches it, unless it is here.
    ///
    /// # Errors
    /// When it could not be fetched; the next try starts afresh.
    pub async fn fetch(self) -> Result<(), NotFetched> {
        if !Part::Desk.is_here() {
            // Two at once bring the same.
            let _ = DESK.set(fetch::desk().await?);
        }
        if !self.is_here() {
            let _ = FURTHER.set(fetch::further().await?);
        }
        Ok(())
    }
}

/// What works at an open plan. No plan is open, and none is read, before it is
/// here.
pub fn desk() -> &'static Desk {
    match fetch::comes_with_the_first() {
        true => DESK.get_or_init(desk::all),
        false => DESK.get().expect("fetched before a plan is opened"),
    }
}

/// A screen that [`is_here`].
pub fn screen(route: &Route) -> Option<AnyView> {
    let further = || match fetch::comes_with_the_first() {
        true => Some(FURTHER.get_or_init(further::all)),
        false => FURTHER.get(),
    };
    match Part::of(route)? {
        Part::Desk => (desk().screen)(route),
        Part::Further => (further()?.screen)(route),
    }
}

/// Whether a screen can be shown now.
pub fn is_here(route: &Route) -> bool {
    Part::of(route).is_none_or(Part::is_here)
}

/// Acts as soon as a part is here: now, or once it was fetched, which is told
/// on the page. A failure is told with a button that tries again.
pub fn once_here(part: Part, workspace: Workspace, act: impl Fn() + Clone + Send + Sync + 'static) {
    if part.is_here() {
        act();
        return;
    }
    workspace.report("One moment: the rest of the program is on its way.");
    leptos::task::spawn_local(async move {
        match part.fetch().await {
            Ok(()) => {
                workspace.status.set(None);
                act();
            }
            Err(error) => {
                workspace.status.set(None);
                let again = Offer::new("Try again", move || {
                    once_here(part, workspace, act.clone());
                });
                workspace.leave(error.to_string(), true, vec![again]);
            }
        }
    });
}

/// Shows something of the desk as soon as it is here; without it nothing, which
/// is told by whoever needs it.
#[component]
pub fn OnceHere(
    /// What is shown.
    show: fn(&Desk) -> AnyView,
) -> impl IntoView {
    let here = RwSignal::new(Part::Desk.is_here());
    if !here.get_untracked() {
        leptos::task::spawn_local(async move {
            if Part::Desk.fetch().await.is_ok() {
                // Nobody waits any more when the screen was left meanwhile.
                if !here.is_disposed() {
                    here.set(true);
                }
            }
        });
    }
    move || here.get().then(|| show(desk()))
}
