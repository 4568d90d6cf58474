//! What people see when the program itself breaks.

use std::panic::PanicHookInfo;

use leptos::prelude::document;

use crate::parts::NotFetched;

/// From now on a fault in the program is told on the page and on the console.
pub fn tell_on_panic() {
    std::panic::set_hook(Box::new(|info: &PanicHookInfo<'_>| {
        console_error_panic_hook::hook(info);
        show();
    }));
}

/// Covers the page with what happened and what to do. Plain page elements only:
/// after a fault nothing of the program may be relied on. The link leads to the
/// list of plans and, having another address, loads the page anew.
pub fn show() {
    cover(
        "The program stopped",
        &[
            "Something went wrong inside Leverwright. Your plans are kept in this browser as they \
             were last saved; a plan kept in this page only is lost.",
            "Open it again, and look whether the last change is there.",
        ],
    );
}

/// Says on the empty page that what it needs first could not be fetched.
pub fn tell_not_started(error: &NotFetched) {
    cover(
        "The program did not start",
        &[&error.to_string(), "Plans that were saved here are kept."],
    );
}

fn cover(heading: &str, paragraphs: &[&str]) {
    let document = document();
    let (Some(body), Ok(cover)) = (document.body(), document.create_element("div")) else {
        return;
    };
    let paragraphs = paragraphs.iter().map(|text| ("p", *text));
    cover.set_class_name("crash");
    let _ = cover.set_attribute("role", "alert");
    for (tag, text) in std::iter::once(("h1", heading)).chain(paragraphs) {
        if let Ok(part) = document.create_element(tag) {
            part.set_text_content(Some(text));
            let _ = cover.append_child(&part);
        }
    }
    if let Ok(link) = document.create_element("a") {
        link.set_text_content(Some("Open it again"));
        let again = format!("?again={}#/plans", js_sys::Date::now());
        let _ = link.set_attribute("href", &again);
        let _ = cover.append_child(&link);
    }
    let children = body.children();
    for at in 0..children.length() {
        // What is hidden and inert takes no presses that the program would not stand.
        if let Some(child) = children.item(at) {
            let _ = child.set_attribute("hidden", "");
            let _ = child.set_attribute("inert", "");
        }
    }
    let _ = body.set_attribute("data-stopped", "");
    let _ = body.append_child(&cover);
}
