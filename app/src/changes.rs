//! Values that many follow, passed on only when they come out different.

use leptos::prelude::*;

/// Follows a value. Other than with a memo, nothing that follows it in turn is asked whether it has
/// anything to do before the value has changed: worth it where many follow what seldom changes.
pub fn changes_of<T: PartialEq + Send + Sync + 'static>(
    now: impl Fn() -> T + Send + Sync + 'static,
) -> RwSignal<T> {
    let held = RwSignal::new(untrack(&now));
    keep_doing(Box::new(move || {
        let now = now();
        if held.with_untracked(|held| *held != now) {
            held.set(now);
        }
    }));
    held
}

/// One for all types of values.
fn keep_doing(act: Box<dyn Fn() + Send + Sync>) {
    Effect::new(move |_| act());
}
