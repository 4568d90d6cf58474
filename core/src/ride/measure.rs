//! What is counted of a hand or contact, as people read it.

use super::load::{Load, Work};
use super::study::{Outcome, Span};
use crate::rider::{Contact, Side};
use crate::vocabulary::Vocabulary;

/// Whose work it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Who {
    /// A hand with all its contacts.
    Hand(Side),
    /// One contact of a hand.
    Contact(Side, Contact),
}

impl std::fmt::Display for Who {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Who::Hand(side) => write!(f, "{side} hand"),
            Who::Contact(side, contact) => write!(f, "{side} {contact}"),
        }
    }
}

impl Who {
    /// Both hands, always, and each contact that does something in a load, after
    /// its hand.
    pub fn all(load: &Load) -> Vec<Who> {
        let mut all = Vec::new();
        for side in Side::ALL {
            all.push(Who::Hand(*side));
            let own = load.contacts.iter().filter(|(hand, ..)| hand == side);
            all.extend(own.map(|(hand, contact, _)| Who::Contact(*hand, *contact)));
        }
        all
    }

    fn work(self, load: &Load) -> Option<&Work> {
        match self {
            Who::Hand(side) => Some(&load.hand(side).work),
            Who::Contact(side, contact) => {
                let mut contacts = load.contacts.iter();
                let own = contacts.find(|(s, c, _)| (*s, *c) == (side, contact));
                own.map(|(.., work)| work)
            }
        }
    }
}

vocabulary! {
    /// What is counted.
    pub enum Measure as "measure" {
        /// Presses an hour.
        PressesPerHour = "presses-per-hour", "presses an hour";
        /// Presses in all.
        Presses = "presses", "presses in all";
        /// Brake pulls.
        Pulls = "pulls", "brake pulls";
        /// The longest pull.
        LongestPull = "longest-pull", "longest brake pull, in seconds";
        /// Time at the brake.
        PulledPerHour = "pulled-per-hour", "minutes of braking an hour";
        /// Presses in the worst minute.
        WorstMinute = "worst-minute", "presses in the busiest minute";
        /// Presses in the worst ten minutes.
        WorstTenMinutes = "worst-ten-minutes", "presses in the busiest ten minutes";
        /// Bursts.
        Bursts = "bursts", "quick runs: three presses or more, less than 3 s apart";
        /// The longest burst.
        LongestBurst = "longest-burst", "presses of the longest quick run";
        /// The longest rest.
        LongestRest = "longest-rest", "longest rest, in minutes";
        /// Holds.
        Holds = "holds", "times a button is kept pressed";
        /// The longest hold.
        LongestHold = "longest-hold", "longest time a button is kept pressed, in seconds";
        /// All holds.
        Held = "held", "buttons kept pressed in all, in seconds";
        /// Presses while it brakes.
        Clashes = "clashes", "presses while braking";
        /// Shifts that waited.
        Delays = "delays", "shifts that wait until the brake is let go";
        /// Moves along the bar.
        Moves = "moves", "moves along the bar";
        /// Times off its place.
        Offs = "offs", "times it leaves its place to press or brake";
        /// Speed at the worst of those.
        FastestOff = "fastest-off", "highest speed while it moves or is away, in km/h";
        /// A brake wanted meanwhile.
        Wanted = "wanted", "times its brake is needed while it is away";
        /// At the longest.
        LongestWanted = "longest-wanted", "longest time the brake then waits, in seconds";
        /// Presses an hour in the last third against the first.
        LastThird = "last-third", "presses an hour in the last third of the road, divided by those in the first";
    }
}

