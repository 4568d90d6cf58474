//! The Stand check screen: what was built, proved step by step, first on the
//! stand, then by the rider, then on a first ride.

mod count;
mod desk;
mod drawing;
mod instead;
mod list;
mod overview;
mod result;
mod step;
mod word;

use leptos::prelude::*;

use crate::erase::{flag, view_of};
use crate::focus::focus_field_soon;
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
use desk::{CheckDesk, Shown};
use overview::Overview;
use result::{Differs, Mend};
use step::StepPage;
use word::{GiveWord, Proved};

/// Every page of the screen has its heading under this name; it takes the focus
/// when the page comes.
const HEADING: &str = "stand-heading";

/// The Stand check screen.
#[component]
pub fn StandScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = flag(move || workspace.plan.with(Option::is_some));
    let is_open = Memo::new(move |_| is_open.get());
    provide_context(CheckDesk::new(workspace));
    view_of(move || match is_open.get() {
        true => view! { <Open/> }.into_any(),
        false => view! { <h1>"Stand check"</h1> <NoPlan/> }.into_any(),
    })
}

#[component]
fn Open() -> impl IntoView {
    let desk = CheckDesk::here();
    Effect::new(move |before: Option<Shown>| {
        let now = desk.shown.get();
        if before.is_some_and(|before| before != now) {
            focus_field_soon(HEADING.to_owned());
        }
        now
    });
    view_of(move || {
        // Undo may change what a page says, and leave the page.
        desk.run.track();
        match desk.shown.get() {
            Shown::Overview => view! { <Overview/> }.into_any(),
            Shown::Step(at) => view! { <StepPage at/> }.into_any(),
            Shown::Instead(at) => view! { <instead::Instead at/> }.into_any(),
            Shown::Mend(at) => view! { <Mend at/> }.into_any(),
            Shown::Differs => view! { <Differs/> }.into_any(),
            Shown::GiveWord => view! { <GiveWord/> }.into_any(),
            Shown::Proved => view! { <Proved/> }.into_any(),
        }
    })
}
