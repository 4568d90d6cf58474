//! One plan of the list.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::rules;
use leverwright_core::sheet::Readiness;
use leverwright_core::tally::Tally;

use super::card_damage::Damage;
use super::keeping::kept;
use super::rename::Rename;
use crate::focus::focus_soon;
use crate::route::Route;
use crate::storage::{Card, Keeping, Library, PlanId};
use crate::widgets::{Confirm, MenuButton, MenuItem};
use crate::workspace::Workspace;

/// A plan: its name opens it, a menu holds the rest.
#[component]
pub fn PlanCard(card: Card) -> impl IntoView {
    let damage = card
        .damaged
        .iter()
        .map(|copy| view! { <Damage copy=copy.clone()/> })
        .collect_view();
    let row = match card.plan.clone() {
        Some(plan) => view! { <Readable card plan/> }.into_any(),
        None => view! { <p class="must-fix">"A plan of which no copy can be read."</p> }.into_any(),
    };
    view! { <li class="plan-card">{row}{damage}</li> }
}

#[component]
fn Readable(card: Card, plan: Arc<Plan>) -> impl IntoView {
    let library = Library::here();
    let workspace = Workspace::here();
    let renaming = RwSignal::new(false);
    let removing = RwSignal::new(false);
    let id = StoredValue::new(card.id.clone());
    let is_open = move || library.open_id() == Some(id.get_value());
    // The open plan may have been changed since the list was looked at.
    let shown = Memo::new(move |_| match is_open() {
        true => workspace.plan.get().unwrap_or_else(|| Arc::clone(&plan)),
        false => Arc::clone(&plan),
    });
    let name = Memo::new(move |_| shown.with(|plan| plan.name.to_string()));
    let open = move |_| {
        if library.open(&id.get_value()) {
            Route::Layout.go();
        }
    };
    let about = StoredValue::new(format!("about-{}", card.id));
    let kept = kept(&card);
    view! {
        <Show
            when=move || renaming.get()
            fallback=move || view! {
                <h3>
                    <button type="button" class="plan-name" id=name_id(&id.get_value())
                        on:click=open aria-label=move || format!("Open {}", name.get())
                        aria-describedby=about.get_value()>{move || name.get()}</button>
                </h3>
            }
        >
            <Rename id=id.get_value() name=name.get_untracked() renaming/>
        </Show>
        <p class="plan-about" id=about.get_value()>
            {move || is_open().then_some("Open now · ")}
            {move || shown.with(|plan| in_short(plan))}" · "{kept.clone()}
        </p>
        <Acts card renaming removing name=name shown/>
        <RemoveHandDetails id=id.get_value() name removing/>
    }
}

/// The page's name for the button that opens a plan.
pub fn name_id(plan: &PlanId) -> String {
    format!("plan-{plan}")
}

/// The page's name for the button with what else may be done with a plan.
fn more_id(plan: &PlanId) -> String {
    format!("more-{plan}")
}

/// The verdict with how much stands open, the rider, and the bike where the
/// plan's name does not say it.
fn in_short(plan: &Plan) -> String {
    let tally = Tally::of(plan, &rules::findings(plan));
    let verdict = format!("{}: {tally}", Readiness::of(&tally).words());
    let rider = match plan.rider.nickname.as_str() {
        "" => "rider not named".to_owned(),
        name => format!("for {name}"),
    };
    let bike = plan.bike.in_short();
    let bike = Some(bike).filter(|bike| !plan.name.as_str().contains(bike));
    let parts = [verdict, rider].into_iter().chain(bike);
    parts.collect::<Vec<_>>().join(" · ")
}

#[component]
fn Acts(
    card: Card,
    renaming: RwSignal<bool>,
    removing: RwSignal<bool>,
    name: Memo<String>,
    shown: Memo<Arc<Plan>>,
) -> impl IntoView {
    let library = Library::here();
    let id = StoredValue::new(card.id.clone());
    let on = move |act: fn(Library, &PlanId)| {
        move || {
            act(library, &id.get_value());
            focus_soon(more_id(&id.get_value()));
        }
    };
    let keep = match card.keeping {
        Keeping::InBrowser => MenuItem::new("Keep in this page only", on(Library::keep_in_page)),
        Keeping::InPage => MenuItem::new("Keep in this browser", on(Library::keep_in_browser)),
    };
    let has_details = shown.with_untracked(|plan| plan.has_hand_details());
    let remove =
        has_details.then(|| MenuItem::new("Remove hand details", move || removing.set(true)));
    let delete = move || {
        library.delete(&id.get_value(), &name.get_untracked());
        focus_soon("main");
    };
    let share = move || {
        if library.open(&id.get_value()) {
            Route::Share.go();
        }
    };
    let items = [
        MenuItem::new("Rename", move || renaming.set(true)),
        MenuItem::new("Duplicate", on(Library::duplicate)),
        MenuItem::new("Share", share),
        MenuItem::new("Export as a file", on(Library::export)),
    ]
    .into_iter()
    .chain(remove)
    .chain([keep, MenuItem::new("Delete", delete)])
    .collect();
    let button_id = more_id(&id.get_value());
    view! { <MenuButton label="More" about=name button_id items/> }
}

#[component]
fn RemoveHandDetails(id: PlanId, name: Memo<String>, removing: RwSignal<bool>) -> impl IntoView {
    let library = Library::here();
    let question = move || format!("Remove hand details from “{}”?", name.get());
    let confirmed = Callback::new(move |()| {
        library.remove_hand_details(&id);
        focus_soon(name_id(&id));
    });
    view! {
        <Confirm open=removing question=Signal::derive(question) go_on="Remove them" confirmed>
            <p>
                "What goes, from the plan, from its undo and from every copy in this browser: all \
                answers about the hands, the rider’s own words, mounting and braking habits, what \
                was seen of this rider’s reach, and why findings were accepted."
            </p>
            <p>
                "What stays: the nickname, the hand positions without who saw them, the day of \
                removal, the bike and the layout, which \
                still tells which hand does what. Files exported before, prints and other open \
                tabs keep what they have."
            </p>
            <p>"This cannot be undone."</p>
        </Confirm>
    }
}
