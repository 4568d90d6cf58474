//! Drop bars: road, and flared for gravel.

use super::hose::hose;
use crate::cockpit::Bar;
use crate::drawing::curve::{circle, ellipse, rounded};
use crate::drawing::eye::{Spot, WIDTHS, project, showable, spot};
use crate::drawing::pen::{Ink, Layer, Pen, Tone};
use crate::drawing::tube::Tube;
use kurbo::Affine;

/// Radius of taped bar, mm (24 mm tube and tape, common practice).
pub const TAPED: f64 = 15.0;
/// Radius at the stem clamp, mm (31.8 mm, common practice).
pub const CLAMP: f64 = 15.9;
/// Where the tape ends, from the middle, mm (common practice).
const TAPE_END: f64 = 66.0;
/// How far the top bends round into the ramp, mm.
const CORNER: f64 = 48.0;
/// How far levers lean, as a slope (common practice: turned in a little at the top).
const LEAN: f64 = 0.06;

/// The lines of the right half of a drop bar.
pub struct DropLine {
    half: f64,
    reach: f64,
    drop: f64,
    flare: f64,
}

impl DropLine {
    /// Taken from the bar's measures; `flared` opens the drops by about 15 degrees
    /// (common practice for gravel), else by a degree or two.
    pub fn new(bar: &Bar, flared: bool) -> DropLine {
        let drop = showable(bar.drop.0, (80.0, 180.0));
        DropLine {
            half: showable(bar.width.0, WIDTHS) / 2.0,
            reach: showable(bar.reach.0, (60.0, 130.0)),
            drop,
            flare: drop * if flared { 0.27 } else { 0.05 },
        }
    }

    /// Local frame of a lever: on the bend in front of the ramp, leaning in at the top, and out
    /// with the flare at the bottom.
    pub fn lever_frame(&self) -> Affine {
        let at = project(spot(self.half, -2.0, self.reach - 2.0));
        let lean = LEAN + 0.75 * self.flare / self.drop;
        let upright = 1.0 / (1.0 + lean * lean).sqrt();
        let (cos, sin) = (upright, lean * upright);
        Affine::new([cos, -sin, sin, cos, at.x, at.y])
    }

    /// Where things that a thumb works while shifting can sit on the tops, mm from the middle.
    pub fn tops(&self) -> (f64, f64) {
        (TAPE_END + 36.0, self.half - CORNER - 22.0)
    }

    /// Where a bell and the like can sit: from the clamp outward, mm from the middle.
    pub fn near_clamp(&self) -> (f64, f64) {
        (46.0, self.half - CORNER - 10.0)
    }

    /// From tape end round the corner and along the ramp.
    pub fn top(&self) -> Tube {
        let (h, c) = (self.half, CORNER);
        let round = |x: f64, z: f64| (spot(h - c + x * c, 0.0, (1.0 - z) * c), TAPED);
        Tube::new(&[
            (spot(TAPE_END, 0.0, 0.0), TAPED),
            (spot((TAPE_END + h - c) / 2.0, 0.0, 0.0), TAPED),
            (spot(h - c - 18.0, 0.0, 0.0), TAPED),
            round(0.0, 1.0),
            round(0.383, 0.924),
            round(0.707, 0.707),
            round(0.924, 0.383),
            round(1.0, 0.0),
            (spot(h, -2.0, self.reach - 10.0), TAPED),
            (spot(h, -3.0, self.reach), TAPED),
        ])
    }

    /// From the ramp down round the hook to the end of the drop.
    pub fn hook(&self) -> Tube {
        let (d, r) = (self.drop, self.reach);
        let half_height = d / 2.0;
        let depth = r * 0.68;
        let bend = |y: f64, z: f64| {
            let y = -half_height + y * half_height;
            (self.flared(y, r - depth + z * depth), TAPED - 0.5)
        };
        Tube::new(&[
            bend(0.85, 0.527),
            bend(0.707, 0.707),
            bend(0.383, 0.924),
            bend(0.0, 1.0),
            bend(-0.383, 0.924),
            bend(-0.707, 0.707),
            bend(-0.924, 0.383),
            bend(-1.0, 0.0),
            (self.flared(-d - 1.0, r - depth - 24.0), TAPED - 0.5),
            (self.flared(-d - 3.0, r - depth - 50.0), TAPED - 0.5),
        ])
    }

    fn flared(&self, y: f64, z: f64) -> Spot {
        spot(self.half - y / self.drop * self.flare, y, z)
    }
}

/// Draws the whole bar, both halves.
pub fn draw(pen: &mut Pen, line: &DropLine) {
    for mirror in [1.0, -1.0] {
        pen.place = Affine::scale_non_uniform(mirror, 1.0);
        hook(pen, line);
        top(pen, line);
        hose(
            pen,
            &[
                spot(72.0, -9.0, 6.0),
                spot(62.0, -6.0, 22.0),
                spot(50.0, -6.0, 48.0),
                spot(34.0, -14.0, 72.0),
                spot(18.0, -34.0, 80.0),
                spot(9.0, -62.0, 64.0),
                spot(8.0, -96.0, 34.0),
            ],
        );
    }
    pen.place = Affine::IDENTITY;
    pen.layer = Layer::Bar;
    let bulge = Tube::new(&[
        (spot(-TAPE_END - 6.0, 0.0, 0.0), 12.5),
        (spot(-48.0, 0.0, 0.0), CLAMP),
        (spot(0.0, 0.0, 0.0), CLAMP),
        (spot(48.0, 0.0, 0.0), CLAMP),
        (spot(TAPE_END + 6.0, 0.0, 0.0), 12.5),
    ]);
    pen.part(Tone::Metal, bulge.outline());
}

fn hook(pen: &mut Pen, line: &DropLine) {
    pen.layer = Layer::Under;
    let tube = line.hook();
    let length = tube.length();
    let end = tube.middle(length);
    pen.part(Tone::Tape, tube.outline());
    pen.tone(Tone::Shade, tube.band(-1.0, -0.45));
    for wrap in tube.wraps(70.0, length - 12.0, 15.0, 9.0) {
        pen.detail(wrap);
    }
    pen.mark(Ink::Outline, Tone::None, tube.outline());
    // The end faces the rider: a plug pressed over the tape.
    pen.part(Tone::Body, ellipse(end.x, end.y, 14.5, 12.6));
    pen.piece(Tone::Metal, ellipse(end.x, end.y, 10.5, 9.1));
    pen.piece(Tone::Dark, ellipse(end.x, end.y, 3.0, 2.6));
}

fn top(pen: &mut Pen, line: &DropLine) {
    pen.layer = Layer::Bar;
    let tube = line.top();
    let length = tube.length();
    // Where no lever sits, the bend shows: a round end going down.
    let bend = tube.middle(length);
    pen.part(Tone::Tape, circle(bend.x, bend.y, TAPED));
    pen.tone(Tone::Tape, tube.outline());
    pen.tone(Tone::Shade, tube.band(0.45, 1.0));
    for wrap in tube.wraps(26.0, length - 4.0, 15.0, 9.0) {
        pen.detail(wrap);
    }
    pen.mark(Ink::Outline, Tone::None, tube.along(-1.0, 0.0, length));
    pen.mark(Ink::Outline, Tone::None, tube.along(1.0, 0.0, length));
    // Finishing tape.
    let start = project(spot(TAPE_END, 0.0, 0.0));
    pen.layer = Layer::Body;
    pen.piece(
        Tone::Body,
        rounded(start.x + 7.0, start.y, 15.0, 2.0 * TAPED + 1.2, 2.0),
    );
}
