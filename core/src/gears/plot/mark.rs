//! A gear as a mark.

use super::{Axis, PlotOptions, View};
use crate::gears::Gear;

vocabulary! {
    /// What a gear is in the shift plan, each with a shape of its own.
    pub enum MarkShape as "mark" {
        /// A gear that is used: a disc.
        Used = "used", "used";
        /// Where the ladder leaves a ring or lands: a square.
        Crossover = "crossover", "at a crossover";
        /// Not a rung of the ladder: a small ring.
        Unused = "unused", "not a rung";
        /// Kept out of the ladder: a cross.
        Forbidden = "forbidden", "forbidden";
    }
}

/// A gear as a mark on its row.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// The gear.
    pub gear: Gear,
    /// Its place.
    pub at: (f64, f64),
    /// Where its band ends, for a quantity that has one; `at` is the middle.
    pub band: Option<(f64, f64)>,
    /// Its shape.
    pub shape: MarkShape,
    /// Whether another ring has about the same: a second outline.
    pub duplicate: bool,
    /// Whether the chain runs crossed: a slanted stroke.
    pub crossed: bool,
    /// Teeth of the cog: "17".
    pub label: String,
    /// Where the foot of the label stands; `None` where there is no room.
    pub label_foot: Option<f64>,
    /// All that is known of it, for a screen reader: "50×17, ratio 2.94, …".
    pub words: String,
}

impl View<'_> {
    pub(super) fn mark(&self, gear: Gear, axis: &Axis, y: f64, options: PlotOptions) -> Mark {
        let (low, high) = self.value(gear, options).unwrap_or((1.0, 1.0));
        Mark {
            gear,
            at: (axis.at(libm::sqrt(low * high)), y),
            band: (low < high).then(|| (axis.at(low), axis.at(high))),
            shape: self.shape(gear),
            duplicate: self.same_as(gear).is_some(),
            crossed: self.gears.is_crossed(gear),
            label: self.gears.cog(gear).to_string(),
            label_foot: None,
            words: self.words(gear, options),
        }
    }

    pub(super) fn shape(&self, gear: Gear) -> MarkShape {
        let ladder = self.ladder();
        if self.is_ladder() && self.plan.shift_settings.ladder.forbids(gear) {
            return MarkShape::Forbidden;
        }
        let Some(ladder) = ladder else {
            return MarkShape::Used;
        };
        let mut crossovers = ladder.crossovers().into_iter();
        if crossovers.any(|c| c.from == gear || c.to == gear) {
            MarkShape::Crossover
        } else if ladder.has(gear) {
            MarkShape::Used
        } else {
            MarkShape::Unused
        }
    }

    fn is_ladder(&self) -> bool {
        self.plan.shift_plan == crate::shift_plan::ShiftPlanKind::Ladder
    }

    /// Another gear that is about the same.
    pub(super) fn same_as(&self, gear: Gear) -> Option<Gear> {
        let mut pairs = self.duplicates.iter();
        pairs.find_map(|(a, b)| match gear {
            gear if gear == *a => Some(*b),
            gear if gear == *b => Some(*a),
            _ => None,
        })
    }

    fn words(&self, gear: Gear, options: PlotOptions) -> String {
        let gears = &self.gears;
        let mut words = format!("{}, ratio {}", gears.words(gear), gears.ratio(gear));
        if let Some(inches) = gears.gear_inches(gear) {
            words.push_str(&format!(", {:.0} gear inches", inches.0));
        }
        if let Some(development) = gears.development(gear) {
            words.push_str(&format!(", development {development}"));
        }
        let band = options.band;
        if let (Some(from), Some(to)) = (gears.speed(gear, band.from), gears.speed(gear, band.to)) {
            words.push_str(&format!(", {:.1} to {to}", from.0));
        }
        for note in self.notes(gear) {
            words.push_str(", ");
            words.push_str(&note);
        }
        words
    }

    /// What else is to be said of a gear.
    pub(super) fn notes(&self, gear: Gear) -> Vec<String> {
        let mut notes = Vec::new();
        let shape = self.shape(gear);
        if shape != MarkShape::Used {
            notes.push(shape.to_string());
        }
        if let Some(other) = self.same_as(gear) {
            notes.push(format!("about the same as {}", self.gears.words(other)));
        }
        if self.gears.is_crossed(gear) {
            notes.push("chain runs crossed".into());
        }
        notes
    }
}
