//! Quantities with their units in the type.

use std::fmt;

/// A length in millimetres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Mm(pub f64);

impl fmt::Display for Mm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.0} mm", self.0)
    }
}

/// A place on the cockpit in millimetres.
///
/// The origin is the middle of the stem clamp; `x` runs to the rider's right,
/// `y` up, `z` forward, away from the rider.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the rider's right.
    pub x: f64,
    /// Up.
    pub y: f64,
    /// Forward.
    pub z: f64,
}

impl Point {
    /// A place from its three coordinates in millimetres.
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Point { x, y, z }
    }

    /// The same place on the other side of the bike.
    pub const fn mirrored(self) -> Self {
        Point::new(-self.x, self.y, self.z)
    }

    /// This place moved by another, taken as a vector.
    pub const fn plus(self, by: Point) -> Self {
        Point::new(self.x + by.x, self.y + by.y, self.z + by.z)
    }

    /// The straight distance to another place.
    pub fn distance(self, other: Point) -> Mm {
        let (dx, dy, dz) = (self.x - other.x, self.y - other.y, self.z - other.z);
        Mm((dx * dx + dy * dy + dz * dz).sqrt())
    }
}

/// A number for something new beside those taken: one above the highest, so
/// that a number which was given back is not given out again soon.
pub(crate) fn free_number(taken: impl Iterator<Item = u16> + Clone) -> u16 {
    match taken.clone().max() {
        None => 1,
        Some(highest) if highest < u16::MAX => highest + 1,
        Some(_) => (1..u16::MAX)
            .find(|n| !taken.clone().any(|t| t == *n))
            .unwrap_or(0),
    }
}
