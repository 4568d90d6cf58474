//! The gear while practising, by the same shifting that rides go through.

use super::Pressed;
use crate::cockpit::ButtonId;
use crate::function::Function;
use crate::gears::{Gear, Kmh, Millis, Moved, Press, Rpm, Shifting, ShiftingError};
use crate::layout::{Hold, Layout};
use crate::plan::Plan;

/// Turns of the crank in a minute that a lesson leaves alone, and those that it
/// goes back to (our judgement).
const BEARABLE: std::ops::Range<f64> = 40.0..110.0;
const PLEASANT: f64 = 70.0;

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
        Ok(Gearing {
            gear: middle(&shifting),
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

    /// Makes ready for a call: where the function does not move from this gear,
    /// or the legs turn far too slowly or too fast in it at a speed, it goes to
    /// the gear that suits best and has room. In a lesson the cassette has no end,
    /// and one wrong ring does not spoil the next hill.
    pub fn make_room(&mut self, function: Function, speed: Kmh) {
        let has_room =
            |gear: Gear| !function.shifts() || self.shifting.tap(gear, function).is_some();
        let cadence = |gear: Gear| self.shifting.gears.cadence(gear, speed);
        let turns_well = cadence(self.gear).is_none_or(|rpm| BEARABLE.contains(&rpm.0));
        if has_room(self.gear) && turns_well {
            return;
        }
        let all: Vec<Gear> = match self.shifting.ladder() {
            Some(ladder) => ladder.up.clone(),
            None => self.shifting.gears.all().collect(),
        };
        let middle = middle(&self.shifting);
        // In tenths of a turn, or in places on the cassette where no wheel is known.
        let away = |gear: &Gear| match cadence(*gear) {
            Some(rpm) => libm::round(10.0 * (rpm.0 - PLEASANT).abs()) as u32,
            None => {
                100 * u32::from(gear.ring.abs_diff(middle.ring))
                    + u32::from(gear.cog.abs_diff(middle.cog))
            }
        };
        let with_room = all.into_iter().filter(|gear| has_room(*gear));
        self.gear = with_room.min_by_key(away).unwrap_or(self.gear);
    }

    /// A button that is kept pressed shifts once more; how long until the next,
    /// `None` where the run ends: at the end of the cassette, or at a crossover
    /// that holds do not cross.
    pub fn run_on(&mut self, plan: &Plan, button: ButtonId) -> Option<Millis> {
        let function = self.layout.tap(&plan.bike, button)?;
        let shift = self.shifting.tap(self.gear, function)?;
        if !function.repeats() || (shift.front != 0 && !self.shifting.holds_cross) {
            return None;
        }
        self.gear = shift.to;
        Some(shift.time)
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

/// A gear from the middle: of the ladder, or of the cassette on the smaller ring.
fn middle(shifting: &Shifting) -> Gear {
    let of_ladder = shifting
        .ladder()
        .and_then(|ladder| ladder.up.get(ladder.up.len() / 2).copied());
    let gears = &shifting.gears;
    let ring = (gears.rings.len() as u8 - 1) / 2;
    of_ladder.unwrap_or(Gear::new(ring, gears.cogs.len() as u8 / 2))
}
