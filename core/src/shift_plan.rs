//! How the two derailleurs work together.

mod change;

pub use change::PlanChange;

use crate::cockpit::Bike;
use crate::function::Function;

vocabulary! {
    /// The kind of shift plan.
    pub enum ShiftPlanKind as "shift plan" {
        /// No front derailleur.
        SingleRing = "single-ring", "single ring";
        /// Each derailleur has its own buttons.
        Separate = "separate", "separate";
        /// A front shift brings a set number of rear shifts.
        Paired = "paired", "paired";
        /// One pair of buttons walks one list of gears.
        Ladder = "ladder", "ladder";
    }
}

impl ShiftPlanKind {
    /// The plan a bike starts with.
    pub fn usual(bike: &Bike) -> ShiftPlanKind {
        if bike.has_front_derailleur() {
            ShiftPlanKind::Separate
        } else {
            ShiftPlanKind::SingleRing
        }
    }

    /// How it works, in a sentence.
    pub const fn says(self) -> &'static str {
        match self {
            ShiftPlanKind::SingleRing => {
                "One ring, so two buttons do it all: one for easier, one for harder."
            }
            ShiftPlanKind::Separate => {
                "Each derailleur has its own buttons: easier and harder at the rear, smaller and larger at the front."
            }
            ShiftPlanKind::Paired => {
                "As separate, but a front shift brings a set number of rear shifts, so that the legs feel one useful step."
            }
            ShiftPlanKind::Ladder => {
                "Two buttons walk one list of gears, up and down; the front changes by itself at the crossovers."
            }
        }
    }

    /// Functions without which the bike cannot be shifted through its gears,
    /// most important first.
    pub const fn needed(self) -> &'static [Function] {
        match self {
            ShiftPlanKind::SingleRing => &[Function::RearEasier, Function::RearHarder],
            ShiftPlanKind::Separate | ShiftPlanKind::Paired => &[
                Function::RearEasier,
                Function::RearHarder,
                Function::FrontSmaller,
                Function::FrontLarger,
            ],
            ShiftPlanKind::Ladder => &[Function::RungDown, Function::RungUp],
        }
    }

    /// Whether a function means anything on this bike under this plan.
    pub fn has_use_for(self, function: Function, bike: &Bike) -> bool {
        match function {
            f if f.is_rung() => self == ShiftPlanKind::Ladder,
            f if f.is_front() => self != ShiftPlanKind::SingleRing && bike.has_front_derailleur(),
            _ => true,
        }
    }

    /// The function that takes the place of another under this plan, where the
    /// same hand movement should still mean easier or harder.
    pub const fn in_place_of(self, function: Function) -> Option<Function> {
        match (self, function) {
            (ShiftPlanKind::Ladder, Function::RearEasier) => Some(Function::RungDown),
            (ShiftPlanKind::Ladder, Function::RearHarder) => Some(Function::RungUp),
            (ShiftPlanKind::Ladder, _) => None,
            (_, Function::RungDown) => Some(Function::RearEasier),
            (_, Function::RungUp) => Some(Function::RearHarder),
            _ => None,
        }
    }
}
