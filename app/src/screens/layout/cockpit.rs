//! The drawing of the cockpit with a slot for every button.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, ButtonId};
use leverwright_core::drawing::{Owner, Picture};
use leverwright_core::finding::{Place, Severity};
use leverwright_core::ordered::SmallMap;

use super::bench::{Answer, Bench};
use super::reach::{ReachKey, reach_of};
use super::room::follow_size;
use super::slot::{Refusal, SlotView};
use crate::drawing::{ButtonView, Cockpit as Drawing, Touch};
use crate::settings::Settings;

/// The name of the drawing among the page's pictures.
pub const PICTURE: &str = "layout-cockpit";

/// The drawing; slots in its margins where there is room, else under it.
#[component]
pub fn Cockpit() -> impl IntoView {
    let bench = Bench::here();
    let frame = NodeRef::<html::Div>::new();
    follow_size(frame, bench.room);
    let has_margins =
        Memo::new(move |_| bench.picture.get().is_some_and(|picture| picture.has_slots));
    // What comes into focus under a drawing that stays in view is scrolled clear of it.
    let height = Memo::new(move |_| {
        let picture = bench.picture.get();
        picture.map(|picture| format!("{:.0}px", picture.height))
    });
    let settings = Settings::here();
    let has_list_beside =
        Memo::new(move |_| bench.room.get().has_list_beside(settings.get().lists));
    let groups = BarSide::ALL
        .iter()
        .map(|side| view! { <SlotGroup side=*side/> })
        .collect_view();
    view! {
        <section aria-labelledby="cockpit">
            <h2 id="cockpit" class="unseen">"Buttons"</h2>
            <p id="how-to-carry" hidden>
                "Arrow keys walk the buttons. Enter picks up and puts down. Delete clears. Escape lets go. M opens the menu."
            </p>
            <div class="cockpit-frame" class:margins=move || has_margins.get()
                class:list-beside=move || has_list_beside.get()
                style:--drawn-height=move || height.get() node_ref=frame>
                <Drawn/>
                <ReachKey/>
                {groups}
            </div>
        </section>
    }
}

/// The picture of the cockpit; slots say in words all that it shows.
#[component]
fn Drawn() -> impl IntoView {
    let bench = Bench::here();
    let label = Memo::new(move |_| {
        let name = bench.plan(|plan| plan.bike.name.to_string());
        format!("{}, seen from the rider's seat", name.unwrap_or_default())
    });
    let buttons = Memo::new(move |_| button_views(bench));
    let lit = Memo::new(move |_| lit_owners(bench));
    view! {
        <div class="drawn stays">
            {move || bench.picture.get().map(|picture| view! {
                <Drawing name=PICTURE own_slots=true label buttons lit
                    picture=Signal::stored(Picture::clone(&picture))/>
            })}
            {move || bench.told().map(|(_, why)| view! { <Refusal why/> })}
        </div>
    }
}

fn button_views(bench: Bench) -> SmallMap<ButtonId, ButtonView> {
    let lights = bench.lights.get();
    let weight = bench.weight.get();
    let slots = bench.slots.get();
    let views = slots.iter().map(|slot| {
        let id = slot.button;
        let view = ButtonView {
            look: slot.look.clone(),
            label: slot.place.clone(),
            reach: reach_of(bench, id),
            lit: weight.filter(|_| lights.buttons.contains(&id)),
            touch: match bench.answer(id) {
                None => Touch::Rest,
                Some(Answer::Takes) => Touch::Target,
                Some(Answer::Carried) => Touch::PickedUp,
                Some(Answer::Refuses(_)) => Touch::Refuses,
            },
        };
        (id, view)
    });
    views.collect()
}

fn lit_owners(bench: Bench) -> Vec<(Owner, Severity)> {
    let Some(weight) = bench.weight.get() else {
        return Vec::new();
    };
    bench.lights.with(|lights| {
        let controls = lights.controls.iter();
        controls
            .flat_map(|id| [Owner::Control(*id), Owner::Blade(*id)])
            .chain(lights.thumb_work.iter().map(|at| Owner::ThumbWork(*at)))
            .map(|owner| (owner, weight))
            .collect()
    })
}

/// The slots of one hand, or of the middle.
#[component]
fn SlotGroup(side: BarSide) -> impl IntoView {
    let bench = Bench::here();
    let buttons = Memo::new(move |_| {
        bench.slots.with(|slots| {
            let own = slots.iter().filter(|slot| slot.side == side);
            own.map(|slot| slot.button).collect::<Vec<ButtonId>>()
        })
    });
    let title = match side {
        BarSide::Left => "Left hand",
        BarSide::Centre => "Centre",
        BarSide::Right => "Right hand",
    };
    let is_lit = move || {
        let hand = side.hand();
        hand.is_some_and(|hand| bench.workspace.lit.get().contains(&Place::Hand(hand)))
    };
    view! {
        <Show when=move || !buttons.with(Vec::is_empty)>
            <section class=format!("slot-group {}", side.code()) class:lit=is_lit>
                <h3>{title}</h3>
                <ul>
                    <For each=move || buttons.get() key=|id| *id let:id>
                        <SlotView id/>
                    </For>
                </ul>
            </section>
        </Show>
    }
}
