//! Thumb pods of flat bars and side grips.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{blob, through};
use crate::drawing::pen::{Layer, Owner, Pen, Tone};
use kurbo::BezPath;

/// Draws the pod in local millimetres: origin on the bar, x outward along the bar, y towards the
/// rider. The near button lies outboard, where the thumb comes from.
pub fn draw(pen: &mut Pen, control: &Control) {
    pen.owner = Some(Owner::Control(control.id));
    pen.layer = Layer::Body;
    pen.part(Tone::Body, crate::drawing::curve::rounded(-4.0, 1.0, 14.0, 27.0, 4.0));
    pen.part(
        Tone::Body,
        blob(&[
            (-10.0, 12.0), (-10.0, 12.0), (-24.0, 16.0), (-31.0, 28.0), (-27.0, 40.0), (-12.0, 45.0), (10.0, 52.0), (30.0, 52.0), (38.0, 44.0), (36.0, 33.0),
            (22.0, 25.0), (8.0, 21.0), (2.0, 12.0), (2.0, 12.0),
        ]),
    );
    pen.layer = Layer::Near;
    for button in &control.buttons {
        pen.owner = Some(Owner::Button(control.button_id(button.part)));
        pen.part(Tone::Face, key(button.part));
        let (x, y) = if button.part == ButtonPart::Far { (-13.0, 30.0) } else { (17.0, 40.0) };
        pen.detail(through(&[(x - 5.0, y - 2.2), (x + 5.0, y + 2.2)]));
    }
}

fn key(part: ButtonPart) -> BezPath {
    match part {
        ButtonPart::Far => blob(&[
            (-26.0, 27.0), (-20.0, 20.5), (-10.0, 20.0), (0.0, 25.0), (2.0, 33.0), (-4.0, 40.0), (-15.0, 39.5), (-24.0, 35.0),
        ]),
        _ => blob(&[
            (4.0, 34.0), (10.0, 29.0), (20.0, 30.0), (31.0, 36.0), (33.5, 43.0), (28.0, 48.0), (17.0, 48.0), (7.0, 43.0),
        ]),
    }
}
