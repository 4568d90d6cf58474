//! A logarithmic axis with ticks at round numbers.

/// A logarithmic axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Axis {
    /// What it shows, with its unit.
    pub label: String,
    /// How far down it lies.
    pub y: f64,
    /// Ticks from the left.
    pub ticks: Vec<Tick>,
    /// Places of the fine graduation between them, even over each stretch.
    pub fine: Vec<f64>,
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
/// Stretches of a decade that are graduated alike, in tenths of its first
/// number, and the steps there are.
const STRETCHES: [(u32, u32); 3] = [(10, 20), (20, 50), (50, 100)];
const STEPS: [u32; 4] = [1, 2, 5, 10];
/// The least room between lines of the graduation, in user units.
const FINE_ROOM: f64 = 5.0;

impl Axis {
    pub(super) fn of(label: String, values: (f64, f64), places: (f64, f64), y: f64) -> Axis {
        let mut axis = Axis {
            label,
            y,
            ticks: Vec::new(),
            fine: Vec::new(),
            // A single gear still needs an axis with two ends.
            values: (values.0 / 1.08, values.1 * 1.08),
            places,
        };
        let mut scale = 0.001;
        while scale < 10_000.0 {
            for round in ROUND {
                axis.tick(round * scale);
            }
            for stretch in STRETCHES {
                axis.graduate(stretch, scale);
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

    /// The finest graduation of a stretch whose lines keep apart.
    fn graduate(&mut self, (from, to): (u32, u32), scale: f64) {
        let value = |n: u32| f64::from(n) / 10.0 * scale;
        let apart = |step: u32| self.at_any(value(to)) - self.at_any(value(to - step));
        let Some(step) = STEPS.into_iter().find(|step| apart(*step) >= FINE_ROOM) else {
            return;
        };
        for n in (from..to).step_by(step as usize) {
            if (self.values.0..=self.values.1).contains(&value(n)) {
                self.fine.push(self.at(value(n)));
            }
        }
    }

    /// The place of a value, also beyond the ends.
    fn at_any(&self, value: f64) -> f64 {
        let (low, high) = self.values;
        let share = libm::log(value / low) / libm::log(high / low);
        self.places.0 + share * (self.places.1 - self.places.0)
    }

    /// The place of a value.
    pub fn at(&self, value: f64) -> f64 {
        let (low, high) = self.values;
        let share = libm::log(value.max(low) / low) / libm::log(high / low);
        self.places.0 + share.min(1.0) * (self.places.1 - self.places.0)
    }
}
