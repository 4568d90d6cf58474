//! Puts a bike's cockpit on the drawing plane: the bar, then every control in its seat.

use super::bars::aero::{self, AeroLine};
use super::bars::drop::{self, DropLine};
use super::bars::flat::{self, FlatLine};
use super::bars::side_grip::{self, SideGripLine};
use super::bars::{hose, stem};
use super::parts::{base_bar_lever, drop_lever, flat_lever, pod, port, thumb_pod, thumb_work};
use super::pen::{Face, Mark, Owner, Pen};
use super::seat::{Rail, Seats};
use crate::cockpit::{
    BarKind, BarSide, Bike, Control, ControlKind, Medium, ThumbWork, ThumbWorkKind, Zone,
};
use kurbo::{Affine, Point};

/// The cockpit in millimetres on the drawing plane.
pub struct Art {
    /// Shapes in painting order.
    pub marks: Vec<Mark>,
    /// Faces of the buttons.
    pub faces: Vec<Face>,
}

/// How far below each other things are drawn that have no room side by side, mm.
const STACK: f64 = 34.0;

/// Draws a bike's cockpit.
pub fn draw(bike: &Bike) -> Art {
    let mut pen = Pen::new();
    let bar = BarDrawing::of(bike);
    bar.draw(&mut pen);
    let mut seats = Seats::default();
    // Levers first: they have only one place, the rest makes room.
    let (levers, others): (Vec<_>, Vec<_>) = bike.controls.iter().partition(|c| c.blade.is_some());
    for control in levers.into_iter().chain(others) {
        pen.place = mirror(control.side);
        let medium = bike
            .brakes
            .run(control.id)
            .map_or(Medium::Hose, |run| run.medium);
        bar.control(&mut pen, &mut seats, control, medium);
    }
    for (i, work) in bike.thumb_work.iter().enumerate() {
        pen.place = mirror(work.side);
        pen.owner = Some(Owner::ThumbWork(i));
        bar.thumb_work(&mut pen, &mut seats, work);
    }
    let (marks, faces) = pen.finish();
    Art { marks, faces }
}

// Everything is drawn as on the right and mirrored for the left.
fn mirror(side: BarSide) -> Affine {
    match side {
        BarSide::Left => Affine::FLIP_X,
        BarSide::Centre | BarSide::Right => Affine::IDENTITY,
    }
}

enum BarDrawing {
    Drop(DropLine),
    Aero(AeroLine),
    Flat(FlatLine),
    SideGrip(SideGripLine),
}

impl BarDrawing {
    fn of(bike: &Bike) -> BarDrawing {
        match bike.bar.kind {
            BarKind::Drop => BarDrawing::Drop(DropLine::new(&bike.bar, false)),
            BarKind::FlaredDrop => BarDrawing::Drop(DropLine::new(&bike.bar, true)),
            BarKind::Aero => BarDrawing::Aero(AeroLine::new(&bike.bar)),
            BarKind::Flat => BarDrawing::Flat(FlatLine::new(&bike.bar)),
            BarKind::SideGrip => BarDrawing::SideGrip(SideGripLine::new(&bike.bar)),
        }
    }

    fn draw(&self, pen: &mut Pen) {
        match self {
            BarDrawing::Drop(line) => drop::draw(pen, line),
            BarDrawing::Aero(line) => aero::draw(pen, line),
            BarDrawing::Flat(line) => flat::draw(pen, line),
            BarDrawing::SideGrip(line) => return side_grip::draw(pen, line),
        }
        stem::draw(pen);
    }

    fn control(&self, pen: &mut Pen, seats: &mut Seats, control: &Control, medium: Medium) {
        if control.zone == Zone::Stem || control.side == BarSide::Centre {
            let y = self.stem_seat() - 66.0 * seats.count(Rail::Stem, control.side);
            return pen.within(shift(0.0, y), |pen| {
                pod::on_stem(pen, control);
                pen.within(shift(0.0, 13.0), |pen| port::draw(pen, control.unused_port));
            });
        }
        match self {
            BarDrawing::Drop(line) => on_drop(pen, seats, line, control, medium),
            BarDrawing::Aero(line) => on_aero(pen, seats, line, control),
            BarDrawing::Flat(line) => on_flat(pen, seats, line, control, medium),
            BarDrawing::SideGrip(line) => on_side_grip(pen, seats, line, control, medium),
        }
    }

    fn stem_seat(&self) -> f64 {
        match self {
            BarDrawing::SideGrip(_) => 72.0,
            _ => 24.0,
        }
    }

    fn thumb_work(&self, pen: &mut Pen, seats: &mut Seats, work: &ThumbWork) {
        let want = work.at.x.abs();
        let width = thumb_work::WIDTH;
        let place = match self {
            BarDrawing::Drop(line) => {
                let (x, _) = seats.take(Rail::Top, work.side, want, width, line.near_clamp());
                shift(x, 0.0)
            }
            BarDrawing::Aero(line) => {
                let (x, _) = seats.take(Rail::Top, work.side, want, width, line.free());
                shift(x, 0.0)
            }
            BarDrawing::Flat(line) => {
                let range = (58.0, line.grip_start() - 24.0);
                let rail = if work.kind == ThumbWorkKind::Dropper {
                    Rail::Under
                } else {
                    Rail::Top
                };
                line.frame(seats.take(rail, work.side, want, width, range).0)
            }
            BarDrawing::SideGrip(line) => {
                let range = (60.0, line.low_end());
                let (x, _) = seats.take(Rail::Low, work.side, want, width, range);
                shift(x, line.low_height())
            }
        };
        pen.within(place, |pen| thumb_work::draw(pen, work.kind));
    }
}

