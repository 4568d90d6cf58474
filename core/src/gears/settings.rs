//! How the derailleurs work together, beyond the kind of shift plan.

use super::{Gear, Millis};

vocabulary! {
    /// Which way the gears go.
    pub enum Direction as "direction" {
        /// To harder gears.
        Up = "up", "up";
        /// To easier gears.
        Down = "down", "down";
    }
}

impl Direction {
    /// The other way.
    pub const fn other(self) -> Direction {
        match self {
            Direction::Up => Direction::Down,
            Direction::Down => Direction::Up,
        }
    }
}

vocabulary! {
    /// What a worked-out ladder aims at.
    #[derive(Default)]
    pub enum LadderGoal as "ladder goal" {
        /// The fewest cogs moved at crossovers, then the most even steps.
        #[default]
        Even = "even", "fewest cogs moved, most even steps";
        /// Down crossovers early, landings of two cogs: for one hand.
        Comfort = "comfort", "comfort first, for one hand";
    }
}

/// Settings of the shift plan. Those of plans that are not followed are kept,
/// so that plans can be compared and chosen again.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ShiftSettings {
    /// The paired plan.
    pub paired: PairedSettings,
    /// The ladder.
    pub ladder: LadderSettings,
    /// Whether a hold runs on across a crossover of the ladder.
    pub holds_cross: bool,
    /// How fast the system shifts.
    pub pace: Pace,
}

/// How many rear shifts a front shift brings; `None` is as worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct PairedSettings {
    /// With a shift to the larger ring.
    pub larger: Option<u8>,
    /// With a shift to the smaller ring.
    pub smaller: Option<u8>,
}

/// How the ladder is made.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LadderSettings {
    /// What it aims at where it is worked out.
    pub goal: LadderGoal,
    /// Gears that it keeps out of, in order, each once.
    pub forbidden: Vec<Gear>,
    /// Crossovers set by hand, one for each ring and the next larger, from the
    /// smallest; empty is as worked out.
    pub by_hand: Vec<HandCrossovers>,
}

impl LadderSettings {
    /// Whether the ladder keeps out of a gear.
    pub fn forbids(&self, gear: Gear) -> bool {
        self.forbidden.contains(&gear)
    }
}

/// Where the front changes between a ring and the next larger, as set by hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HandCrossovers {
    /// To the larger ring.
    pub up: CogMove,
    /// To the smaller ring.
    pub down: CogMove,
}

impl HandCrossovers {
    /// The one that leads a way.
    pub fn way(&self, way: Direction) -> CogMove {
        match way {
            Direction::Up => self.up,
            Direction::Down => self.down,
        }
    }

    pub(crate) fn way_mut(&mut self, way: Direction) -> &mut CogMove {
        match way {
            Direction::Up => &mut self.up,
            Direction::Down => &mut self.down,
        }
    }
}

/// The cogs of a crossover, counted from the largest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CogMove {
    /// The cog on which the front changes.
    pub leaves: u8,
    /// The cog on which the chain lands.
    pub lands: u8,
}

/// How fast the shift system works (our judgement: usual settings; the fitter
/// enters those of the manual).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pace {
    /// How long a button is kept pressed until a hold begins to repeat.
    pub trigger: Millis,
    /// From one rear shift to the next.
    pub rear: Millis,
    /// For a front shift.
    pub front: Millis,
}

impl Default for Pace {
    fn default() -> Self {
        Pace {
            trigger: Millis(500),
            rear: Millis(200),
            front: Millis(800),
        }
    }
}

impl Pace {
    /// The time of one act of the derailleurs: front and rear move together, so
    /// the slower one counts.
    pub fn of_move(self, rings: u8, cogs: u8) -> Millis {
        let front = self.front.0 * u32::from(rings);
        let rear = self.rear.0 * u32::from(cogs);
        Millis(front.max(rear))
    }
}
