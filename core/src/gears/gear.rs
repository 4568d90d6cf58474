//! One gear, and all gears of a drivetrain with their arithmetic.

use std::cmp::Ordering;
use std::f64::consts::PI;
use std::fmt;

use super::{Gain, GearInches, Kmh, Metres, Percent, Ratio, Rolling, Rpm, Teeth};
use crate::units::Mm;

/// A gear: which ring and which cog the chain is on. Both are counted from the
/// easiest, so that a higher number is always harder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Gear {
    /// The ring, 0 for the smallest.
    pub ring: u8,
    /// The cog, 0 for the largest.
    pub cog: u8,
}

impl Gear {
    /// The gear of a ring and a cog, both counted from the easiest.
    pub const fn new(ring: u8, cog: u8) -> Gear {
        Gear { ring, cog }
    }

    /// The cog so many places harder on the same ring; `None` below the first.
    pub(crate) fn harder_by(self, cogs: i8) -> Option<Gear> {
        let cog = self.cog.checked_add_signed(cogs)?;
        Some(Gear { cog, ..self })
    }

    /// How many cogs lie between two gears; above zero is to a smaller cog.
    pub fn cogs_to(self, other: Gear) -> i8 {
        other.cog as i8 - self.cog as i8
    }
}

/// Gears within so much of each other are taken as the same (our judgement: a
/// quarter of the smallest usual step).
pub const SAME_GEAR: Percent = Percent(2.0);

/// The gears of a drivetrain whose teeth are known.
#[derive(Debug, Clone, PartialEq)]
pub struct Gears {
    /// Teeth of the rings, from the smallest; at least one.
    pub rings: Vec<Teeth>,
    /// Teeth of the cogs, from the largest; at least one.
    pub cogs: Vec<Teeth>,
    /// What the driven wheel rolls, if known.
    pub wheel: Option<Rolling>,
    /// Length of the crank, if known.
    pub crank: Option<Mm>,
}

impl Gears {
    /// Every gear, ring by ring, from the easiest cog.
    pub fn all(&self) -> impl Iterator<Item = Gear> + use<> {
        let (rings, cogs) = (self.rings.len() as u8, self.cogs.len() as u8);
        (0..rings).flat_map(move |ring| (0..cogs).map(move |cog| Gear { ring, cog }))
    }

    /// Every gear by ratio, the easiest first.
    pub fn by_ratio(&self) -> Vec<Gear> {
        let mut gears: Vec<Gear> = self.all().collect();
        crate::ordered::sort_by(&mut gears, |a, b| self.compare(*a, *b));
        gears
    }

    /// Whether there is such a gear.
    pub fn has(&self, gear: Gear) -> bool {
        usize::from(gear.ring) < self.rings.len() && usize::from(gear.cog) < self.cogs.len()
    }

    /// The easiest gear: smallest ring, largest cog.
    pub fn easiest(&self) -> Gear {
        Gear::default()
    }

    /// The hardest gear: largest ring, smallest cog.
    pub fn hardest(&self) -> Gear {
        Gear::new(self.rings.len() as u8 - 1, self.cogs.len() as u8 - 1)
    }

    /// Teeth of the ring of a gear.
    pub fn ring(&self, gear: Gear) -> Teeth {
        self.rings[usize::from(gear.ring)]
    }

    /// Teeth of the cog of a gear.
    pub fn cog(&self, gear: Gear) -> Teeth {
        self.cogs[usize::from(gear.cog)]
    }

    /// Ring and cog as people say them: "50×17".
    pub fn words(&self, gear: Gear) -> String {
        format!("{}×{}", self.ring(gear), self.cog(gear))
    }

    /// Turns of the wheel for one turn of the crank.
    pub fn ratio(&self, gear: Gear) -> Ratio {
        Ratio(f64::from(self.ring(gear)) / f64::from(self.cog(gear)))
    }

    /// Which of two gears is harder, without rounding.
    pub fn compare(&self, a: Gear, b: Gear) -> Ordering {
        let cross = |x: Gear, y: Gear| u16::from(self.ring(x).0) * u16::from(self.cog(y).0);
        cross(a, b).cmp(&cross(b, a))
    }

