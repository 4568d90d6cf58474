//! Aero bars: base bar, arm pads and extensions.

use super::hose::hose;
use crate::cockpit::Bar;
use crate::drawing::curve::{blob, circle, ellipse, rounded, through};
use crate::drawing::eye::{WIDTHS, project, showable, spot};
use crate::drawing::pen::{Ink, Layer, Pen, Tone};
use crate::drawing::tube::Tube;
use kurbo::Affine;

/// Half the depth of the wing on the drawing, mm (a wing of about 40 by 20 mm, common practice).
const WING: f64 = 15.5;
/// Radius of a base-bar grip with tape, mm (common practice).
const HORN: f64 = 14.0;
/// Radius of an extension, mm (22.2 mm, common practice).
const EXTENSION: f64 = 11.1;
/// How far the ends of the base bar point forward, mm (common practice).
const HORN_LENGTH: f64 = 120.0;
/// From the middle to an extension, mm (common practice).
const EXTENSION_APART: f64 = 50.0;
/// From the middle to the middle of an arm pad, mm (common practice).
const PAD_APART: f64 = 92.0;

/// The right half of an aero bar.
pub struct AeroLine {
    half: f64,
    reach: f64,
}

impl AeroLine {
    /// Taken from the bar's measures.
    pub fn new(bar: &Bar) -> AeroLine {
        AeroLine {
            half: showable(bar.width.0, WIDTHS) / 2.0,
            reach: showable(bar.reach.0, (180.0, 420.0)),
        }
    }

    /// The base bar from the middle to the end of its grip.
    pub fn base(&self) -> Tube {
        let h = self.half;
        Tube::new(&[
            (spot(0.0, 0.0, 0.0), WING),
            (spot(40.0, 0.0, 0.0), WING),
            (spot(h - 96.0, 0.0, 0.0), WING),
            (spot(h - 52.0, -1.0, 3.0), WING),
            (spot(h - 22.0, -2.0, 14.0), WING - 0.5),
            (spot(h - 5.0, -1.0, 34.0), HORN + 0.5),
            (spot(h, 1.0, 58.0), HORN),
            (spot(h + 1.0, 5.0, 90.0), HORN),
            (spot(h + 1.0, 9.0, HORN_LENGTH), HORN),
        ])
    }

    /// The extension from its clamp to its end.
    pub fn extension(&self) -> Tube {
        let a = EXTENSION_APART;
        let r = self.reach;
        Tube::new(&[
            (spot(a, 34.0, -34.0), EXTENSION),
            (spot(a, 34.0, 20.0), EXTENSION),
            (spot(a - 1.0, 34.0, r * 0.45), EXTENSION),
            (spot(a - 4.0, 37.0, r * 0.68), EXTENSION),
            (spot(a - 8.0, 46.0, r * 0.86), EXTENSION),
            (spot(a - 10.0, 60.0, r), EXTENSION),
        ])
    }

    /// Where things can sit on the base bar, between arm pad and bend, mm from the middle.
    pub fn free(&self) -> (f64, f64) {
        (PAD_APART + 70.0, (self.half - 50.0).max(PAD_APART + 70.0))
    }

    /// Local frame of the lever at the end of the base bar.
    pub fn lever(&self) -> Affine {
        let tube = self.base();
        Affine::translate(tube.middle(tube.length()).to_vec2())
    }

    /// Local frame at the tip of the extension: y down along it.
    pub fn tip(&self) -> Affine {
        let tube = self.extension();
        let end = tube.middle(tube.length());
        Affine::translate(end.to_vec2())
    }
}

/// Draws the whole bar with pads and extensions.
pub fn draw(pen: &mut Pen, line: &AeroLine) {
    for mirror in [1.0, -1.0] {
        pen.place = Affine::scale_non_uniform(mirror, 1.0);
        hoses(pen);
        base(pen, line);
        extension(pen, line);
        pad(pen);
    }
    pen.place = Affine::IDENTITY;
}

fn hoses(pen: &mut Pen) {
    hose(
        pen,
        &[
            spot(30.0, -6.0, 10.0),
            spot(26.0, -10.0, 40.0),
            spot(16.0, -26.0, 58.0),
            spot(9.0, -60.0, 50.0),
            spot(8.0, -90.0, 30.0),
        ],
    );
}

