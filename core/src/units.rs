//! Quantities with their units in the type.

use std::fmt;

/// A length in millimetres.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
pub struct Mm(pub f64);

impl Mm {
    /// Longest length that means anything on a bike, in millimetres: a cockpit
    /// with its wires fits into five metres.
    pub const LIMIT: Mm = Mm(5_000.0);

    /// The length, if it is a number within ±[`Mm::LIMIT`].
    pub fn checked(value: f64) -> Option<Self> {
        (value.is_finite() && value.abs() <= Self::LIMIT.0).then_some(Mm(value))
    }
}

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
