//! What is pressed while practising: the buttons and the brake levers.

use crate::cockpit::{BarSide, Bike, ButtonId, ControlId};
use crate::drawing::Owner;
use crate::layout::Layout;
use crate::rider::Side;

/// A button or a brake lever of the cockpit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Switch {
    /// A button.
    Button(ButtonId),
    /// The blade of a lever that pulls a brake.
    Brake(ControlId),
}

impl Switch {
    /// Everything that is pressed on a bike: buttons in balloon order, then the
    /// levers that pull a brake.
    pub fn all(bike: &Bike) -> Vec<Switch> {
        let buttons = bike
            .buttons()
            .into_iter()
            .map(|(id, ..)| Switch::Button(id));
        let levers = bike.controls.iter().filter(|control| {
            let run = bike.brakes.run(control.id);
            control.has_blade() && run.is_some_and(|run| !run.wheels.is_empty())
        });
        buttons
            .chain(levers.map(|lever| Switch::Brake(lever.id)))
            .collect()
    }

    /// What a layout has use for: live buttons, and the brake levers.
    pub fn live(bike: &Bike, layout: &Layout) -> Vec<Switch> {
        let mut all = Switch::all(bike);
        all.retain(|switch| match switch {
            Switch::Button(id) => layout.is_live(bike, *id),
            Switch::Brake(_) => true,
        });
        all
    }

    /// The one side on which everything lies that a layout has use for; `None`
    /// where it lies on both, or in the middle.
    pub fn one_side(bike: &Bike, layout: &Layout) -> Option<BarSide> {
        let live = Switch::live(bike, layout).into_iter();
        let mut sides = live.filter_map(|switch| switch.side(bike));
        let first = sides.next().filter(|side| *side != BarSide::Centre)?;
        sides.all(|side| side == first).then_some(first)
    }

    /// The hand that everything lies under that a layout has use for.
    pub fn one_hand(bike: &Bike, layout: &Layout) -> Option<Side> {
        Switch::one_side(bike, layout)?.hand()
    }

    /// The side of the bar that it is on.
    pub fn side(self, bike: &Bike) -> Option<BarSide> {
        let id = match self {
            Switch::Button(id) => id.control,
            Switch::Brake(id) => id,
        };
        bike.control(id).map(|control| control.side)
    }

    /// What stands for it on the drawing.
    pub const fn owner(self) -> Owner {
        match self {
            Switch::Button(id) => Owner::Button(id),
            Switch::Brake(id) => Owner::Blade(id),
        }
    }

    /// Whether it is a brake lever.
    pub const fn is_brake(self) -> bool {
        matches!(self, Switch::Brake(_))
    }

    /// Its words: "left outer paddle", "left brake".
    pub fn place(self, bike: &Bike) -> String {
        match self {
            Switch::Button(id) => bike.place_of(id),
            Switch::Brake(id) => match bike.control(id).map(|control| control.side) {
                Some(BarSide::Left) => "left brake".into(),
                Some(BarSide::Right) => "right brake".into(),
                _ => "brake".into(),
            },
        }
    }

    /// Its name in the page and in the browser's store: `button:3.single`.
    pub fn key(self) -> String {
        match self {
            Switch::Button(id) => format!("button:{id}"),
            Switch::Brake(id) => format!("brake:{}", id.0),
        }
    }

    /// The one on a bike with this [`Switch::key`].
    pub fn find(bike: &Bike, key: &str) -> Option<Switch> {
        let all = Switch::all(bike);
        all.into_iter().find(|switch| switch.key() == key)
    }
}
