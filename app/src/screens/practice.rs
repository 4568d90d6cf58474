//! The Practice screen: find the buttons at home, without the bike.

mod choices;
mod cockpit;
mod desk;
mod keep;
mod kept;
mod keys;
mod marks;
mod pad;
mod ready;
mod results;
mod road;
mod stage;
mod voice;

use leptos::prelude::*;

use crate::erase::{memo, view_of};
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
use desk::{Mode, PracticeDesk};
use ready::Ready;
use results::Results;
use stage::Stage;

/// The Practice screen.
#[component]
pub fn PracticeScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Practice"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Open/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

#[component]
fn Open() -> impl IntoView {
    let desk = PracticeDesk::new();
    provide_context(desk);
    keys::listen(desk);
    desk.let_go_when_away();
    // The stage stays while it is paused: the road is there when it goes on.
    let part = memo(move || match desk.mode.get() {
        Mode::Ready => 0,
        Mode::Riding | Mode::Paused => 1,
        Mode::Done => 2,
    });
    view_of(move || match part.get() {
        0 => view! { <Ready/> }.into_any(),
        1 => view! { <Stage/> }.into_any(),
        _ => view! { <Results/> }.into_any(),
    })
}
