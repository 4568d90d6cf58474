//! Which shift plan, and what changing it does to the layout in hand.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::Edit;
use leverwright_core::shift_plan::{PlanChange, ShiftPlanKind};

use super::desk::GearDesk;
use super::tuning::Tuning;
use crate::erase::{act, memo, text, view_of};
use crate::focus::focus_field_soon;
use crate::widgets::Choice;
use crate::words::capitalised;

/// The shift plan and its settings.
#[component]
pub fn ShiftPlanSection() -> impl IntoView {
    let desk = GearDesk::here();
    let wanted = RwSignal::new(None::<ShiftPlanKind>);
    let kind = memo(move || desk.read(|plan| plan.shift_plan));
    let offered = memo(move || {
        desk.read(|plan| plan.offered_shift_plans())
            .unwrap_or_default()
    });
    let chosen = Signal::derive(move || wanted.get().or(kind.get()));
    let choose = Callback::new(move |wish: Option<ShiftPlanKind>| match wish {
        Some(wish) if Some(wish) != kind.get_untracked() => weigh(desk, wanted, wish),
        _ => wanted.set(None),
    });
    let says = text(move || chosen.get().map_or("", ShiftPlanKind::says).to_owned());
    // What was only wished for goes with the plan it was wished for.
    Effect::new(move |_| {
        kind.get();
        wanted.set(None);
    });
    view! {
        <section class="gears-plan" aria-labelledby="shift-plan-head">
            <h2 id="shift-plan-head">"Shift plan"</h2>
            {view_of(move || {
                let choices = offered.get().into_iter()
                    .map(|kind| (Some(kind), capitalised(kind.words())))
                    .collect();
                view! {
                    <Choice legend="How the derailleurs work together" legend_unseen=true
                        name="shift-plan" choices chosen choose/>
                }
            })}
            <p class="says">{says}</p>
            {view_of(move || wanted.get().map(|wish| view! { <Change wish wanted/> }))}
            <Tuning/>
        </section>
    }
}

/// Changes the plan at once where no button is touched by it; else says first
/// what it does.
fn weigh(desk: GearDesk, wanted: RwSignal<Option<ShiftPlanKind>>, wish: ShiftPlanKind) {
    let change = desk.workspace.plan.with_untracked(|plan| {
        plan.as_deref()
            .map(|plan| (PlanChange::to(plan, wish), plan.clone()))
    });
    match change {
        Some((Ok(change), _)) if change.is_harmless() => {
            desk.workspace.commit(change.alone);
        }
        Some((Ok(change), plan)) => {
            desk.workspace.say(change.words(&plan));
            wanted.set(Some(wish));
        }
        Some((Err(error), _)) => desk.workspace.show_refusal(&error),
        None => {}
    }
}

/// What the change does, and the ways to make it.
#[component]
fn Change(wish: ShiftPlanKind, wanted: RwSignal<Option<ShiftPlanKind>>) -> impl IntoView {
    let desk = GearDesk::here();
    let change = memo(move || {
        desk.read(|plan| PlanChange::to(plan, wish).ok().map(|c| (c.words(plan), c)))
            .flatten()
    });
    let make = move |edit: fn(PlanChange) -> Edit| {
        if let Some((_, change)) = change.get_untracked()
            && desk.workspace.commit(edit(change))
        {
            wanted.set(None);
            desk.workspace
                .say(format!("{}.", capitalised(wish.words())));
            focus_field_soon("shift-plan".into());
        }
    };
    let leave = move || {
        wanted.set(None);
        focus_field_soon("shift-plan".into());
    };
    let words = text(move || change.get().map(|(words, _)| words).unwrap_or_default());
    let still = text(move || {
        let missing = change.get().map(|(_, change)| change.still_missing);
        let missing = missing.unwrap_or_default();
        match missing.is_empty() {
            true => String::new(),
            false => {
                let list: Vec<String> = missing.iter().map(|f| format!("“{f}”")).collect();
                format!("There is no free button for {}.", list.join(", "))
            }
        }
    });
    view! {
        <div class="plan-change" role="group" aria-label=format!("Change to {wish}")>
            <p>{words}" "{still}</p>
            <div class="acts">
                <button type="button" class="main" on:click={act(move || make(|c| c.matching))}>
                    "Change plan and buttons"
                </button>
                <button type="button" on:click={act(move || make(|c| c.alone))}>
                    "Change the plan alone"
                </button>
                <button type="button" on:click={act(leave)}>"Leave it"</button>
            </div>
        </div>
    }
}
