//! Controls at their usual places on a bar.
//!
//! Places are those of a plausible cockpit (*common practice*), in the
//! millimetres of [`Point`], for the right side; the left side is mirrored.

use crate::cockpit::{
    Bar, BarKind, BarSide, Blade, Button, ButtonPart, Control, ControlId, ControlKind, Freedom,
    Link, Press, ThumbWork, ThumbWorkKind, UnusedPort, Zone,
};
use crate::function::Function;
use crate::rider::Side;
use crate::units::{Mm, Point};

/// A control of a kind in a zone of a bar, at its usual place; `None` where it
/// does not fit.
pub fn control(
    bar: &Bar,
    id: ControlId,
    kind: ControlKind,
    side: Side,
    zone: Zone,
) -> Option<Control> {
    if !fits(bar.kind, kind, zone) {
        return None;
    }
    let at = place(bar, zone);
    let on_right = Control {
        id,
        kind,
        side: if zone == Zone::Stem {
            BarSide::Centre
        } else {
            BarSide::Right
        },
        zone,
        at,
        buttons: buttons(kind, zone, at, side),
        blade: blade_offset(kind, zone).map(|offset| Blade::at(at.plus(offset))),
        link: Link::Wired,
        connected: true,
        unused_port: UnusedPort::None,
    };
    Some(match side {
        Side::Right => on_right,
        Side::Left => on_right.mirrored(),
    })
}

/// The zones of a bar that take a kind of control.
pub fn zones_for(bar: BarKind, kind: ControlKind) -> &'static [Zone] {
    use BarKind::{Aero, Drop, FlaredDrop, Flat, SideGrip};
    match (bar, kind) {
        (Drop | FlaredDrop, ControlKind::BrakeShiftLever | ControlKind::OnePaddleLever) => {
            &[Zone::Hoods]
        }
        (Drop | FlaredDrop, ControlKind::BrakeLever) => &[Zone::Hoods, Zone::Tops],
        (Drop | FlaredDrop, ControlKind::Pod | ControlKind::SinglePod) => {
            &[Zone::Tops, Zone::Drops, Zone::Stem]
        }
        (Drop | FlaredDrop, ControlKind::SprintButton) => &[Zone::Drops],
        (Aero, ControlKind::BaseBarLever | ControlKind::BrakeLever) => &[Zone::BaseBar],
        (Aero, ControlKind::Pod | ControlKind::SinglePod) => {
            &[Zone::Tip, Zone::BaseBar, Zone::Stem]
        }
        (Flat, ControlKind::BrakeLever) => &[Zone::Grip],
        (Flat, ControlKind::Pod | ControlKind::SinglePod) => &[Zone::Grip, Zone::Stem],
        (SideGrip, ControlKind::BrakeLever | ControlKind::Pod | ControlKind::SinglePod) => {
            &[Zone::SideGrip]
        }
        _ => &[],
    }
}

/// Whether a kind of control fits a zone of a bar.
pub fn fits(bar: BarKind, kind: ControlKind, zone: Zone) -> bool {
    zones_for(bar, kind).contains(&zone)
}

/// Moves a control toward the middle until it lies on none of the others.
pub fn beside(others: &[Control], mut control: Control) -> Control {
    const STEP: f64 = 44.0;
    let taken = |at: Point| others.iter().any(|c| c.at.distance(at).0 < STEP / 2.0);
    let inward = match control.side {
        BarSide::Left => Point::new(STEP, 0.0, 0.0),
        BarSide::Right => Point::new(-STEP, 0.0, 0.0),
        BarSide::Centre => Point::new(0.0, STEP, 0.0),
    };
    // A bar holds a few controls a side; a limit keeps absurd plans finite.
    for _ in 0..8 {
        if !taken(control.at) {
            break;
        }
        control.at = control.at.plus(inward);
        for button in &mut control.buttons {
            button.at = button.at.plus(inward);
        }
        if let Some(blade) = &mut control.blade {
            blade.at = blade.at.plus(inward);
        }
    }
    control
}

/// Other thumb work at its usual place: inboard of the levers, each kind at its
/// own distance so that several find room.
pub fn thumb_work(bar: &Bar, kind: ThumbWorkKind, side: BarSide) -> ThumbWork {
    let inboard = match kind {
        ThumbWorkKind::Bell => 0.0,
        ThumbWorkKind::AssistLevel => 30.0,
        ThumbWorkKind::Dropper => 55.0,
        ThumbWorkKind::Indicators => 80.0,
    };
    let from_middle = match bar.kind {
        BarKind::Drop | BarKind::FlaredDrop => bar.width.0 * 0.27,
        BarKind::Aero => bar.width.0 * 0.36,
        BarKind::Flat | BarKind::SideGrip => bar.width.0 / 2.0 - 165.0,
    };
    let on_right = Point::new((from_middle - inboard).max(25.0), 22.0, -4.0);
    ThumbWork {
        kind,
        side,
        at: match side {
            BarSide::Right => on_right,
            BarSide::Left => on_right.mirrored(),
            BarSide::Centre => Point::new(0.0, 34.0, -4.0 - inboard / 4.0),
        },
    }
}

