//! The bar of acts: what starts or turns the whole layout.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::offers::Act;
use leverwright_core::shift_plan::ShiftPlanKind;

use super::bench::Bench;
use crate::widgets::Select;

/// Acts on the whole layout. Where there is little room they fold away.
#[component]
pub fn Acts() -> impl IntoView {
    let bench = Bench::here();
    let is_open = RwSignal::new(false);
    let acts = Memo::new(move |_| bench.plan(|plan| plan.acts()).unwrap_or_default());
    view! {
        <section class="act-bar" aria-labelledby="whole-layout">
            <h2 id="whole-layout" class="unseen">"Whole layout"</h2>
            <button type="button" class="unfold" aria-controls="acts"
                aria-expanded=move || is_open.get().to_string()
                on:click=move |_| is_open.update(|open| *open = !*open)>"Whole layout"</button>
            <div id="acts" class="acts" class:open=move || is_open.get()>
                <For each=move || acts.get() key=|act| act.label.clone() let:act>
                    <ActButton label=act.label acts/>
                </For>
            </div>
        </section>
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
pub fn ShiftPlan() -> impl IntoView {
    let bench = Bench::here();
    let words = |kind: ShiftPlanKind| (kind, kind.words().to_owned());
    let choices = Memo::new(move |_| {
        let kinds = bench.plan(|plan| plan.offered_shift_plans());
        let kinds = kinds.unwrap_or_default().into_iter();
        kinds.map(words).collect::<Vec<_>>()
    });
    let chosen = Memo::new(move |_| bench.plan(|plan| plan.shift_plan));
    let set = move |kind| bench.commit(Edit::Plan(PlanEdit::ShiftPlanAndButtons(kind)));
    view! { <Select label="Shift plan" choices chosen set/> }
}
