//! Thumb pods of flat bars and side grips.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{blob, circle, rounded};
use crate::drawing::pen::{Layer, Owner, Pen, Tone};
use kurbo::BezPath;

/// Draws the pod in local millimetres: origin on the bar, x outward along the bar, y towards the
/// rider. The near button lies outboard, where the thumb comes from.
pub fn draw(pen: &mut Pen, control: &Control) {
    pen.owner = Some(Owner::Control(control.id));
    pen.layer = Layer::Body;
    pen.part(Tone::Body, rounded(-4.0, 1.0, 14.0, 27.0, 4.0));
    pen.part(
        Tone::Body,
        blob(&[
            (-10.0, 12.0),
            (-10.0, 12.0),
            (-24.0, 16.0),
            (-31.0, 28.0),
            (-27.0, 40.0),
            (-12.0, 45.0),
            (10.0, 52.0),
            (30.0, 52.0),
            (38.0, 44.0),
            (36.0, 33.0),
            (22.0, 25.0),
            (8.0, 21.0),
            (2.0, 12.0),
            (2.0, 12.0),
        ]),
    );
    pen.layer = Layer::Near;
    for (i, button) in control.buttons.iter().enumerate() {
        let id = control.button_id(button.part);
        match button.part {
            ButtonPart::Far => pen.face(id, far_key(), (-12.0, 30.0)),
            ButtonPart::Near | ButtonPart::Single => pen.face(id, near_key(), (18.5, 39.0)),
            _ => {
                let x = -22.0 + 16.0 * i as f64;
                pen.face(id, circle(x, 4.0, 7.0), (x, 4.0));
            }
        }
    }
}

fn far_key() -> BezPath {
    blob(&[
        (-26.0, 27.0),
        (-20.0, 20.5),
        (-10.0, 20.0),
        (0.0, 25.0),
        (2.0, 33.0),
        (-4.0, 40.0),
        (-15.0, 39.5),
        (-24.0, 35.0),
    ])
}

fn near_key() -> BezPath {
    blob(&[
        (4.0, 34.0),
        (10.0, 29.0),
        (20.0, 30.0),
        (31.0, 36.0),
        (33.5, 43.0),
        (28.0, 48.0),
        (17.0, 48.0),
        (7.0, 43.0),
    ])
}
