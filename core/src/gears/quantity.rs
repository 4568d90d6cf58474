//! Quantities of gears with their units in the type.

use std::fmt;

use super::ToothError;
use crate::text::Text;

/// Teeth of a ring or a cog.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Teeth(pub u8);

impl fmt::Display for Teeth {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl Teeth {
    /// A number of teeth out of a field; nothing is not entered.
    ///
    /// # Errors
    /// When it is no number of teeth.
    pub fn read(text: &str) -> Result<Option<Teeth>, ToothError> {
        match text.trim() {
            "" => Ok(None),
            text => match text.parse() {
                Ok(teeth) => Ok(Some(Teeth(teeth))),
                Err(_) => Err(ToothError::NotTeeth(Text::new(text).to_string())),
            },
        }
    }
}

impl From<Teeth> for f64 {
    fn from(teeth: Teeth) -> f64 {
        f64::from(teeth.0)
    }
}

macro_rules! quantity {
    ($(#[$meta:meta])* $name:ident, $places:literal, $unit:literal) => {
        $(#[$meta])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
        pub struct $name(pub f64);

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, concat!("{:.", $places, "}", $unit), self.0)
            }
        }
    };
}

quantity!(
    /// Teeth of the ring divided by teeth of the cog: turns of the wheel for
    /// one turn of the crank.
    Ratio, 2, ""
);
quantity!(
    /// The ratio times the diameter of the wheel in inches.
    GearInches, 1, " in"
);
quantity!(
    /// Metres; of a gear, what the bike rolls in one turn of the crank.
    Metres, 2, " m"
);
quantity!(
    /// How far the bike moves for each length the foot moves: the ratio times
    /// the radius of the wheel, divided by the length of the crank.
    Gain, 2, ""
);
quantity!(
    /// Turns of the crank in a minute.
    Rpm, 0, " rpm"
);
quantity!(
    /// Kilometres in an hour.
    Kmh, 1, " km/h"
);

/// A change in percent; above zero is more, or harder.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Percent(pub f64);

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // No "-0 %".
        let rounded = libm::round(self.0) + 0.0;
        write!(f, "{rounded:.0} %")
    }
}

/// A time in thousandths of a second.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Millis(pub u32);

impl Millis {
    /// In seconds.
    pub fn seconds(self) -> f64 {
        f64::from(self.0) / 1000.0
    }
}

impl fmt::Display for Millis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:.1} s", self.seconds())
    }
}
