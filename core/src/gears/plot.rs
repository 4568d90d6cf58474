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

use super::{
    Crossover, Direction, Drivetrain, Gear, Gears, Rpm, SAME_GEAR, Shifting, ShiftingError,
    ToothError,
};
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

impl CadenceBand {
    /// The band, if legs turn so and the slower end comes first.
    ///
    /// # Errors
    /// When they do not.
    pub fn checked(self) -> Result<CadenceBand, ToothError> {
        let turns = |rpm: Rpm| (SLOWEST..=FASTEST).contains(&rpm.0);
        if turns(self.from) && turns(self.to) && self.from < self.to {
            Ok(self)
        } else {
            Err(ToothError::Cadences(self.from, self.to))
        }
    }

    /// The cadence in the middle.
    pub fn middle(self) -> Rpm {
        Rpm((self.from.0 + self.to.0) / 2.0)
    }
}

/// Cadences that are shown (our judgement).
const SLOWEST: f64 = 20.0;
const FASTEST: f64 = 150.0;

/// What is drawn, and how.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlotOptions {
    /// What the axis shows.
    pub quantity: Quantity,
    /// The cadences of speeds.
    pub band: CadenceBand,
    /// The width of the picture: narrow screens get fewer ticks.
    pub width: f64,
    /// From row to row.
    pub row: f64,
}

impl Default for PlotOptions {
    fn default() -> Self {
        PlotOptions {
            quantity: Quantity::Ratio,
            band: CadenceBand::default(),
            width: 720.0,
            row: ROW,
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
    /// A stretch for each ring; up runs a little above the marks, down a little
    /// below.
    pub stretches: Vec<((f64, f64), (f64, f64))>,
}

/// A crossover as an arrow that can be moved.
#[derive(Debug, Clone, PartialEq)]
pub struct CrossoverLine {
    /// Which.
    pub crossover: Crossover,
    /// Where it leaves, at the edge of the mark.
    pub from: (f64, f64),
    /// Where it lands, likewise.
    pub to: (f64, f64),
    /// Its line, as an SVG path.
    pub d: String,
    /// The place on the line by which it is taken; those of the two ways keep a
    /// target apart.
    pub handle: (f64, f64),
    /// What it does: "up: 34×15 to 50×19, two cogs, 16 % harder".
    pub words: String,
}

/// Room on the left for the teeth of the rings, in user units.
const LEFT: f64 = 48.0;
/// Room on the right, half a target wide.
const RIGHT: f64 = 28.0;
/// From row to row: two targets of 44 and the marks at the ends.
const ROW: f64 = 132.0;
/// Above the first row.
const TOP: f64 = 44.0;
/// From the last row to the axis.
const TO_AXIS: f64 = 52.0;
/// Below the axis, for its numbers and its label.
const BELOW_AXIS: f64 = 44.0;
/// How far the lines of the ways run off the row.
const OFF: f64 = 9.0;
/// How far from a row the crossovers begin and end.
const EDGE: f64 = 12.0;
/// The teeth of cogs above a row, and below it: where their foot stands.
const LABELS: (f64, f64) = (-17.0, 27.0);
/// The least room for the teeth of a cog.
const LABEL: f64 = 17.0;
/// How straight a crossover leaves and lands, as a share of the way between the
/// rows.
const BEND: f64 = 0.45;
/// Where a crossover is taken, as a share of its way.
const HANDLE: f64 = 0.75;

impl Quantity {
    /// What is known of a drivetrain: without a wheel the ratio alone.
    pub fn known(drivetrain: &Drivetrain) -> &'static [Quantity] {
        match drivetrain.wheel {
            Some(_) => Quantity::ALL,
            None => &[Quantity::Ratio],
        }
    }
}

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
        let rings = self.gears.rings.len() as u8;
        let row = options.row;
        let last_row = TOP + row * f64::from(rings - 1);
        let axis = self.axis(options, last_row + TO_AXIS);
        let y = |ring: u8| TOP + row * f64::from(rings - 1 - ring);
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
                ways.push(way_line(*way, ladder.path(*way), at));
            }
            for crossover in ladder.crossovers() {
                let words = self.crossover_words(crossover);
                crossovers.push(crossover_line(crossover, words, at));
            }
        }
        label(&mut marks, rings - 1);
        GearPlot {
            title: format!("Gears by {}, {}", options.quantity, self.plan.shift_plan),
            summary: self.summary(),
            size: (options.width, axis.y + BELOW_AXIS),
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

    fn axis(&self, options: PlotOptions, y: f64) -> Axis {
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
        Axis::of(label, (low, high), (LEFT, options.width - RIGHT), y)
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

/// Writes the teeth of cogs beside their marks: above the largest ring, below
/// the others, where no crossover comes. Where there is no room they are left
/// out, those of the hardest gears last.
fn label(marks: &mut [Mark], largest: u8) {
    let mut last: Option<(u8, f64)> = None;
    for mark in marks.iter_mut().rev() {
        let (x, y) = mark.at;
        if last.is_none_or(|(ring, after)| ring != mark.gear.ring || after - x >= LABEL) {
            let (above, below) = LABELS;
            let off = if mark.gear.ring == largest {
                above
            } else {
                below
            };
            mark.label_foot = Some(y + off);
            last = Some((mark.gear.ring, x));
        }
    }
}

/// A way as a stretch on each ring.
fn way_line(way: Direction, path: &[Gear], at: impl Fn(Gear) -> (f64, f64)) -> WayLine {
    let off = if way == Direction::Up { -OFF } else { OFF };
    let beside = |gear| {
        let (x, y) = at(gear);
        (x, y + off)
    };
    let rungs = path.chunk_by(|a, b| a.ring == b.ring);
    let stretches =
        rungs.filter_map(|rungs| Some((beside(*rungs.first()?), beside(*rungs.last()?))));
    WayLine {
        way,
        stretches: stretches.collect(),
    }
}

/// A crossover as a line from mark to mark, upright at both ends.
fn crossover_line(
    crossover: Crossover,
    words: String,
    at: impl Fn(Gear) -> (f64, f64),
) -> CrossoverLine {
    // Up the ladder is up the picture.
    let away = match crossover.way {
        Direction::Up => -EDGE,
        Direction::Down => EDGE,
    };
    let ((from_x, from_y), (to_x, to_y)) = (at(crossover.from), at(crossover.to));
    let (from_y, to_y) = (from_y + away, to_y - away);
    let bend = BEND * (to_y - from_y);
    let (leaves, lands) = (from_y + bend, to_y - bend);
    let on = |a: f64, b: f64, c: f64, d: f64| {
        let (t, u) = (HANDLE, 1.0 - HANDLE);
        a * u * u * u + 3.0 * b * u * u * t + 3.0 * c * u * t * t + d * t * t * t
    };
    CrossoverLine {
        crossover,
        from: (from_x, from_y),
        to: (to_x, to_y),
        d: format!(
            "M{from_x:.1} {from_y:.1}C{from_x:.1} {leaves:.1} {to_x:.1} {lands:.1} {to_x:.1} {to_y:.1}"
        ),
        handle: (
            on(from_x, from_x, to_x, to_x),
            on(from_y, leaves, lands, to_y),
        ),
        words,
    }
}

#[cfg(test)]
mod tests;
