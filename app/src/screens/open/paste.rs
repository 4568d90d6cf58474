//! A link that came as text.

use leptos::ev::SubmitEvent;
use leptos::html;
use leptos::prelude::*;

use crate::arrivals::Arrivals;

/// A field to paste a link into.
#[component]
pub fn PasteLink() -> impl IntoView {
    let arrivals = Arrivals::here();
    let field = NodeRef::<html::Textarea>::new();
    let wrong = RwSignal::new(false);
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        let Some(field) = field.get_untracked() else {
            return;
        };
        wrong.set(!arrivals.take_link(&field.value()));
        if wrong.get_untracked() {
            // A field on the page takes the focus.
            let _ = field.focus();
        }
    };
    view! {
        <form class="paste" on:submit=submit novalidate>
            <label class="field">
                <span>"The link"</span>
                <textarea rows="4" autocomplete="off" spellcheck="false" node_ref=field
                    aria-describedby="paste-error"
                    aria-invalid=move || wrong.get().then_some("true")></textarea>
            </label>
            <p class="must-fix" role="alert" id="paste-error">{move || wrong.get().then_some(
                "This is no link to a plan: such a link has “#/open/” in it. Copy the whole link, from \
                its first character to its last."
            )}</p>
            <button type="submit" class="main">"Open the link"</button>
        </form>
    }
}
