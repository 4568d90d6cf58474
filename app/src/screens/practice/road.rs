//! The road that comes.

use leptos::prelude::*;
use leverwright_core::practice::{HIGH, RoadView, WIDE};

use super::desk::PracticeDesk;
use crate::erase::text;

/// The picture; what it shows is said in words beside it.
#[component]
pub fn Road() -> impl IntoView {
    let desk = PracticeDesk::here();
    let path =
        move |d: fn(&RoadView) -> &String| text(move || desk.view.with(|view| d(view).clone()));
    view! {
        <svg class="practice-road" viewBox=format!("0 0 {WIDE} {HIGH}") aria-hidden="true"
            preserveAspectRatio="xMidYMid slice">
            <path class="far" d=path(|view| &view.hills)></path>
            <path class="ground" d=path(|view| &view.ground)></path>
            <path class="furrows" d=path(|view| &view.furrows)></path>
            <path class="road" d=path(|view| &view.road)></path>
            <path class="marks" d=path(|view| &view.marks)></path>
            <path class="edges" d=path(|view| &view.edges)></path>
            <path class="posts" d=path(|view| &view.posts)></path>
            <path class="board" d=path(|view| &view.board)></path>
        </svg>
    }
}
