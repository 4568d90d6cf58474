//! The drivetrain: rings, cogs, wheel, crank, and what the derailleurs take.

use std::fmt;

use super::{Gears, Rolling, Teeth, ToothError};
use crate::limits::{COG_TEETH, MOST_COGS, MOST_RINGS, RING_TEETH};
use crate::units::Mm;

/// Chainrings or cogs: their teeth, or only how many there are until somebody
/// counts the teeth.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Sprockets {
    /// The teeth of each, the easiest gear first: rings from the smallest, cogs
    /// from the largest.
    Counted(Vec<Teeth>),
    /// How many there are.
    Number(u8),
}

impl Sprockets {
    /// How many there are.
    pub fn count(&self) -> u8 {
        match self {
            Sprockets::Counted(teeth) => teeth.len() as u8,
            Sprockets::Number(n) => *n,
        }
    }

    /// The teeth of each, where they are known.
    pub fn teeth(&self) -> Option<&[Teeth]> {
        match self {
            Sprockets::Counted(teeth) => Some(teeth),
            Sprockets::Number(_) => None,
        }
    }

    /// Rings with these teeth, given from either end.
    ///
    /// # Errors
    /// When they are no rings: too many or none, absurd, repeated or not in
    /// order.
    pub fn rings(teeth: &[Teeth]) -> Result<Sprockets, ToothError> {
        if !(1..=usize::from(MOST_RINGS)).contains(&teeth.len()) {
            return Err(ToothError::RingCount(teeth.len()));
        }
        if let Some(absurd) = teeth.iter().find(|t| !RING_TEETH.holds(t.0)) {
            return Err(ToothError::RingTeeth(absurd.0.into()));
        }
        Ok(Sprockets::Counted(rising(teeth)?))
    }

    /// Cogs with these teeth, given from either end.
    ///
    /// # Errors
    /// As of [`Sprockets::rings`].
    pub fn cogs(teeth: &[Teeth]) -> Result<Sprockets, ToothError> {
        if !(1..=usize::from(MOST_COGS)).contains(&teeth.len()) {
            return Err(ToothError::CogCount(teeth.len()));
        }
        if let Some(absurd) = teeth.iter().find(|t| !COG_TEETH.holds(t.0)) {
            return Err(ToothError::CogTeeth(absurd.0.into()));
        }
        let mut cogs = rising(teeth)?;
        cogs.reverse();
        Ok(Sprockets::Counted(cogs))
    }

    /// The teeth of rings out of a field: numbers with anything between them.
    ///
    /// # Errors
    /// As of [`Sprockets::rings`], and when something is no number.
    pub fn read_rings(text: &str) -> Result<Vec<Teeth>, ToothError> {
        read(text, ToothError::RingTeeth)
    }

    /// The teeth of cogs out of a field: numbers with anything between them.
    ///
    /// # Errors
    /// As of [`Sprockets::cogs`], when something is no number, and for
    /// "11-34", by which the trade means all cogs from 11 to 34.
    pub fn read_cogs(text: &str) -> Result<Vec<Teeth>, ToothError> {
        let teeth = read(text, ToothError::CogTeeth)?;
        match teeth[..] {
            [first, last] if text.contains(['-', '–']) => Err(ToothError::OnlyEnds(first, last)),
            _ => Ok(teeth),
        }
    }

    /// The teeth as they stand in a field: from the smallest, "11 12 13".
    pub fn to_field(&self) -> String {
        let mut text = String::new();
        let mut teeth: Vec<Teeth> = self.teeth().unwrap_or_default().to_vec();
        if teeth.first() > teeth.last() {
            teeth.reverse();
        }
        for tooth in teeth {
            if !text.is_empty() {
                text.push(' ');
            }
            text.push_str(&tooth.to_string());
        }
        text
    }
}

fn read(text: &str, absurd: fn(u32) -> ToothError) -> Result<Vec<Teeth>, ToothError> {
    let mut teeth = Vec::new();
    let between = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | '-' | '–' | '/' | '.');
    for word in text.split(between).filter(|word| !word.is_empty()) {
        let no_number = || ToothError::NotTeeth(crate::text::Text::new(word).to_string());
        let number: u32 = word.parse().map_err(|_| no_number())?;
        teeth.push(Teeth(u8::try_from(number).map_err(|_| absurd(number))?));
    }
    Ok(teeth)
}

/// Tooth counts from the smallest; given from either end.
fn rising(teeth: &[Teeth]) -> Result<Vec<Teeth>, ToothError> {
    let mut teeth = teeth.to_vec();
    let falls = teeth.first() > teeth.last();
    for pair in teeth.windows(2) {
        let (before, after) = (pair[0], pair[1]);
        if before == after {
            return Err(ToothError::Twice(before));
        }
        if (before > after) != falls {
            return Err(ToothError::OutOfOrder { before, after });
        }
    }
    if falls {
        teeth.reverse();
    }
    Ok(teeth)
}

/// Rings as people say them, the largest first: "50/34".
fn rings_in_short(rings: &Sprockets) -> String {
    match rings.teeth() {
        Some(teeth) => {
            let words: Vec<String> = teeth.iter().rev().map(Teeth::to_string).collect();
            words.join("/")
        }
        None => format!("{} rings", rings.count()),
    }
}

