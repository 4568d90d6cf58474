//! The bike as far as hands meet it: bar, controls, brakes, other thumb work,
//! and what the shift system can program.

mod bar;
mod brakes;
mod button;
mod control;
mod open_points;
mod system;
mod thumb_work;

pub use bar::{Bar, BarKind, Frame, HandPosition};
pub use brakes::{BrakeKind, BrakeRun, Brakes, Joint, Medium, PulledTogether, Wheel, WheelBrake};
pub use button::{Button, ButtonId, ButtonPart, Ease, Freedom, Press, SeenReach};
pub use control::{BarSide, Blade, Control, ControlId, ControlKind, Latch, Link, UnusedPort, Zone};
pub use system::{HoldRun, ProfileOrigin, SystemProfile};
pub use thumb_work::{ThumbWork, ThumbWorkKind};

use crate::function::Function;
use crate::gears::Drivetrain;
use crate::ordered;
use crate::rider::{Answer, YesNo};
use crate::text::Text;
use crate::units::{Mm, free_number};

/// The bike as far as hands meet it.
#[derive(Debug, Clone, PartialEq)]
pub struct Bike {
    /// What the shop calls the bike.
    pub name: Text,
    /// Two wheels or three.
    pub frame: Frame,
    /// The bar.
    pub bar: Bar,
    /// Everything with buttons or a brake blade, in no particular order.
    pub controls: Vec<Control>,
    /// The brakes as plumbing.
    pub brakes: Brakes,
    /// Other work for a thumb: bell and so on.
    pub thumb_work: Vec<ThumbWork>,
    /// What the shift system can program.
    pub system: SystemProfile,
    /// Rings, cogs, wheel and derailleurs.
    pub drivetrain: Drivetrain,
    /// Whether a chain catcher is fitted.
    pub chain_catcher: Answer<YesNo>,
}

impl Bike {
    /// Whether there is a front derailleur.
    pub fn has_front_derailleur(&self) -> bool {
        self.rings() > 1
    }

    /// Chainrings, 1 to 3.
    pub fn rings(&self) -> u8 {
        self.drivetrain.rings.count()
    }

    /// Cogs, 1 to 14.
    pub fn cogs(&self) -> u8 {
        self.drivetrain.cogs.count()
    }

    /// The bike in a few words: what the shop calls it, else "drop bar, 2x12".
    pub fn in_short(&self) -> String {
        match self.name.as_str() {
            "" => format!("{}, {}x{}", self.bar.kind, self.rings(), self.cogs()),
            name => name.to_owned(),
        }
    }

    /// The control with this identity.
    pub fn control(&self, id: ControlId) -> Option<&Control> {
        self.controls.iter().find(|c| c.id == id)
    }

    /// The control with this identity, to change.
    pub fn control_mut(&mut self, id: ControlId) -> Option<&mut Control> {
        self.controls.iter_mut().find(|c| c.id == id)
    }

    /// The button with this identity, and the control it sits on.
    pub fn button(&self, id: ButtonId) -> Option<(&Control, &Button)> {
        let control = self.control(id.control)?;
        Some((control, control.button(id.part)?))
    }

    /// Every button in balloon order: the left hand's first, from the top of
    /// the drawing down, then the middle, then the right hand's.
    pub fn buttons(&self) -> Vec<(ButtonId, &Control, &Button)> {
        let mut all: Vec<_> = self
            .controls
            .iter()
            .flat_map(|c| c.buttons.iter().map(move |b| (c.button_id(b.part), c, b)))
            .collect();
        ordered::sort_by_key(&mut all, |(id, control, _)| {
            (control.side, control.row(id.part), *id)
        });
        all
    }

    /// The balloon number of a button, counted from 1 in the order of
    /// [`Bike::buttons`]: the same on drawing, coverage, findings and sheet.
    pub fn balloon(&self, id: ButtonId) -> Option<usize> {
        self.buttons()
            .iter()
            .position(|(button, ..)| *button == id)
            .map(|at| at + 1)
    }

    /// Where a button is, in words: "left outer paddle".
    pub fn place_of(&self, id: ButtonId) -> String {
        match self.button(id) {
            Some((control, button)) => control.place_of(button.part),
            None => format!("a button that is not on the bike ({id})"),
        }
    }

    /// The nearest other button and the distance to it, centre to centre.
    pub fn nearest_button(&self, id: ButtonId) -> Option<(ButtonId, Mm)> {
        let (_, button) = self.button(id)?;
        self.controls
            .iter()
            .flat_map(|c| c.buttons.iter().map(move |b| (c.button_id(b.part), b.at)))
            .filter(|(other, _)| *other != id)
            .map(|(other, at)| (other, button.at.distance(at)))
            .min_by(|(_, a), (_, b)| a.0.total_cmp(&b.0))
    }

    /// What a button is fixed to do, following copies: a copying button does
    /// what its original does by `taps`.
    pub fn tap_function(
        &self,
        id: ButtonId,
        taps: impl Fn(ButtonId) -> Option<Function>,
    ) -> Option<Function> {
        let (control, button) = self.button(id)?;
        if !control.connected {
            return None;
        }
        match &button.freedom {
            Freedom::Fixed(function) => Some(*function),
            Freedom::Copies(original) => match self.button(*original)?.1.freedom {
                Freedom::Fixed(function) => Some(function),
                _ => taps(*original),
            },
            Freedom::Free | Freedom::Limited(_) => taps(id),
        }
    }

    /// Whether a tap on a button can be made to do a function: by what the
    /// button takes and what the system programs. A copying button does what
    /// its original can do.
    pub fn can_do(&self, id: ButtonId, function: Function) -> bool {
        let Some((_, button)) = self.button(id) else {
            return false;
        };
        match &button.freedom {
            Freedom::Copies(original) => {
                self.button(*original)
                    .is_some_and(|(_, original)| match original.freedom {
                        Freedom::Copies(_) => false,
                        _ => self.programs(original, function),
                    })
            }
            _ => self.programs(button, function),
        }
    }

    fn programs(&self, button: &Button, function: Function) -> bool {
        match button.freedom {
            // What is fixed works by how it is fitted, not by programming.
            Freedom::Fixed(own) => own == function,
            _ => button.takes(function) && self.system.functions.contains(&function),
        }
    }

    /// An identity not used by any control of the bike.
    pub fn free_control_id(&self) -> ControlId {
        ControlId(free_number(self.controls.iter().map(|c| c.id.0)))
    }
}
