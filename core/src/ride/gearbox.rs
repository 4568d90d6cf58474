//! The gears as a ride meets them: what each press makes of each gear, and
//! which presses lead to a wanted one.

use crate::function::Function;
use crate::gears::{Gear, Millis, Shifting, ShiftingError};
use crate::plan::Plan;
use crate::units::Mm;

/// The functions that move a derailleur or walk the ladder one way.
const PRESSES: [Function; 6] = [
    Function::RearEasier,
    Function::RearHarder,
    Function::FrontSmaller,
    Function::FrontLarger,
    Function::RungDown,
    Function::RungUp,
];

/// What one press does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shift {
    /// The gear it leads to.
    pub to: usize,
    /// Whether the front derailleur moves.
    pub front: bool,
    /// How long it takes, in seconds.
    pub seconds: f64,
}

/// One gear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearMark {
    /// The ring, 0 for the smallest.
    pub ring: u8,
    /// The cog, 0 for the largest.
    pub cog: u8,
    /// Metres rolled in one turn of the crank.
    pub development: f64,
    /// Whether a rider keeps out of it where another gear serves: the chain
    /// runs crossed.
    pub crossed: bool,
}

/// All gears and what presses make of them.
#[derive(Debug, Clone, PartialEq)]
pub struct Gearbox {
    gears: Vec<GearMark>,
    shifts: Vec<[Option<Shift>; PRESSES.len()]>,
    ladder: bool,
    /// Whether a hold runs on where the front derailleur moves.
    holds_cross: bool,
    /// How long a button is kept pressed until a hold repeats, in seconds.
    trigger: f64,
}

/// Gears this near each other, as a factor, are taken as the same: no rider
/// shifts for less (our judgement).
const SAME: f64 = 1.05;

/// What a wheel rolls while nobody has entered it: 28-622 (widely printed table
/// of circumferences).
const USUAL_WHEEL: Mm = Mm(2136.0);

fn seconds(time: Millis) -> f64 {
    f64::from(time.0) / 1000.0
}

/// The most presses that lead from one gear to another; a walk that is longer
/// goes round in circles.
const MOST_PRESSES: usize = 64;

impl Gearbox {
    /// The gears of a plan under its shift plan. A wheel that was not entered is
    /// taken as the usual one.
    ///
    /// # Errors
    /// When the teeth are not known, or the ladder does not work.
    pub fn of(plan: &Plan) -> Result<Gearbox, ShiftingError> {
        let shifting = Shifting::of(plan)?;
        let gears = &shifting.gears;
        let rolls = gears
            .wheel
            .map_or(USUAL_WHEEL, |wheel| wheel.circumference());
        let cogs = gears.cogs.len();
        let marks = gears.all().map(|gear| GearMark {
            ring: gear.ring,
            cog: gear.cog,
            development: gears.ratio(gear).0 * rolls.0 / 1000.0,
            crossed: gears.is_crossed(gear),
        });
        let press = |gear: Gear, function| {
            let shift = shifting.tap(gear, function)?;
            Some(Shift {
                to: usize::from(shift.to.ring) * cogs + usize::from(shift.to.cog),
                front: shift.front != 0,
                seconds: seconds(shift.time),
            })
        };
        let all = |gear: Gear| PRESSES.map(|function| press(gear, function));
        Ok(Gearbox {
            gears: marks.collect(),
            shifts: gears.all().map(all).collect(),
            ladder: shifting.ladder().is_some(),
            holds_cross: shifting.holds_cross,
            trigger: seconds(shifting.pace.trigger),
        })
    }

    /// The gears.
    pub fn gears(&self) -> &[GearMark] {
        &self.gears
    }

    /// What a press makes of a gear; `None`: nothing.
    pub fn shift(&self, gear: usize, function: Function) -> Option<Shift> {
        let at = PRESSES.iter().position(|press| *press == function)?;
        self.shifts.get(gear)?[at]
    }

    /// The gear whose development comes nearest, crossed ones left out where
    /// others serve: to set off in.
    pub fn nearest(&self, development: f64) -> usize {
        let mut best = 0;
        for gear in 1..self.gears.len() {
            if self.better(gear, best, development) {
                best = gear;
            }
        }
        best
    }

    fn better(&self, gear: usize, than: usize, development: f64) -> bool {
        self.misses(gear, development) < self.misses(than, development)
    }

    /// By which factor a gear misses a development; a crossed one counts as
    /// worse by half a usual step.
    fn misses(&self, gear: usize, development: f64) -> f64 {
        let mark = &self.gears[gear];
        let off = (mark.development / development).max(development / mark.development);
        if mark.crossed { off * 1.06 } else { off }
    }

    /// The presses that a rider makes to come from a gear near a development,
    /// those that can be called up only; none where no press brings it nearer.
    ///
    /// A rider stays on the ring while a cog there serves, and changes rings
    /// only for what the cogs cannot give; then comes back with the cogs as far
    /// as the change went too far.
    pub(super) fn presses(
        &self,
        from: usize,
        development: f64,
        may: impl Fn(Function) -> bool,
    ) -> Vec<Function> {
        let mut best = self.walk(from, development, &may);
        if !self.ladder {
            for front in [Function::FrontSmaller, Function::FrontLarger] {
                let Some(shift) = self.shift(from, front).filter(|_| may(front)) else {
                    continue;
                };
                let then = self.walk(shift.to, development, &may);
                // Worth a front shift only where the ring at hand misses by more
                // than a usual step.
                if self.misses(best.1, development) > self.misses(then.1, development) * 1.12 {
                    let mut presses = vec![front];
                    presses.extend(then.0);
                    best = (presses, then.1);
                }
            }
        }
        best.0
    }

    /// Presses of the rear or rung functions while they bring a gear nearer,
    /// and where they lead.
    fn walk(
        &self,
        from: usize,
        development: f64,
        may: &impl Fn(Function) -> bool,
    ) -> (Vec<Function>, usize) {
        let (easier, harder) = if self.ladder {
            (Function::RungDown, Function::RungUp)
        } else {
            (Function::RearEasier, Function::RearHarder)
        };
        let mut presses = Vec::new();
        let mut gear = from;
        let way = if self.gears[from].development > development {
            easier
        } else {
            harder
        };
        while may(way) && presses.len() < MOST_PRESSES {
            match self.shift(gear, way) {
                Some(shift) if self.better(shift.to, gear, development) => {
                    presses.push(way);
                    gear = shift.to;
                }
                _ => break,
            }
        }
        (presses, gear)
    }

    /// How many shifts a hold of a function makes from a gear at most, of so many
    /// wanted: it stops before the front derailleur moves, unless it may run on.
    pub(super) fn holds(&self, from: usize, function: Function, wanted: usize) -> usize {
        let (mut gear, mut shifts) = (from, 0);
        while shifts < wanted {
            match self.shift(gear, function) {
                Some(shift) if !shift.front || self.holds_cross => {
                    (gear, shifts) = (shift.to, shifts + 1);
                }
                _ => break,
            }
        }
        shifts
    }

    /// How long a button is kept pressed until a hold repeats, in seconds.
    pub(super) fn trigger(&self) -> f64 {
        self.trigger
    }

    /// Whether a gear is as good as a development.
    pub(super) fn serves(&self, gear: usize, development: f64) -> bool {
        let own = self.gears[gear].development;
        (own / development).max(development / own) < SAME
    }
}
