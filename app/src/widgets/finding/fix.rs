//! The button that makes a fix.

use std::cell::Cell;

use leptos::ev::MouseEvent;
use leptos::prelude::*;
use leverwright_core::finding::Fix;

use crate::workspace::Workspace;

/// Makes a fix, and says so.
#[component]
pub fn FixButton(
    /// The fix.
    fix: Fix,
    /// Called when it is made.
    acted: Callback<()>,
    /// The name of an element that says more.
    #[prop(into, optional)]
    described_by: Option<String>,
) -> impl IntoView {
    let workspace = Workspace::here();
    let Fix { label, edit } = fix;
    let done = format!("Done: {label}.");
    let fix = move |event: MouseEvent| {
        // What moved under the finger was not what it meant.
        if event.detail() > 0 && has_just_acted() || untrack(|| workspace.foresees()) {
            return;
        }
        if workspace.commit(edit.clone()) {
            workspace.say(format!("{done} {}.", workspace.tally().unwrap_or_default()));
            acted.run(());
        }
    };
    view! { <button type="button" aria-describedby=described_by on:click=fix>{label}</button> }
}

/// How long the list lies still under a pointer after a fix, in milliseconds:
/// a second tap of an unsteady hand comes sooner (our judgement).
const REST: f64 = 700.0;

/// Whether the last fix was made a moment ago; if not, this is one.
fn has_just_acted() -> bool {
    thread_local! {
        static LAST: Cell<f64> = const { Cell::new(f64::MIN) };
    }
    let now = js_sys::Date::now();
    LAST.with(|last| {
        let just = now - last.get() < REST;
        if !just {
            last.set(now);
        }
        just
    })
}
