//! What the wheel rolls: by the marking of the tyre, or as measured.

use std::f64::consts::PI;
use std::fmt;

use super::ToothError;
use crate::limits::{CIRCUMFERENCE, TYRE_WIDTH};
use crate::units::Mm;

/// Bead seats that tyres are made for, in millimetres (from memory: ISO 5775-2,
/// those still met in workshops).
pub const BEAD_SEATS: &[u16] = &[
    203, 254, 305, 317, 340, 349, 355, 369, 390, 406, 419, 428, 438, 440, 451, 457, 490, 501, 507,
    520, 540, 547, 559, 571, 584, 590, 597, 609, 622, 630, 635,
];

/// A tyre by its marking of ISO 5775: width and bead seat, "28-622".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tyre {
    /// Width in millimetres.
    pub width: u16,
    /// Diameter of the bead seat in millimetres.
    pub bead_seat: u16,
}

impl Tyre {
    /// A tyre of a width and a bead seat.
    ///
    /// # Errors
    /// When no such tyre is made.
    pub fn new(width: u16, bead_seat: u16) -> Result<Tyre, ToothError> {
        if !TYRE_WIDTH.holds(Mm(f64::from(width))) {
            return Err(ToothError::TyreWidth(width));
        }
        if !BEAD_SEATS.contains(&bead_seat) {
            return Err(ToothError::BeadSeat(bead_seat));
        }
        Ok(Tyre { width, bead_seat })
    }

    /// The tyre with a marking such as "28-622", or "700x28C" and "650Bx47" as
    /// people say it: 700C and 650B are bead seats of 622 and 584 mm (common
    /// practice).
    ///
    /// # Errors
    /// When it is no such marking, or no such tyre is made.
    pub fn parse(marking: &str) -> Result<Tyre, ToothError> {
        let unreadable = || ToothError::Marking(crate::text::Text::new(marking).to_string());
        let (width, seat) = marking
            .split_once(['-', '–', 'x', '×'])
            .or_else(|| marking.trim().split_once(' '))
            .ok_or_else(unreadable)?;
        let number = |part: &str| part.trim().parse().map_err(|_| unreadable());
        let said = width.trim().to_ascii_uppercase();
        let section = seat.trim().trim_end_matches(['c', 'C', 'b', 'B']);
        match said.as_str() {
            "700" | "700C" => Tyre::new(number(section)?, 622),
            "650B" => Tyre::new(number(section)?, 584),
            _ => Tyre::new(number(width)?, number(seat)?),
        }
    }

    /// What it rolls in one turn, `π × (bead seat + 2 × width)`: the nominal
    /// rule of the trade. Published tables differ by up to 0.3 % for 622 mm
    /// seats and more elsewhere; the section height of ISO 5775-1, which is
    /// 2.5 mm more than the width of tyres under 28 mm, is of a tyre that
    /// carries nothing.
    pub fn circumference(self) -> Mm {
        Mm(PI * f64::from(self.bead_seat + 2 * self.width))
    }
}

impl fmt::Display for Tyre {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.width, self.bead_seat)
    }
}

/// What the driven wheel rolls in one turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rolling {
    /// By the marking of the tyre.
    Tyre(Tyre),
    /// Measured on the floor with the rider on the bike.
    Measured(Mm),
}

impl Rolling {
    /// A measured circumference.
    ///
    /// # Errors
    /// When no wheel rolls that.
    pub fn measured(circumference: Mm) -> Result<Rolling, ToothError> {
        if CIRCUMFERENCE.holds(circumference) {
            Ok(Rolling::Measured(circumference))
        } else {
            Err(ToothError::Circumference(circumference))
        }
    }

    /// What stands in a field: the marking of a tyre, "28-622", or millimetres
    /// as measured, "2105". Nothing is not entered.
    ///
    /// # Errors
    /// When it is neither, or no wheel is so.
    pub fn read(text: &str) -> Result<Option<Rolling>, ToothError> {
        let text = text.trim();
        let measured = text.trim_end_matches("mm").trim_end();
        if text.is_empty() {
            Ok(None)
        } else if let Ok(mm) = measured.parse::<u32>() {
            Rolling::measured(Mm(f64::from(mm))).map(Some)
        } else {
            Ok(Some(Rolling::Tyre(Tyre::parse(text)?)))
        }
    }

    /// As it stands in a field.
    pub fn to_field(self) -> String {
        match self {
            Rolling::Tyre(tyre) => tyre.to_string(),
            Rolling::Measured(Mm(mm)) => format!("{mm:.0}"),
        }
    }

    /// What the wheel rolls in one turn.
    pub fn circumference(self) -> Mm {
        match self {
            Rolling::Tyre(tyre) => tyre.circumference(),
            Rolling::Measured(circumference) => circumference,
        }
    }

    /// The diameter that goes with it.
    pub fn diameter(self) -> Mm {
        Mm(self.circumference().0 / PI)
    }
}

impl fmt::Display for Rolling {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Rolling::Tyre(tyre) => tyre.fmt(f),
            Rolling::Measured(circumference) => write!(f, "{circumference} measured"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markings_are_read_as_people_write_them() {
        for marking in ["28-622", " 28 – 622", "28x622", "28 622"] {
            assert_eq!(
                Tyre::parse(marking).map(|t| t.to_string()),
                Ok("28-622".into())
            );
        }
        for (said, marking) in [
            ("700x28", "28-622"),
            ("700 x 32C", "32-622"),
            ("700C-25", "25-622"),
            ("650Bx47", "47-584"),
        ] {
            assert_eq!(Tyre::parse(said).map(|t| t.to_string()), Ok(marking.into()));
        }
    }

    #[test]
    fn tyres_that_do_not_exist_are_refused_in_a_sentence() {
        let refused = |marking: &str| Tyre::parse(marking).expect_err("none such").to_string();
        assert_eq!(
            refused("28-600"),
            "No tyre has a bead seat of 600 mm. Usual ones are 622, 584, 559, 507 and 406; or enter what the wheel rolls, as measured."
        );
        assert_eq!(
            refused("0-622"),
            "A tyre is not 0 mm wide. Enter a width from 18 to 130 mm, as on its side wall."
        );
        assert_eq!(
            refused("big"),
            "“big” is no marking of a tyre. Enter width and bead seat as on its side wall, such as 28-622."
        );
        assert!(Tyre::parse("99999-622").is_err() && Tyre::parse("-5-622").is_err());
    }

    #[test]
    fn a_field_takes_a_marking_or_millimetres() {
        let read = |text| Rolling::read(text).map(|r| r.map(Rolling::to_field));
        assert_eq!(read(" "), Ok(None));
        assert_eq!(read("28x622"), Ok(Some("28-622".into())));
        assert_eq!(read(" 2105 mm"), Ok(Some("2105".into())));
        for none in ["21", "0", "28-600", "900x28c", "wide"] {
            assert!(read(none).is_err(), "{none}");
        }
    }

    #[test]
    fn measured_circumferences_are_within_reason() {
        assert!(Rolling::measured(Mm(2105.0)).is_ok());
        for mm in [0.0, -1.0, f64::NAN, f64::INFINITY, 21.05] {
            assert!(Rolling::measured(Mm(mm)).is_err(), "{mm}");
        }
    }
}
