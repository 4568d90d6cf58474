//! The drawing of the cockpit, the hands and the icons, as elements of the page. All geometry and
//! all words come from the core; here they only get elements and classes.

mod cockpit;
mod hand;
mod icon;
mod patterns;
mod slot;

pub use cockpit::{ButtonView, Cockpit, Touch};
pub use hand::{Hand, PartView};
pub use icon::IconView;