/// Rings, cogs, wheel and crank, and what the derailleurs take.
#[derive(Debug, Clone, PartialEq)]
pub struct Drivetrain {
    /// Chainrings, 1 to 3.
    pub rings: Sprockets,
    /// Cogs, 1 to 14.
    pub cogs: Sprockets,
    /// What the driven wheel rolls; `None` is not entered.
    pub wheel: Option<Rolling>,
    /// Length of the crank; `None` is not entered.
    pub crank: Option<Mm>,
    /// From the bottom bracket to the rear axle; `None` is not measured.
    pub chainstay: Option<Mm>,
    /// What the derailleurs take, from their manuals.
    pub derailleurs: Derailleurs,
}

/// What the derailleurs take, as the fitter entered it from their manuals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Derailleurs {
    /// The largest cog that the rear derailleur takes.
    pub largest_cog: Option<Teeth>,
    /// The chain that the rear derailleur takes up, in teeth.
    pub wrap: Option<Teeth>,
    /// The most teeth between the largest and the smallest ring.
    pub front_difference: Option<Teeth>,
}

impl Drivetrain {
    /// A drivetrain of which only the number of rings and cogs is known.
    pub fn of_number(rings: u8, cogs: u8) -> Drivetrain {
        Drivetrain {
            rings: Sprockets::Number(rings),
            cogs: Sprockets::Number(cogs),
            wheel: None,
            crank: None,
            chainstay: None,
            derailleurs: Derailleurs::default(),
        }
    }

    /// The gears; `None` until the teeth of rings and cogs are known.
    pub fn gears(&self) -> Option<Gears> {
        Some(Gears {
            rings: self.rings.teeth()?.to_vec(),
            cogs: self.cogs.teeth()?.to_vec(),
            wheel: self.wheel,
            crank: self.crank,
        })
    }

    /// Whose teeth are not entered yet: "chainrings", "cogs" or both.
    pub fn not_entered(&self) -> Option<&'static str> {
        match (self.rings.teeth(), self.cogs.teeth()) {
            (Some(_), Some(_)) => None,
            (None, Some(_)) => Some("chainrings"),
            (Some(_), None) => Some("cogs"),
            (None, None) => Some("chainrings and cogs"),
        }
    }
}

/// As people say it: "50/34 with 11-34, 12 cogs".
impl fmt::Display for Drivetrain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let n = self.cogs.count();
        let cogs = if n == 1 { "cog" } else { "cogs" };
        write!(f, "{} with ", rings_in_short(&self.rings))?;
        match self.cogs.teeth() {
            Some([largest, .., smallest]) => write!(f, "{smallest}-{largest}, {n} {cogs}"),
            Some([only]) => write!(f, "{only}, {n} {cogs}"),
            _ => write!(f, "{n} {cogs}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cogs(text: &str) -> Result<Sprockets, ToothError> {
        Sprockets::cogs(&Sprockets::read_cogs(text)?)
    }

    #[test]
    fn a_cassette_named_by_its_ends_is_not_taken_for_two_cogs() {
        assert_eq!(
            cogs("11-34")
                .expect_err("it is not all of them")
                .to_string(),
            "11-34 names only the smallest and the largest cog. Enter the teeth of every cog, or choose a usual set."
        );
        assert!(cogs("14 16").is_ok(), "two cogs are two cogs");
    }

    #[test]
    fn teeth_are_read_from_either_end() {
        let up = cogs("11-13-15, 17; 19").expect("cogs");
        assert_eq!(up, cogs("19 17 15 13 11").expect("cogs"));
        assert_eq!(up.teeth().and_then(|t| t.first()), Some(&Teeth(19)));
        assert_eq!(up.to_field(), "11 13 15 17 19");
    }

    #[test]
    fn bad_tooth_counts_are_refused_in_a_sentence() {
        for (text, sentence) in [
            (
                "",
                "A cassette has 1 to 14 cogs, not 0. Enter the teeth of each cog.",
            ),
            ("11 0", "A cog does not have 0 teeth. Enter 9 to 60."),
            ("11 300", "A cog does not have 300 teeth. Enter 9 to 60."),
            (
                "11 13 12 15",
                "12 comes after 13, out of order. Enter the teeth from the smallest to the largest.",
            ),
            (
                "11 13 13 15",
                "13 teeth stand there twice. Enter each ring and each cog once.",
            ),
            (
                "11 13 13",
                "13 teeth stand there twice. Enter each ring and each cog once.",
            ),
            (
                "11 a",
                "“a” is no number of teeth. Enter numbers such as 11 13 15.",
            ),
            (
                "99999999999999999999",
                "“99999999999999999999” is no number of teeth. Enter numbers such as 11 13 15.",
            ),
        ] {
            assert_eq!(cogs(text).map_err(|e| e.to_string()), Err(sentence.into()));
        }
        let rings = Sprockets::rings(&[Teeth(34), Teeth(200)]);
        assert_eq!(
            rings.map_err(|e| e.to_string()),
            Err("A chainring does not have 200 teeth. Enter 16 to 70.".into())
        );
        let four = [Teeth(20), Teeth(30), Teeth(40), Teeth(50)];
        assert_eq!(Sprockets::rings(&four), Err(ToothError::RingCount(4)));
    }

    #[test]
    fn a_drivetrain_is_named_by_what_it_is() {
        let mut drivetrain = Drivetrain::of_number(2, 5);
        assert_eq!(drivetrain.to_string(), "2 rings with 5 cogs");
        drivetrain.rings = Sprockets::rings(&[Teeth(34), Teeth(50)]).expect("rings");
        drivetrain.cogs = cogs("11 13 15 17 19").expect("cogs");
        assert_eq!(drivetrain.to_string(), "50/34 with 11-19, 5 cogs");
    }
}
