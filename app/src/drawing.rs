//! The drawing of the cockpit and the icons, as elements of the page. All geometry and
//! all words come from the core; here they only get elements and classes.

mod cockpit;
mod icon;
#[cfg(all(test, target_arch = "wasm32"))]
mod in_browser;
mod patterns;
mod slot;

pub use cockpit::{ButtonView, Cockpit, Touch};
pub use icon::IconView;
