//! The gears as a picture: a logarithmic axis, a row for each ring, the ladder's
//! ways with their crossovers; and the same in a table.
//!
//! Shapes only, in user units of an SVG view box; the app draws them. Marks
//! differ by shape, not by tone alone, and each says its values in words.

mod axis;
mod mark;
mod steps;
mod table;

pub use axis::{Axis, Tick};
pub use mark::{Mark, MarkShape};
pub use steps::{StepBar, StepPlot};
pub use table::{GearTable, TableRow};

use super::{Crossover, Direction, Gear, Gears, Rpm, SAME_GEAR, Shifting, ShiftingError};
use crate::plan::Plan;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// What the axis shows.
    pub enum Quantity as "quantity of gears" {
        /// Turns of the wheel for one turn of the crank.
        Ratio = "ratio", "ratio";
        /// Ratio times the wheel's diameter in inches.
        GearInches = "gear-inches", "gear inches";
        /// Metres for one turn of the crank.
        Development = "development", "development";
        /// Speed at a band of cadences.
        Speed = "speed", "speed";
    }
}

/// A band of cadences.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CadenceBand {
    /// Slowest.
    pub from: Rpm,
    /// Fastest.
    pub to: Rpm,
}

/// Trained riders turn 90 ± 7 in a minute, older ones do best far slower
/// (Stebbins, J Sports Sci Med 2014;13:114; Sacchetti, Med Sci Sports Exerc
/// 2010;42:2128): a band between (our judgement).
impl Default for CadenceBand {
    fn default() -> Self {
        CadenceBand {
            from: Rpm(60.0),
            to: Rpm(90.0),
        }
    }
}

/// What is drawn, and how.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlotOptions {
    /// What the axis shows.
    pub quantity: Quantity,
    /// The cadences of speeds.
    pub band: CadenceBand,
    /// The width of the picture: narrow screens get fewer ticks.
    pub width: f64,
}

impl Default for PlotOptions {
    fn default() -> Self {
        PlotOptions {
            quantity: Quantity::Ratio,
            band: CadenceBand::default(),
            width: 720.0,
        }
    }
}

/// All gears on a logarithmic axis.
#[derive(Debug, Clone, PartialEq)]
pub struct GearPlot {
    /// What it shows: "Gears by ratio, ladder".
    pub title: String,
    /// One or two sentences that say what is to be seen.
    pub summary: String,
    /// Width and height of the picture.
    pub size: (f64, f64),
    /// The axis below.
    pub axis: Axis,
    /// A row for each ring, the largest on top.
    pub rows: Vec<Row>,
    /// A mark for each gear, ring by ring, from the easiest.
    pub marks: Vec<Mark>,
    /// The ways of the ladder.
    pub ways: Vec<WayLine>,
    /// Its crossovers, from the smallest ring.
    pub crossovers: Vec<CrossoverLine>,
}

/// The gears of one ring.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The ring, 0 for the smallest.
    pub ring: u8,
    /// How far down it lies.
    pub y: f64,
    /// Its teeth: "50".
    pub label: String,
}

/// One way of the ladder as a line through its rungs.
#[derive(Debug, Clone, PartialEq)]
pub struct WayLine {
    /// Which way; drawn solid up, dashed down.
    pub way: Direction,
    /// Its points; up runs a little above the marks, down a little below.
    pub points: Vec<(f64, f64)>,
}

/// A crossover as an arrow that can be moved.
#[derive(Debug, Clone, PartialEq)]
pub struct CrossoverLine {
    /// Which.
    pub crossover: Crossover,
    /// Where it leaves.
    pub from: (f64, f64),
    /// Where it lands.
    pub to: (f64, f64),
    /// What it does: "up: 34×15 to 50×19, two cogs, 16 % harder".
    pub words: String,
}

/// Room on the left for the teeth of the rings, in user units.
const LEFT: f64 = 48.0;
/// Room on the right, half a target wide.
const RIGHT: f64 = 28.0;
/// From row to row: two targets of 44 and the lines between.
const ROW: f64 = 96.0;
/// Above the first row.
const TOP: f64 = 56.0;
/// Below the last row, for the axis.
const BOTTOM: f64 = 72.0;
/// How far the lines of the ways run off the row.
const OFF: f64 = 16.0;

impl GearPlot {
    /// The gears of a plan under its shift plan; a ladder that does not work is
    /// left out, and the gears are drawn all the same.
    ///
    /// # Errors
    /// When the teeth are not entered.
    pub fn of(plan: &Plan, options: PlotOptions) -> Result<GearPlot, ShiftingError> {
        let view = View::of(plan)?;
        Ok(view.plot(options))
    }
}

/// Gears with what the plan makes of them.
pub(crate) struct View<'a> {
    plan: &'a Plan,
    gears: Gears,
    shifting: Option<Shifting>,
    duplicates: Vec<(Gear, Gear)>,
}