impl Measure {
    /// What is counted of whom in a load; of a contact only what concerns
    /// presses and pulls, zero else.
    pub fn of(self, who: Who, load: &Load) -> f64 {
        let Some(work) = who.work(load) else {
            return 0.0;
        };
        let hand = match who {
            Who::Hand(side) => Some(load.hand(side)),
            Who::Contact(..) => None,
        };
        let count = |count: Option<u32>| f64::from(count.unwrap_or(0));
        match self {
            Measure::PressesPerHour => load.per_hour(work.presses),
            Measure::Presses => f64::from(work.presses),
            Measure::WorstMinute => f64::from(work.worst_minute),
            Measure::WorstTenMinutes => f64::from(work.worst_ten_minutes),
            Measure::Bursts => f64::from(work.bursts),
            Measure::LongestBurst => f64::from(work.longest_burst),
            Measure::LongestRest => work.longest_rest / 60.0,
            Measure::Holds => f64::from(work.holds),
            Measure::LongestHold => work.longest_hold,
            Measure::Held => work.held,
            Measure::Pulls => f64::from(work.pulls),
            Measure::LongestPull => work.longest_pull,
            Measure::PulledPerHour => match load.hours() {
                hours if hours > 0.0 => work.pulled / 60.0 / hours,
                _ => 0.0,
            },
            Measure::Clashes => f64::from(work.clashes),
            Measure::Delays => count(hand.map(|hand| hand.delays)),
            Measure::Moves => count(hand.map(|hand| hand.moves)),
            Measure::Offs => count(hand.map(|hand| hand.offs)),
            Measure::FastestOff => hand.map_or(0.0, |hand| hand.fastest_off * 3.6),
            Measure::Wanted => count(hand.map(|hand| hand.wanted)),
            Measure::LongestWanted => hand.map_or(0.0, |hand| hand.longest_wanted),
            Measure::LastThird => match load.first_and_last(work) {
                [first, last] if first > 0.0 => last / first,
                _ => 0.0,
            },
        }
    }

    /// Whether it is told of single contacts, or of hands only.
    pub const fn is_of_contacts(self) -> bool {
        !matches!(
            self,
            Measure::Delays
                | Measure::Moves
                | Measure::Offs
                | Measure::FastestOff
                | Measure::Wanted
                | Measure::LongestWanted
        )
    }

    /// Whether it only says more about something that another measure counts.
    pub const fn is_detail(self) -> bool {
        matches!(
            self,
            Measure::LongestPull
                | Measure::PulledPerHour
                | Measure::LongestBurst
                | Measure::LongestHold
                | Measure::Held
                | Measure::FastestOff
                | Measure::LongestWanted
        )
    }

    /// What the hands do most in a load: what is looked at first.
    pub fn of_most(load: &Load) -> Measure {
        match load.is_mostly_braking() {
            true => Measure::Pulls,
            false => Measure::PressesPerHour,
        }
    }

    /// Its range in an outcome.
    pub fn span(self, who: Who, outcome: &Outcome) -> Span {
        outcome.span(&|load| self.of(who, load))
    }

    /// Its range in words: "180–240".
    pub fn range(self, who: Who, outcome: &Outcome) -> String {
        let span = self.span(who, outcome);
        let part = |value: f64| match self {
            Measure::LongestHold
            | Measure::LongestPull
            | Measure::LongestWanted
            | Measure::LongestRest
            | Measure::PulledPerHour
            | Measure::LastThird => tenths(value),
            _ => rounded(value),
        };
        let (low, high) = (part(span.low), part(span.high));
        if low == high {
            low
        } else {
            format!("{low}–{high}")
        }
    }
}

fn tenths(value: f64) -> String {
    if value >= 20.0 {
        rounded(value)
    } else {
        format!("{value:.1}")
    }
}

/// A count as precise as a ride that is only worked out allows: two figures.
pub fn rounded(value: f64) -> String {
    let step = match value.abs() {
        v if v < 100.0 => 1.0,
        v if v < 1_000.0 => 10.0,
        v if v < 10_000.0 => 100.0,
        _ => 1_000.0,
    };
    format!("{:.0}", (value / step).round() * step)
}
