//! The layouts of the plan: choose, copy, rename, remove.

use leptos::prelude::*;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::text::Text;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::bench::Bench;
use crate::focus::focus_soon;
use crate::widgets::{MenuButton, MenuItem, Select, TextField};

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
    let rename = move |name: String| {
        // An emptied field is about to be written into: the old name stays until then.
        if name.trim().is_empty() {
            return;
        }
        if edit(PlanEdit::RenameLayout(Text::new(&name))) {
            is_renaming.set(false);
            focus_soon(HERE);
        }
    };
    let start_renaming = move || {
        is_renaming.set(true);
        request_animation_frame(focus_field);
    };
    let select = move |id| {
        edit(PlanEdit::SelectLayout(id));
    };
    let items = vec![
        MenuItem::new("Copy this layout", copy),
        MenuItem::new("Rename this layout", start_renaming),
        MenuItem::new("Remove this layout", remove),
    ];
    view! {
        <div class="layouts" id=HERE tabindex="-1">
            <Select label="Layout" choices chosen set=select/>
            <MenuButton label="Layouts" items/>
            <Show when=move || is_renaming.get()>
                <TextField label="Name of this layout" value=Signal::derive(name) set=rename/>
            </Show>
        </div>
    }
}

fn focus_field() {
    let field = document().query_selector(&format!("#{HERE} input"));
    let field = field
        .ok()
        .flatten()
        .and_then(|field| field.dyn_into::<HtmlElement>().ok());
    if let Some(field) = field {
        let _ = field.focus();
    }
}
