//! Brake-shift levers of drop bars.
//!
//! From the rider's eye the hood would cover most of the blade and the paddles lie edge-on behind
//! it. As on a workshop drawing they are fanned outward and turned to show their faces: the order
//! (blade farthest out, then outer paddle, then inner paddle) and the lengths are true, the
//! spread is not.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{blob, circle, ellipse, through};
use crate::drawing::pen::{Ink, Layer, Owner, Pen, Tone};
use kurbo::BezPath;

/// Draws the lever in local millimetres: origin where it clamps, x outboard, y down.
pub fn draw(pen: &mut Pen, control: &Control) {
    if let Some(blade) = control.blade {
        pen.owner = Some(Owner::Blade(control.id));
        pen.layer = Layer::Blade;
        if blade.fitted {
            fitted_blade(pen);
        } else {
            removed_blade(pen);
        }
    }
    let mut spare = SPARE.iter();
    for button in &control.buttons {
        let id = control.button_id(button.part);
        pen.layer = Layer::Paddle;
        match button.part {
            ButtonPart::OuterPaddle => {
                pen.face(id, outer_paddle(), (40.5, 70.0));
                ridge(pen, &[(32.0, 36.0), (36.0, 54.0)]);
            }
            ButtonPart::InnerPaddle => {
                pen.face(id, inner_paddle(), (24.5, 52.0));
                ridge(pen, &[(19.5, 26.0), (22.5, 38.0)]);
            }
            ButtonPart::LongPaddle => {
                pen.face(id, long_paddle(), (37.0, 76.0));
                ridge(pen, &[(29.0, 34.0), (33.5, 56.0)]);
            }
            ButtonPart::HoodButton => {
                pen.layer = Layer::Near;
                pen.face(id, hood_button(), HOOD_BUTTON);
            }
            _ => {
                pen.layer = Layer::Near;
                if let Some(&(x, y)) = spare.next() {
                    pen.face(id, circle(x, y, 7.5), (x, y));
                }
            }
        }
    }
    pen.owner = Some(Owner::Control(control.id));
    pen.layer = Layer::Body;
    hood(pen);
}

// Places on the hood for buttons that a lever of this kind does not usually have.
const SPARE: [(f64, f64); 5] = [
    (0.0, -48.0),
    (0.0, -28.0),
    (0.0, -8.0),
    (0.0, 12.0),
    (-14.0, 2.0),
];

fn ridge(pen: &mut Pen, points: &[(f64, f64)]) {
    pen.detail(through(points));
}

fn blade_outline() -> BezPath {
    blob(&[
        (8.0, -34.0),
        (8.0, -34.0),
        (24.0, -37.0),
        (36.0, -28.0),
        (44.0, -4.0),
        (50.0, 26.0),
        (56.0, 60.0),
        (64.0, 90.0),
        (71.0, 106.0),
        (71.0, 114.0),
        (64.0, 116.0),
        (57.0, 108.0),
        (48.5, 80.0),
        (42.0, 46.0),
        (34.0, 12.0),
        (25.0, -8.0),
        (8.0, -10.0),
        (8.0, -10.0),
    ])
}

fn fitted_blade(pen: &mut Pen) {
    pen.part(Tone::Metal, blade_outline());
    pen.tone(
        Tone::Shade,
        blob(&[
            (24.0, -28.0),
            (24.0, -28.0),
            (37.0, -8.0),
            (45.5, 30.0),
            (52.0, 66.0),
            (59.5, 96.0),
            (66.0, 114.0),
            (64.0, 116.0),
            (64.0, 116.0),
            (57.0, 108.0),
            (48.5, 80.0),
            (42.0, 46.0),
            (34.0, 12.0),
            (25.0, -8.0),
            (20.0, -10.0),
            (20.0, -10.0),
        ]),
    );
    pen.form(through(&[
        (24.0, -28.0),
        (37.0, -8.0),
        (45.5, 30.0),
        (52.0, 66.0),
        (59.5, 96.0),
        (65.0, 108.0),
    ]));
}

// A lever whose blade was taken off: the stub with its cover, and the blade's old place dashed.
fn removed_blade(pen: &mut Pen) {
    pen.mark(Ink::Hidden, Tone::None, blade_outline());
    pen.part(
        Tone::Body,
        blob(&[
            (8.0, -34.0),
            (8.0, -34.0),
            (24.0, -36.0),
            (34.0, -30.0),
            (40.0, -18.0),
            (40.0, -18.0),
            (29.0, -4.0),
            (29.0, -4.0),
            (22.0, -8.0),
            (8.0, -10.0),
            (8.0, -10.0),
        ]),
    );
    pen.form(through(&[(36.0, -26.0), (25.5, -9.5)]));
}

