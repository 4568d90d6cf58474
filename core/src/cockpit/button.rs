//! Buttons.

use std::fmt;

use super::{ControlId, HandPosition};
use crate::function::Function;
use crate::rider::Contact;
use crate::units::{Mm, Point};

vocabulary! {
    /// Which button of its control.
    pub enum ButtonPart as "button" {
        /// The outer paddle of a brake-shift lever, behind the blade.
        OuterPaddle = "outer-paddle", "outer paddle";
        /// The inner paddle of a brake-shift lever.
        InnerPaddle = "inner-paddle", "inner paddle";
        /// The one long paddle of a one-paddle lever.
        LongPaddle = "long-paddle", "long paddle";
        /// The button on top of the hood.
        HoodButton = "hood-button", "hood button";
        /// The pod button nearer to the hand.
        Near = "near", "near button";
        /// The pod button farther from the hand.
        Far = "far", "far button";
        /// The upper button of a base-bar lever.
        Upper = "upper", "upper button";
        /// The lower button of a base-bar lever.
        Lower = "lower", "lower button";
        /// The only button of its control.
        Single = "single", "button";
    }
}

/// The identity of a button within its plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ButtonId {
    /// The control on which it sits.
    pub control: ControlId,
    /// Which of its buttons.
    pub part: ButtonPart,
}

impl fmt::Display for ButtonId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        use crate::vocabulary::Vocabulary;
        write!(f, "{}.{}", self.control, self.part.code())
    }
}

impl ButtonId {
    /// Reads what [`ButtonId`] prints: `3.inner-paddle`.
    pub fn parse(text: &str) -> Option<ButtonId> {
        use crate::vocabulary::Vocabulary;
        let (control, part) = text.split_once('.')?;
        Some(ButtonId {
            control: ControlId(control.parse().ok()?),
            part: ButtonPart::from_code(part)?,
        })
    }
}

vocabulary! {
    /// How a button is pressed.
    pub enum Press as "press" {
        /// A short press.
        Short = "short", "short press";
        /// A long-throw sweep of a paddle.
        Sweep = "sweep", "long-throw sweep";
    }
}

vocabulary! {
    /// How well a contact reaches a button from a hand position, best first.
    pub enum Ease as "ease" {
        /// From where the hand is, without effort.
        Natural = "natural", "at hand";
        /// From where the hand is, stretching.
        Stretch = "stretch", "with a stretch";
        /// The hand must leave its place.
        Move = "move", "hand must move";
        /// The other hand must cross over.
        CrossOver = "cross-over", "other hand must cross over";
    }
}

/// What may be assigned to a button.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Freedom {
    /// Any function the system can program.
    Free,
    /// One of these.
    Limited(Vec<Function>),
    /// It does what another button does.
    Copies(ButtonId),
    /// It does this and nothing else: excluded from remapping.
    Fixed(Function),
}

/// A reach that the fitter saw, which goes before the usual one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SeenReach {
    /// From this position,
    pub from: HandPosition,
    /// with this contact,
    pub contact: Contact,
    /// this well; `None`: not at all.
    pub ease: Option<Ease>,
}

/// A button.
#[derive(Debug, Clone, PartialEq)]
pub struct Button {
    /// Which button of its control.
    pub part: ButtonPart,
    /// Its middle.
    pub at: Point,
    /// How it is pressed.
    pub press: Press,
    /// How far it moves until it acts.
    pub travel: Mm,
    /// What may be assigned to it.
    pub freedom: Freedom,
    /// Reach the fitter saw on this rider.
    pub seen_reach: Vec<SeenReach>,
}

impl Button {
    /// A free button with a short press of 2 mm (common practice).
    pub fn short(part: ButtonPart, at: Point) -> Button {
        Button {
            part,
            at,
            press: Press::Short,
            travel: Mm(2.0),
            freedom: Freedom::Free,
            seen_reach: Vec::new(),
        }
    }

    /// Whether a function may be assigned to it, the system apart.
    pub fn takes(&self, function: Function) -> bool {
        match &self.freedom {
            Freedom::Free => true,
            Freedom::Limited(set) => set.contains(&function),
            Freedom::Copies(_) | Freedom::Fixed(_) => false,
        }
    }

    /// Whether it can be remapped at all.
    pub fn is_remappable(&self) -> bool {
        matches!(self.freedom, Freedom::Free | Freedom::Limited(_))
    }
}
