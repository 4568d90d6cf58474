//! The rider's eye: how the cockpit in millimetres becomes a flat drawing.

use kurbo::Point;

/// A place in the cockpit, mm.
pub use crate::units::Point as Spot;

/// Shorthand for a [`Spot`].
pub const fn spot(x: f64, y: f64, z: f64) -> Spot {
    Spot::new(x, y, z)
}

/// A point on the way from `a` (`t` = 0) to `b` (`t` = 1).
pub fn on_the_way(a: Spot, b: Spot, t: f64) -> Spot {
    let mix = |a: f64, b: f64| a + (b - a) * t;
    spot(mix(a.x, b.x), mix(a.y, b.y), mix(a.z, b.z))
}

// The eye looks forward and down at 30 degrees from level. A rider's eye sits higher (about 45 to
// 55 degrees, common practice), but from there the hoods hide blades and paddles and the tops hide
// the drops; 30 degrees keeps hoods above the bar and drops below it, each clear of the other.
const COS_PITCH: f64 = 0.866_025_403_784_438_6;
const SIN_PITCH: f64 = 0.5;

/// Parallel projection of a place: x to the right, y *down* as on a screen, both in millimetres.
pub fn project(p: Spot) -> Point {
    Point::new(p.x, -(p.y * COS_PITCH + p.z * SIN_PITCH))
}

/// A place level with the stem clamp that lands on the given point of the drawing.
pub fn on_plane(x: f64, y: f64) -> Spot {
    spot(x, 0.0, -y / SIN_PITCH)
}

/// A bar's measure kept within what the drawing can show, mm; what is beyond is drawn at the
/// nearest it can.
pub fn showable(measure: f64, (least, most): (f64, f64)) -> f64 {
    // This way round a measure that is no number becomes the least.
    measure.max(least).min(most)
}

/// Widths that the drawing shows, mm (ISO 4210-2 clause 4.7.1, as copied in TBIS 4210-2:2018:
/// handlebar width 350 to 1000 mm).
pub const WIDTHS: (f64, f64) = (350.0, 1000.0);
