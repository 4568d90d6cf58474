//! Pods and sprint buttons.

use crate::cockpit::{ButtonPart, Control};
use crate::drawing::curve::{circle, ellipse, rounded};
use crate::drawing::pen::{Layer, Owner, Pen, Tone};

/// Width of a pod on the tops with its straps, mm.
pub const TOPS_WIDTH: f64 = 62.0;

/// A pod strapped to the tops: two round buttons side by side, the near one outboard, where the
/// thumb comes from. Local millimetres: origin on the bar's middle, x outboard, y down.
pub fn on_tops(pen: &mut Pen, control: &Control) {
    begin(pen, control);
    for x in [-26.0, 26.0] {
        pen.piece(Tone::Body, rounded(x, 0.0, 7.0, 33.5, 2.5));
    }
    pen.part(Tone::Body, rounded(0.0, 1.0, 52.0, 27.0, 12.0));
    pen.form(rounded(0.0, 1.0, 46.0, 21.0, 9.5));
    buttons(pen, control, (11.5, 1.0), (-11.5, 1.0), 8.6);
}

/// A pod on the stem: a puck across it, the near button to the left.
pub fn on_stem(pen: &mut Pen, control: &Control) {
    begin(pen, control);
    pen.part(Tone::Body, rounded(0.0, 0.0, 54.0, 27.0, 12.0));
    pen.form(rounded(0.0, 0.0, 48.0, 21.0, 9.5));
    buttons(pen, control, (-12.0, 0.0), (12.0, 0.0), 8.6);
}

/// A pod in the drops, on the inside of the bar; x outboard, y down along the drop.
pub fn in_drops(pen: &mut Pen, control: &Control) {
    begin(pen, control);
    for y in [-20.0, 20.0] {
        pen.piece(Tone::Body, rounded(0.0, y, 31.0, 5.0, 2.0));
    }
    pen.part(Tone::Body, rounded(-10.0, 0.0, 21.0, 50.0, 9.0));
    buttons(pen, control, (-11.0, 11.0), (-11.0, -11.0), 8.0);
}

/// A pod at the end of an extension, with one or two buttons one behind the other; the near one
/// lies towards the rider. y runs back along the extension.
pub fn on_tip(pen: &mut Pen, control: &Control) {
    begin(pen, control);
    let two = control.buttons.len() > 1;
    let (height, middle) = if two { (50.0, -4.0) } else { (32.0, 4.0) };
    pen.part(Tone::Body, rounded(0.0, middle, 28.0, height, 12.0));
    pen.form(rounded(0.0, middle, 23.0, height - 5.0, 10.0));
    pen.piece(Tone::Metal, rounded(0.0, 22.0, 25.0, 6.0, 2.0));
    let (near, far) = if two {
        ((0.0, 6.5), (0.0, -15.5))
    } else {
        ((0.0, 3.0), (0.0, 3.0))
    };
    buttons(pen, control, near, far, 8.8);
}

/// A sprint button tied to the inside of the drop.
pub fn sprint(pen: &mut Pen, control: &Control) {
    begin(pen, control);
    for y in [-10.0, 10.0] {
        pen.piece(Tone::Body, rounded(0.0, y, 31.0, 5.0, 2.0));
    }
    pen.part(Tone::Body, rounded(-10.0, 0.0, 18.0, 29.0, 8.0));
    for (i, button) in control.buttons.iter().enumerate() {
        let y = 20.0 * i as f64;
        pen.face(
            control.button_id(button.part),
            ellipse(-11.0, y, 6.4, 9.0),
            (-11.0, y),
        );
    }
}

fn begin(pen: &mut Pen, control: &Control) {
    pen.layer = Layer::Near;
    pen.owner = Some(Owner::Control(control.id));
}

fn buttons(pen: &mut Pen, control: &Control, near: (f64, f64), far: (f64, f64), radius: f64) {
    let middle = ((near.0 + far.0) / 2.0, (near.1 + far.1) / 2.0);
    let alone = control.buttons.len() == 1;
    let mut extra = 1.0;
    for button in &control.buttons {
        let at = match button.part {
            _ if alone => middle,
            ButtonPart::Near => near,
            ButtonPart::Far => far,
            _ => {
                // A button that a pod does not usually have goes on in the row.
                extra += 1.0;
                let step = (far.0 - near.0, far.1 - near.1);
                (near.0 + step.0 * extra, near.1 + step.1 * extra)
            }
        };
        pen.face(
            control.button_id(button.part),
            circle(at.0, at.1, radius),
            at,
        );
    }
}
