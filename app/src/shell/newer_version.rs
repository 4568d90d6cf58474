//! Keeps the page in the browser, so that it opens without a network, and says
//! when a newer version waits.

use std::cell::Cell;
use std::rc::Rc;

use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState};

use crate::storage::Library;
use crate::workspace::{Offer, Workspace};

/// Beside the page in the release build.
const WORKER: &str = "service-worker.js";

/// What the worker is told when the person starts the newer version.
const START: &str = "start";

/// Has the browser keep the page from now on, where it can. A failure costs the
/// network-free start only, so it is not told.
pub fn keep_in_browser(workspace: Workspace, library: Library) {
    let Some(workers) = workers() else { return };
    leptos::task::spawn_local(async move {
        let Ok(registration) = JsFuture::from(workers.register(WORKER)).await else {
            return;
        };
        let registration: ServiceWorkerRegistration = registration.unchecked_into();
        if registration.waiting().is_some() {
            announce(workspace, library);
        }
        // One may be on its way already.
        announce_when_kept(workspace, library, &registration);
        watch(workspace, library, &registration);
        // Browsers look for one now and then; this looks each time the page is opened. Without a
        // network there is none.
        if let Ok(looked) = registration.update() {
            let _ = JsFuture::from(looked).await;
        }
    });
}

/// The browser's keeper of pages. None where it has none for this page: opened
/// as a file, without a secure connection, or while the program is developed,
/// when an older build would come back.
fn workers() -> Option<ServiceWorkerContainer> {
    let navigator = window().navigator();
    let has = js_sys::Reflect::has(&navigator, &"serviceWorker".into());
    let may = !cfg!(debug_assertions) && window().is_secure_context();
    (may && has == Ok(true)).then(|| navigator.service_worker())
}

/// Announces every newer version that this page finds as long as it lives.
fn watch(workspace: Workspace, library: Library, registration: &ServiceWorkerRegistration) {
    let found = {
        let registration = registration.clone();
        Closure::<dyn Fn()>::new(move || announce_when_kept(workspace, library, &registration))
    };
    registration.set_onupdatefound(Some(found.as_ref().unchecked_ref()));
    found.forget();
}

/// Waits until the worker on its way has fetched all of its version.
fn announce_when_kept(
    workspace: Workspace,
    library: Library,
    registration: &ServiceWorkerRegistration,
) {
    let Some(worker) = registration.installing() else {
        return;
    };
    let changed = {
        let worker = worker.clone();
        Closure::<dyn Fn()>::new(move || {
            // The very first worker replaces nothing.
            let replaces = workers().is_some_and(|workers| workers.controller().is_some());
            if worker.state() == ServiceWorkerState::Installed && replaces {
                announce(workspace, library);
            }
        })
    };
    worker.set_onstatechange(Some(changed.as_ref().unchecked_ref()));
    changed.forget();
}

fn announce(workspace: Workspace, library: Library) {
    let start = Offer::new("Start the newer version", move || {
        leptos::task::spawn_local(start(workspace, library));
    });
    let text = "A newer version of Leverwright is ready. It starts when this page has been closed \
                everywhere, or now.";
    workspace.leave(text.to_owned(), false, vec![start]);
}

/// Hands the page over to the newer version, unless that would lose something.
async fn start(workspace: Workspace, library: Library) {
    if library.would_lose_on_reload() {
        announce(workspace, library);
        workspace.refuse(
            "The newer version has to wait: a plan is in this page only. Export it as a file \
             first.",
        );
        return;
    }
    let Some(workers) = workers() else { return };
    let found = JsFuture::from(workers.get_registration()).await;
    let Some(waiting) = found
        .ok()
        .and_then(|found| found.dyn_into::<ServiceWorkerRegistration>().ok())
        .and_then(|registration| registration.waiting())
    else {
        return;
    };
    reload_once_handed_over(&workers);
    // Without an answer the older version goes on.
    let _ = waiting.post_message(&START.into());
}

fn reload_once_handed_over(workers: &ServiceWorkerContainer) {
    let reloaded = Rc::new(Cell::new(false));
    let handed_over = Closure::<dyn Fn()>::new(move || {
        if !reloaded.replace(true) {
            // A page that cannot be loaded again stays as it is.
            let _ = window().location().reload();
        }
    });
    workers.set_oncontrollerchange(Some(handed_over.as_ref().unchecked_ref()));
    handed_over.forget();
}
