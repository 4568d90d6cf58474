//! Flat bars.

use crate::cockpit::Bar;
use crate::drawing::curve::{ellipse, rounded};
use crate::drawing::eye::{Spot, project, showable, spot};
use crate::drawing::pen::{Ink, Layer, Pen, Tone};
use crate::drawing::tube::Tube;
use kurbo::Affine;

/// Radius of bar where grips and controls sit, mm (22.2 mm, common practice).
const BAR: f64 = 11.1;
/// Radius at the stem clamp, mm (31.8 mm, common practice).
const CLAMP: f64 = 15.9;
/// Radius of a grip, mm (32 mm, common practice).
const GRIP: f64 = 16.0;
/// Length of a grip, mm (common practice).
const GRIP_LENGTH: f64 = 132.0;
/// How far the ends sweep back for each millimetre outward (about 8 degrees, common practice).
const SWEEP: f64 = 0.14;
/// Widths that leave room for grips and levers, mm.
const FLAT_WIDTHS: (f64, f64) = (520.0, 1000.0);
/// Where the sweep begins, from the middle, mm.
const STRAIGHT: f64 = 90.0;

/// The right half of a flat bar.
pub struct FlatLine {
    half: f64,
}

impl FlatLine {
    /// Taken from the bar's width.
    pub fn new(bar: &Bar) -> FlatLine {
        FlatLine {
            half: showable(bar.width.0, FLAT_WIDTHS) / 2.0,
        }
    }

    /// Where the grip begins, mm from the middle.
    pub fn grip_start(&self) -> f64 {
        self.half - GRIP_LENGTH
    }

    /// The middle of the bar `x` mm to the right.
    pub fn at(&self, x: f64) -> Spot {
        let out = (x - STRAIGHT).max(0.0);
        spot(x, out * 0.03, -out * SWEEP)
    }

    /// A local frame on the bar at `x` mm to the right: x along the bar outward, y down.
    pub fn frame(&self, x: f64) -> Affine {
        let here = project(self.at(x));
        let on = project(self.at(x + 10.0)) - here;
        let on = on / on.hypot();
        Affine::new([on.x, on.y, -on.y, on.x, here.x, here.y])
    }

    fn tube(&self, from: f64, to: f64, radius: impl Fn(f64) -> f64) -> Tube {
        let steps = 8;
        let line: Vec<_> = (0..=steps)
            .map(|i| {
                let x = from + (to - from) * f64::from(i) / f64::from(steps);
                (self.at(x), radius(x))
            })
            .collect();
        Tube::new(&line)
    }
}

/// Draws the whole bar with its grips.
pub fn draw(pen: &mut Pen, line: &FlatLine) {
    for mirror in [1.0, -1.0] {
        pen.place = Affine::scale_non_uniform(mirror, 1.0);
        pen.layer = Layer::Bar;
        let taper = |x: f64| {
            let t = ((x - 40.0) / 90.0).clamp(0.0, 1.0);
            CLAMP + (BAR - CLAMP) * t * t * (3.0 - 2.0 * t)
        };
        let tube = line.tube(0.0, line.grip_start() + 4.0, taper);
        pen.tone(Tone::Metal, tube.outline());
        pen.tone(Tone::Shade, tube.band(0.45, 1.0));
        let length = tube.length();
        pen.mark(Ink::Outline, Tone::None, tube.along(-1.0, 0.0, length));
        pen.mark(Ink::Outline, Tone::None, tube.along(1.0, 0.0, length));
        grip(pen, line);
    }
    pen.place = Affine::IDENTITY;
}

fn grip(pen: &mut Pen, line: &FlatLine) {
    let outer = pen.place;
    let tube = line.tube(line.grip_start(), line.half, |x| {
        // A slight waist for the palm.
        let t = (x - line.grip_start()) / GRIP_LENGTH;
        GRIP - 1.4 * t * (1.0 - t) * 4.0 * 0.6
    });
    pen.part(Tone::Rubber, tube.outline());
    pen.tone(Tone::Shade, tube.band(0.45, 1.0));
    let mut at = 16.0;
    while at < GRIP_LENGTH - 14.0 {
        pen.detail(tube.ring(at, 0.0, 3.0));
        at += 5.5;
    }
    pen.mark(Ink::Outline, Tone::None, tube.outline());
    pen.place = outer * line.frame(line.grip_start());
    pen.part(Tone::Body, rounded(5.0, 0.0, 11.0, 2.0 * GRIP + 2.0, 2.5));
    pen.piece(Tone::Dark, ellipse(5.0, 7.0, 1.8, 1.8));
    pen.place = outer * line.frame(line.half);
    pen.part(Tone::Body, rounded(-2.0, 0.0, 9.0, 2.0 * GRIP + 2.5, 3.0));
    pen.place = outer;
}