fn on_drop(pen: &mut Pen, seats: &mut Seats, line: &DropLine, control: &Control, medium: Medium) {
    let side = control.side;
    match (control.kind, control.zone) {
        (ControlKind::BrakeLever, Zone::Tops) => {
            let (x, _) = seats.take(Rail::Top, side, control.at.x.abs(), 30.0, line.tops());
            pen.within(shift(x, 0.0) * Affine::scale(0.8), |pen| {
                flat_lever::draw(pen, control, medium);
            });
        }
        (ControlKind::SprintButton, _) | (_, Zone::Drops) => {
            let hook = line.hook();
            let range = (104.0, hook.length() - 22.0);
            let sprint = control.kind == ControlKind::SprintButton;
            let width = if sprint { 40.0 } else { 56.0 };
            let (at, stacked) = seats.take(Rail::Drop, side, hook.length() - 62.0, width, range);
            let on = hook.heading(at);
            let here = hook.middle(at);
            let frame = Affine::new([on.y, -on.x, on.x, on.y, here.x, here.y]);
            pen.within(frame * shift(-STACK * stacked, 0.0), |pen| {
                if sprint {
                    pod::sprint(pen, control);
                } else {
                    pod::in_drops(pen, control);
                }
            });
        }
        (ControlKind::Pod | ControlKind::SinglePod, _) => {
            let width = pod::TOPS_WIDTH;
            let want = control.at.x.abs();
            let (x, stacked) = seats.take(Rail::Top, side, want, width, line.tops());
            pen.within(shift(x, STACK * stacked), |pen| {
                pod::on_tops(pen, control);
                pen.within(shift(0.0, 14.0), |pen| port::draw(pen, control.unused_port));
            });
        }
        _ => {
            // A second lever on the same side stands inboard of the first.
            let inward = 74.0 * seats.count(Rail::Hood, side);
            pen.within(shift(-inward, 0.0) * line.lever_frame(), |pen| {
                drop_lever::draw(pen, control);
                pen.within(shift(0.0, 5.0), |pen| port::draw(pen, control.unused_port));
            });
        }
    }
}

fn on_aero(pen: &mut Pen, seats: &mut Seats, line: &AeroLine, control: &Control) {
    let side = control.side;
    let is_pod = control.blade.is_none() && control.kind != ControlKind::BaseBarLever;
    if control.zone == Zone::Tip {
        let back = 58.0 * seats.count(Rail::Tip, side);
        pen.within(line.tip() * shift(0.0, back), |pen| {
            pod::on_tip(pen, control)
        });
    } else if is_pod {
        let width = pod::TOPS_WIDTH;
        let (x, stacked) = seats.take(Rail::Top, side, control.at.x.abs(), width, line.free());
        pen.within(shift(x, STACK * stacked), |pen| pod::on_tops(pen, control));
    } else {
        let inward = 60.0 * seats.count(Rail::Hood, side);
        pen.within(shift(-inward, 0.0) * line.lever(), |pen| {
            base_bar_lever::draw(pen, control);
            pen.within(shift(0.0, 6.0), |pen| port::draw(pen, control.unused_port));
        });
    }
}

fn on_flat(pen: &mut Pen, seats: &mut Seats, line: &FlatLine, control: &Control, medium: Medium) {
    let side = control.side;
    let grip = line.grip_start();
    if control.blade.is_some() {
        let x = grip - 20.0 - 112.0 * seats.count(Rail::Hood, side);
        seats.block(Rail::Top, side, x - 20.0, 70.0);
        let frame = line.frame(x);
        if control.has_blade() {
            let exit = frame * Point::new(-flat_lever::HOSE_EXIT, flat_lever::HOSE_SIDE);
            hose::flat_bar(pen, exit);
        }
        pen.within(frame, |pen| flat_lever::draw(pen, control, medium));
    } else {
        let range = (64.0, grip - 44.0);
        let (x, stacked) = seats.take(Rail::Under, side, grip - 44.0, 72.0, range);
        pen.within(line.frame(x) * shift(0.0, STACK * stacked), |pen| {
            thumb_pod::draw(pen, control);
            pen.within(shift(-28.0, 33.0), |pen| {
                port::draw(pen, control.unused_port)
            });
        });
    }
}

fn on_side_grip(
    pen: &mut Pen,
    seats: &mut Seats,
    line: &SideGripLine,
    control: &Control,
    medium: Medium,
) {
    let side = control.side;
    if control.blade.is_some() {
        let along = 112.0 * seats.count(Rail::Hood, side);
        let frame = line.frame(side_grip::LEVER) * shift(along, 0.0);
        if control.has_blade() {
            let exit = frame * Point::new(-flat_lever::HOSE_EXIT, flat_lever::HOSE_SIDE);
            hose::side_grip(pen, exit);
        }
        pen.within(frame, |pen| flat_lever::draw(pen, control, medium));
    } else {
        let along = 74.0 * seats.count(Rail::Under, side);
        let frame = line.frame(side_grip::LEVER - 4.0) * shift(along, 0.0);
        pen.within(frame, |pen| {
            thumb_pod::draw(pen, control);
            pen.within(shift(-28.0, 33.0), |pen| {
                port::draw(pen, control.unused_port)
            });
        });
    }
}

fn shift(x: f64, y: f64) -> Affine {
    Affine::translate((x, y))
}
