//! The gear card: gears, ladder and steps on one page.

use crate::gears::plot::{CadenceBand, GearPlot, GearTable, PlotOptions, StepPlot};
use crate::gears::{Demand, Exceeded};
use crate::plan::Plan;
use crate::situation::Situation;

use super::{Setting, settings};

/// The gear card.
#[derive(Debug, Clone, PartialEq)]
pub struct GearCard {
    /// The drivetrain: "50/34 with 11-34, 12 cogs".
    pub drivetrain: String,
    /// Tyre, crank, chain and derailleurs; `None` is filled in by hand.
    pub facts: Vec<super::Field>,
    /// The shift plan as it is typed in.
    pub settings: Vec<Setting>,
    /// What the plot shows, in words.
    pub summary: String,
    /// All gears.
    pub plot: GearPlot,
    /// The steps on the way up.
    pub steps: StepPlot,
    /// The same in a table.
    pub table: GearTable,
    /// What the shift plan asks of the hands, a line for each usual move.
    pub asks: Vec<String>,
}

/// The width of the plots on paper, in user units.
const WIDTH: f64 = 680.0;
/// From row to row, where nothing is to be taken hold of.
const ROW: f64 = 84.0;
/// That of the steps, beside which words stand.
const STEPS_WIDTH: f64 = 430.0;

/// The card; `None` until the teeth are entered.
pub(super) fn card(situation: &Situation<'_>) -> Option<GearCard> {
    let plan = situation.plan;
    let options = PlotOptions {
        width: WIDTH,
        row: ROW,
        ..PlotOptions::default()
    };
    let plot = GearPlot::of(plan, options).ok()?;
    Some(GearCard {
        drivetrain: plan.bike.drivetrain.to_string(),
        facts: facts(plan),
        settings: settings::shift_plan(situation),
        summary: plot.summary.clone(),
        plot,
        steps: StepPlot::of(
            plan,
            PlotOptions {
                width: STEPS_WIDTH,
                ..options
            },
        )
        .ok()?,
        table: GearTable::of(plan, CadenceBand::default()).ok()?,
        asks: asks(plan),
    })
}

fn facts(plan: &Plan) -> Vec<super::Field> {
    let drivetrain = &plan.bike.drivetrain;
    let field = |label: &'static str, value: Option<String>| super::Field { label, value };
    let length = drivetrain.gears().zip(drivetrain.chainstay);
    let pitches = length.and_then(|(gears, chainstay)| gears.chain_pitches(chainstay));
    let mut facts = vec![
        field("Tyre", drivetrain.wheel.map(|wheel| wheel.to_string())),
        field(
            "Rolls in one turn",
            drivetrain
                .wheel
                .map(|wheel| wheel.circumference().to_string()),
        ),
        field("Crank", drivetrain.crank.map(|crank| crank.to_string())),
        field(
            "Chain round largest ring and cog",
            pitches.map(|n| format!("{n} pitches, and what the derailleur wants")),
        ),
    ];
    for ask in drivetrain.asks() {
        let label = match ask.what {
            Exceeded::Wrap => "Chain to take up, takes",
            Exceeded::LargestCog => "Largest cog, takes",
            Exceeded::FrontDifference => "Between the rings, takes",
        };
        let takes = ask
            .takes
            .map(|takes| format!("{}, {takes} teeth", ask.asked));
        facts.push(field(label, takes));
    }
    facts
}

fn asks(plan: &Plan) -> Vec<String> {
    let (Ok(demand), Some(gears)) = (Demand::of_plan(plan), plan.bike.drivetrain.gears()) else {
        return Vec::new();
    };
    let presses = |n: u8| super::counted(usize::from(n), "press", "presses");
    let mut lines = Vec::new();
    for (usual, trip) in &demand.moves {
        lines.push(format!(
            "{usual}, {} to {}: {}, {}",
            gears.words(trip.from),
            gears.words(trip.to),
            presses(trip.presses),
            trip.time
        ));
    }
    lines.push(format!(
        "any gear to any other: {} at most, {:.1} on average",
        presses(demand.worst),
        demand.average
    ));
    lines
}
