//! The Ride screen: what layouts ask of each hand on a road.

mod chart;
mod desk;
mod digits;
mod keep;
mod paper;
mod results;
mod rider;
mod road;
mod run;
mod tables;
mod used;

use leptos::prelude::*;

use crate::erase::{flag, view_of};
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
pub use desk::RideDesk;
use results::Results;
use rider::HowTheRiderRides;
use road::ChooseRoad;
use run::Run;

/// The Ride screen.
#[component]
pub fn RideScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = flag(move || workspace.plan.with(Option::is_some));
    let is_open = Memo::new(move |_| is_open.get());
    view! {
        <h1>"Ride"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Open/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

#[component]
fn Open() -> impl IntoView {
    view! {
        <p class="lead ride-part">
            "What a layout asks of each hand and finger on a road, worked out, not measured. Use it \
            to compare layouts with each other, and with a ride that was fine. It does not say what \
            a hand can bear: rider and clinician judge that."
        </p>
        <div class="ride-setup ride-part">
            <ChooseRoad/>
            <HowTheRiderRides/>
        </div>
        <Run/>
        <Results/>
    }
}
