//! The gear while practising, by the same shifting that rides go through.

use super::Pressed;
use crate::gears::{Gear, Kmh, Moved, Press, Rpm, Shifting, ShiftingError};
use crate::layout::{Hold, Layout};
use crate::plan::Plan;

/// A bike that is only shifted.
#[derive(Debug, Clone, PartialEq)]
pub struct Gearing {
    shifting: Shifting,
    layout: Layout,
    gear: Gear,
}

impl Gearing {
    /// The bike of a plan under one of its layouts, in a gear from the middle.
    ///
    /// # Errors
    /// When the teeth are not known, or the ladder does not work: practice goes
    /// on without gears then.
    pub fn of(plan: &Plan, layout: &Layout) -> Result<Gearing, ShiftingError> {
        let shifting = Shifting::of(plan)?;
        let gear = match shifting.ladder() {
            Some(ladder) => ladder.up.get(ladder.up.len() / 2).copied(),
            None => {
                let all: Vec<Gear> = shifting.gears.all().collect();
                all.get(all.len() / 2).copied()
            }
        };
        Ok(Gearing {
            gear: gear.unwrap_or_default(),
            shifting,
            layout: layout.clone(),
        })
    }

    /// The gear it is in.
    pub fn gear(&self) -> Gear {
        self.gear
    }

    /// The gear in words.
    pub fn words(&self) -> String {
        self.shifting.gears.words(self.gear)
    }

    /// How fast it goes at a cadence, where the wheel is known.
    pub fn speed(&self, cadence: Rpm) -> Option<Kmh> {
        self.shifting.gears.speed(self.gear, cadence)
    }

    /// How fast the legs go at a speed, where the wheel is known.
    pub fn cadence(&self, speed: Kmh) -> Option<Rpm> {
        self.shifting.gears.cadence(self.gear, speed)
    }

    /// Takes a press; what moved, if anything did.
    pub fn press(&mut self, plan: &Plan, pressed: Pressed) -> Option<Moved> {
        let function = pressed.does(plan, &self.layout)?;
        let press = match pressed {
            Pressed::Held(id) => match self.layout.holds.get(&id) {
                Some(Hold::Repeats(run)) => Press::Hold(function, *run),
                _ => Press::Tap(function),
            },
            Pressed::Tap(_) | Pressed::Both(..) => Press::Tap(function),
        };
        let moved = self.shifting.press(self.gear, press)?;
        self.gear = moved.to;
        Some(moved)
    }
}
