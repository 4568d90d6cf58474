//! Brake levers of flat bars and side grips.
//!
//! Drawn level with the bar, as seen from straight above: on the bike they point down by 30 to 45
//! degrees (common practice) and the grip would hide them.

use crate::cockpit::{Control, Medium};
use crate::drawing::curve::{blob, circle, rounded, through};
use crate::drawing::pen::{Ink, Layer, Owner, Pen, Tone};
use kurbo::BezPath;

/// How far inboard of the clamp the hose leaves the body, mm.
pub const HOSE_EXIT: f64 = 52.0;
/// How far in front of the bar it leaves, mm (negative y).
pub const HOSE_SIDE: f64 = -28.0;

/// Draws the lever in local millimetres: origin on the bar under the clamp, x outward along the
/// bar, y towards the rider.
pub fn draw(pen: &mut Pen, control: &Control, medium: Medium) {
    pen.owner = Some(Owner::Control(control.id));
    pen.layer = Layer::Body;
    pen.part(Tone::Body, rounded(0.0, -3.0, 17.0, 32.0, 4.0));
    pen.piece(Tone::Dark, circle(0.0, 6.5, 2.0));
    if let Some(blade) = control.blade {
        pen.owner = Some(Owner::Blade(control.id));
        if blade.fitted {
            pen.part(Tone::Metal, blade_outline());
            pen.form(through(&[
                (14.0, -42.0),
                (40.0, -52.5),
                (74.0, -54.0),
                (104.0, -50.0),
            ]));
        } else {
            pen.mark(Ink::Hidden, Tone::None, blade_outline());
        }
        pen.owner = Some(Owner::Control(control.id));
        if blade.latch.is_some() {
            latch(pen);
        }
    }
    body(pen, medium);
    if control.blade.is_some_and(|b| !b.fitted) {
        // The empty pivot, capped.
        pen.part(Tone::Body, rounded(14.0, -39.0, 13.0, 15.0, 4.0));
    }
}

fn blade_outline() -> BezPath {
    blob(&[
        (0.0, -46.0),
        (0.0, -46.0),
        (14.0, -48.0),
        (38.0, -59.0),
        (74.0, -60.5),
        (104.0, -56.5),
        (118.0, -58.0),
        (121.0, -52.0),
        (114.0, -46.5),
        (98.0, -46.0),
        (72.0, -48.5),
        (44.0, -47.5),
        (20.0, -35.0),
        (2.0, -30.0),
        (2.0, -30.0),
    ])
}

fn body(pen: &mut Pen, medium: Medium) {
    pen.part(
        Tone::Body,
        blob(&[
            (-7.0, -15.0),
            (-7.0, -15.0),
            (-12.0, -22.0),
            (-30.0, -23.0),
            (-44.0, -21.0),
            (-46.0, -28.0),
            (-44.0, -35.0),
            (-28.0, -37.0),
            (-12.0, -44.0),
            (4.0, -49.0),
            (13.0, -43.0),
            (14.0, -33.0),
            (9.0, -24.0),
            (7.0, -15.0),
            (7.0, -15.0),
        ]),
    );
    pen.piece(Tone::Metal, circle(4.0, -38.5, 4.6));
    pen.piece(Tone::Dark, circle(4.0, -38.5, 1.7));
    match medium {
        Medium::Hose => {
            // Cover of the reservoir and its two screws.
            pen.form(blob(&[
                (-40.0, -25.0),
                (-26.0, -26.5),
                (-13.0, -26.0),
                (-8.0, -31.0),
                (-13.0, -37.0),
                (-27.0, -33.0),
                (-40.0, -32.0),
                (-42.5, -28.5),
            ]));
            pen.piece(Tone::Dark, circle(-37.5, -28.6, 1.3));
            pen.piece(Tone::Dark, circle(-13.5, -31.0, 1.3));
            pen.piece(Tone::Metal, rounded(-48.5, -28.0, 8.0, 8.5, 1.5));
        }
        Medium::Cable => {
            // Barrel adjuster.
            pen.piece(Tone::Metal, rounded(-50.0, -28.0, 12.0, 11.0, 2.0));
            for x in [-54.0, -51.0, -48.0, -45.5] {
                pen.detail(through(&[(x, -33.0), (x, -23.0)]));
            }
        }
    }
}

// A parking latch: a hooked tab that holds the blade in.
fn latch(pen: &mut Pen) {
    pen.part(
        Tone::Metal,
        blob(&[
            (16.0, -33.0),
            (24.0, -37.0),
            (31.0, -33.0),
            (33.0, -22.0),
            (40.0, -19.5),
            (40.0, -19.5),
            (38.5, -12.5),
            (38.5, -12.5),
            (28.0, -14.0),
            (24.0, -24.0),
            (18.0, -26.0),
        ]),
    );
    pen.piece(Tone::Dark, circle(23.5, -31.0, 1.8));
}
