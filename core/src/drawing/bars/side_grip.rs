//! Side grips beside a recumbent's seat: a low bar under the seat, bent up into two upright grips.

use crate::cockpit::Bar;
use crate::drawing::curve::{blob, circle, ellipse, through};
use crate::drawing::eye::{Spot, WIDTHS, project, showable, spot};
use crate::drawing::pen::{Ink, Layer, Pen, Tone};
use crate::drawing::tube::Tube;
use kurbo::Affine;

/// Radius of the bar, mm (22.2 mm, common practice).
const BAR: f64 = 11.1;
/// Radius of an upright grip, mm (common practice).
const GRIP: f64 = 16.5;
/// How far below the middle of the grips the bar turns about its pivot, mm (common practice).
const PIVOT_BELOW: f64 = 130.0;
/// Lower and upper end of a grip, mm above the middle (common practice).
const GRIP_FROM: f64 = -62.0;
const GRIP_TO: f64 = 66.0;

/// Height of a lever's clamp, mm above the middle of the grip.
pub const LEVER: f64 = GRIP_TO + 20.0;

/// The right half of the bar.
pub struct SideGripLine {
    half: f64,
}

impl SideGripLine {
    /// Taken from the bar's width.
    pub fn new(bar: &Bar) -> SideGripLine {
        SideGripLine {
            half: showable(bar.width.0, WIDTHS) / 2.0,
        }
    }

    fn upright(&self, y: f64) -> Spot {
        // Grips lean out and forward by a few degrees (common practice).
        spot(self.half - 8.0 + y * 0.1, y, y * 0.12)
    }

    fn low(&self) -> Tube {
        let h = self.half;
        let p = -PIVOT_BELOW;
        Tube::new(&[
            (spot(0.0, p, -20.0), BAR),
            (spot(60.0, p, -20.0), BAR),
            (spot(h - 110.0, p, -20.0), BAR),
            (spot(h - 60.0, p + 2.0, -19.0), BAR),
            (spot(h - 33.0, p + 14.0, -16.0), BAR),
            (spot(h - 19.0, p + 38.0, -12.0), BAR),
            (self.upright(GRIP_FROM + 4.0), BAR),
        ])
    }

    fn grip(&self) -> Tube {
        let steps = 10;
        let line: Vec<_> = (0..=steps)
            .map(|i| {
                let t = f64::from(i) / f64::from(steps);
                let y = GRIP_FROM + (GRIP_TO - GRIP_FROM) * t;
                let swell = 1.6 * (1.0 - (2.0 * t - 1.0) * (2.0 * t - 1.0));
                (self.upright(y), GRIP - 1.6 + swell)
            })
            .collect();
        Tube::new(&line)
    }

    /// Local frame at a height on the grip: x down along it, y inboard, so that what faces away
    /// from the rider on a flat bar faces outboard here.
    pub fn frame(&self, y: f64) -> Affine {
        let here = project(self.upright(y));
        let down = project(self.upright(y - 10.0)) - here;
        let down = down / down.hypot();
        Affine::new([down.x, down.y, -down.y, down.x, here.x, here.y])
    }

    /// How far out the low bar is straight, mm.
    pub fn low_end(&self) -> f64 {
        self.half - 120.0
    }

    /// Where the low bar lies on the drawing, mm below the middle.
    pub fn low_height(&self) -> f64 {
        project(spot(0.0, -PIVOT_BELOW, -20.0)).y
    }
}

/// Draws the bar with its grips, pivot, and the frame and seat behind.
pub fn draw(pen: &mut Pen, line: &SideGripLine) {
    around(pen);
    for mirror in [1.0, -1.0] {
        pen.place = Affine::scale_non_uniform(mirror, 1.0);
        half(pen, line);
    }
    pen.place = Affine::IDENTITY;
    pivot(pen);
}