impl<'a> View<'a> {
    pub(crate) fn of(plan: &'a Plan) -> Result<View<'a>, ShiftingError> {
        let drivetrain = &plan.bike.drivetrain;
        let gears = drivetrain.gears().ok_or(ShiftingError::NotEntered {
            what: drivetrain.not_entered().unwrap_or("gears"),
        })?;
        Ok(View {
            plan,
            duplicates: gears.duplicates(SAME_GEAR),
            shifting: Shifting::of(plan).ok(),
            gears,
        })
    }

    fn ladder(&self) -> Option<&super::Ladder> {
        self.shifting.as_ref()?.ladder()
    }

    fn plot(&self, options: PlotOptions) -> GearPlot {
        let axis = self.axis(options);
        let rings = self.gears.rings.len() as u8;
        let height = TOP + BOTTOM + ROW * f64::from(rings - 1);
        let y = |ring: u8| TOP + ROW * f64::from(rings - 1 - ring);
        let mut rows = Vec::new();
        for ring in (0..rings).rev() {
            let label = self.gears.rings[usize::from(ring)].to_string();
            let y = y(ring);
            rows.push(Row { ring, y, label });
        }
        let mut marks = Vec::new();
        for gear in self.gears.all() {
            marks.push(self.mark(gear, &axis, y(gear.ring), options));
        }
        let at = |gear: Gear| {
            let value = self.value(gear, options);
            (
                axis.at(value.map_or(0.0, |(low, high)| libm::sqrt(low * high))),
                y(gear.ring),
            )
        };
        let (mut ways, mut crossovers) = (Vec::new(), Vec::new());
        if let Some(ladder) = self.ladder() {
            for way in Direction::ALL {
                let off = if *way == Direction::Up { -OFF } else { OFF };
                let path = ladder.path(*way).iter();
                ways.push(WayLine {
                    way: *way,
                    points: path
                        .map(|rung| at(*rung))
                        .map(|(x, y)| (x, y + off))
                        .collect(),
                });
            }
            for crossover in ladder.crossovers() {
                let off = if crossover.way == Direction::Up {
                    -OFF
                } else {
                    OFF
                };
                let ((from_x, from_y), (to_x, to_y)) = (at(crossover.from), at(crossover.to));
                crossovers.push(CrossoverLine {
                    crossover,
                    from: (from_x, from_y + off),
                    to: (to_x, to_y + off),
                    words: self.crossover_words(crossover),
                });
            }
        }
        GearPlot {
            title: format!("Gears by {}, {}", options.quantity, self.plan.shift_plan),
            summary: self.summary(),
            size: (options.width, height),
            axis,
            rows,
            marks,
            ways,
            crossovers,
        }
    }

    /// What a gear has of a quantity: one value, or the ends of a band.
    fn value(&self, gear: Gear, options: PlotOptions) -> Option<(f64, f64)> {
        let one = |value: f64| (value, value);
        match options.quantity {
            Quantity::Ratio => Some(one(self.gears.ratio(gear).0)),
            Quantity::GearInches => self.gears.gear_inches(gear).map(|v| one(v.0)),
            Quantity::Development => self.gears.development(gear).map(|v| one(v.0)),
            Quantity::Speed => {
                let from = self.gears.speed(gear, options.band.from)?;
                let to = self.gears.speed(gear, options.band.to)?;
                Some((from.0, to.0))
            }
        }
    }

    fn axis(&self, options: PlotOptions) -> Axis {
        // Without a wheel only the ratio is known.
        let easiest = self.value(self.gears.easiest(), options);
        let hardest = self.value(self.gears.hardest(), options);
        let (low, high) = match (easiest, hardest) {
            (Some((low, _)), Some((_, high))) => (low, high),
            _ => (1.0, 1.0),
        };
        let label = match options.quantity {
            Quantity::Ratio => "ratio".into(),
            Quantity::GearInches => "gear inches".into(),
            Quantity::Development => "development, metres for one turn of the crank".into(),
            Quantity::Speed => {
                let CadenceBand { from, to } = options.band;
                format!("km/h at {:.0} to {to}", from.0)
            }
        };
        Axis::of(label, (low, high), (LEFT, options.width - RIGHT))
    }

    /// What there is to see, in words.
    fn summary(&self) -> String {
        let gears = &self.gears;
        let (easiest, hardest) = (gears.easiest(), gears.hardest());
        let mut words = format!(
            "{}. Ratios from {} ({}) to {} ({}), a range of {}.",
            self.plan.bike.drivetrain,
            gears.ratio(easiest),
            gears.words(easiest),
            gears.ratio(hardest),
            gears.words(hardest),
            gears.range(),
        );
        if let Some(ladder) = self.ladder() {
            words.push_str(&format!(" The ladder has {} rungs up.", ladder.up.len()));
            for crossover in ladder.crossovers() {
                words.push_str(&format!(" Crossover {}.", self.crossover_words(crossover)));
            }
        }
        words
    }

    fn crossover_words(&self, crossover: Crossover) -> String {
        let gears = &self.gears;
        let time = crossover.time(self.plan.shift_settings.pace);
        let cadence = gears.cadence_change(crossover.from, crossover.to);
        format!(
            "{}: {} to {}, {}, a step of {}, cadence {:+.0} %, {time}",
            crossover.way,
            gears.words(crossover.from),
            gears.words(crossover.to),
            match crossover.cogs() {
                1 => "one cog".into(),
                n => format!("{n} cogs"),
            },
            crossover.step(gears),
            cadence.0,
        )
    }
}

#[cfg(test)]
mod tests;
