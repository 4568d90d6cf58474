//! Long work in slices between which the page answers.

use std::time::Duration;

use leptos::prelude::set_timeout;

/// How long a slice should take, in ms: below a frame of a slow screen.
const SLICE: f64 = 12.0;

/// Calls `work` with how much to do until it says that all is done. How much
/// follows from how long the last slice took, at first `size`.
pub fn in_slices(size: usize, mut work: impl FnMut(usize) -> bool + 'static) {
    let begun = js_sys::Date::now();
    if work(size) {
        return;
    }
    let took = (js_sys::Date::now() - begun).max(1.0);
    let next = (size as f64 * (SLICE / took).clamp(0.25, 2.0)).max(100.0) as usize;
    set_timeout(move || in_slices(next, work), Duration::ZERO);
}
