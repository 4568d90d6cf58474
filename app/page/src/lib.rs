//! Leptos, with one type for every element of the page.
//!
//! In Leptos each combination of tag, attributes and closures is a type of its
//! own, and everything that draws it is compiled anew for each: more than half
//! of the download. The app depends on this crate under the name `leptos`, so
//! that `view!` makes an [`Element`](element::Element) instead: attributes,
//! listeners and children are lists, and what draws them is compiled once.
//!
//! Everything else is Leptos itself. Views are written as its book says.

mod attribute;
pub mod children;
mod each;
pub mod element;
mod in_a_browser;
mod list;
mod listener;
pub mod mount;
mod show;
mod signal;
mod value;
mod view;

pub use leptos::*;

/// What `view!` and the app's modules import.
pub mod prelude {
    pub use crate::children::{Children, ChildrenFn, ToChildren, ViewFn};
    pub use crate::each::{For, ForProps};
    pub use crate::mount::{mount_to, mount_to_body};
    pub use crate::show::{Show, ShowProps};
    pub use crate::signal::{Memo, RwSignal, Signal};
    pub use crate::value::IntoAttributeValue;
    pub use crate::view::{CollectView, IntoRender, IntoView};
    pub use crate::view::{IntoView as IntoAny, IntoView as IntoMaybeErased};
    pub use leptos::prelude::*;
}

/// Where `view!` looks for elements.
pub mod tachys {
    pub use crate::element::svg;
    pub use leptos::tachys::*;

    /// The elements of HTML.
    pub mod html {
        pub use crate::element::html as element;
        pub use leptos::tachys::html::*;
    }
}
