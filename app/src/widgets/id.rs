//! Names for page elements that others refer to.

use std::cell::Cell;

thread_local! {
    static LAST: Cell<u32> = const { Cell::new(0) };
}

/// A name that no other element has.
pub fn fresh_id(kind: &str) -> String {
    let number = LAST.with(|last| {
        last.set(last.get() + 1);
        last.get()
    });
    format!("{kind}-{number}")
}
