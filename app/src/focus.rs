//! Puts the focus where work goes on, after what had it is gone.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

/// Focuses the element with this id once the page is drawn, or else the screen.
pub fn focus_soon(id: impl Into<String>) {
    focus_soon_or(id.into(), "main");
}

/// Focuses the element with this id once the page is drawn, or else another
/// one, or else the screen.
pub fn focus_soon_or(id: String, other: &'static str) {
    // One frame for what changed to be drawn.
    request_animation_frame(move || {
        let page = document();
        let place = page
            .get_element_by_id(&id)
            .or_else(|| page.get_element_by_id(other))
            .or_else(|| page.get_element_by_id("main"));
        if let Some(place) = place.and_then(|place| place.dyn_into::<HtmlElement>().ok()) {
            let _ = place.focus();
        }
    });
}

/// Focuses the heading with this id. Where little of what it heads would be seen, it comes to the top.
pub fn go_to(id: &'static str) {
    request_animation_frame(move || {
        let place = document().get_element_by_id(id);
        if let Some(place) = place.and_then(|place| place.dyn_into::<HtmlElement>().ok()) {
            let _ = place.focus();
            let height = window().inner_height().ok().and_then(|h| h.as_f64());
            if place.get_bounding_client_rect().top() > height.unwrap_or_default() / 2.0 {
                place.scroll_into_view_with_bool(true);
            }
        }
    });
}

/// Focuses the first element that a selector finds, if there is one.
pub fn focus_on(selector: &str) {
    let found = document().query_selector(selector).ok().flatten();
    if let Some(element) = found {
        // Parts of drawings take the focus by the same method, and are no
        // elements of HTML.
        let _ = element.unchecked_into::<HtmlElement>().focus();
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

/// Leads to a field: the element with this id, or the choice of this name.
/// Unfolds what hides it. Whether it is on the page.
pub fn focus_field(key: &str) -> bool {
    let page = document();
    let find = |selector: String| page.query_selector(&selector).ok().flatten();
    let field = page
        .get_element_by_id(key)
        .or_else(|| find(format!("[name='{key}']:checked")))
        .or_else(|| find(format!("[name='{key}']")))
        .and_then(|field| field.dyn_into::<HtmlElement>().ok());
    let Some(field) = field else {
        return false;
    };
    if let Ok(Some(details)) = field.closest("details") {
        // Unfolding an element that is there does not fail.
        let _ = details.set_attribute("open", "");
    }
    if field.tab_index() < 0 {
        field.set_tab_index(-1);
    }
    let _ = field.focus();
    // The question, not only its first answer.
    let question = field.closest("fieldset").ok().flatten();
    question
        .unwrap_or_else(|| field.into())
        .scroll_into_view_with_bool(true);
    true
}

/// The same, once what was just changed is drawn.
pub fn focus_field_soon(key: String) {
    request_animation_frame(move || {
        focus_field(&key);
    });
}
