//! Usual drivetrains to start from, named only by what they are.

use super::{Derailleurs, Drivetrain, Rolling, Sprockets, Teeth, Tyre};
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// A usual set of rings and cogs (common practice).
    pub enum PresetId as "usual drivetrain" {
        /// Road, compact.
        Double5034x12 = "50-34-11-34-12", "50/34 with 11-34, 12 cogs";
        /// Road, for flat country.
        Double5236x12 = "52-36-11-30-12", "52/36 with 11-30, 12 cogs";
        /// Road of some years ago.
        Double5034x11 = "50-34-11-32-11", "50/34 with 11-32, 11 cogs";
        /// Touring and gravel, low.
        Double4630x12 = "46-30-11-36-12", "46/30 with 11-36, 12 cogs";
        /// Touring on a flat bar.
        Double4630x11 = "46-30-11-40-11", "46/30 with 11-40, 11 cogs";
        /// Gravel, one ring.
        Single40x12 = "40-10-44-12", "40 with 10-44, 12 cogs";
        /// Tricycles and recumbents, one ring.
        Single38x12 = "38-11-46-12", "38 with 11-46, 12 cogs";
        /// Hills off the road, one ring.
        Single32x12 = "32-10-50-12", "32 with 10-50, 12 cogs";
        /// One ring with fewer cogs.
        Single40x11 = "40-11-42-11", "40 with 11-42, 11 cogs";
        /// Touring, three rings.
        Triple463626x10 = "46-36-26-11-36-10", "46/36/26 with 11-36, 10 cogs";
    }
}

impl PresetId {
    /// Teeth of the rings and of the cogs, each from the smallest.
    const fn teeth(self) -> (&'static [u8], &'static [u8]) {
        match self {
            PresetId::Double5034x12 => {
                (&[34, 50], &[11, 12, 13, 14, 15, 17, 19, 21, 24, 27, 30, 34])
            }
            PresetId::Double5236x12 => {
                (&[36, 52], &[11, 12, 13, 14, 15, 16, 17, 19, 21, 24, 27, 30])
            }
            PresetId::Double5034x11 => (&[34, 50], &[11, 12, 13, 14, 16, 18, 20, 22, 25, 28, 32]),
            PresetId::Double4630x12 => {
                (&[30, 46], &[11, 12, 13, 14, 15, 17, 19, 21, 24, 28, 32, 36])
            }
            PresetId::Double4630x11 => (&[30, 46], &[11, 13, 15, 17, 19, 21, 24, 27, 31, 35, 40]),
            PresetId::Single40x12 => (&[40], &[10, 11, 13, 15, 17, 19, 21, 24, 28, 32, 38, 44]),
            PresetId::Single38x12 => (&[38], &[11, 13, 15, 17, 19, 21, 24, 28, 32, 36, 41, 46]),
            PresetId::Single32x12 => (&[32], &[10, 12, 14, 16, 18, 21, 24, 28, 32, 37, 43, 50]),
            PresetId::Single40x11 => (&[40], &[11, 13, 15, 17, 19, 21, 24, 28, 32, 37, 42]),
            PresetId::Triple463626x10 => (&[26, 36, 46], &[11, 12, 14, 16, 18, 21, 24, 28, 32, 36]),
        }
    }

    /// The drivetrain, on a 28-622 tyre and cranks of 170 mm.
    pub fn drivetrain(self) -> Drivetrain {
        let (rings, cogs) = self.teeth();
        let teeth = |counts: &[u8]| counts.iter().map(|n| Teeth(*n)).collect();
        let mut cogs: Vec<Teeth> = teeth(cogs);
        cogs.reverse();
        let tyre = Tyre {
            width: 28,
            bead_seat: 622,
        };
        Drivetrain {
            rings: Sprockets::Counted(teeth(rings)),
            cogs: Sprockets::Counted(cogs),
            wheel: Some(Rolling::Tyre(tyre)),
            crank: Some(Mm(170.0)),
            chainstay: None,
            derailleurs: Derailleurs::default(),
        }
    }

    /// The set that a drivetrain has, whatever wheel, crank and derailleurs are.
    pub fn of(drivetrain: &Drivetrain) -> Option<PresetId> {
        PresetId::ALL.iter().copied().find(|preset| {
            let own = preset.drivetrain();
            (&own.rings, &own.cogs) == (&drivetrain.rings, &drivetrain.cogs)
        })
    }

    /// A usual set with so many rings and cogs, if there is one.
    pub fn with(rings: u8, cogs: u8) -> Option<PresetId> {
        PresetId::ALL.iter().copied().find(|preset| {
            let (r, c) = preset.teeth();
            (r.len(), c.len()) == (usize::from(rings), usize::from(cogs))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_preset_is_what_it_is_called() {
        for preset in PresetId::ALL {
            let drivetrain = preset.drivetrain();
            assert_eq!(drivetrain.to_string(), preset.words());
            assert_eq!(PresetId::of(&drivetrain), Some(*preset));
            for (sprockets, check) in [
                (&drivetrain.rings, Sprockets::rings as fn(&[Teeth]) -> _),
                (&drivetrain.cogs, Sprockets::cogs),
            ] {
                let teeth = sprockets.teeth().expect("counted");
                assert_eq!(check(teeth), Ok(sprockets.clone()), "{preset}");
            }
        }
    }
}
