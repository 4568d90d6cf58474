//! The drawing of the cockpit and the icons, as elements of the page. All geometry and
//! all words come from the core; here they only get elements and classes.

mod cockpit;
mod icon;
mod patterns;
mod slot;

pub use cockpit::{ButtonView, Cockpit, Touch, reach_fill};
pub use icon::IconView;
