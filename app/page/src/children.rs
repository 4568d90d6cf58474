//! What stands inside a component.

use std::sync::Arc;

use crate::view::{AnyView, IntoView};

pub use leptos::children::{Children, ChildrenFn};

/// Makes children of what `view!` finds inside a component.
pub trait ToChildren<F> {
    /// The children.
    fn to_children(make: F) -> Self;
}

impl<F, V> ToChildren<F> for Children
where
    F: FnOnce() -> V + Send + 'static,
    V: IntoView,
{
    fn to_children(make: F) -> Self {
        Box::new(move || make().into_any())
    }
}

impl<F, V> ToChildren<F> for ChildrenFn
where
    F: Fn() -> V + Send + Sync + 'static,
    V: IntoView,
{
    fn to_children(make: F) -> Self {
        Arc::new(move || make().into_any())
    }
}

/// Words, which `view!` hands over as they are.
pub struct ChildrenOptContainer<T>(pub T);

impl ToChildren<ChildrenOptContainer<&'static str>> for Children {
    fn to_children(words: ChildrenOptContainer<&'static str>) -> Self {
        Box::new(move || words.0.into_any())
    }
}

impl ToChildren<ChildrenOptContainer<&'static str>> for ChildrenFn {
    fn to_children(words: ChildrenOptContainer<&'static str>) -> Self {
        Arc::new(move || words.0.into_any())
    }
}

/// A view that can be made again and again; nothing if left out.
#[derive(Clone)]
pub struct ViewFn(Arc<dyn Fn() -> AnyView + Send + Sync>);

impl ViewFn {
    /// Makes the view.
    pub fn run(&self) -> AnyView {
        (self.0)()
    }
}

impl Default for ViewFn {
    fn default() -> Self {
        ViewFn(Arc::new(|| ().into_any()))
    }
}

impl<F, V> From<F> for ViewFn
where
    F: Fn() -> V + Send + Sync + 'static,
    V: IntoView,
{
    fn from(make: F) -> Self {
        ViewFn(Arc::new(move || make().into_any()))
    }
}
