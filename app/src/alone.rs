//! What has the page to itself: on paper a sheet, on the screen a ride of practice.

use std::cell::Cell;

use leptos::prelude::*;

/// Names on the page's root what has the page to itself, as long as the view lives: style sheets
/// leave out everything else there. They could find out by `:has()`, but then the browser would
/// look again after every change anywhere on the page.
pub fn alone(what: &'static str) {
    thread_local! {
        static LATEST: Cell<u32> = const { Cell::new(0) };
    }
    let Some(root) = document().document_element() else {
        return;
    };
    // Fails only for names that are no attributes.
    let _ = root.set_attribute(ATTRIBUTE, what);
    let mine = LATEST.get().wrapping_add(1);
    LATEST.set(mine);
    on_cleanup(move || {
        // The view that came in its place may have been there before it went.
        if LATEST.get() == mine
            && let Some(root) = document().document_element()
        {
            let _ = root.remove_attribute(ATTRIBUTE);
        }
    });
}

const ATTRIBUTE: &str = "data-alone";
