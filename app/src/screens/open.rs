//! The Open screen: what somebody handed on, and what becomes of it.

mod came;
mod merge;
mod part;
mod paste;

use leptos::prelude::*;

use crate::arrivals::{Arrivals, Arrived};
use crate::erase::view_of;
use crate::route::Route;
use crate::workspace::Workspace;
use came::Came;
use paste::PasteLink;

/// The Open screen.
#[component]
pub fn OpenScreen() -> impl IntoView {
    let arrivals = Arrivals::here();
    // What was done before was done to another plan.
    Workspace::here().status.set(None);
    view! {
        <h1>"Open"</h1>
        <p class="lead">
            "Here you see a plan that somebody sent you. It becomes one of yours only when you say \
            so. Nothing here is overwritten, and nothing is sent anywhere."
        </p>
        {view_of(move || match arrivals.first() {
            None => view! { <Nothing/> }.into_any(),
            Some(Arrived { from, opened: Ok(opened) }) => view! { <Came from opened/> }.into_any(),
            Some(Arrived { from, opened: Err(reason) }) => {
                view! { <Refused from=from.words() reason/> }.into_any()
            }
        })}
    }
}

/// Asks for a link.
#[component]
fn Nothing() -> impl IntoView {
    view! {
        <p>
            "A link that you tap opens here by itself. If it does not, copy it and paste it below. \
            A file is opened under "<a href=Route::Plans.href()>"Plans"</a>"."
        </p>
        <PasteLink/>
    }
}

/// Says why it was not opened, and asks again.
#[component]
fn Refused(from: String, reason: String) -> impl IntoView {
    let arrivals = Arrivals::here();
    let settle = move |_| {
        arrivals.settle();
    };
    view! {
        <section class="refused" aria-labelledby="refused">
            <h2 id="refused">"Not opened"</h2>
            <p class="must-fix" role="alert">{from}" was not opened. "{reason}</p>
            <p>"The plans here are as they were."</p>
            <button type="button" on:click=settle>"Open another link"</button>
        </section>
    }
}