fn base(pen: &mut Pen, line: &AeroLine) {
    pen.layer = Layer::Bar;
    let tube = line.base();
    let length = tube.length();
    pen.tone(Tone::Metal, tube.outline());
    let grip = Tube::new(&[
        (spot(line.half - 1.5, 0.0, 50.0), HORN + 0.6),
        (spot(line.half, 1.0, 58.0), HORN + 0.6),
        (spot(line.half + 1.0, 5.0, 90.0), HORN + 0.6),
        (spot(line.half + 1.0, 9.0, HORN_LENGTH), HORN + 0.6),
    ]);
    pen.tone(Tone::Shade, tube.band(0.4, 1.0));
    pen.mark(Ink::Outline, Tone::None, tube.along(-1.0, 0.0, length));
    pen.mark(Ink::Outline, Tone::None, tube.along(1.0, 0.0, length));
    // The edge of the wing.
    pen.form(tube.along(-0.35, 60.0, line.half - 40.0));
    pen.part(Tone::Tape, grip.outline());
    pen.tone(Tone::Shade, grip.band(0.4, 1.0));
    for wrap in grip.wraps(10.0, grip.length() - 4.0, 12.0, 7.0) {
        pen.detail(wrap);
    }
}

fn extension(pen: &mut Pen, line: &AeroLine) {
    let outer = pen.place;
    let tube = line.extension();
    let length = tube.length();
    pen.layer = Layer::Body;
    pen.tone(Tone::Metal, tube.outline());
    pen.tone(Tone::Shade, tube.band(0.4, 1.0));
    pen.mark(Ink::Outline, Tone::None, tube.outline());
    // Tape towards the tip.
    let grip = length - 92.0;
    for wrap in tube.wraps(grip, length - 14.0, 11.0, 6.0) {
        pen.detail(wrap);
    }
    pen.form(tube.ring(grip - 6.0, 0.0, 1.0));
    // The near end is open.
    let start = tube.middle(0.0);
    pen.part(
        Tone::Metal,
        ellipse(start.x, start.y, EXTENSION, EXTENSION * 0.87),
    );
    pen.piece(
        Tone::Dark,
        ellipse(start.x, start.y, EXTENSION - 3.2, (EXTENSION - 3.2) * 0.87),
    );
    // Clamp on its riser.
    let clamp = project(spot(EXTENSION_APART, 34.0, 16.0));
    pen.place = outer * Affine::translate(clamp.to_vec2());
    pen.part(Tone::Body, rounded(0.0, 3.0, 33.0, 26.0, 5.0));
    for x in [-12.0, 12.0] {
        pen.piece(Tone::Metal, circle(x, 3.0, 3.6));
        pen.piece(Tone::Dark, circle(x, 3.0, 1.6));
    }
    pen.place = outer;
}

fn pad(pen: &mut Pen) {
    let outer = pen.place;
    let middle = project(spot(PAD_APART, 48.0, -20.0));
    pen.place = outer * Affine::translate(middle.to_vec2());
    pen.layer = Layer::Body;
    // Bracket between clamp and pad.
    pen.part(Tone::Body, rounded(-26.0, 8.0, 40.0, 16.0, 4.0));
    pen.part(
        Tone::Rubber,
        blob(&[
            (-34.0, -14.0),
            (-26.0, -24.0),
            (0.0, -27.0),
            (26.0, -24.0),
            (36.0, -14.0),
            (38.0, 6.0),
            (33.0, 21.0),
            (18.0, 27.0),
            (0.0, 28.0),
            (-18.0, 27.0),
            (-31.0, 21.0),
            (-36.0, 6.0),
        ]),
    );
    pen.tone(
        Tone::Shade,
        blob(&[
            (24.0, -20.0),
            (24.0, -20.0),
            (36.0, -14.0),
            (38.0, 6.0),
            (33.0, 21.0),
            (18.0, 27.0),
            (18.0, 27.0),
            (22.0, 8.0),
        ]),
    );
    pen.form(blob(&[
        (-24.0, -13.0),
        (-17.0, -19.0),
        (0.0, -21.0),
        (17.0, -19.0),
        (24.0, -13.0),
        (25.0, 6.0),
        (20.0, 17.0),
        (0.0, 21.0),
        (-20.0, 17.0),
        (-25.0, 6.0),
    ]));
    for x in [-12.0, 0.0, 12.0] {
        pen.detail(through(&[(x, -14.0), (x * 1.06, 14.0)]));
    }
    pen.place = outer;
}
