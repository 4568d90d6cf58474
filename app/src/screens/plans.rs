//! The Plans screen: the plans of this browser, and ways to start one.

mod card;
mod card_damage;
mod demo_plans;
mod files;
mod keeping;
mod new_plan;
mod rename;

use leptos::prelude::*;

use crate::parts::OnceHere;
use crate::storage::{Card, Library};
use card::PlanCard;
pub use demo_plans::DemoPlans;
use files::{DropZone, OpenFile};
pub use keeping::SharedComputer;
use new_plan::NewPlan;

/// The Plans screen.
#[component]
pub fn PlansScreen() -> impl IntoView {
    let library = Library::here();
    library.look_again();
    let none = Memo::new(move |_| library.cards.with(Vec::is_empty));
    view! {
        <DropZone>
            <h1>"Plans"</h1>
            <Show when=move || none.get() fallback=Listed>
                <p class="start">
                    "There is no plan yet. Choose the bike below that comes closest: everything \
                    can be changed later."
                </p>
            </Show>
            <div class="plans-acts">
                <SharedComputer/>
                <OpenFile/>
            </div>
            <NewPlan/>
            <OnceHere show=|desk| (desk.demo_plans)()/>
        </DropZone>
    }
}

/// Where there are plans, what lists them is here.
#[component]
fn Listed() -> impl IntoView {
    view! { <OnceHere show=|desk| (desk.plan_list)()/> }
}

/// The plans of this browser.
#[component]
pub fn PlanList() -> impl IntoView {
    let library = Library::here();
    view! {
        <section aria-labelledby="your-plans">
            <h2 id="your-plans" class="unseen">"Your plans"</h2>
            <ul class="plan-list">
                <For each=move || library.cards.get() key=row_key let:card>
                    <PlanCard card/>
                </For>
            </ul>
        </section>
    }
}

/// A row is drawn anew when the store says something else of its plan.
fn row_key(card: &Card) -> String {
    let revision = card.plan.as_ref().map(|plan| plan.revision);
    let damaged: Vec<String> = card.damaged.iter().map(|copy| copy.key.key()).collect();
    format!(
        "{} {:?} {:?} {revision:?} {damaged:?}",
        card.id, card.keeping, card.saved
    )
}
