//! Short ways to what views follow and do.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// Words that change.
pub fn text(read: impl Fn() -> String + Send + Sync + 'static) -> Signal<String> {
    Signal::derive(read)
}

/// A yes or no that changes.
pub fn flag(read: impl Fn() -> bool + Send + Sync + 'static) -> Signal<bool> {
    Signal::derive(read)
}

/// What a click does.
pub fn act(act: impl Fn() + 'static) -> Box<dyn FnMut(MouseEvent)> {
    Box::new(move |_| act())
}

/// Worked out once for each change of what it reads, and passed on only when it
/// comes out different.
pub fn memo<T>(read: impl Fn() -> T + Send + Sync + 'static) -> Memo<T>
where
    T: PartialEq + Send + Sync + 'static,
{
    Memo::new(move |_| read())
}

/// What changes as a whole.
pub fn view_of<V: IntoView + 'static>(
    read: impl Fn() -> V + Send + Sync + 'static,
) -> Box<dyn Fn() -> AnyView + Send> {
    Box::new(move || read().into_any())
}

/// Shows its children while something holds.
#[component]
pub fn When(
    /// What must hold.
    #[prop(into)]
    holds: Signal<bool>,
    /// What is shown.
    children: ChildrenFn,
) -> impl IntoView {
    view_of(move || holds.get().then(|| children()))
}
