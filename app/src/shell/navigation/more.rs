//! The screens beyond the main job, behind one button.

use leptos::ev::{FocusEvent, KeyboardEvent};
use leptos::html;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::Node;

use crate::erase::{When, flag, view_of};
use crate::route::Route;

/// The screens, each with what it is for.
const MORE: [(Route, &str); 10] = [
    (
        Route::Gears,
        "How the derailleurs work together, and what each way asks",
    ),
    (Route::Ride, "What a road asks of each hand and finger"),
    (
        Route::Compare,
        "Layouts side by side, and which goes on the sheet",
    ),
    (Route::Practice, "Try the buttons here, without the bike"),
    (Route::Share, "By file, by link or by a code to scan"),
    (
        Route::Review,
        "For the therapist: read it, say what was seen, decide",
    ),
    (Route::Stand, "Prove what was built, step by step"),
    (
        Route::Card,
        "How to stop and what each hand does, for the pocket",
    ),
    (Route::Rules(None), "What is looked at, and why"),
    (Route::Settings, "Colours, the thumb’s side, repeated taps"),
];

/// A button that opens the list of further screens, and says which of them is
/// shown. Escape closes the list and gives the focus back; leaving it closes
/// it.
#[component]
pub fn More(route: ReadSignal<Route>) -> impl IntoView {
    let open = RwSignal::new(false);
    let anchor = NodeRef::<html::Li>::new();
    let button = NodeRef::<html::Button>::new();
    let here = Memo::new(move |_| {
        route.with(|route| {
            MORE.iter()
                .find(|(screen, _)| screen == route)
                .map(|(screen, _)| screen.name())
        })
    });
    let is_here = move || here.get().is_some();
    // Another screen may also come by the browser's own ways.
    Effect::new(move |_| {
        route.track();
        open.set(false);
    });
    let left = move |event: FocusEvent| {
        let to = event
            .related_target()
            .and_then(|to| to.dyn_into::<Node>().ok());
        if let Some(anchor) = anchor.try_get_untracked().flatten()
            && !anchor.contains(to.as_ref())
        {
            open.set(false);
        }
    };
    let escape = move |event: KeyboardEvent| {
        if event.key() == "Escape" && open.get_untracked() {
            event.prevent_default();
            event.stop_propagation();
            open.set(false);
            if let Some(button) = button.get_untracked() {
                let _ = button.focus();
            }
        }
    };
    view! {
        <li class="more" class:here=is_here node_ref=anchor on:focusout=left on:keydown=escape>
            <button type="button" class="more-button" node_ref=button
                aria-expanded=move || open.get().to_string() aria-controls="more-screens"
                on:click=move |_| open.update(|open| *open = !*open)>
                <span class="more-name">"More"</span>
                {view_of(move || here.get().map(|name| view! { <span class="more-here">{name}</span> }))}
            </button>
            <When holds=flag(move || open.get())>
                <MoreScreens route close=Callback::new(move |()| open.set(false))/>
            </When>
        </li>
    }
}

#[component]
fn MoreScreens(route: ReadSignal<Route>, close: Callback<()>) -> impl IntoView {
    let items = MORE
        .into_iter()
        .map(|(screen, purpose)| {
            let (href, name) = (screen.href(), screen.name());
            let is_here = move || route.with(|route| *route == screen).then_some("page");
            view! {
                <li>
                    <a href=href aria-current=is_here on:click=move |_| close.run(())>{name}</a>
                    <span class="purpose">{purpose}</span>
                </li>
            }
        })
        .collect_view();
    view! { <ul class="more-screens" id="more-screens">{items}</ul> }
}
