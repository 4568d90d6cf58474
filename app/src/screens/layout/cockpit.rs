//! The drawing of the cockpit with a slot for every button.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, ButtonId};
use leverwright_core::finding::Place;

use super::bench::Bench;
use super::drawn::Drawn;
use super::room::follow_size;
use super::slot::SlotView;

/// The drawing; slots in its margins where there is room, else under it.
#[component]
pub fn Cockpit() -> impl IntoView {
    let bench = Bench::here();
    let frame = NodeRef::<html::Div>::new();
    follow_size(frame, bench.room);
    let has_margins =
        Memo::new(move |_| bench.picture.get().is_some_and(|picture| picture.has_slots));
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
            <div class="cockpit" class:margins=move || has_margins.get() node_ref=frame>
                <Drawn/>
                {groups}
            </div>
        </section>
    }
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
