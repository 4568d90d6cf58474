//! Limits that edits and documents keep alike.

use std::fmt;

use crate::units::Mm;

/// A span of lengths in whole millimetres, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// Shortest.
    pub from: i32,
    /// Longest.
    pub to: i32,
}

impl Span {
    /// Whether a length lies within.
    pub fn holds(self, length: Mm) -> bool {
        (f64::from(self.from)..=f64::from(self.to)).contains(&length.0)
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} to {} mm", self.from, self.to)
    }
}

/// A span of tooth counts, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TeethSpan {
    /// Fewest.
    pub from: u8,
    /// Most.
    pub to: u8,
}

impl TeethSpan {
    /// Whether a number of teeth lies within.
    pub fn holds(self, teeth: u8) -> bool {
        (self.from..=self.to).contains(&teeth)
    }
}

impl fmt::Display for TeethSpan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} to {}", self.from, self.to)
    }
}

/// Width of a bar (ISO 4210-2 cl. 4.7.1: handlebar width 350 to 1000 mm).
pub const BAR_WIDTH: Span = Span {
    from: 350,
    to: 1000,
};
/// How far a bar or its extensions reach forward (common practice).
pub const BAR_REACH: Span = Span { from: 0, to: 500 };
/// How far a bar drops (common practice).
pub const BAR_DROP: Span = Span { from: 0, to: 250 };
/// How far a button moves until it acts (common practice).
pub const TRAVEL: Span = Span { from: 0, to: 80 };
/// From the bar to a blade at rest, and how far a hand reaches for one
/// (common practice).
pub const BLADE_REACH: Span = Span { from: 10, to: 200 };
/// From the bar to a blade at full pull (common practice).
pub const BLADE_GAP: Span = Span { from: 0, to: 200 };
/// A coordinate on the cockpit: a cockpit with its wires fits into five metres.
pub const COORDINATE: Span = Span {
    from: -5000,
    to: 5000,
};

/// Chainrings of a bike, at least one.
pub const MOST_RINGS: u8 = 3;
/// Cogs of a bike, at least one; also the longest hold run that is counted.
pub const MOST_COGS: u8 = 14;
/// Controls that a bike holds.
pub const MOST_CONTROLS: usize = 24;
/// Layouts that a plan holds.
pub const MOST_LAYOUTS: usize = 12;
/// Chords that a layout holds.
pub const MOST_CHORDS: usize = 24;
/// What is measured at a step of a check, a blade gap above all.
pub const MEASURED: Span = Span { from: 0, to: 200 };
/// Revisions, entries or versions of parts that a plan holds.
pub const MOST_KEPT: usize = 4000;
/// Places of one part that a revision changed.
pub const MOST_PLACES: usize = 4000;
/// Accepted findings that a plan holds.
pub const MOST_ACCEPTED: usize = 200;
/// Teeth of a chainring (common practice).
pub const RING_TEETH: TeethSpan = TeethSpan { from: 16, to: 70 };
/// Teeth of a cog (common practice).
pub const COG_TEETH: TeethSpan = TeethSpan { from: 9, to: 60 };
/// What a rear derailleur takes up, in teeth (common practice).
pub const WRAP_TEETH: TeethSpan = TeethSpan { from: 6, to: 80 };
/// Between the largest and the smallest ring, in teeth (common practice).
pub const DIFFERENCE_TEETH: TeethSpan = TeethSpan { from: 2, to: 50 };
/// Width of a tyre (ISO 5775-1 markings in use, common practice).
pub const TYRE_WIDTH: Span = Span { from: 18, to: 130 };
/// What a wheel rolls in one turn (common practice).
pub const CIRCUMFERENCE: Span = Span {
    from: 700,
    to: 2600,
};
/// Length of a crank (common practice; short ones for children and hands).
pub const CRANK: Span = Span { from: 60, to: 220 };
/// From the bottom bracket to the rear axle (common practice; long on a
/// recumbent).
pub const CHAINSTAY: Span = Span {
    from: 300,
    to: 2500,
};
/// A time that a shift system takes, in thousandths of a second (our
/// judgement).
pub const LONGEST_MILLIS: u16 = 5000;
/// Gears kept out of a ladder by hand.
pub const MOST_FORBIDDEN: usize = MOST_RINGS as usize * MOST_COGS as usize;
