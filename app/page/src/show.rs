//! What is shown while something holds.

use leptos::prelude::{ArcMemo, Get, component};

use crate::children::{ChildrenFn, ViewFn};
use crate::view::IntoView;

/// Shows its children while something holds, and something else while not.
#[component(transparent)]
pub fn Show(
    /// What must hold.
    #[prop(into)]
    when: Condition,
    /// What is shown while it does not; nothing if left out.
    #[prop(optional, into)]
    fallback: ViewFn,
    /// What is shown while it holds.
    children: ChildrenFn,
) -> impl IntoView {
    let holds = ArcMemo::new(move |_| (when.0)());
    move || match holds.get() {
        true => children(),
        false => fallback.run(),
    }
}

/// A yes or no that changes.
pub struct Condition(Box<dyn Fn() -> bool + Send + Sync>);

impl<F: Fn() -> bool + Send + Sync + 'static> From<F> for Condition {
    fn from(holds: F) -> Self {
        Condition(Box::new(holds))
    }
}
