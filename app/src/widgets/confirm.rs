//! Asks before something that cannot be taken back.

use leptos::html;
use leptos::prelude::*;

use crate::widgets::id::fresh_id;

/// A question over the page. The browser's own dialog keeps the focus inside,
/// closes on Escape and gives the focus back.
#[component]
pub fn Confirm(
    /// Whether it is asked now.
    open: RwSignal<bool>,
    /// The question.
    #[prop(into)]
    question: Signal<String>,
    /// What the button that goes on says.
    #[prop(into)]
    go_on: String,
    /// Called when it is pressed.
    #[prop(into)]
    confirmed: Callback<()>,
    /// What goes and what stays, in words.
    children: Children,
) -> impl IntoView {
    let dialog = NodeRef::<html::Dialog>::new();
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        match open.get() {
            // Fails only for a dialog that is open already.
            true => drop(dialog.show_modal()),
            false => dialog.close(),
        }
    });
    let id = fresh_id("confirm");
    view! {
        <dialog class="confirm" node_ref=dialog aria-labelledby=id.clone()
            on:close=move |_| open.set(false)>
            <h2 id=id.clone()>{move || question.get()}</h2>
            {children()}
            <div class="acts">
                <button type="button" on:click=move |_| open.set(false)>"Cancel"</button>
                <button type="button" class="main" on:click=move |_| {
                    open.set(false);
                    confirmed.run(());
                }>{go_on}</button>
            </div>
        </dialog>
    }
}