    /// Ratio times the diameter of the wheel in inches.
    pub fn gear_inches(&self, gear: Gear) -> Option<GearInches> {
        let inches = self.wheel?.diameter().0 / 25.4;
        Some(GearInches(self.ratio(gear).0 * inches))
    }

    /// What the bike rolls in one turn of the crank.
    pub fn development(&self, gear: Gear) -> Option<Metres> {
        let metres = self.wheel?.circumference().0 / 1000.0;
        Some(Metres(self.ratio(gear).0 * metres))
    }

    /// How far the bike moves for each length the foot moves.
    pub fn gain(&self, gear: Gear) -> Option<Gain> {
        let radius = self.wheel?.circumference().0 / (2.0 * PI);
        Some(Gain(self.ratio(gear).0 * radius / self.crank?.0))
    }

    /// The speed at a cadence.
    pub fn speed(&self, gear: Gear, cadence: Rpm) -> Option<Kmh> {
        let metres = self.development(gear)?.0 * cadence.0;
        Some(Kmh(metres * 60.0 / 1000.0))
    }

    /// The cadence at a speed.
    pub fn cadence(&self, gear: Gear, speed: Kmh) -> Option<Rpm> {
        let metres_a_minute = speed.0 * 1000.0 / 60.0;
        Some(Rpm(metres_a_minute / self.development(gear)?.0))
    }

    /// The step from one gear to another: above zero is harder.
    pub fn step(&self, from: Gear, to: Gear) -> Percent {
        Percent((self.ratio(to).0 / self.ratio(from).0 - 1.0) * 100.0)
    }

    /// By how much the cadence changes at the same speed.
    pub fn cadence_change(&self, from: Gear, to: Gear) -> Percent {
        Percent((self.ratio(from).0 / self.ratio(to).0 - 1.0) * 100.0)
    }

    /// Whether a gear is as good as one with fewer rings crossed: on another
    /// ring there is one within [`SAME_GEAR`].
    pub fn duplicates(&self, tolerance: Percent) -> Vec<(Gear, Gear)> {
        let mut found = Vec::new();
        for a in self.all() {
            for b in self.all().filter(|b| b.ring > a.ring) {
                if libm::fabs(self.step(a, b).0) <= tolerance.0
                    && libm::fabs(self.step(b, a).0) <= tolerance.0
                {
                    found.push((a, b));
                }
            }
        }
        found
    }

    /// Whether the chain runs crossed: on the smallest ring with the two
    /// smallest cogs, on the largest ring with the two largest (common
    /// practice). With one ring, or fewer than five cogs, none does.
    pub fn is_crossed(&self, gear: Gear) -> bool {
        let (rings, cogs) = (self.rings.len() as u8, self.cogs.len() as u8);
        rings > 1
            && cogs > 4
            && (gear.ring == 0 && gear.cog + 2 >= cogs || gear.ring + 1 == rings && gear.cog < 2)
    }

    /// The whole range: the hardest gear as a multiple of the easiest.
    pub fn range(&self) -> Ratio {
        Ratio(self.ratio(self.hardest()).0 / self.ratio(self.easiest()).0)
    }

    /// The largest step between cogs next to each other.
    pub fn largest_cog_step(&self) -> Percent {
        let mut largest = Percent(0.0);
        for cog in 1..self.cogs.len() as u8 {
            let step = self.step(Gear::new(0, cog - 1), Gear::new(0, cog));
            if step > largest {
                largest = step;
            }
        }
        largest
    }

    /// The gear whose ratio comes nearest to a wanted one, those not crossed
    /// before others as near.
    pub fn nearest(&self, wanted: Ratio) -> Gear {
        let mut best = self.easiest();
        for gear in self.all() {
            let miss = |g: Gear| {
                let off = libm::fabs(libm::log(self.ratio(g).0 / wanted.0));
                off + if self.is_crossed(g) { 0.03 } else { 0.0 }
            };
            if miss(gear) < miss(best) {
                best = gear;
            }
        }
        best
    }
}

impl fmt::Display for Gear {
    /// Ring and cog by their places, counted from the easiest.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "ring {}, cog {}", self.ring + 1, self.cog + 1)
    }
}
