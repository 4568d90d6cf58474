//! How the rider rides, as a few numbers that may stay unanswered.

use crate::ride::physics::{Air, Machine, STILL_AIR};
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// A number about how the rider rides.
    pub enum Habit as "habit" {
        /// The rider with clothes.
        RiderMass = "rider-mass", "rider";
        /// The bike with what it carries.
        BikeMass = "bike-mass", "bike and bags";
        /// Power that is kept up on the level.
        LevelPower = "level-power", "power on the level";
        /// Power that is kept up on a climb.
        ClimbPower = "climb-power", "power uphill";
        /// Cadence below which the rider shifts easier.
        CadenceLow = "cadence-low", "slowest comfortable cadence";
        /// Cadence above which the rider shifts harder.
        CadenceHigh = "cadence-high", "fastest comfortable cadence";
        /// Speed that feels comfortable downhill.
        DescentSpeed = "descent-speed", "comfortable speed downhill";
        /// Wind from ahead on the whole.
        Headwind = "headwind", "wind from ahead";
    }
}

impl Habit {
    /// In what it is given.
    pub const fn unit(self) -> &'static str {
        match self {
            Habit::RiderMass | Habit::BikeMass => "kg",
            Habit::LevelPower | Habit::ClimbPower => "W",
            Habit::CadenceLow | Habit::CadenceHigh => "rpm",
            Habit::DescentSpeed | Habit::Headwind => "km/h",
        }
    }

    /// Its words at the beginning of a sentence or field.
    pub const fn label(self) -> &'static str {
        match self {
            Habit::RiderMass => "Rider",
            Habit::BikeMass => "Bike and bags",
            Habit::LevelPower => "Power on the level",
            Habit::ClimbPower => "Power uphill",
            Habit::CadenceLow => "Slowest comfortable cadence",
            Habit::CadenceHigh => "Fastest comfortable cadence",
            Habit::DescentSpeed => "Comfortable speed downhill",
            Habit::Headwind => "Wind from ahead",
        }
    }

    /// The least and the most that is taken.
    pub const fn range(self) -> (u16, u16) {
        match self {
            Habit::RiderMass => (20, 250),
            Habit::BikeMass => (5, 120),
            Habit::LevelPower => (15, 400),
            Habit::ClimbPower => (15, 500),
            Habit::CadenceLow => (20, 100),
            Habit::CadenceHigh => (35, 130),
            Habit::DescentSpeed => (8, 80),
            Habit::Headwind => (0, 50),
        }
    }

    /// What is taken while it is not asked: an older or unhurried rider on a
    /// touring bike, not a racer.
    ///
    /// Masses, powers and the speed downhill are our judgement. The cadence band
    /// takes in what is most economical at low power, 50 to 60 rpm, and older
    /// riders' best efficiency already at 40 against 60 in young (Sacchetti,
    /// MSSE 2010;42:2128); trained riders prefer 90 ± 7 (Stebbins, JSSM
    /// 2014;13:114) and would enter that.
    pub const fn usual(self) -> u16 {
        match self {
            Habit::RiderMass => 78,
            Habit::BikeMass => 16,
            Habit::LevelPower => 75,
            Habit::ClimbPower => 110,
            Habit::CadenceLow => 50,
            Habit::CadenceHigh => 75,
            Habit::DescentSpeed => 32,
            Habit::Headwind => 0,
        }
    }
}

/// How the rider rides; what is not asked is taken as [`Habit::usual`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Habits([Option<u16>; Habit::ALL.len()]);

impl Habits {
    /// What was answered; `None`: not asked.
    pub fn answer(&self, habit: Habit) -> Option<u16> {
        self.0[habit as usize]
    }

    /// What was answered, or what is usual.
    pub fn get(&self, habit: Habit) -> f64 {
        f64::from(self.answer(habit).unwrap_or(habit.usual()))
    }

    /// Keeps an answer, held within the range of the habit; `None` takes it
    /// back.
    pub fn set(&mut self, habit: Habit, value: Option<u16>) {
        let (least, most) = habit.range();
        self.0[habit as usize] = value.map(|value| value.clamp(least, most));
    }

    /// Whether nothing was answered, so that all is taken as usual.
    pub fn are_usual(&self) -> bool {
        self.iter().next().is_none()
    }

