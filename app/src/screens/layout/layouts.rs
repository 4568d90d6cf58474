//! The layouts of the plan: choose, copy, rename, remove.

use leptos::ev::{KeyboardEvent, SubmitEvent};
use leptos::html;
use leptos::prelude::*;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::text::Text;

use super::bench::Bench;
use crate::focus::focus_soon;
use crate::route::Route;
use crate::widgets::{MenuButton, MenuItem, Select};

/// Where the focus goes when the field for the name is gone.
const HERE: &str = "layouts";

/// Which layout is in hand, and what can be done with it.
#[component]
pub fn Layouts() -> impl IntoView {
    let bench = Bench::here();
    let choices = Memo::new(move |_| {
        let layouts = bench.plan(|plan| {
            let layouts = plan.layouts.iter();
            layouts
                .map(|layout| (layout.id, layout.name.to_string()))
                .collect::<Vec<_>>()
        });
        layouts.unwrap_or_default()
    });
    let chosen = Memo::new(move |_| bench.plan(|plan| plan.current));
    let name = Memo::new(move |_| bench.plan(|plan| plan.layout().name.to_string()));
    let name = move || name.get().unwrap_or_default();
    let edit = move |edit| bench.commit(Edit::Plan(edit));
    let is_renaming = RwSignal::new(false);
    let copy = move || {
        let name = Text::new(&format!("{} copy", untrack(name)));
        edit(PlanEdit::DuplicateLayout(name));
    };
    let remove = move || {
        if let Some(current) = chosen.get_untracked() {
            edit(PlanEdit::RemoveLayout(current));
        }
    };
    let start_renaming = move || is_renaming.set(true);
    let select = move |id| {
        edit(PlanEdit::SelectLayout(id));
    };
    let items = vec![
        MenuItem::new("Copy this layout", copy),
        MenuItem::new("Rename this layout", start_renaming),
        MenuItem::new("Remove this layout", remove),
        MenuItem::new("Compare the layouts", || Route::Compare.go()),
    ];
    view! {
        <div class="layouts" id=HERE tabindex="-1">
            <Select label="Layout" choices chosen set=select/>
            <MenuButton label="Layouts" items/>
            <Show when=move || is_renaming.get()>
                <Rename name=untrack(name) is_renaming/>
            </Show>
        </div>
    }
}

/// Asks for another name: Enter takes it, Escape leaves the old one.
#[component]
fn Rename(name: String, is_renaming: RwSignal<bool>) -> impl IntoView {
    let bench = Bench::here();
    let field = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        if let Some(field) = field.get() {
            let _ = field.focus();
            field.select();
        }
    });
    let close = move || {
        is_renaming.set(false);
        focus_soon(HERE);
    };
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let typed = field.get_untracked().map(|field| field.value());
        close();
        if let Some(typed) = typed.filter(|typed| !typed.trim().is_empty()) {
            bench.commit(Edit::Plan(PlanEdit::RenameLayout(Text::new(&typed))));
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
