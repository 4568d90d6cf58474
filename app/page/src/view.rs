//! What can be shown, all of it as one type.

use std::sync::{Arc, Mutex};

use leptos::prelude::RenderHtml;
use leptos::tachys::view::iterators::StaticVec;
use leptos::tachys::{html, svg};

use crate::element::Element;
use crate::signal::{Memo, RwSignal, Signal};

pub use leptos::prelude::AnyView;

/// What can be shown. In place of the trait of the same name in Leptos, which
/// keeps the type of what is shown.
pub trait IntoView: Sized {
    /// The view.
    fn into_any(self) -> AnyView;

    /// The same, under the name that `view!` and `#[component]` call.
    fn into_maybe_erased(self) -> AnyView {
        self.into_any()
    }
}

/// What `view!` does to each child; here nothing is left to do.
pub trait IntoRender: Sized {
    /// The child as it is.
    fn into_render(self) -> Self {
        self
    }
}

impl<V> IntoRender for V {}

/// Collects views into a list.
pub trait CollectView {
    /// The list.
    fn collect_view(self) -> Vec<AnyView>;
}

impl<I> CollectView for I
where
    I: IntoIterator,
    I::Item: IntoView,
{
    fn collect_view(self) -> Vec<AnyView> {
        self.into_iter().map(IntoView::into_any).collect()
    }
}

/// Forgets the type of a view of Leptos.
pub fn erase(view: impl RenderHtml + 'static) -> AnyView {
    leptos::prelude::IntoAny::into_any(view)
}

/// Drawn anew when what it reads changes.
fn live(read: impl FnMut() -> AnyView + Send + 'static) -> AnyView {
    let read: Box<dyn FnMut() -> AnyView + Send> = Box::new(read);
    erase(read)
}

impl IntoView for AnyView {
    fn into_any(self) -> AnyView {
        self
    }
}

impl<E: leptos::html::ElementType> IntoView for Element<E> {
    fn into_any(self) -> AnyView {
        erase(self.into_part())
    }
}

impl<V: IntoView> IntoView for leptos::prelude::View<V> {
    fn into_any(self) -> AnyView {
        self.into_inner().into_any()
    }
}

impl<V: IntoView> IntoView for Option<V> {
    fn into_any(self) -> AnyView {
        erase(self.map(V::into_any))
    }
}

impl<V: IntoView> IntoView for Vec<V> {
    fn into_any(self) -> AnyView {
        erase(self.collect_view())
    }
}

impl<F, V> IntoView for F
where
    F: FnMut() -> V + Send + 'static,
    V: IntoView,
{
    fn into_any(mut self) -> AnyView {
        live(move || self().into_any())
    }
}

/// What `view!` makes of a closure.
impl<V: IntoView + 'static> IntoView for Arc<Mutex<dyn FnMut() -> V + Send>> {
    fn into_any(self) -> AnyView {
        live(move || self.lock().expect("one thread")().into_any())
    }
}

macro_rules! as_they_are {
    ($($view:ty)*) => {
        $(impl IntoView for $view {
            fn into_any(self) -> AnyView {
                erase(self)
            }
        })*
    };
}

as_they_are!(() &'static str String html::InertElement svg::InertElement StaticVec<AnyView>);

/// What `view!` makes of several children where types are not erased, as in
/// native tests.
macro_rules! tuples {
    ($($($item:ident)+,)+) => {
        $(impl<$($item: IntoView),+> IntoView for ($($item,)+) {
            fn into_any(self) -> AnyView {
                #[expect(non_snake_case)]
                let ($($item,)+) = self;
                let list: StaticVec<AnyView> = vec![$($item.into_any()),+].into();
                erase(list)
            }
        })+
    };
}

tuples! {
    A B,
    A B C,
    A B C D,
    A B C D E,
    A B C D E F,
    A B C D E F G,
    A B C D E F G H,
    A B C D E F G H I,
    A B C D E F G H I J,
    A B C D E F G H I J K,
    A B C D E F G H I J K L,
}

macro_rules! as_words {
    ($($view:ty)*) => {
        $(impl IntoView for $view {
            fn into_any(self) -> AnyView {
                erase(self.to_string())
            }
        })*
    };
}

as_words!(char u8 u16 u32 usize i32 f64);

macro_rules! signals {
    ($($signal:ident)*) => {
        $(impl<V> IntoView for $signal<V>
        where
            V: IntoView + Clone + Send + Sync + 'static,
        {
            fn into_any(self) -> AnyView {
                live(move || self.get().into_any())
            }
        })*
    };
}

signals!(Memo RwSignal Signal);
