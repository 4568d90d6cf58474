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
    let name = Memo::new(move |_| {
        let plan = workspace.plan;
        plan.with(|plan| plan.as_ref().map(|plan| plan.name.to_string()))
    });
    Effect::new(move |_| {
        document().set_title(&name.with(|name| title(&route.get(), name.as_deref())));
    });
    Effect::new(move |before: Option<Route>| {
        let now = route.get();
        if before.as_ref().is_some_and(|before| *before != now) {
            // What was done is told where it was done.
            if before.is_some_and(|before| before.is_about_plan()) && now.is_about_plan() {
                workspace.status.set(None);
            }
            let place = workspace.left_at.get_untracked();
            let place = place.filter(|_| now == Route::Layout);
            request_animation_frame(move || match place {
                Some(place) if focus_in_the_middle(&place) => workspace.left_at.set(None),
                _ => arrive(main),
            });
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

/// Goes back to where the screen was left; whether that is still there.
fn focus_in_the_middle(id: &str) -> bool {
    let place = document().get_element_by_id(id);
    let Some(place) = place.and_then(|place| place.dyn_into::<HtmlElement>().ok()) else {
        return false;
    };
    let _ = place.focus();
    let height = window().inner_height().ok().and_then(|h| h.as_f64());
    let off = place.get_bounding_client_rect().top() - height.unwrap_or_default() / 2.0;
    window().scroll_by_with_x_and_y(0.0, off);
    true
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