    /// The answers in order.
    pub fn iter(&self) -> impl Iterator<Item = (Habit, u16)> + '_ {
        let all = Habit::ALL.iter().copied();
        all.filter_map(|habit| Some((habit, self.answer(habit)?)))
    }

    /// Bike and rider as the power balance sees them.
    ///
    /// CdA 0.463 m² and Crr 0.0045 of a touring rider (*University Physics* 13e,
    /// problem 6.99); the wheels' inertia as 1.5 kg (our judgement: two wheels
    /// of about 1 kg at rim and tyre); 95 % of the power reaches the wheel
    /// (*common practice*).
    pub fn machine(&self) -> Machine {
        Machine {
            mass: self.get(Habit::RiderMass) + self.get(Habit::BikeMass),
            spin: 1.5,
            drag_area: 0.463,
            spokes: 0.0044,
            rolling: 0.0045,
            efficiency: 0.95,
        }
    }

    /// The air.
    pub fn air(&self) -> Air {
        Air {
            headwind: self.get(Habit::Headwind) / 3.6,
            ..STILL_AIR
        }
    }

    /// How fast that is on the level, in m/s: for people to see whether the
    /// numbers fit.
    pub fn level_speed(&self) -> f64 {
        let power = self.get(Habit::LevelPower);
        self.machine().steady_speed(power, 0.0, &self.air())
    }

    /// The cadence band in rpm; at least wide enough that one shift does not
    /// cross it.
    pub fn band(&self) -> (f64, f64) {
        let low = self.get(Habit::CadenceLow);
        (low, self.get(Habit::CadenceHigh).max(low * 1.3))
    }
}

/// What varies from ride to ride and cannot be known beforehand; a ride is
/// worked out under each of [`Conditions::SPREAD`], and what comes of them is
/// given as a range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conditions {
    /// In a few words.
    pub name: &'static str,
    /// Times the rider's power.
    pub power: f64,
    /// Added to the wind from ahead, in m/s.
    pub headwind: f64,
    /// Times the cadence band.
    pub cadence: f64,
    /// How long a cadence outside the band is borne, in seconds.
    pub patience: f64,
}

impl Conditions {
    /// As told.
    pub const AS_TOLD: Conditions = Conditions {
        name: "as told",
        power: 1.0,
        headwind: 0.0,
        cadence: 1.0,
        patience: 1.5,
    };

    /// As told, and one thing after another otherwise (our judgement of what a
    /// rider, a day's weather and habits make).
    pub const SPREAD: &'static [Conditions] = &[
        Conditions::AS_TOLD,
        Conditions {
            name: "less power",
            power: 0.8,
            ..Conditions::AS_TOLD
        },
        Conditions {
            name: "more power",
            power: 1.2,
            ..Conditions::AS_TOLD
        },
        Conditions {
            name: "wind from ahead",
            headwind: 3.0,
            ..Conditions::AS_TOLD
        },
        Conditions {
            name: "wind from behind",
            headwind: -2.0,
            ..Conditions::AS_TOLD
        },
        Conditions {
            name: "slower cadence, late shifts",
            cadence: 0.88,
            patience: 3.0,
            ..Conditions::AS_TOLD
        },
        Conditions {
            name: "faster cadence, early shifts",
            cadence: 1.12,
            patience: 0.7,
            ..Conditions::AS_TOLD
        },
    ];
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_usual_is_within_its_range_and_unhurried() {
        for habit in Habit::ALL {
            let (least, most) = habit.range();
            assert!((least..=most).contains(&habit.usual()), "{habit}");
        }
        let kmh = Habits::default().level_speed() * 3.6;
        assert!((17.0..22.0).contains(&kmh), "{kmh}");
    }

    #[test]
    fn answers_are_kept_within_their_range_and_taken_back() {
        let mut habits = Habits::default();
        habits.set(Habit::LevelPower, Some(60_000));
        assert_eq!(habits.get(Habit::LevelPower), 400.0);
        habits.set(Habit::LevelPower, None);
        assert_eq!(habits, Habits::default());
        habits.set(Habit::CadenceLow, Some(90));
        habits.set(Habit::CadenceHigh, Some(60));
        let (low, high) = habits.band();
        assert!(high > low * 1.25);
    }
}
