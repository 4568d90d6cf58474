//! What the draughtsman's hand holds: shapes in millimetres, in layers, with three line weights.

use crate::cockpit::{ButtonId, ControlId};
use crate::ordered;
use kurbo::{Affine, BezPath, Point};

/// Weight of a line. Widths are set by the style sheet and do not grow with the drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    /// The edge of a part.
    Outline,
    /// A change of form within a part.
    Form,
    /// Texture: tape wraps, knurls, dimples. Left out on small drawings.
    Detail,
    /// An edge hidden behind something: thin and dashed.
    Hidden,
    /// Axis of a part: thin, long and short dashes.
    Centre,
    /// No line: a flat tone only.
    None,
}

impl Ink {
    /// Class name for the style sheet.
    pub const fn class(self) -> &'static str {
        match self {
            Ink::Outline => "ink-outline",
            Ink::Form => "ink-form",
            Ink::Detail => "ink-detail",
            Ink::Hidden => "ink-hidden",
            Ink::Centre => "ink-centre",
            Ink::None => "ink-none",
        }
    }
}

/// Flat tone that fills a shape; printing leaves all of them white.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tone {
    /// Not filled.
    None,
    /// Bare metal or carbon: bar, stem, blades.
    Metal,
    /// Bar tape.
    Tape,
    /// Rubber: hoods, grips, pads.
    Rubber,
    /// Body of a lever or pod.
    Body,
    /// The side of a form that faces away from the light.
    Shade,
    /// Face of a button.
    Face,
    /// Deep recess: bolt sockets, gaps.
    Dark,
}

impl Tone {
    /// Class name for the style sheet.
    pub const fn class(self) -> &'static str {
        match self {
            Tone::None => "tone-none",
            Tone::Metal => "tone-metal",
            Tone::Tape => "tone-tape",
            Tone::Rubber => "tone-rubber",
            Tone::Body => "tone-body",
            Tone::Shade => "tone-shade",
            Tone::Face => "tone-face",
            Tone::Dark => "tone-dark",
        }
    }
}

/// Painting order, farthest from the eye first: what is nearer covers what is farther, which is
/// how hidden edges are removed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// Hoses in front of the bar, seat outlines.
    Far,
    /// Brake blades.
    Blade,
    /// Paddles behind the blades.
    Paddle,
    /// The drops and anything the tops cover.
    Under,
    /// The bar itself.
    Bar,
    /// Hoods, lever bodies, clamps, stem.
    Body,
    /// Pods and buttons on top of everything.
    Near,
}

/// What a shape belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Owner {
    /// The body of a control.
    Control(ControlId),
    /// The brake blade of a control.
    Blade(ControlId),
    /// The face of a button.
    Button(ButtonId),
    /// The n-th thing in the bike's list of other thumb work.
    ThumbWork(usize),
}

/// One shape of the drawing, in millimetres on the drawing plane.
#[derive(Debug, Clone)]
pub struct Mark {
    /// Painting order.
    pub layer: Layer,
    /// Line weight.
    pub ink: Ink,
    /// Fill.
    pub tone: Tone,
    /// The outline.
    pub path: BezPath,
    /// The control or button it belongs to; `None` for the bar and its fittings.
    pub owner: Option<Owner>,
}

/// The face of a button, in millimetres on the drawing plane.
#[derive(Debug, Clone)]
pub struct Face {
    /// The button.
    pub button: ButtonId,
    /// Its outline; part of it may lie behind something nearer.
    pub path: BezPath,
    /// A point in the middle of what shows of it: leader lines end here.
    pub anchor: Point,
}

/// Collects marks under a current place, layer and owner.
#[derive(Debug, Clone)]
pub struct Pen {
    /// Where local drawings land.
    pub place: Affine,
    /// Layer of the next marks.
    pub layer: Layer,
    /// Owner of the next marks.
    pub owner: Option<Owner>,
    marks: Vec<Mark>,
    faces: Vec<Face>,
}

impl Default for Pen {
    fn default() -> Self {
        Pen::new()
    }
}

impl Pen {
    /// A pen at the origin of the drawing plane.
    pub fn new() -> Self {
        Pen {
            place: Affine::IDENTITY,
            layer: Layer::Bar,
            owner: None,
            marks: Vec::new(),
            faces: Vec::new(),
        }
    }

    /// The marks in painting order, and the faces of buttons.
    pub fn finish(mut self) -> (Vec<Mark>, Vec<Face>) {
        ordered::sort_by_key(&mut self.marks, |m| m.layer);
        (self.marks, self.faces)
    }

    /// Draws the face of a button; its leader line ends at `anchor`.
    pub fn face(&mut self, button: ButtonId, path: BezPath, anchor: (f64, f64)) {
        let owner = self.owner.replace(Owner::Button(button));
        self.part(Tone::Face, path.clone());
        self.owner = owner;
        self.faces.push(Face {
            button,
            path: self.place * path,
            anchor: self.place * Point::from(anchor),
        });
    }

    /// Draws with the current place moved by `by`, then comes back.
    pub fn within(&mut self, by: Affine, draw: impl FnOnce(&mut Pen)) {
        let place = self.place;
        self.place = place * by;
        draw(self);
        self.place = place;
    }

    /// Draws a shape with the current place, layer and owner.
    pub fn mark(&mut self, ink: Ink, tone: Tone, path: BezPath) {
        self.marks.push(Mark {
            layer: self.layer,
            ink,
            tone,
            path: self.place * path,
            owner: self.owner,
        });
    }

    /// An outlined part.
    pub fn part(&mut self, tone: Tone, path: BezPath) {
        self.mark(Ink::Outline, tone, path);
    }

    /// A smaller piece with a middle line.
    pub fn piece(&mut self, tone: Tone, path: BezPath) {
        self.mark(Ink::Form, tone, path);
    }

    /// A flat tone without a line.
    pub fn tone(&mut self, tone: Tone, path: BezPath) {
        self.mark(Ink::None, tone, path);
    }

    /// A middle line.
    pub fn form(&mut self, path: BezPath) {
        self.mark(Ink::Form, Tone::None, path);
    }

    /// A fine line.
    pub fn detail(&mut self, path: BezPath) {
        self.mark(Ink::Detail, Tone::None, path);
    }
}
