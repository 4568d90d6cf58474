//! What happens on a ride.

use crate::cockpit::{ControlId, HandPosition};
use crate::coverage::Via;
use crate::function::Function;
use crate::rider::{Contact, Side};

vocabulary! {
    /// What a press shares with a brake pull that goes on meanwhile.
    pub enum Clash as "clash" {
        /// Nothing: nobody brakes, or the other hand does.
        No = "none", "no clash";
        /// The hand.
        Hand = "hand", "the same hand brakes";
        /// The contact.
        Contact = "contact", "the same contact brakes";
    }
}

/// Something that happens on a ride.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Event {
    /// When it begins, in seconds from the start.
    pub time: f64,
    /// Where it begins, in metres from the start.
    pub at: f64,
    /// How fast the bike is then, in m/s.
    pub speed: f64,
    /// What happens.
    pub what: What,
}

/// What happens.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum What {
    /// A button is pressed.
    Press {
        /// What it does.
        function: Function,
        /// How.
        via: Via,
        /// With which hand.
        hand: Side,
        /// With which contact.
        contact: Contact,
        /// How long it is kept pressed, in seconds; zero is a tap.
        held: f64,
        /// What it shares with a brake pull.
        clash: Clash,
        /// The gear before.
        from: usize,
        /// The gear after.
        to: usize,
    },
    /// A brake lever is pulled.
    Pull {
        /// The lever.
        lever: ControlId,
        /// With which hand.
        hand: Side,
        /// With which finger first.
        contact: Contact,
        /// For how long, in seconds.
        seconds: f64,
    },
    /// A shift waits because the hand or the contact brakes.
    Delay {
        /// The shift.
        function: Function,
        /// The hand that would press.
        hand: Side,
        /// For how long, in seconds.
        seconds: f64,
    },
    /// A hand moves along the bar to another position.
    Move {
        /// The hand.
        hand: Side,
        /// Where it goes.
        to: HandPosition,
    },
    /// A hand leaves its place to press or to pull.
    Off {
        /// The hand.
        hand: Side,
    },
    /// A brake is wanted while its hand is away.
    Wanted {
        /// The hand.
        hand: Side,
        /// For how long, in seconds.
        seconds: f64,
    },
    /// A shift is wanted that cannot be called up from here.
    Missing {
        /// The shift.
        function: Function,
    },
    /// A brake is wanted that no hand pulls.
    NoBrake,
}

impl What {
    /// The hand it is about; `None`: no hand.
    pub const fn hand(&self) -> Option<Side> {
        match self {
            What::Press { hand, .. }
            | What::Pull { hand, .. }
            | What::Delay { hand, .. }
            | What::Move { hand, .. }
            | What::Off { hand }
            | What::Wanted { hand, .. } => Some(*hand),
            What::Missing { .. } | What::NoBrake => None,
        }
    }
}
