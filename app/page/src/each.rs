//! Lists on the page.

use std::hash::Hash;
use std::sync::Arc;

use leptos::prelude::{AnyView, Owner, component};

use crate::list::{Key, List, Row};
use crate::view::{IntoView, erase};

/// Shows each item; one that keeps its key keeps its elements.
#[component(transparent)]
pub fn For<I, T, V, K>(
    /// The items in order.
    each: impl Fn() -> I + Send + 'static,
    /// Tells items apart.
    key: impl Fn(&T) -> K + Send + 'static,
    /// What is shown for an item.
    children: impl Fn(T) -> V + Send + Sync + 'static,
) -> impl IntoView
where
    I: IntoIterator<Item = T>,
    T: Send + 'static,
    V: IntoView,
    K: Eq + Hash + Send + Sync + 'static,
{
    let children = Arc::new(children);
    let row = move |item| {
        let key = Key::new(key(&item));
        let children = children.clone();
        let view = Box::new(move || children(item).into_any());
        Row { key, view }
    };
    rows(Box::new(move || each().into_iter().map(&row).collect()))
}

/// All lists are this one.
fn rows(each: Box<dyn Fn() -> Vec<Row> + Send>) -> AnyView {
    // What a row makes lasts as long as the row, not until the list is looked at again.
    let owner = Owner::current().unwrap_or_default();
    erase(move || List {
        rows: each(),
        owner: owner.clone(),
    })
}
