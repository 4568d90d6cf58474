//! Acts on the layouts as a whole, and on the name of one.

use leptos::ev::{KeyboardEvent, SubmitEvent};
use leptos::html;
use leptos::prelude::*;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::layout::LayoutId;
use leverwright_core::plan::Plan;
use leverwright_core::text::Text;
use std::sync::Arc;

use super::card::heading_id;
use crate::focus::focus_soon;
use crate::workspace::Workspace;

/// Which layout is chosen for the sheet, by whom, and the way back.
#[component]
pub fn ChosenNow(plan: Arc<Plan>) -> impl IntoView {
    let workspace = Workspace::here();
    let chosen = plan.chosen.as_ref()?;
    let by = Some(chosen.by.as_str()).filter(|by| !by.is_empty());
    let who: Vec<String> = (by.map(str::to_owned).into_iter())
        .chain([chosen.role.to_string()])
        .chain(chosen.date.map(|date| date.to_string()))
        .collect();
    let take_back = move |_| {
        workspace.commit(Edit::Plan(PlanEdit::ChooseLayout(None)));
        focus_soon("main");
    };
    Some(view! {
        <p class="chosen-now">
            "Chosen by: "{who.join(", ")}". "
            <button type="button" class="on-screen" on:click=take_back>"Take the choice back"</button>
        </p>
    })
}

/// Another layout beside those that are there.
#[component]
pub fn AddLayout() -> impl IntoView {
    let workspace = Workspace::here();
    let add = move |_| {
        let layouts = |plan: &Option<Arc<Plan>>| plan.as_ref().map_or(0, |plan| plan.layouts.len());
        let count = workspace.plan.with_untracked(layouts);
        let name = Text::new(&format!("Layout {}", count + 1));
        workspace.commit(Edit::Plan(PlanEdit::AddLayout(name)));
    };
    view! {
        <div class="acts on-screen">
            <button type="button" on:click=add>"Add a blank layout"</button>
        </div>
    }
}

/// The comparison on paper.
#[component]
pub fn PrintIt() -> impl IntoView {
    let print = move |_| {
        // A browser without printing leaves the page as it is.
        let _ = window().print();
    };
    view! {
        <div class="acts on-screen">
            <button type="button" on:click=print>"Print the comparison"</button>
        </div>
    }
}

/// Asks for another name: Enter takes it, Escape leaves the old one.
#[component]
pub fn RenameForm(id: LayoutId, name: String, renaming: RwSignal<bool>) -> impl IntoView {
    let workspace = Workspace::here();
    let field = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        if let Some(field) = field.get() {
            let _ = field.focus();
            field.select();
        }
    });
    let close = move || {
        renaming.set(false);
        focus_soon(heading_id(id));
    };
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let typed = field.get_untracked().map(|field| field.value());
        close();
        if let Some(typed) = typed.filter(|typed| !typed.trim().is_empty()) {
            // A name is given to the layout in hand.
            let edits = [
                PlanEdit::SelectLayout(id),
                PlanEdit::RenameLayout(Text::new(&typed)),
            ];
            workspace.commit(Edit::Several {
                label: "rename the layout".into(),
                edits: edits.map(Edit::Plan).into(),
            });
        }
    };
    let escape = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            close();
        }
    };
    view! {
        <form class="rename" on:submit=submit on:keydown=escape>
            <label class="field">
                <span>"Name of this layout"</span>
                <input type="text" autocomplete="off" maxlength="400" value=name node_ref=field/>
            </label>
            <button type="submit">"Save the name"</button>
            <button type="button" on:click=move |_| close()>"Cancel"</button>
        </form>
    }
}
