//! Puts a view on the page.

use leptos::mount::UnmountHandle;
use leptos::tachys::view::any_view::AnyViewState;
use web_sys::HtmlElement;

use crate::view::IntoView;

/// Puts a view into an element, until what is returned is dropped.
pub fn mount_to<F, V>(parent: HtmlElement, view: F) -> UnmountHandle<AnyViewState>
where
    F: FnOnce() -> V + 'static,
    V: IntoView,
{
    leptos::mount::mount_to(parent, move || view().into_any())
}

/// Puts a view on the page for good.
pub fn mount_to_body<F, V>(view: F)
where
    F: FnOnce() -> V + 'static,
    V: IntoView,
{
    leptos::mount::mount_to_body(move || view().into_any());
}
