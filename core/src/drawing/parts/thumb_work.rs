//! Bell, assist level, dropper and indicators.

use crate::cockpit::ThumbWorkKind;
use crate::drawing::curve::{blob, circle, ellipse, polyline, rounded};
use crate::drawing::pen::{Layer, Pen, Tone};

/// Width along the bar, mm.
pub const WIDTH: f64 = 36.0;

/// Draws one in local millimetres: origin on the bar, x outboard, y towards the rider.
pub fn draw(pen: &mut Pen, kind: ThumbWorkKind) {
    pen.layer = Layer::Near;
    pen.part(Tone::Body, rounded(0.0, 0.0, 12.0, 31.0, 3.0));
    match kind {
        ThumbWorkKind::Bell => bell(pen),
        ThumbWorkKind::AssistLevel => assist(pen),
        ThumbWorkKind::Dropper => dropper(pen),
        ThumbWorkKind::Indicators => indicators(pen),
    }
}

fn bell(pen: &mut Pen) {
    // Dome seen from above behind, with its hammer.
    pen.part(
        Tone::Metal,
        blob(&[
            (6.0, 4.0),
            (12.0, 10.0),
            (14.0, 18.0),
            (10.0, 21.0),
            (5.0, 16.0),
            (-2.0, 6.0),
        ]),
    );
    pen.part(Tone::Metal, ellipse(0.0, -9.0, 17.5, 16.0));
    pen.form(ellipse(0.0, -11.0, 12.0, 10.0));
    pen.piece(Tone::Body, ellipse(0.0, -13.0, 3.6, 3.0));
}

fn assist(pen: &mut Pen) {
    pen.part(Tone::Body, rounded(0.0, 4.0, 30.0, 44.0, 8.0));
    pen.form(polyline(&[(-6.0, -3.0), (0.0, -10.0), (6.0, -3.0)]));
    pen.form(polyline(&[(-6.0, 11.0), (0.0, 18.0), (6.0, 11.0)]));
    pen.detail(polyline(&[(-11.0, 4.0), (11.0, 4.0)]));
}

fn dropper(pen: &mut Pen) {
    pen.part(
        Tone::Metal,
        blob(&[
            (-4.0, 8.0),
            (4.0, 10.0),
            (18.0, 26.0),
            (30.0, 34.0),
            (30.0, 41.0),
            (20.0, 43.0),
            (6.0, 34.0),
            (-6.0, 18.0),
        ]),
    );
    pen.piece(Tone::Body, circle(0.0, 12.0, 4.4));
    pen.piece(Tone::Dark, circle(0.0, 12.0, 1.6));
}

fn indicators(pen: &mut Pen) {
    pen.part(Tone::Body, rounded(0.0, 4.0, 40.0, 26.0, 7.0));
    pen.form(polyline(&[(-7.0, -3.0), (-14.0, 4.0), (-7.0, 11.0)]));
    pen.form(polyline(&[(7.0, -3.0), (14.0, 4.0), (7.0, 11.0)]));
    pen.piece(Tone::Metal, circle(0.0, 4.0, 3.6));
}
