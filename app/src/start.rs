//! The start: what the page needs first, and what follows.

use leptos::mount::mount_to_body;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::App;
use crate::arrivals::Arrivals;
use crate::parts::Part;
use crate::route::Route;
use crate::shell::crash;
use crate::storage::keeps_plans;

/// Puts the app on the page as soon as what it shows first is here. Who comes
/// for the first time waits for the list of plans alone.
pub fn start() {
    match needed().filter(|part| !part.is_here()) {
        None => {
            mount();
            spawn_local(async {
                // Whoever needs it asks again, and tells when it cannot be had.
                let _ = Part::Desk.fetch().await;
            });
        }
        Some(part) => spawn_local(async move {
            match part.fetch().await {
                Ok(()) => mount(),
                Err(error) => crash::tell_not_started(&error),
            }
        }),
    }
}

/// The part that the first look at the page needs.
fn needed() -> Option<Part> {
    let first = match Arrivals::are_in_address() {
        true => Route::Open,
        false => Route::now(),
    };
    Part::of(&first).or_else(|| keeps_plans().then_some(Part::Desk))
}

fn mount() {
    mount_to_body(App);
    // For those who look from outside: measurements and tests.
    if let Some(performance) = window().performance() {
        let _ = performance.mark("running");
    }
    if let Some(page) = document().document_element() {
        let _ = page.set_attribute("data-ready", "1");
    }
}
