//! The drawing of the cockpit and the icons, as elements of the page. All geometry and
//! all words come from the core; here they only get elements and classes.

mod cockpit;
mod code;
mod icon;
#[cfg(all(test, target_arch = "wasm32"))]
mod in_browser;
mod marked;
mod patterns;
mod slot;
mod thumbnail;

pub use cockpit::{ButtonView, Cockpit, Touch, reach_fill};
pub use code::CodeView;
pub use icon::IconsView;
pub use marked::MarkedCockpit;
pub use thumbnail::{SmallDrawing, ThumbnailView};
