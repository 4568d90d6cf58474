//! Where plans are kept, and the choice for a computer that others use.

use leptos::prelude::*;

use crate::storage::{
    Card, Keeping, Library, in_words, is_available, is_page_from_file, note_shared_here,
};
use crate::widgets::Tick;

/// Where a plan is kept, in words.
pub fn kept(card: &Card) -> String {
    match (card.keeping, card.saved) {
        (Keeping::InPage, _) => "in this page only".to_owned(),
        (Keeping::InBrowser, Some(saved)) => format!("saved {}", in_words(saved)),
        (Keeping::InBrowser, None) => "not saved yet".to_owned(),
    }
}

/// Whether new plans are kept in this page only.
#[component]
pub fn SharedComputer() -> impl IntoView {
    let library = Library::here();
    let means = move || match library.shared_computer.get() {
        true => {
            "New and opened plans are kept in this page only: closing or reloading it loses them. \
             Nothing of them is left in this browser. Export what is to stay."
        }
        false if is_page_from_file() => {
            "This page was opened from a file. The browser keeps plans for it, on this device, but \
             may forget them when the file is moved or the browser is cleaned: export plans as \
             files, and open those. Whoever uses this browser can open what it keeps. Nothing is \
             sent anywhere."
        }
        false => {
            "Plans are kept in this browser, on this device. Whoever uses this browser can open \
             them. Nothing is sent anywhere."
        }
    };
    view! {
        <div class="shared-computer">
            <Tick label="Others use this computer" on=library.shared_computer
                set=move |on| {
                    note_shared_here(on);
                    library.shared_computer.set(on || !is_available());
                }/>
            <p class="quiet">{means}</p>
        </div>
    }
}
