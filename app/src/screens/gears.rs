//! The Gears screen: rings, cogs and wheel, how the two derailleurs work
//! together, and what that asks of the hands.

mod compare;
mod crossovers;
mod desk;
mod drag;
mod drawn;
mod drivetrain;
mod legend;
mod marks;
mod net_steps;
mod plan;
mod plot;
mod readout;
mod steps;
mod table;
mod tuning;

use leptos::prelude::*;
use leverwright_core::rules::Family;

use crate::erase::{memo, view_of};
use crate::widgets::{FindingList, NoPlan};
use crate::workspace::Workspace;
use compare::SideBySide;
use crossovers::Crossovers;
use desk::GearDesk;
use drivetrain::DrivetrainSection;
use plan::ShiftPlanSection;
use plot::AllGears;
use steps::Steps;
use table::SameAsTable;

pub use drawn::{gears_on_paper, steps_on_paper};

/// The Gears screen.
#[component]
pub fn GearsScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Gears"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Open/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

#[component]
fn Open() -> impl IntoView {
    provide_context(GearDesk::new());
    view! {
        <p class="lead">
            "Which gears the bike has, how the two derailleurs work together, and what that asks of \
            the hands."
        </p>
        <DrivetrainSection/>
        <div class="gears-bench">
            <ShiftPlanSection/>
            <div class="gears-pictures">
                <AllGears/>
                <Crossovers/>
                <Steps/>
            </div>
            <div class="gears-findings"><FindingList family=Family::Gears/></div>
        </div>
        <SideBySide/>
        <SameAsTable/>
    }
}
