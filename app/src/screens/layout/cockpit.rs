//! The drawing of the cockpit with a slot for every button.

use leptos::ev;
use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, ButtonId};
use leverwright_core::drawing::{Owner, Picture, Thumbnail};
use leverwright_core::finding::{Place, Severity};
use leverwright_core::ordered::SmallMap;

use super::bench::{Answer, Bench};
use super::reach::reach_of;
use super::room::follow_size;
use super::slot::SlotView;
use crate::drawing::{ButtonView, Cockpit as Drawing, SmallDrawing, Touch};
use crate::settings::{Lists, Settings, ThumbSide};

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
    let settings = Settings::here();
    let list_beside = Memo::new(move |_| {
        let (room, chosen) = (bench.room.get(), settings.get());
        let side = match (chosen.lists, chosen.thumb) {
            (Lists::Left, _) | (Lists::BothSides, ThumbSide::Left) => " list-beside list-left",
            _ => " list-beside list-right",
        };
        if room.has_list_beside(chosen.lists) {
            side
        } else {
            ""
        }
    });
    let margins = move || if has_margins.get() { " margins" } else { "" };
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
            <div class=move || format!("cockpit-frame{}{}", margins(), list_beside.get())
                node_ref=frame>
                <Drawn/>
                <StaysInView/>
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
        <div class="drawn">
            {move || bench.picture.get().map(|picture| view! {
                <Drawing name=PICTURE own_slots=true label buttons lit
                    picture=Signal::stored(Picture::clone(&picture))/>
            })}
        </div>
    }
}

/// A small drawing over the list, once the large one has been scrolled away:
/// what a finding or a drag lights is still seen. A tap on it leads back up.
#[component]
fn StaysInView() -> impl IntoView {
    let bench = Bench::here();
    let is_away = RwSignal::new(false);
    let watcher = window_event_listener(ev::scroll, move |_| {
        let drawn = document().query_selector(".drawn").ok().flatten();
        let bottom = drawn.map_or(1.0, |drawn| drawn.get_bounding_client_rect().bottom());
        let now = bottom < STILL_SEEN;
        if is_away.get_untracked() != now {
            is_away.set(now);
        }
    });
    on_cleanup(move || watcher.remove());
    let buttons = Memo::new(move |_| button_views(bench));
    let lit = Memo::new(move |_| lit_owners(bench));
    let small = Memo::new(move |_| {
        let bike = bench.plan(|plan| plan.bike.clone())?;
        Some(Thumbnail::of(&bike, SMALL.0, SMALL.1))
    });
    let up = move |_| window().scroll_to_with_x_and_y(0.0, 0.0);
    view! {
        <div class="stays-in-view" aria-hidden="true">
            <Show when=move || is_away.get()>
                <div class="small-drawing stays" on:click=up>
                    {move || small.get().map(|picture| view! {
                        <SmallDrawing picture buttons lit/>
                    })}
                </div>
            </Show>
        </div>
    }
}

/// How much of the drawing is seen before the small one comes, CSS pixels.
const STILL_SEEN: f64 = 90.0;

/// Room for the small drawing, CSS pixels.
const SMALL: (f64, f64) = (300.0, 84.0);

fn button_views(bench: Bench) -> SmallMap<ButtonId, ButtonView> {
    let lights = bench.lights.get();
    let weight = bench.weight.get();
    let slots = bench.drawn.get();
    let views = slots.iter().map(|slot| {
        let id = slot.button;
        let view = ButtonView {
            look: slot.look.clone(),
            label: slot.place.clone(),
            reach: reach_of(bench, id),
            lit: weight.filter(|_| lights.buttons.contains(&id)),
            touch: match bench.shown.with(|c| c.answer(id).cloned()) {
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
