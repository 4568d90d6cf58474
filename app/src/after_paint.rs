//! What may be seen one frame late, for what is watched to be seen at once.

use std::cell::RefCell;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::Duration;

use leptos::prelude::*;

type Act = Box<dyn FnOnce()>;

thread_local! {
    static WAITING: RefCell<Vec<Act>> = const { RefCell::new(Vec::new()) };
}

/// Does something once the frame is painted that the changes of now lead to; all that waits is done
/// together, so that one frame shows it.
fn after_paint(act: impl FnOnce() + 'static) {
    let is_first = WAITING.with_borrow_mut(|waiting| {
        waiting.push(Box::new(act));
        waiting.len() == 1
    });
    if is_first {
        // A frame's callback comes before it is painted; a task that it leaves, after.
        request_animation_frame(|| {
            set_timeout(
                || WAITING.take().into_iter().for_each(|act| act()),
                Duration::ZERO,
            );
        });
    }
}

/// Follows a value one frame behind.
pub fn a_frame_behind<T: Send + Sync + 'static>(
    now: impl Fn() -> T + Send + Sync + 'static,
) -> RwSignal<T> {
    let now = Arc::new(now);
    let shown = RwSignal::new(untrack(|| now()));
    let later = Arc::clone(&now);
    let catch_up = move || {
        if !shown.is_disposed() {
            shown.set(untrack(|| later()));
        }
    };
    follow(Box::new(move || drop(now())), Arc::new(catch_up));
    shown
}

/// Catches up a frame after each change of what `look` reads. One for all types of values.
fn follow(look: Box<dyn Fn() + Send + Sync>, catch_up: Arc<dyn Fn() + Send + Sync>) {
    let is_due = Arc::new(AtomicBool::new(false));
    Effect::new(move |_| {
        // It may have changed before this ran first, so this time counts, too.
        look();
        if !is_due.swap(true, Ordering::Relaxed) {
            let (is_due, catch_up) = (Arc::clone(&is_due), Arc::clone(&catch_up));
            after_paint(move || {
                is_due.store(false, Ordering::Relaxed);
                catch_up();
            });
        }
    });
}
