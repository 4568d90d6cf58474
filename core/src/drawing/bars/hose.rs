//! Hoses, cables and wires.

use crate::drawing::eye::Spot;
use crate::drawing::pen::{Layer, Pen, Tone};
use crate::drawing::tube::Tube;

/// Outer radius of a brake hose or cable outer, mm (5 mm, common practice).
const HOSE: f64 = 2.5;

/// Draws a hose through the given places.
pub fn hose(pen: &mut Pen, places: &[Spot]) {
    let line: Vec<_> = places.iter().map(|&p| (p, HOSE)).collect();
    pen.layer = Layer::Far;
    pen.piece(Tone::Metal, Tube::new(&line).outline());
}