/// Where a control clamps, on the right.
fn place(bar: &Bar, zone: Zone) -> Point {
    let half = bar.width.0 / 2.0;
    match zone {
        Zone::Hoods => Point::new(half, -8.0, bar.reach.0 - 5.0),
        Zone::Tops => Point::new(half * 0.36, 4.0, -6.0),
        Zone::Drops => Point::new(half - 4.0, -bar.drop.0 * 0.68, bar.reach.0 * 0.75),
        Zone::Stem => Point::new(0.0, 26.0, -10.0),
        Zone::Tip => Point::new(55.0, 62.0, bar.reach.0 + 25.0),
        Zone::BaseBar => Point::new(half, -bar.drop.0, 115.0),
        Zone::Grip => Point::new(half - 135.0, 0.0, 0.0),
        Zone::SideGrip => Point::new(half, 45.0, 5.0),
    }
}

fn buttons(kind: ControlKind, zone: Zone, at: Point, side: Side) -> Vec<Button> {
    use ButtonPart::{
        Far, HoodButton, InnerPaddle, LongPaddle, Lower, Near, OuterPaddle, Single, Upper,
    };
    let short = |part, x, y, z| Button::short(part, at.plus(Point::new(x, y, z)));
    match kind {
        ControlKind::BrakeShiftLever => vec![
            short(HoodButton, -7.0, 50.0, 37.0),
            short(OuterPaddle, -5.0, -27.0, 30.0),
            short(InnerPaddle, -16.0, -22.0, 23.0),
        ],
        ControlKind::OnePaddleLever => vec![Button {
            press: Press::Sweep,
            travel: Mm(12.0),
            ..short(LongPaddle, -8.0, -25.0, 26.0)
        }],
        ControlKind::BrakeLever => Vec::new(),
        ControlKind::BaseBarLever => vec![
            short(Upper, -10.0, 10.0, 5.0),
            short(Lower, -10.0, -10.0, 5.0),
        ],
        ControlKind::Pod => {
            let (near, far) = pod_offsets(zone);
            vec![
                Button::short(Near, at.plus(near)),
                Button::short(Far, at.plus(far)),
            ]
        }
        ControlKind::SinglePod => vec![Button::short(Single, at.plus(pod_offsets(zone).0))],
        ControlKind::SprintButton => vec![Button {
            freedom: Freedom::Fixed(match side {
                Side::Left => Function::RearEasier,
                Side::Right => Function::RearHarder,
            }),
            ..short(Single, -4.0, 0.0, -6.0)
        }],
    }
}

/// The near and the far button of a pod.
fn pod_offsets(zone: Zone) -> (Point, Point) {
    match zone {
        Zone::Tops => (Point::new(9.0, 9.0, -9.0), Point::new(-9.0, 9.0, -9.0)),
        Zone::Stem => (Point::new(-10.0, 6.0, 0.0), Point::new(10.0, 6.0, 0.0)),
        Zone::Tip => (Point::new(0.0, 8.0, -6.0), Point::new(0.0, -8.0, 8.0)),
        Zone::Grip => (
            Point::new(12.0, -22.0, -10.0),
            Point::new(-6.0, -27.0, -4.0),
        ),
        Zone::SideGrip => (Point::new(-6.0, 4.0, 2.0), Point::new(-16.0, 2.0, 16.0)),
        Zone::Drops | Zone::BaseBar | Zone::Hoods => {
            (Point::new(-6.0, 9.0, 0.0), Point::new(-6.0, -9.0, 0.0))
        }
    }
}

/// From the clamp to the middle of the blade.
fn blade_offset(kind: ControlKind, zone: Zone) -> Option<Point> {
    match (kind, zone) {
        (ControlKind::BrakeShiftLever | ControlKind::OnePaddleLever, _)
        | (ControlKind::BrakeLever, Zone::Hoods) => Some(Point::new(2.0, -27.0, 43.0)),
        (ControlKind::BrakeLever, Zone::Tops) => Some(Point::new(30.0, -6.0, 40.0)),
        (ControlKind::BaseBarLever, _) | (ControlKind::BrakeLever, Zone::BaseBar) => {
            Some(Point::new(0.0, -8.0, 40.0))
        }
        (ControlKind::BrakeLever, Zone::SideGrip) => Some(Point::new(0.0, -50.0, 45.0)),
        (ControlKind::BrakeLever, _) => Some(Point::new(50.0, -12.0, 55.0)),
        _ => None,
    }
}
