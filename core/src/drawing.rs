//! The drawing of the cockpit: an engineering drawing seen from the rider's eye.
//!
//! [`Picture::of`] turns a [`Bike`](crate::cockpit::Bike) into shapes, balloons, leader lines,
//! slots and touch areas, all in picture units; whoever shows or prints it adds no geometry of
//! its own. The same bike and [`Sheet`] always give the same picture.
//!
//! Inside, everything is drawn in millimetres of the cockpit ([`crate::units::Point`]): bars are
//! tubes along lines in space, seen in parallel projection; controls are shapes drawn about the
//! place where they sit, always as on the right and mirrored for the left. What is nearer to the
//! eye is painted later and so hides what is behind it. Measures are of plausible parts (*common
//! practice*); where a thing would be too thin to read it is turned or spread, which its file
//! says.

mod balloons;
mod bars;
#[cfg(test)]
mod checks;
mod cockpit;
mod curve;
mod eye;
mod hit;
mod look;
mod parts;
mod pen;
mod picture;
mod seat;
mod thumbnail;
mod tube;

pub mod hands;
pub mod icons;

pub use balloons::{Margin, SLOT_GAP};
pub use kurbo::{Point, Rect};
pub use look::{Look, Standing};
pub use pen::{Ink, Owner, Tone};
pub use picture::{BALLOON, ButtonMark, Picture, Shape, Sheet};
pub use thumbnail::Thumbnail;
