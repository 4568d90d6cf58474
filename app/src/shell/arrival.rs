//! What happens on arrival at a screen: the title, the focus, the scroll.

use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use crate::focus::focus_field;
use crate::route::{Route, field_in_address};
use crate::workspace::Workspace;

/// Keeps the title of the document, and moves the focus to the heading of each
/// screen that is gone to, so that the keyboard and a screen reader start there.
pub fn announce_arrival(route: ReadSignal<Route>, main: NodeRef<html::Main>) {
    let workspace = Workspace::here();
    Effect::new(move |_| {
        let name = workspace
            .plan
            .with(|plan| plan.as_ref().map(|plan| plan.name.to_string()));
        document().set_title(&title(&route.get(), name.as_deref()));
    });
    Effect::new(move |before: Option<Route>| {
        let now = route.get();
        if before.is_some_and(|before| before != now) {
            request_animation_frame(move || arrive(main));
        }
        now
    });
}

/// Leads to the field that the address names, or else to the heading.
fn arrive(main: NodeRef<html::Main>) {
    if !field_in_address().is_some_and(|field| focus_field(&field)) {
        focus_heading(main);
    }
}

fn title(route: &Route, plan: Option<&str>) -> String {
    match plan.filter(|name| !name.is_empty()) {
        Some(plan) if route.is_about_plan() => format!("{} · {plan} · Leverwright", route.name()),
        _ => format!("{} · Leverwright", route.name()),
    }
}

fn focus_heading(main: NodeRef<html::Main>) {
    let heading = main
        .get_untracked()
        .and_then(|main| main.query_selector("h1").ok().flatten())
        .and_then(|heading| heading.dyn_into::<HtmlElement>().ok());
    if let Some(heading) = heading {
        heading.set_tab_index(-1);
        let _ = heading.focus();
    }
    window().scroll_to_with_x_and_y(0.0, 0.0);
}
