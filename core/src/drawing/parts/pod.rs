//! Pods and sprint buttons.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{circle, ellipse, rounded, through};
use crate::drawing::pen::{Layer, Owner, Pen, Tone};

/// A pod strapped to the tops: two round buttons side by side, the near one outboard, where the
/// thumb comes from. Local millimetres: origin on the bar's middle, x outboard, y down.
pub fn on_tops(pen: &mut Pen, control: &Control) {
    pen.layer = Layer::Near;
    pen.owner = Some(Owner::Control(control.id));
    for x in [-27.0, 27.0] {
        pen.piece(Tone::Body, rounded(x, 0.0, 7.0, 33.5, 2.5));
    }
    pen.part(Tone::Body, rounded(0.0, 1.0, 52.0, 27.0, 12.0));
    pen.form(rounded(0.0, 1.0, 46.0, 21.0, 9.5));
    round_buttons(pen, control, &[(11.5, 1.0), (-11.5, 1.0)], 8.6);
}

/// A pod beside the stem: a puck on its own clamp.
pub fn on_stem(pen: &mut Pen, control: &Control) {
    pen.layer = Layer::Near;
    pen.owner = Some(Owner::Control(control.id));
    pen.part(Tone::Body, rounded(0.0, 0.0, 34.0, 44.0, 13.0));
    pen.form(rounded(0.0, 0.0, 28.0, 38.0, 10.5));
    round_buttons(pen, control, &[(0.0, 9.8), (0.0, -9.8)], 8.2);
}

/// A sprint button tied to the inside of the drop.
pub fn sprint(pen: &mut Pen, control: &Control) {
    pen.layer = Layer::Near;
    pen.owner = Some(Owner::Control(control.id));
    pen.piece(Tone::Body, rounded(0.0, -10.0, 31.0, 5.0, 2.0));
    pen.piece(Tone::Body, rounded(0.0, 10.0, 31.0, 5.0, 2.0));
    pen.part(Tone::Body, rounded(-10.0, 0.0, 18.0, 29.0, 8.0));
    for button in &control.buttons {
        pen.owner = Some(Owner::Button(control.button_id(button.part)));
        pen.part(Tone::Face, ellipse(-11.0, 0.0, 6.4, 9.0));
    }
}

fn round_buttons(pen: &mut Pen, control: &Control, places: &[(f64, f64)], radius: f64) {
    for button in &control.buttons {
        let (x, y) = match button.part {
            ButtonPart::Far => places[1],
            ButtonPart::Single => ((places[0].0 + places[1].0) / 2.0, (places[0].1 + places[1].1) / 2.0),
            _ => places[0],
        };
        pen.owner = Some(Owner::Button(control.button_id(button.part)));
        pen.part(Tone::Face, circle(x, y, radius));
        pen.detail(through(&[(x - 3.0, y), (x + 3.0, y)]));
        pen.detail(through(&[(x, y - 3.0), (x, y + 3.0)]));
    }
}
