//! Brake levers at the ends of a base bar.
//!
//! The blade hangs under the grip; as with the levers of drop bars it is turned outward to show.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{blob, circle, ellipse, through};
use crate::drawing::pen::{Ink, Layer, Owner, Pen, Tone};
use kurbo::BezPath;

/// Draws the lever in local millimetres: origin at the end of the bar, x outboard, y down.
pub fn draw(pen: &mut Pen, control: &Control) {
    if let Some(blade) = control.blade {
        pen.owner = Some(Owner::Blade(control.id));
        pen.layer = Layer::Blade;
        if blade.fitted {
            pen.part(Tone::Metal, blade_outline());
            pen.form(through(&[
                (17.0, -17.0),
                (29.0, 2.0),
                (37.0, 32.0),
                (44.0, 58.0),
                (51.0, 70.0),
            ]));
        } else {
            pen.mark(Ink::Hidden, Tone::None, blade_outline());
            pen.part(
                Tone::Body,
                blob(&[
                    (4.0, -22.0),
                    (4.0, -22.0),
                    (20.0, -22.0),
                    (29.0, -12.0),
                    (29.0, -12.0),
                    (20.0, 3.0),
                    (20.0, 3.0),
                    (4.0, -2.0),
                    (4.0, -2.0),
                ]),
            );
        }
    }
    pen.owner = Some(Owner::Control(control.id));
    pen.layer = Layer::Body;
    pen.part(
        Tone::Body,
        blob(&[
            (-15.5, 6.0),
            (-15.5, 6.0),
            (-17.5, -12.0),
            (-18.5, -30.0),
            (-14.0, -41.0),
            (0.0, -45.0),
            (13.0, -40.0),
            (16.5, -28.0),
            (16.5, -10.0),
            (15.5, 6.0),
            (15.5, 6.0),
            (8.0, 9.5),
            (0.0, 10.5),
            (-8.0, 9.5),
        ]),
    );
    pen.tone(
        Tone::Shade,
        blob(&[
            (9.0, 9.0),
            (9.0, 9.0),
            (9.0, -12.0),
            (9.5, -32.0),
            (5.0, -44.0),
            (5.0, -44.0),
            (13.0, -40.0),
            (16.5, -28.0),
            (16.5, -10.0),
            (15.5, 6.0),
            (15.5, 6.0),
        ]),
    );
    pen.form(through(&[
        (-15.8, 0.0),
        (-8.0, 3.6),
        (0.0, 4.6),
        (8.0, 3.6),
        (15.8, 0.0),
    ]));
    pen.piece(Tone::Metal, circle(11.5, -16.0, 3.4));
    pen.piece(Tone::Dark, circle(11.5, -16.0, 1.4));
    pen.layer = Layer::Near;
    for (i, button) in control.buttons.iter().enumerate() {
        let y = match button.part {
            ButtonPart::Upper => -31.0,
            ButtonPart::Lower => -11.0,
            _ => -31.0 + 20.0 * i as f64,
        };
        pen.face(
            control.button_id(button.part),
            ellipse(-4.0, y, 8.6, 7.4),
            (-4.0, y),
        );
    }
}

fn blade_outline() -> BezPath {
    blob(&[
        (4.0, -24.0),
        (4.0, -24.0),
        (18.0, -25.0),
        (29.0, -14.0),
        (36.0, 8.0),
        (42.0, 36.0),
        (51.0, 58.0),
        (59.0, 70.0),
        (58.0, 77.0),
        (51.0, 78.0),
        (41.0, 68.0),
        (33.0, 44.0),
        (27.0, 16.0),
        (20.0, 2.0),
        (4.0, -2.0),
        (4.0, -2.0),
    ])
}
