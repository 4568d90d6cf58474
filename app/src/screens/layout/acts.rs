//! Heading and bar of acts: what starts or turns the whole layout.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::offers::Act;
use leverwright_core::shift_plan::ShiftPlanKind;
use leverwright_core::tally::Tally;

use super::bench::Bench;
use super::layouts::Layouts;
use super::reach::ShowReach;
use crate::focus::go_to;
use crate::widgets::Select;

/// The heading, and what starts, turns or changes the whole layout. Where there
/// is little room all but the heading folds away.
#[component]
pub fn Head() -> impl IntoView {
    let bench = Bench::here();
    let is_open = RwSignal::new(false);
    let name = Memo::new(move |_| bench.plan(|plan| plan.layout().name.to_string()));
    let tally = Memo::new(move |_| {
        let settled = bench.workspace.settled;
        settled.with(|settled| {
            let (plan, derived) = settled.as_ref()?;
            Some(Tally::of(plan, &derived.findings).to_string())
        })
    });
    let acts = Memo::new(move |_| bench.plan(|plan| plan.acts()).unwrap_or_default());
    view! {
        <div class="layout-head">
            <h1>"Layout"</h1>
            <p class="in-hand quiet">{move || name.get()}</p>
            <button type="button" class="to-findings" on:click=move |_| go_to("findings")>
                <span class="prefix">"Findings: "</span>{move || tally.get()}
            </button>
            <button type="button" class="unfold" aria-controls="whole-layout"
                aria-expanded=move || is_open.get().to_string()
                on:click=move |_| is_open.update(|open| *open = !*open)>"Quick starts, reach"</button>
            <div id="whole-layout" class="folds" class:open=move || is_open.get()
                role="group" aria-label="Quick starts, reach">
                <Layouts/>
                <ShiftPlan/>
                <ShowReach/>
                <div class="acts">
                    <For each=move || acts.get() key=|act| act.label.clone() let:act>
                        <ActButton label=act.label acts/>
                    </For>
                </div>
            </div>
        </div>
    }
}

/// One act. Its change follows the plan, so it is looked up when it is made.
#[component]
fn ActButton(label: String, acts: Memo<Vec<Act>>) -> impl IntoView {
    let bench = Bench::here();
    let name = label.clone();
    let act = move |_| {
        let acts = acts.get_untracked();
        if let Some(act) = acts.into_iter().find(|act| act.label == name) {
            bench.commit(act.edit);
        }
    };
    view! { <button type="button" on:click=act>{label}</button> }
}

/// How the derailleurs work together; the buttons change along.
#[component]
fn ShiftPlan() -> impl IntoView {
    let bench = Bench::here();
    let words = |kind: ShiftPlanKind| (kind, kind.words().to_owned());
    let choices = Memo::new(move |_| {
        let kinds = bench.plan(|plan| plan.offered_shift_plans());
        let kinds = kinds.unwrap_or_default().into_iter();
        kinds.map(words).collect::<Vec<_>>()
    });
    let chosen = Memo::new(move |_| bench.plan(|plan| plan.shift_plan));
    let set = move |kind| {
        bench.commit(Edit::Plan(PlanEdit::ShiftPlanAndButtons(kind)));
    };
    view! { <Select label="Shift plan" choices chosen set/> }
}
