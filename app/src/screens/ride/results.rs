//! What came of the rides.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::ride::profile::Axis;
use leverwright_core::rider::Day;

use super::chart::Chart;
use super::desk::{Done, RideDesk};
use super::digits::Digits;
use super::keep::Keep;
use super::paper::LoadPaper;
use super::tables::{Differences, Tables, in_short};
use super::used::UsedCockpit;
use crate::erase::{flag, view_of};
use crate::widgets::{Choice, Select};
use crate::workspace::Workspace;

/// Nothing, until something was ridden.
#[component]
pub fn Results() -> impl IntoView {
    let desk = RideDesk::here();
    view_of(move || desk.done.get().map(|done| view! { <Came done/> }))
}

#[component]
fn Came(done: Arc<Done>) -> impl IntoView {
    let workspace = Workspace::here();
    let unfinished = done.outcomes.iter().any(|outcome| !outcome.is_finished());
    let partial = unfinished.then(|| {
        view! {
            <p class="ride-partial">
                <strong>"Stopped before the end."</strong>
                " The numbers are of what was ridden so far."
            </p>
        }
    });
    let stale = flag({
        let done = Arc::clone(&done);
        move || {
            workspace
                .plan
                .with(|plan| plan.as_ref().is_some_and(|plan| done.is_stale(plan)))
        }
    });
    view! {
        <section class="ride-part" aria-labelledby="ride-results">
            <h2 id="ride-results">"What the ride asks"</h2>
            {partial}
            {view_of(move || stale.get().then(|| view! {
                <p class="ride-stale">
                    <strong>"Out of date."</strong>
                    " The plan, the road or the rider changed since. Ride again."
                </p>
            }))}
            {in_short(&done.outcomes)}
            <Differences done=Arc::clone(&done)/>
            <Shown done=Arc::clone(&done)/>
            <Tables done=Arc::clone(&done)/>
            <Keep done=Arc::clone(&done)/>
        </section>
        <LoadPaper done/>
    }
}

/// One subject on one day, in pictures.
#[component]
fn Shown(done: Arc<Done>) -> impl IntoView {
    let desk = RideDesk::here();
    let names: Vec<(usize, String)> = done.names().into_iter().enumerate().collect();
    let days = Day::ALL
        .iter()
        .map(|day| (Some(*day), day.words().to_owned()))
        .collect();
    let axes = Axis::ALL
        .iter()
        .map(|axis| (Some(*axis), axis.words().to_owned()))
        .collect();
    let outcome = Signal::derive({
        let done = Arc::clone(&done);
        move || done.outcome(desk.shown.get(), desk.day.get()).cloned()
    });
    let road = Arc::clone(&done.road);
    let set_day = move |day: Option<Day>| desk.day.set(day.unwrap_or(Day::Usual));
    let set_axis = move |axis: Option<Axis>| desk.axis.set(axis.unwrap_or(Axis::Distance));
    let set_shown = move |shown| desk.shown.set(shown);
    view! {
        <div class="ride-shown">
            <Select label="Show" choices=Signal::derive(move || names.clone())
                chosen=Signal::derive(move || Some(desk.shown.get()))
                set=set_shown/>
            <Choice legend="Day" name="ride-day" choices=days
                chosen=Signal::derive(move || Some(desk.day.get()))
                choose=set_day/>
            <Choice legend="Along" name="ride-axis" choices=axes
                chosen=Signal::derive(move || Some(desk.axis.get()))
                choose=set_axis/>
        </div>
        <h3>"Along the road"</h3>
        {view_of(move || match outcome.get() {
            Some(outcome) => view! { <Chart road=Arc::clone(&road) outcome axis=desk.axis.get()/> }.into_any(),
            None => view! { <p>"Nothing was ridden on this day yet."</p> }.into_any(),
        })}
        <h3>"By hand and finger"</h3>
        <Digits done=done/>
        <h3>"On the cockpit"</h3>
        {view_of(move || outcome.get().map(|outcome| view! { <UsedCockpit outcome/> }))}
    }
}
