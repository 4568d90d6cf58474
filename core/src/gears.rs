//! Gears: the drivetrain, how its derailleurs work together, and what that asks
//! of the hands.
//!
//! A [`Drivetrain`] is what the bike has; [`Gears`] its gears with their
//! arithmetic, once the teeth are known. [`ShiftSettings`] tune the shift plan;
//! [`Shifting`] is the plan worked out: what each press makes of each gear.
//!
//! Rings and cogs are counted from the easiest gear on, rings from the smallest
//! and cogs from the largest, so that a higher number is always harder.

mod demand;
mod drivetrain;
mod error;
mod fit;
mod gear;
mod holds;
mod ladder;
mod paired;
pub mod plot;
mod preset;
mod quantity;
mod settings;
mod shifting;
mod single;
#[cfg(test)]
pub(crate) mod testing;
mod tyre;

pub use demand::{Demand, PlanRow, SideBySide, Trip, UsualMove};
pub use drivetrain::{Derailleurs, Drivetrain, Sprockets};
pub use error::{LadderError, ShiftingError, ToothError};
pub use fit::{Asked, Exceeded};
pub use gear::{Gear, Gears, SAME_GEAR};
pub use holds::HoldRuns;
pub(crate) use ladder::{CLOSE, MOST_LANDING};
pub use ladder::{Crossover, CrossoverEnd, Ladder, WIDE_STEP};
pub use paired::{NetStep, NetStepTable, Paired, USEFUL_STEP, net_steps};
pub use preset::PresetId;
pub use quantity::{Gain, GearInches, Kmh, Metres, Millis, Percent, Ratio, Rpm, Teeth};
pub use settings::{
    CogMove, Direction, HandCrossovers, LadderGoal, LadderSettings, Pace, PairedSettings,
    ShiftSettings,
};
pub use shifting::{Moved, Press, Scheme, Shift, Shifting};
pub use single::SingleRing;
pub use tyre::{BEAD_SEATS, Rolling, Tyre};
