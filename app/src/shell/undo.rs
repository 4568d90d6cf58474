//! Undo and redo over everything in the plan: buttons and keys.

use leptos::ev::{self, KeyboardEvent};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlInputElement};

use crate::after_paint::a_frame_behind;
use crate::workspace::Workspace;

/// The two buttons, with what they would take back or make again.
#[component]
pub fn UndoBar() -> impl IntoView {
    let workspace = Workspace::here();
    let undo = a_frame_behind(move || workspace.undo_label());
    let redo = a_frame_behind(move || workspace.redo_label());
    let open = Memo::new(move |_| workspace.plan.with(Option::is_some));
    view! {
        <Show when=move || open.get()>
            <section class="undo-bar" aria-label="Undo and redo">
                <button type="button" aria-describedby="undo-label"
                    aria-disabled=move || undo.with(Option::is_none).to_string()
                    on:click=move |_| workspace.undo()>"Undo"</button>
                <button type="button" aria-describedby="redo-label"
                    aria-disabled=move || redo.with(Option::is_none).to_string()
                    on:click=move |_| workspace.redo()>"Redo"</button>
                <span id="undo-label" class="unseen">{move || undo.get()}</span>
                <span id="redo-label" class="unseen">{move || redo.get()}</span>
            </section>
        </Show>
    }
}

/// Ctrl or Cmd with Z, with Shift and Z, with Y: not while typing, where these
/// keys belong to the field.
pub fn listen_for_undo_keys(workspace: Workspace) {
    let listener = window_event_listener(ev::keydown, move |event: KeyboardEvent| {
        let command = event.ctrl_key() || event.meta_key();
        if !command || event.alt_key() || is_busy(&event) {
            return;
        }
        match (event.key().to_ascii_lowercase().as_str(), event.shift_key()) {
            ("z", false) => workspace.undo(),
            ("z", true) | ("y", false) => workspace.redo(),
            _ => return,
        }
        event.prevent_default();
    });
    on_cleanup(move || listener.remove());
}

/// Whether the keys belong to a field or a question over the page.
fn is_busy(event: &KeyboardEvent) -> bool {
    let Some(target) = event.target().and_then(|t| t.dyn_into::<Element>().ok()) else {
        return false;
    };
    let field = match target.dyn_ref::<HtmlInputElement>() {
        Some(input) => {
            !["checkbox", "radio", "range", "button", "file"].contains(&input.type_().as_str())
        }
        None => target.tag_name() == "TEXTAREA",
    };
    field || target.closest("dialog").ok().flatten().is_some()
}
