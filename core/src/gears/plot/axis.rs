//! A logarithmic axis with ticks at round numbers.

/// A logarithmic axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// What it shows, with its unit.
    pub label: String,
    /// Ticks from the left.
    pub ticks: Vec<Tick>,
    /// The value at each end.
    values: (f64, f64),
    /// The place of each end.
    places: (f64, f64),
}

/// A tick of an axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// Its place.
    pub at: f64,
    /// Its number.
    pub label: String,
}

/// Round numbers within ten, enough for any pair of ends.
const ROUND: [f64; 14] = [
    1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0,
];
/// The least room for a label, in user units.
const ROOM: f64 = 44.0;

impl Axis {
    pub(super) fn of(label: String, values: (f64, f64), places: (f64, f64)) -> Axis {
        let mut axis = Axis {
            label,
            ticks: Vec::new(),
            // A single gear still needs an axis with two ends.
            values: (values.0 / 1.08, values.1 * 1.08),
            places,
        };
        let mut scale = 0.001;
        while scale < 10_000.0 {
            for round in ROUND {
                axis.tick(round * scale);
            }
            scale *= 10.0;
        }
        axis
    }

    fn tick(&mut self, value: f64) {
        if value < self.values.0 || value > self.values.1 {
            return;
        }
        let at = self.at(value);
        if self.ticks.last().is_none_or(|last| at - last.at >= ROOM) {
            // What is left of the last digits of a product is not shown.
            let number = libm::round(value * 1000.0) / 1000.0;
            let label = number.to_string();
            self.ticks.push(Tick { at, label });
        }
    }

    /// The place of a value.
    pub fn at(&self, value: f64) -> f64 {
        let (low, high) = self.values;
        let share = libm::log(value.max(low) / low) / libm::log(high / low);
        self.places.0 + share.min(1.0) * (self.places.1 - self.places.0)
    }
}
