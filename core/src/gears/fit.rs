//! Whether derailleurs and chain go with rings and cogs.

use std::f64::consts::PI;

use super::{Drivetrain, Gears, Teeth};
use crate::units::Mm;

/// Pitch of a bicycle chain in millimetres: half an inch (ISO 9633, from
/// memory).
const PITCH: f64 = 12.7;

vocabulary! {
    /// Something that rings and cogs ask of a derailleur.
    pub enum Exceeded as "what a derailleur takes" {
        /// Chain for the rear derailleur to take up.
        Wrap = "wrap", "chain taken up";
        /// A cog for the rear derailleur.
        LargestCog = "largest-cog", "largest cog";
        /// A difference of rings for the front derailleur.
        FrontDifference = "front-difference", "difference of the rings";
    }
}

/// What the rings and cogs ask of a derailleur, and what it takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// What is asked about.
    pub what: Exceeded,
    /// Teeth that the rings and cogs ask for.
    pub asked: Teeth,
    /// Teeth that the derailleur takes; `None` is not entered.
    pub takes: Option<Teeth>,
}

impl Asked {
    /// What is asked and what is taken, in a sentence.
    pub fn words(&self) -> String {
        let what = match self.what {
            Exceeded::Wrap => "Chain to take up",
            Exceeded::LargestCog => "Largest cog",
            Exceeded::FrontDifference => "Between the rings",
        };
        let takes = match self.takes {
            Some(takes) => format!("the derailleur takes {takes}"),
            None => "what the derailleur takes is not entered".into(),
        };
        format!("{what}: {} teeth; {takes}.", self.asked)
    }

    /// Whether more is asked than is taken, as far as that is known.
    pub fn is_exceeded(&self) -> bool {
        self.takes.is_some_and(|takes| self.asked > takes)
    }
}

impl Gears {
    /// The chain that the rear derailleur must take up, in teeth: the difference
    /// of the rings plus that of the cogs. The middle ring of three does not
    /// matter.
    pub fn wrap(&self) -> Teeth {
        Teeth(self.front_difference().0 + self.largest_cog().0 - self.smallest_cog().0)
    }

    /// Teeth between the largest and the smallest ring.
    pub fn front_difference(&self) -> Teeth {
        let smallest = self.ring(self.easiest());
        Teeth(self.largest_ring().0 - smallest.0)
    }

    /// Teeth of the largest cog.
    pub fn largest_cog(&self) -> Teeth {
        self.cog(self.easiest())
    }

    /// Teeth of the smallest cog.
    pub fn smallest_cog(&self) -> Teeth {
        self.cog(self.hardest())
    }

    /// Teeth of the largest ring.
    pub fn largest_ring(&self) -> Teeth {
        self.ring(self.hardest())
    }

    /// Pitches of chain round the largest ring and the largest cog, a whole
    /// even number.
    ///
    /// `L = 2C + (Z1 + Z2) / 2 + ((Z2 - Z1) / 2π)² / C`, the centre distance C in
    /// pitches (ISO 10823 and handbooks of machine design, from memory), rounded
    /// up to even. A rear derailleur wants more, by its manual; two pitches are
    /// common practice.
    pub fn chain_pitches(&self, chainstay: Mm) -> Option<u16> {
        let centre = chainstay.0 / PITCH;
        let (ring, cog) = (
            f64::from(self.largest_ring()),
            f64::from(self.largest_cog()),
        );
        let half = (ring - cog) / (2.0 * PI);
        let pitches = 2.0 * centre + (ring + cog) / 2.0 + half * half / centre;
        (centre > 0.0 && pitches < 1000.0).then(|| 2 * libm::ceil(pitches / 2.0) as u16)
    }
}

impl Drivetrain {
    /// How long a chain goes round the largest ring and cog, in a sentence;
    /// `None` until the teeth and the chainstay are known.
    pub fn chain_words(&self) -> Option<String> {
        let pitches = self.gears()?.chain_pitches(self.chainstay?)?;
        Some(format!(
            "Chain round the largest ring and the largest cog: {pitches} pitches, and what the rear derailleur wants by its manual, often 2 more."
        ))
    }

    /// What rings and cogs ask of the derailleurs; empty until the teeth are
    /// known.
    pub fn asks(&self) -> Vec<Asked> {
        let Some(gears) = self.gears() else {
            return Vec::new();
        };
        let takes = self.derailleurs;
        let mut asks = vec![
            Asked {
                what: Exceeded::Wrap,
                asked: gears.wrap(),
                takes: takes.wrap,
            },
            Asked {
                what: Exceeded::LargestCog,
                asked: gears.largest_cog(),
                takes: takes.largest_cog,
            },
        ];
        if gears.rings.len() > 1 {
            asks.push(Asked {
                what: Exceeded::FrontDifference,
                asked: gears.front_difference(),
                takes: takes.front_difference,
            });
        }
        asks
    }
}
