//! Why a change is refused.

use thiserror::Error;

use crate::cockpit::{ControlId, ControlKind, Zone};
use crate::function::Function;
use crate::gears::{ShiftingError, ToothError};

/// Why a change is refused: a sentence that names the place and the cure.
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum EditError {
    /// The button is excluded from remapping.
    #[error(
        "The {place} is fixed to “{function}” by how it is fitted. Refit it on the other side, or unplug it."
    )]
    FixedButton {
        /// Where the button is.
        place: String,
        /// What it is fixed to.
        function: Function,
    },
    /// The button does what another does.
    #[error("The {place} copies the {original}. Change the {original} instead.")]
    CopyingButton {
        /// Where the button is.
        place: String,
        /// Where the other is.
        original: String,
    },
    /// The function is not among those the button takes.
    #[error("The {place} takes only {allowed}. Put “{function}” on another button.")]
    OutsideItsSet {
        /// Where the button is.
        place: String,
        /// What was tried.
        function: Function,
        /// What it takes, in words.
        allowed: String,
    },
    /// No such button.
    #[error("There is no {place} on this bike. Choose a button of the drawing.")]
    NoSuchButton {
        /// What was asked for.
        place: String,
    },
    /// No such control.
    #[error("Control {0} is not on this bike. Choose one from the list of controls.")]
    NoSuchControl(ControlId),
    /// The control has no blade.
    #[error("The {place} has no brake blade. Choose a lever that brakes.")]
    NoBlade {
        /// Where the control is.
        place: String,
    },
    /// A control of this kind does not fit there.
    #[error("A {kind} does not fit the {zone} of this bar. Choose another zone.")]
    DoesNotFit {
        /// The kind.
        kind: ControlKind,
        /// The zone.
        zone: Zone,
    },
    /// A chord needs two different buttons.
    #[error("Pressing together needs two different buttons. Choose a second one.")]
    ChordOfOne,
    /// No such layout.
    #[error("That layout is not in this plan. Choose one from the list of layouts.")]
    NoSuchLayout,
    /// The last layout stays.
    #[error("A plan keeps at least one layout. Add another before removing this one.")]
    LastLayout,
    /// Too many of something.
    #[error("A plan holds at most {limit} {what}. Remove one first.")]
    TooMany {
        /// Of what.
        what: &'static str,
        /// How many fit.
        limit: usize,
    },
    /// A number that cannot be.
    #[error("{what} cannot be {value}. Enter a number from {from} to {to}.")]
    OutOfRange {
        /// What the number is.
        what: &'static str,
        /// The number.
        value: String,
        /// Smallest.
        from: String,
        /// Largest.
        to: String,
    },
    /// Rings, cogs or a wheel that cannot be.
    #[error(transparent)]
    Teeth(#[from] ToothError),
    /// The gears do not work together so.
    #[error(transparent)]
    Shifting(#[from] ShiftingError),
    /// There is nothing to do it with.
    #[error("{0}")]
    NotPossible(String),
}

impl EditError {
    /// Whether the cure is a matter of the bike: what is fitted, and where.
    pub const fn is_cured_on_bike(&self) -> bool {
        matches!(
            self,
            EditError::FixedButton { .. }
                | EditError::NoBlade { .. }
                | EditError::DoesNotFit { .. }
                | EditError::NotPossible(_)
        )
    }
}
