//! Puts the focus where work goes on, after what had it is gone.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Focuses the element with this id once the page is drawn, or else the screen.
pub fn focus_soon(id: impl Into<String>) {
    let id = id.into();
    // One frame for what changed to be drawn.
    request_animation_frame(move || {
        let page = document();
        let place = page
            .get_element_by_id(&id)
            .or_else(|| page.get_element_by_id("main"));
        if let Some(place) = place.and_then(|place| place.dyn_into::<HtmlElement>().ok()) {
            let _ = place.focus();
        }
    });
}

/// Focuses the first element that a selector finds, if there is one.
pub fn focus_on(selector: &str) {
    let found = document().query_selector(selector).ok().flatten();
    if let Some(element) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) {
        let _ = element.focus();
    }
}

/// Focuses the screen if nothing has the focus any more.
pub fn focus_screen_if_lost() {
    request_animation_frame(|| {
        let page = document();
        let lost = match page.active_element() {
            Some(element) => element.tag_name() == "BODY",
            None => true,
        };
        if lost {
            focus_soon("main");
        }
    });
}
