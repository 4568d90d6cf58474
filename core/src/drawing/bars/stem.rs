//! Stem, steerer and headset as the rider looks down on them.

use crate::drawing::curve::{blob, circle, ellipse, polygon, polyline, rounded, through};
use crate::drawing::pen::{Ink, Layer, Pen, Tone};

/// Draws a stem: faceplate towards the front, body back to the steerer, top cap and spacers.
pub fn draw(pen: &mut Pen) {
    pen.layer = Layer::Body;
    steerer(pen);
    body(pen);
    clamp(pen);
    // The middle of the bike, as on any drawing.
    for (from, to) in [(-44.0, -29.0), (137.0, 150.0)] {
        pen.mark(Ink::Centre, Tone::None, polyline(&[(0.0, from), (0.0, to)]));
    }
}

fn steerer(pen: &mut Pen) {
    // Head tube, cut off by a break line below.
    pen.part(
        Tone::Metal,
        blob(&[
            (-24.0, 92.0),
            (-24.0, 92.0),
            (-25.0, 128.0),
            (-25.0, 128.0),
            (-12.0, 124.0),
            (0.0, 129.0),
            (12.0, 133.0),
            (25.0, 128.0),
            (25.0, 128.0),
            (24.0, 92.0),
            (24.0, 92.0),
        ]),
    );
    pen.tone(
        Tone::Shade,
        polygon(&[(14.0, 94.0), (24.0, 94.0), (24.6, 127.0), (15.0, 130.0)]),
    );
    // Headset cone.
    pen.part(
        Tone::Body,
        blob(&[
            (-20.0, 82.0),
            (-20.0, 82.0),
            (-25.0, 92.0),
            (-25.0, 92.0),
            (-14.0, 98.0),
            (0.0, 99.5),
            (14.0, 98.0),
            (25.0, 92.0),
            (25.0, 92.0),
            (20.0, 82.0),
            (20.0, 82.0),
        ]),
    );
    // Two spacers.
    for y in [80.0, 71.0] {
        pen.part(
            Tone::Metal,
            blob(&[
                (-19.0, y - 9.0),
                (-19.0, y - 9.0),
                (-19.0, y),
                (-19.0, y),
                (-11.0, y + 5.5),
                (0.0, y + 7.0),
                (11.0, y + 5.5),
                (19.0, y),
                (19.0, y),
                (19.0, y - 9.0),
                (19.0, y - 9.0),
            ]),
        );
    }
}

fn body(pen: &mut Pen) {
    // Steerer clamp and body in one outline.
    pen.part(
        Tone::Metal,
        blob(&[
            (-19.0, 0.0),
            (-19.0, 0.0),
            (-16.0, 20.0),
            (-17.0, 32.0),
            (-21.0, 42.0),
            (-21.0, 42.0),
            (-21.0, 68.0),
            (-21.0, 68.0),
            (-12.0, 74.5),
            (0.0, 76.5),
            (12.0, 74.5),
            (21.0, 68.0),
            (21.0, 68.0),
            (21.0, 42.0),
            (21.0, 42.0),
            (17.0, 32.0),
            (16.0, 20.0),
            (19.0, 0.0),
            (19.0, 0.0),
        ]),
    );
    pen.tone(
        Tone::Shade,
        blob(&[
            (12.0, 4.0),
            (12.0, 4.0),
            (9.5, 22.0),
            (12.0, 34.0),
            (12.0, 48.0),
            (12.0, 74.0),
            (12.0, 74.0),
            (20.8, 68.0),
            (20.8, 68.0),
            (20.8, 42.0),
            (20.8, 42.0),
            (16.8, 32.0),
            (15.8, 20.0),
            (18.5, 2.0),
            (18.5, 2.0),
        ]),
    );
    // Rear slot and two pinch bolts.
    pen.form(through(&[(-1.6, 55.0), (-1.6, 76.0)]));
    pen.form(through(&[(1.6, 55.0), (1.6, 76.0)]));
    for y in [58.5, 69.0] {
        pen.piece(Tone::Body, rounded(0.0, y, 17.0, 7.6, 3.4));
        pen.piece(Tone::Dark, circle(5.0, y, 1.7));
    }
    // Top cap.
    pen.part(Tone::Metal, ellipse(0.0, 42.0, 21.0, 10.5));
    pen.part(Tone::Body, ellipse(0.0, 40.5, 16.5, 8.2));
    pen.piece(Tone::Metal, ellipse(0.0, 40.0, 5.6, 2.9));
    pen.piece(Tone::Dark, ellipse(0.0, 40.0, 2.8, 1.5));
}

fn clamp(pen: &mut Pen) {
    // Faceplate: beyond the bar, with the ears of its upper bolts.
    pen.part(
        Tone::Body,
        blob(&[
            (-22.0, -13.0),
            (-22.0, -13.0),
            (-22.0, -19.0),
            (-19.0, -22.0),
            (-8.0, -23.5),
            (0.0, -24.0),
            (8.0, -23.5),
            (19.0, -22.0),
            (22.0, -19.0),
            (22.0, -13.0),
            (22.0, -13.0),
        ]),
    );
    pen.part(Tone::Metal, rounded(0.0, -1.0, 44.0, 36.0, 5.0));
    pen.tone(Tone::Shade, rounded(0.0, 13.0, 41.0, 7.0, 3.0));
    pen.form(through(&[(-22.0, -11.0), (22.0, -11.0)]));
    for (x, y) in [(-14.0, -15.0), (14.0, -15.0), (-14.0, 9.5), (14.0, 9.5)] {
        pen.piece(Tone::Body, circle(x, y, 4.6));
        pen.piece(Tone::Dark, circle(x, y, 2.0));
    }
}
