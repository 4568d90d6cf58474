//! A copy of a plan that cannot be read.

use leptos::prelude::*;

use crate::storage::{Damaged, Library};

/// Why it cannot be read, and what may be done with it.
#[component]
pub fn Damage(copy: Damaged) -> impl IntoView {
    let library = Library::here();
    let copy = StoredValue::new(copy);
    let why = copy.with_value(|copy| copy.damage.to_string());
    view! {
        <div class="damage">
            <p>"One saved copy cannot be read: "{why}"."</p>
            <div class="acts">
                <button type="button" on:click=move |_| copy.with_value(|c| library.download_damaged(c))>
                    "Download the unreadable copy"
                </button>
                <button type="button" on:click=move |_| library.discard_damaged(&copy.get_value())>
                    "Discard it"
                </button>
            </div>
        </div>
    }
}
