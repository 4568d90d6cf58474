//! Hand positions and mounting, asked once.

use crate::erase::{memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::HandPosition;
use leverwright_core::edit::RiderEdit;
use leverwright_core::rider::{Answer, Rider, Side};

use super::Desk;
use super::said::said;
use crate::widgets::{Choice, all_or_not_asked};

/// Where the hands ride, and how the rider mounts.
#[component]
pub fn Positions() -> impl IntoView {
    let desk = Desk::here();
    let offered = memo(move || {
        desk.workspace.plan.with(|plan| {
            plan.as_ref()
                .map(|plan| plan.bike.bar.kind.positions())
                .unwrap_or_default()
        })
    });
    view! {
        <section class="question" aria-labelledby="positions">
            <h2 id="positions">"Where the hands ride"</h2>
            {move || offered.get().iter().map(|p| view! { <PositionUse position=*p/> }).collect_view()}
            <SideChoice legend="The rider mounts from the" name="mounts"
                read=|rider: &Rider| rider.mounts_from edit=RiderEdit::MountsFrom/>
            <SideChoice legend="Meanwhile the brake is held with the" name="holds-brake"
                read=|rider: &Rider| rider.holds_brake_mounting edit=RiderEdit::HoldsBrakeMounting/>
            <SideChoice legend="By habit, or by the custom of the place, the front brake is on the"
                name="front-brake"
                read=|rider: &Rider| rider.front_brake_habit edit=RiderEdit::FrontBrakeHabit/>
        </section>
    }
}

#[component]
fn PositionUse(position: HandPosition) -> impl IntoView {
    let desk = Desk::here();
    let answer = move || desk.rider.with(|rider| rider.positions.get(position));
    let chosen = memo(move || answer().value);
    let choose = Callback::new(move |value| {
        desk.commit(RiderEdit::Position(position, desk.answer(value)));
    });
    view! {
        <Choice legend=position.words() name=format!("position-{}", position.code())
            choices=all_or_not_asked() chosen
            choose note={text(move || said(&answer()))}/>
    }
}

#[component]
fn SideChoice(
    legend: &'static str,
    name: &'static str,
    read: fn(&Rider) -> Answer<Side>,
    edit: fn(Answer<Side>) -> RiderEdit,
) -> impl IntoView {
    let desk = Desk::here();
    let answer = move || desk.rider.with(read);
    let chosen = memo(move || answer().value);
    let choose = Callback::new(move |value| desk.commit(edit(desk.answer(value))));
    view! {
        <Choice legend name choices=all_or_not_asked() chosen
            choose note={text(move || said(&answer()))}/>
    }
}
