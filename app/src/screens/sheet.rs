//! The Sheet screen: the setup sheet as the paper it will be.

mod choices;
pub(super) mod cockpit;
mod code;
mod gears;
mod hands;
mod on_the_stand;
mod page;
mod proof;
pub(super) mod running;
mod table;
mod ticks;
mod work;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::sheet::Sheet;
use std::sync::Arc;

use crate::alone::alone;
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
use choices::Choices;
use code::code_of;
use gears::GearPage;
use hands::HandsPage;
use on_the_stand::OnTheStand;
use proof::ProofPage;
use work::WorkPage;

/// The Sheet screen.
#[component]
pub fn SheetScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = Memo::new(move |_| workspace.plan.with(Option::is_some));
    let sheet = Memo::new(move |_| {
        let plan = workspace.plan.get()?;
        let sheet = Arc::new(Sheet::of(&plan, workspace.print.get()));
        Some((plan, sheet))
    });
    running::follow(Memo::new(move |_| {
        let (_, sheet) = sheet.get()?;
        Some(running::Foot {
            title: sheet.title.clone(),
            parts: sheet.hands.is_some(),
        })
    }));
    view! {
        <h1>"Sheet"</h1>
        <Show when=move || is_open.get() fallback=NoPlan>
            <Choices sheet/>
            {move || sheet.get().map(|(plan, sheet)| view! { <Paper plan sheet/> })}
        </Show>
    }
}

/// The sheet on its paper. The classes choose the page size and the layout for
/// large print in the style sheet, which the policy lets no view write itself.
#[component]
fn Paper(plan: Arc<Plan>, sheet: Arc<Sheet>) -> impl IntoView {
    alone("sheet");
    let options = sheet.options;
    let large = if options.large_print { " large" } else { "" };
    let hands = sheet.hands.clone();
    let title = sheet.title.clone();
    // Large print is long enough without it.
    let code = (options.code && !options.large_print).then(|| code_of(&plan));
    let code = code.flatten();
    let gears = sheet.gears.clone().map(|card| {
        view! { <GearPage card title=title.clone()/> }
    });
    view! {
        <article class=format!("sheet {}{large}", options.paper.code())
            aria-label="Setup sheet">
            <h1 class="sheet-name">"Setup sheet"</h1>
            <OnTheStand plan sheet=sheet.clone() code/>
            <WorkPage sheet=sheet.clone()/>
            <ProofPage sheet/>
            {gears}
            {hands.map(|hands| view! { <HandsPage hands title/> })}
        </article>
    }
}
