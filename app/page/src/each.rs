//! Lists on the page.

use std::any::Any;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::Arc;

use leptos::prelude::{AnyView, component};

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

/// An item whose view is still to be made.
struct Row {
    key: Key,
    view: Box<dyn FnOnce() -> AnyView + Send>,
}

/// All lists are this one.
fn rows(each: Box<dyn Fn() -> Vec<Row> + Send>) -> AnyView {
    let list = leptos::prelude::ForProps::builder()
        .each(each)
        .key(|row: &Row| row.key.clone())
        .children(|row: Row| (row.view)())
        .build();
    erase(leptos::prelude::For(list))
}

/// A key of any type.
#[derive(Clone)]
struct Key {
    value: Arc<dyn Any + Send + Sync>,
    hash: u64,
    equals: fn(&dyn Any, &dyn Any) -> bool,
}

impl Key {
    fn new<K: Eq + Hash + Send + Sync + 'static>(key: K) -> Self {
        let mut hasher = DefaultHasher::new();
        key.hash(&mut hasher);
        Key {
            hash: hasher.finish(),
            value: Arc::new(key),
            equals: |a, b| a.downcast_ref::<K>() == b.downcast_ref::<K>(),
        }
    }
}

impl PartialEq for Key {
    fn eq(&self, other: &Self) -> bool {
        self.hash == other.hash && (self.equals)(&*self.value, &*other.value)
    }
}

impl Eq for Key {}

impl Hash for Key {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.hash.hash(state);
    }
}
