//! Hoses, cables and wires.

use crate::drawing::eye::Spot;
use crate::drawing::pen::{Layer, Pen, Tone};
use crate::drawing::tube::Tube;
use kurbo::Point;

/// Outer radius of a brake hose or cable outer, mm (5 mm, common practice).
const HOSE: f64 = 2.5;

/// Draws a hose through places in space.
pub fn hose(pen: &mut Pen, places: &[Spot]) {
    let line: Vec<_> = places.iter().map(|&p| (p, HOSE)).collect();
    pen.layer = Layer::Far;
    pen.piece(Tone::Metal, Tube::new(&line).outline());
}

/// The hose of a flat bar's lever: from where it leaves the lever round in front of the stem.
pub fn flat_bar(pen: &mut Pen, exit: Point) {
    let mut points = vec![(exit.x + 4.0, exit.y), (exit.x - 16.0, exit.y - 1.5)];
    // A lever far inboard has no room for the wide bow.
    if exit.x > 130.0 {
        points.push((exit.x * 0.62, exit.y - 9.0));
    }
    points.extend([(56.0, -32.0), (38.0, -12.0), (30.0, 8.0)]);
    on_plane(pen, &points);
}

/// The hose of a side grip's lever: over the top and down to the main tube.
pub fn side_grip(pen: &mut Pen, exit: Point) {
    on_plane(
        pen,
        &[
            (exit.x, exit.y + 4.0),
            (exit.x - 3.0, exit.y - 8.0),
            (exit.x - 16.0, exit.y - 14.0),
            (exit.x - 48.0, exit.y + 6.0),
            (exit.x * 0.52, exit.y + 76.0),
            (exit.x * 0.24, exit.y + 128.0),
            (12.0, exit.y + 160.0),
        ],
    );
}

fn on_plane(pen: &mut Pen, points: &[(f64, f64)]) {
    pen.layer = Layer::Far;
    pen.owner = None;
    pen.piece(Tone::Metal, Tube::flat(points, HOSE).outline());
}
