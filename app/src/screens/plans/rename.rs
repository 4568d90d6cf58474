//! A field in place of a plan's name.

use leptos::ev::{KeyboardEvent, SubmitEvent};
use leptos::html;
use leptos::prelude::*;

use super::card::name_id;
use crate::focus::focus_soon;
use crate::storage::{Library, PlanId};

/// Asks for another name: Enter takes it, Escape leaves the old one.
#[component]
pub fn Rename(id: PlanId, name: String, renaming: RwSignal<bool>) -> impl IntoView {
    let library = Library::here();
    let field = NodeRef::<html::Input>::new();
    Effect::new(move |_| {
        if let Some(field) = field.get() {
            let _ = field.focus();
            field.select();
        }
    });
    let back = name_id(&id);
    let close = Callback::new(move |()| {
        renaming.set(false);
        focus_soon(back.clone());
    });
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let typed = field.get_untracked().map(|field| field.value());
        close.run(());
        if let Some(typed) = typed.filter(|typed| !typed.trim().is_empty()) {
            library.rename(&id, &typed);
        }
    };
    let escape = move |event: KeyboardEvent| {
        if event.key() == "Escape" {
            close.run(());
        }
    };
    view! {
        <form class="rename" on:submit=submit on:keydown=escape>
            <label class="field">
                <span>"Name of the plan"</span>
                <input type="text" autocomplete="off" maxlength="400" value=name node_ref=field/>
            </label>
            <button type="submit">"Save the name"</button>
            <button type="button" on:click=move |_| close.run(())>"Cancel"</button>
        </form>
    }
}