// Main tube running forward, and the edge of the seat: what tells the rider where this is.
fn around(pen: &mut Pen) {
    pen.place = Affine::IDENTITY;
    pen.layer = Layer::Far;
    let boom = Tube::new(&[
        (spot(0.0, -170.0, -60.0), 24.0),
        (spot(0.0, -160.0, 60.0), 24.0),
        (spot(0.0, -150.0, 160.0), 24.0),
        (spot(0.0, -140.0, 260.0), 24.0),
    ]);
    pen.tone(Tone::Metal, boom.outline());
    pen.tone(Tone::Shade, boom.band(0.4, 1.0));
    let length = boom.length();
    pen.form(boom.along(-1.0, 0.0, length));
    pen.form(boom.along(1.0, 0.0, length));
    // Break lines at both ends.
    for end in [boom.middle(0.0), boom.middle(length)] {
        pen.form(through(&[
            (-24.0, end.y),
            (-12.0, end.y - 5.0),
            (0.0, end.y),
            (12.0, end.y + 5.0),
            (24.0, end.y),
        ]));
    }
    pen.mark(
        Ink::Hidden,
        Tone::None,
        through(&[
            (-168.0, 176.0),
            (-160.0, 120.0),
            (-146.0, 84.0),
            (-120.0, 70.0),
            (-60.0, 78.0),
            (0.0, 82.0),
            (60.0, 78.0),
            (120.0, 70.0),
            (146.0, 84.0),
            (160.0, 120.0),
            (168.0, 176.0),
        ]),
    );
}

fn half(pen: &mut Pen, line: &SideGripLine) {
    pen.layer = Layer::Under;
    let low = line.low();
    let length = low.length();
    pen.tone(Tone::Metal, low.outline());
    pen.tone(Tone::Shade, low.band(0.4, 1.0));
    pen.mark(Ink::Outline, Tone::None, low.along(-1.0, 0.0, length));
    pen.mark(Ink::Outline, Tone::None, low.along(1.0, 0.0, length));
    let outer = pen.place;
    // Stub of bar above the grip, for lever and pod.
    pen.layer = Layer::Bar;
    let top = Tube::new(&[
        (line.upright(GRIP_TO - 4.0), BAR),
        (line.upright(GRIP_TO + 20.0), BAR),
        (line.upright(GRIP_TO + 44.0), BAR),
    ]);
    pen.part(Tone::Metal, top.outline());
    pen.tone(Tone::Shade, top.band(0.35, 1.0));
    let end = top.middle(top.length());
    pen.part(Tone::Body, ellipse(end.x, end.y, BAR + 1.0, 6.8));
    let grip = line.grip();
    pen.part(Tone::Rubber, grip.outline());
    pen.tone(Tone::Shade, grip.band(0.45, 1.0));
    // Finger grooves.
    let mut at = 22.0;
    while at < grip.length() - 16.0 {
        pen.detail(grip.ring(at, 0.0, -3.0));
        pen.detail(grip.ring(at + 4.0, 0.0, -3.0));
        at += 20.0;
    }
    pen.mark(Ink::Outline, Tone::None, grip.outline());
    for t in [5.0, grip.length() - 5.0] {
        let at = grip.middle(t);
        let on = grip.heading(t);
        pen.place = outer * Affine::new([on.y, -on.x, on.x, on.y, at.x, at.y]);
        pen.part(
            Tone::Body,
            crate::drawing::curve::rounded(0.0, 0.0, 2.0 * GRIP + 2.0, 9.0, 3.0),
        );
    }
    pen.place = outer;
}

fn pivot(pen: &mut Pen) {
    pen.layer = Layer::Body;
    let at = project(spot(0.0, -PIVOT_BELOW, -20.0));
    pen.place = Affine::translate(at.to_vec2());
    pen.part(
        Tone::Body,
        blob(&[
            (-30.0, -13.0),
            (-14.0, -17.0),
            (0.0, -25.0),
            (14.0, -17.0),
            (30.0, -13.0),
            (33.0, 0.0),
            (30.0, 13.0),
            (14.0, 16.0),
            (0.0, 18.0),
            (-14.0, 16.0),
            (-30.0, 13.0),
            (-33.0, 0.0),
        ]),
    );
    pen.piece(Tone::Metal, circle(0.0, -2.0, 10.0));
    pen.piece(Tone::Dark, circle(0.0, -2.0, 4.0));
    for x in [-23.0, 23.0] {
        pen.piece(Tone::Dark, circle(x, 0.0, 2.2));
    }
    pen.place = Affine::IDENTITY;
}
