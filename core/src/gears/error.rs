//! What cannot be about gears, in sentences for the field.

use thiserror::Error;

use super::{Gear, Rpm, Teeth};
use crate::limits::{CIRCUMFERENCE, COG_TEETH, MOST_COGS, MOST_RINGS, RING_TEETH, TYRE_WIDTH};
use crate::units::Mm;

/// Why rings, cogs or a wheel cannot be so: a sentence that names the cure.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ToothError {
    /// No rings, or too many.
    #[error("A bike has 1 to {MOST_RINGS} chainrings, not {0}. Enter the teeth of each ring.")]
    RingCount(usize),
    /// No cogs, or too many.
    #[error("A cassette has 1 to {MOST_COGS} cogs, not {0}. Enter the teeth of each cog.")]
    CogCount(usize),
    /// A ring that no bike has.
    #[error("A chainring does not have {0} teeth. Enter {RING_TEETH}.")]
    RingTeeth(u32),
    /// A cog that no cassette has.
    #[error("A cog does not have {0} teeth. Enter {COG_TEETH}.")]
    CogTeeth(u32),
    /// The same tooth count twice.
    #[error("{0} teeth stand there twice. Enter each ring and each cog once.")]
    Twice(Teeth),
    /// Tooth counts out of order.
    #[error(
        "{after} comes after {before}, out of order. Enter the teeth from the smallest to the largest."
    )]
    OutOfOrder {
        /// The count before.
        before: Teeth,
        /// The count out of order.
        after: Teeth,
    },
    /// Only the smallest and the largest cog.
    #[error(
        "{0}-{1} names only the smallest and the largest cog. Enter the teeth of every cog, or choose a usual set."
    )]
    OnlyEnds(Teeth, Teeth),
    /// Something that is no number of teeth.
    #[error("“{0}” is no number of teeth. Enter numbers such as 11 13 15.")]
    NotTeeth(String),
    /// Something that is no tyre.
    #[error(
        "“{0}” is no marking of a tyre. Enter width and bead seat as on its side wall, such as 28-622."
    )]
    Marking(String),
    /// A width that no tyre has.
    #[error("A tyre is not {0} mm wide. Enter a width from {TYRE_WIDTH}, as on its side wall.")]
    TyreWidth(u16),
    /// A bead seat that no tyre has.
    #[error(
        "No tyre has a bead seat of {0} mm. Usual ones are 622, 584, 559, 507 and 406; or enter what the wheel rolls, as measured."
    )]
    BeadSeat(u16),
    /// A circumference that no wheel has.
    #[error("A wheel does not roll {0} in one turn. Enter {CIRCUMFERENCE}.")]
    Circumference(Mm),
    /// Cadences that are no band.
    #[error("Cadences of {0} to {1} are no band. Enter 20 to 150 rpm, the slower first.")]
    Cadences(Rpm, Rpm),
}

/// Why there is no ladder: a sentence that names the cure.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum LadderError {
    /// Every gear is forbidden.
    #[error("Every gear is forbidden, so there is no ladder. Allow some again.")]
    NoGear,
    /// The gears that are left cannot be walked from end to end.
    #[error(
        "No ladder leads through the gears that are allowed, from ring {} cog {} to ring {} cog {}. Allow some of the forbidden gears again.",
        .easiest.ring + 1, .easiest.cog + 1, .hardest.ring + 1, .hardest.cog + 1
    )]
    NoWay {
        /// The easiest gear allowed.
        easiest: Gear,
        /// The hardest gear allowed.
        hardest: Gear,
    },
    /// The crossovers set by hand are not those of this drivetrain.
    #[error(
        "The crossovers that were set by hand do not go with these rings and cogs. Set them again, or take those worked out."
    )]
    OtherGears,
    /// A way set by hand goes over a forbidden gear, or out of order.
    #[error("The {way} crossover between ring {} and ring {} does not work: {why}. Move it, or take the one worked out.", .pair + 1, .pair + 2)]
    Crossover {
        /// Which way it leads.
        way: super::Direction,
        /// The smaller of its rings, from 0.
        pair: u8,
        /// Why not.
        why: &'static str,
    },
}

/// Why nothing can be said of the gears: a sentence that names the cure.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum ShiftingError {
    /// The teeth are not known.
    #[error("The teeth of the {what} are not entered yet. Count them, or choose a usual set.")]
    NotEntered {
        /// Rings, cogs or both.
        what: &'static str,
    },
    /// There is no front derailleur.
    #[error("The {0} plan needs a front derailleur. Set the chainrings to two or three first.")]
    NoFront(crate::shift_plan::ShiftPlanKind),
    /// There is a front derailleur.
    #[error(
        "A bike with a front derailleur cannot follow the single-ring plan. Set its chainrings to one first."
    )]
    HasFront,
    /// The ladder does not work.
    #[error(transparent)]
    Ladder(#[from] LadderError),
}
