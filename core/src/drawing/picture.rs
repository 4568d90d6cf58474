//! The finished picture: shapes, balloons, leader lines, slots and touch areas, in picture units.

use super::balloons::{self, Call, Margin};
use super::cockpit;
use super::curve::path_data;
use super::hit;
use super::pen::{Ink, Owner, Tone};
use crate::cockpit::{BarSide, Bike, ButtonId};
use kurbo::{Affine, Point, Rect, Shape as _};

/// How large a picture to make. One unit is one CSS pixel when the picture is shown at its width.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sheet {
    /// Width of the picture, units; taken as at least [`Sheet::NARROWEST`].
    pub width: f64,
    /// What stands in the margins.
    pub margin: Margin,
}

impl Sheet {
    /// Narrowest picture that keeps its balloons apart, units.
    pub const NARROWEST: f64 = 280.0;
    /// From this width on slots stand in the margins (below, only balloons do), units.
    pub const SLOTS_FROM: f64 = 700.0;

    /// The usual picture for a place on screen this wide: slots in the margins from
    /// [`Sheet::SLOTS_FROM`] on, else balloons only.
    pub fn for_width(width: f64) -> Sheet {
        let margin = if width >= Sheet::SLOTS_FROM {
            Margin::Slots {
                width: if width >= 960.0 { 172.0 } else { 158.0 },
                height: 48.0,
            }
        } else {
            Margin::Balloons
        };
        Sheet { width, margin }
    }
}

/// A shape in painting order.
#[derive(Debug, Clone, PartialEq)]
pub struct Shape {
    /// Line weight.
    pub ink: Ink,
    /// Fill.
    pub tone: Tone,
    /// What it belongs to; `None` for the bar and its fittings.
    pub owner: Option<Owner>,
    /// SVG path data.
    pub d: String,
}

/// Everything about one button that the picture shows.
#[derive(Debug, Clone, PartialEq)]
pub struct ButtonMark {
    /// The button.
    pub button: ButtonId,
    /// Its balloon number, from [`Bike::balloon`].
    pub number: usize,
    /// The side of the bar its slot stands on.
    pub side: BarSide,
    /// SVG path data of its face.
    pub face: String,
    /// Where its leader line ends on the button.
    pub anchor: Point,
    /// The leader line from the edge of the slot (in a narrow picture, of the balloon) to the
    /// anchor; balloons are painted over it.
    pub leader: Vec<Point>,
    /// Middle of the balloon: on the slot's edge in a wide picture, amid it in a narrow one.
    pub balloon: Point,
    /// The slot: with its words in a wide picture, the touch area of the balloon in a narrow one.
    pub slot: Rect,
    /// SVG path data of the touch area over the button; touch areas never overlap.
    pub hit: String,
}

/// The drawing of a cockpit, ready to be shown or printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// Width, units.
    pub width: f64,
    /// Height, units.
    pub height: f64,
    /// Picture units for each millimetre of the cockpit.
    pub scale: f64,
    /// Whether slots stand in the margins.
    pub has_slots: bool,
    /// Shapes, to be painted in this order.
    pub shapes: Vec<Shape>,
    /// The buttons in balloon order.
    pub buttons: Vec<ButtonMark>,
    areas: Vec<(Owner, Rect)>,
    /// What is shown of it, where that is not all.
    shown: Option<Rect>,
}

/// Radius of a balloon, units.
pub const BALLOON: f64 = 12.0;

