//! The Bike screen: controls, brakes, other thumb work, and what the shift
//! system can program.

mod add_control;
mod blade;
mod brakes;
mod button_row;
mod control_card;
mod frame;
mod system;
mod thumb_work;

use crate::erase::{When, act, flag, memo, view_of};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, Bike, Control, ControlId};
use leverwright_core::edit::{BikeEdit, BrakeEdit, Edit, PlanEdit};
use leverwright_core::spot::Spot;

use crate::widgets::{NoPlan, SpotList};
use crate::workspace::Workspace;
use add_control::AddControl;
use brakes::BrakesSection;
use control_card::ControlCard;
use frame::FrameSection;
use system::SystemSection;
use thumb_work::ThumbWorkSection;

/// The Bike screen.
#[component]
pub fn BikeScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Bike"</h1>
        <Show when=move || is_open.get() fallback=NoPlan>
            <Bench/>
        </Show>
    }
}

/// What the parts of the screen share.
#[derive(Clone, Copy)]
struct Stand {
    workspace: Workspace,
    bike: Memo<Option<Bike>>,
}

impl Stand {
    fn here() -> Stand {
        expect_context()
    }

    fn commit(self, edit: BikeEdit) {
        self.workspace.commit(Edit::Bike(edit));
    }

    fn commit_brakes(self, edit: BrakeEdit) {
        self.workspace.commit(Edit::Brakes(edit));
    }

    /// Reads the bike; `None` only for a moment while a plan is closed.
    fn read<T>(self, read: impl FnOnce(&Bike) -> T) -> Option<T> {
        self.bike.with(|bike| bike.as_ref().map(read))
    }

    /// Reads one control, if it is still there.
    fn control<T>(self, id: ControlId, read: impl FnOnce(&Control) -> T) -> Option<T> {
        self.read(|bike| bike.control(id).map(read)).flatten()
    }
}

#[component]
fn Bench() -> impl IntoView {
    let workspace = Workspace::here();
    let bike = memo(move || {
        workspace
            .plan
            .with(|plan| plan.as_ref().map(|p| p.bike.clone()))
    });
    let stand = Stand { workspace, bike };
    provide_context(stand);
    view! {
        <StillOpen/>
        <FrameSection/>
        <section aria-labelledby="controls">
            <h2 id="controls">"Controls"</h2>
            <div class="row">
                <button on:click={act(move || stand.commit(BikeEdit::MirrorAll))}>
                    "Mirror the whole cockpit"
                </button>
            <button on:click={act(move || {
                    if stand.workspace.commit(Edit::Plan(PlanEdit::NoteAsFound)) {
                        stand.workspace.say("Noted. The setup sheet prints it as “was”.");
                    }
                })}>
                    "Write down what the buttons do now as “was”"
                </button>
            </div>
            {BarSide::ALL.iter().map(|side| view! { <Group side=*side/> }).collect_view()}
            <AddControl/>
        </section>
        <BrakesSection/>
        <ThumbWorkSection/>
        <SystemSection/>
    }
}

/// What is not noted yet, each with the way there.
#[component]
fn StillOpen() -> impl IntoView {
    let stand = Stand::here();
    view_of(move || {
        let bike = stand.bike.get()?;
        let spots = bike.open_points();
        (!spots.is_empty()).then(|| {
            view! { <SpotList label="Not noted yet" spots bike/> }
        })
    })
}

/// Marks a field of which nothing is noted yet.
#[component]
fn OpenMark(spot: Spot) -> impl IntoView {
    let stand = Stand::here();
    let open = memo(move || stand.read(|bike| bike.open_points().contains(&spot)) == Some(true));
    view! {
        <When holds={flag(move || open.get())}>
            <p class="open-mark">"Not noted yet"</p>
        </When>
    }
}

/// The controls of one side.
#[component]
fn Group(side: BarSide) -> impl IntoView {
    let stand = Stand::here();
    let ids = memo(move || {
        stand
            .read(|bike| {
                bike.controls
                    .iter()
                    .filter(|c| c.side == side)
                    .map(|c| c.id)
                    .collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    let title = match side {
        BarSide::Left => "On the left",
        BarSide::Centre => "In the middle",
        BarSide::Right => "On the right",
    };
    view! {
        <When holds={flag(move || !ids.with(Vec::is_empty))}>
            <h3>{title}</h3>
            <For each=move || ids.get() key=|id| *id let:id>
                <ControlCard id/>
            </For>
        </When>
    }
}
