//! The Compare screen: the layouts of a plan beside each other.

mod acts;
mod card;
mod choose;
mod table;

use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::variants::Comparison;
use std::sync::Arc;

use crate::alone::alone;
use crate::erase::{memo, view_of};
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
use acts::{AddLayout, ChosenNow, PrintIt};
use card::Card;
use table::Table;

/// What the screen shows: the plan, and its layouts looked at together.
type Compared = Arc<(Arc<Plan>, Comparison)>;

/// The Compare screen.
#[component]
pub fn CompareScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let compared = memo(move || {
        let plan = workspace.plan.get()?;
        let comparison = Comparison::of(&plan);
        Some(Arc::new((plan, comparison)))
    });
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    view! {
        <h1>"Compare"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Open compared/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

#[component]
fn Open(compared: Memo<Option<Compared>>) -> impl IntoView {
    // Which layout is being chosen stays while the rest is drawn anew.
    let choosing = RwSignal::new(None);
    alone("compare");
    view! {
        <div class="compare">
            <p class="lead on-screen">
                "Puts the layouts of this plan side by side, so that one can be chosen for the sheet. A \
                diamond ◆ marks what is not the same in all of them."
            </p>
            {view_of(move || compared.get().map(|compared| view! { <Head compared/> }))}
            <div class="compare-cards">
                {view_of(move || {
                    let compared = compared.get()?;
                    let columns = 0..compared.1.columns.len();
                    let cards = columns.map(|at| view! {
                        <Card compared=Arc::clone(&compared) at choosing/>
                    });
                    Some(cards.collect_view())
                })}
            </div>
            <AddLayout/>
            {view_of(move || compared.get().map(|compared| view! { <Table compared/> }))}
            <PrintIt/>
        </div>
    }
}

/// What matters, in sentences, and what was chosen.
#[component]
fn Head(compared: Compared) -> impl IntoView {
    let (plan, comparison) = &*compared;
    let said = comparison.sentences.iter();
    let said = said
        .map(|said| view! { <li>{said.clone()}</li> })
        .collect_view();
    let title = format!(
        "Comparison of layouts: {}, revision {}",
        plan.name, plan.revision
    );
    view! {
        <p class="compare-title on-paper">{title}</p>
        <ul class="compare-said">{said}</ul>
        <ChosenNow plan=Arc::clone(plan)/>
    }
}