impl Picture {
    /// Draws the cockpit of a bike on a sheet.
    pub fn of(bike: &Bike, sheet: Sheet) -> Picture {
        let art = cockpit::draw(bike);
        let bounds = art
            .marks
            .iter()
            .map(|m| m.path.bounding_box())
            .reduce(|a, b| a.union(b))
            .unwrap_or(Rect::new(-1.0, -1.0, 1.0, 1.0));
        // The stem stays in the middle even where only one side carries levers.
        let half = bounds.x1.max(-bounds.x0);
        let bounds = Rect::new(-half, bounds.y0, half, bounds.y1);
        let calls: Vec<Call> = bike
            .buttons()
            .iter()
            .filter_map(|(id, control, _)| {
                let face = art.faces.iter().find(|f| f.button == *id)?;
                Some(Call {
                    side: control.side,
                    anchor: face.anchor,
                })
            })
            .collect();
        let plan = balloons::lay_out(&calls, bounds, sheet);
        let place = plan.place;
        let shapes = art
            .marks
            .iter()
            .map(|m| Shape {
                ink: m.ink,
                tone: m.tone,
                owner: m.owner,
                d: path_data(&(place * &m.path)),
            })
            .collect();
        let mut areas: Vec<(Owner, Rect)> = Vec::new();
        for mark in &art.marks {
            let Some(owner) = mark.owner else { continue };
            let area = (place * &mark.path).bounding_box();
            match areas.iter_mut().find(|(o, _)| *o == owner) {
                Some((_, all)) => *all = all.union(area),
                None => areas.push((owner, area)),
            }
        }
        let buttons = buttons(bike, &art, &plan);
        Picture {
            width: plan.size.width,
            height: plan.size.height,
            scale: scale_of(place),
            has_slots: matches!(sheet.margin, Margin::Slots { .. }),
            shapes,
            buttons,
            areas,
            shown: None,
        }
    }

    /// Only what lies around some parts of it, so that they are shown larger;
    /// all of it where none of them is drawn.
    pub fn around(mut self, parts: &[Owner]) -> Picture {
        const MARGIN: f64 = 14.0;
        let areas = parts.iter().filter_map(|part| self.area_of(*part));
        let all = areas.reduce(|a, b| a.union(b));
        self.shown = all.map(|area| area.inflate(MARGIN, MARGIN));
        self
    }

    /// What an SVG element's `viewBox` says.
    pub fn view_box(&self) -> String {
        let whole = Rect::new(0.0, 0.0, self.width, self.height);
        let shown = self.shown.unwrap_or(whole);
        let (width, height) = (shown.width(), shown.height());
        format!("{:.0} {:.0} {width:.0} {height:.0}", shown.x0, shown.y0)
    }

    /// The box round everything drawn of a control, a blade, a button or other thumb work.
    pub fn area_of(&self, owner: Owner) -> Option<Rect> {
        self.areas
            .iter()
            .find(|(o, _)| *o == owner)
            .map(|(_, a)| *a)
    }

    /// The mark of a button.
    pub fn button(&self, id: ButtonId) -> Option<&ButtonMark> {
        self.buttons.iter().find(|b| b.button == id)
    }
}

fn buttons(bike: &Bike, art: &cockpit::Art, plan: &balloons::Plan) -> Vec<ButtonMark> {
    let faces: Vec<_> = bike
        .buttons()
        .iter()
        .enumerate()
        .filter_map(|(i, (id, control, _))| {
            let face = art.faces.iter().find(|f| f.button == *id)?;
            Some((i + 1, control.side, face))
        })
        .collect();
    let anchors: Vec<Point> = faces
        .iter()
        .map(|(_, _, f)| plan.place * f.anchor)
        .collect();
    faces
        .iter()
        .enumerate()
        .map(|(i, (number, side, face))| {
            let path = plan.place * &face.path;
            let seat = &plan.seats[i];
            ButtonMark {
                button: face.button,
                number: *number,
                side: *side,
                hit: path_data(&hit::area(i, &anchors, path.bounding_box())),
                face: path_data(&path),
                anchor: anchors[i],
                leader: seat.leader.clone(),
                balloon: seat.balloon,
                slot: seat.slot,
            }
        })
        .collect()
}

fn scale_of(place: Affine) -> f64 {
    place.as_coeffs()[0]
}