fn outer_paddle() -> BezPath {
    blob(&[
        (10.0, -10.0),
        (10.0, -10.0),
        (24.0, -10.0),
        (33.0, 8.0),
        (39.0, 34.0),
        (44.0, 60.0),
        (48.5, 80.0),
        (47.5, 90.0),
        (40.0, 93.0),
        (33.5, 84.0),
        (29.5, 62.0),
        (25.0, 38.0),
        (16.0, 16.0),
        (8.0, 10.0),
        (8.0, 10.0),
    ])
}

fn inner_paddle() -> BezPath {
    blob(&[
        (4.0, 4.0),
        (4.0, 4.0),
        (16.0, 4.0),
        (23.5, 18.0),
        (28.0, 36.0),
        (31.5, 54.0),
        (31.0, 63.0),
        (24.0, 67.0),
        (17.0, 60.0),
        (13.0, 42.0),
        (9.0, 26.0),
        (2.0, 14.0),
        (2.0, 14.0),
    ])
}

fn long_paddle() -> BezPath {
    blob(&[
        (6.0, -8.0),
        (6.0, -8.0),
        (24.0, -9.0),
        (33.0, 8.0),
        (39.5, 34.0),
        (45.0, 60.0),
        (50.0, 80.0),
        (49.0, 93.0),
        (39.0, 97.0),
        (28.0, 90.0),
        (21.5, 66.0),
        (16.0, 42.0),
        (9.0, 26.0),
        (2.0, 14.0),
        (2.0, 14.0),
    ])
}

const HOOD_BUTTON: (f64, f64) = (-3.0, -77.0);

fn hood_button() -> BezPath {
    ellipse(HOOD_BUTTON.0, HOOD_BUTTON.1, 9.5, 6.8)
}

fn hood(pen: &mut Pen) {
    pen.part(
        Tone::Rubber,
        blob(&[
            (-20.0, 16.0),
            (-20.0, 16.0),
            (-20.5, 2.0),
            (-18.0, -18.0),
            (-15.5, -38.0),
            (-15.8, -53.0),
            (-19.0, -65.0),
            (-21.5, -76.0),
            (-18.5, -88.0),
            (-8.0, -95.0),
            (5.0, -94.0),
            (15.0, -87.0),
            (18.8, -75.0),
            (18.0, -62.0),
            (16.2, -50.0),
            (17.4, -34.0),
            (20.5, -14.0),
            (22.5, 4.0),
            (21.5, 16.0),
            (21.5, 16.0),
            (11.0, 20.5),
            (0.0, 22.0),
            (-10.0, 20.5),
        ]),
    );
    // The flank away from the light.
    pen.tone(
        Tone::Shade,
        blob(&[
            (11.5, 20.0),
            (11.5, 20.0),
            (10.5, -2.0),
            (9.0, -24.0),
            (9.0, -44.0),
            (13.0, -60.0),
            (14.0, -76.0),
            (9.0, -93.0),
            (9.0, -93.0),
            (15.0, -87.0),
            (18.8, -75.0),
            (18.0, -62.0),
            (16.2, -50.0),
            (17.4, -34.0),
            (20.5, -14.0),
            (22.5, 4.0),
            (21.5, 16.0),
            (21.5, 16.0),
        ]),
    );
    pen.form(through(&[
        (11.0, 14.0),
        (10.5, -2.0),
        (9.0, -24.0),
        (9.0, -44.0),
        (13.0, -59.0),
    ]));
    pen.form(through(&[
        (-11.0, 14.0),
        (-11.0, 0.0),
        (-9.0, -24.0),
        (-9.0, -44.0),
        (-13.5, -60.0),
    ]));
    // Where the horn rises.
    pen.form(through(&[
        (-19.0, -64.0),
        (-10.0, -60.0),
        (0.0, -58.5),
        (10.0, -60.0),
        (18.0, -63.0),
    ]));
    // The lip over the tape.
    pen.form(through(&[
        (-20.6, 9.0),
        (-10.0, 13.5),
        (0.0, 15.0),
        (10.0, 13.5),
        (22.4, 9.0),
    ]));
    let mut dimples = BezPath::new();
    for row in 0..7 {
        for column in 0..3 {
            let x = f64::from(column - 1) * 5.0 + if row % 2 == 0 { 0.0 } else { 2.5 };
            if x < 6.0 {
                dimples.extend(circle(x, -46.0 + f64::from(row) * 6.5, 0.9));
            }
        }
    }
    pen.detail(dimples);
}
