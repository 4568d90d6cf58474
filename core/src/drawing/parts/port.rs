//! A port that carries no wire.

use crate::cockpit::UnusedPort;
use crate::drawing::curve::{circle, polyline, rounded};
use crate::drawing::pen::{Pen, Tone};

/// Draws the port at the local origin: a blank with its slot, or an open hole.
pub fn draw(pen: &mut Pen, port: UnusedPort) {
    match port {
        UnusedPort::None => {}
        UnusedPort::Blanked => {
            pen.piece(Tone::Metal, rounded(0.0, 0.0, 9.0, 7.0, 3.4));
            pen.form(polyline(&[(-2.4, 0.0), (2.4, 0.0)]));
        }
        UnusedPort::Open => {
            pen.piece(Tone::Metal, rounded(0.0, 0.0, 9.0, 7.0, 3.4));
            pen.piece(Tone::Dark, circle(0.0, 0.0, 2.0));
        }
    }
}
