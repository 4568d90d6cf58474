//! The steps from gear to gear as bars.

use super::{PlotOptions, View};
use crate::gears::{Gear, Percent, ShiftingError, WIDE_STEP};
use crate::plan::Plan;

/// The steps on the way up: of a ladder rung by rung, else cog by cog on each
/// ring.
#[derive(Debug, Clone, PartialEq)]
pub struct StepPlot {
    /// What it shows.
    pub title: String,
    /// Width and height of the picture.
    pub size: (f64, f64),
    /// The bars from the easiest gear on.
    pub bars: Vec<StepBar>,
    /// Heights of whole tens of percent, with their numbers.
    pub ticks: Vec<(f64, Percent)>,
    /// The height of the line above which a step is wide.
    pub wide: f64,
    /// The height of no step at all: where bars stand.
    pub ground: f64,
}

/// One step.
#[derive(Debug, Clone, PartialEq)]
pub struct StepBar {
    /// From this gear.
    pub from: Gear,
    /// To this one.
    pub to: Gear,
    /// Left edge.
    pub x: f64,
    /// Width.
    pub width: f64,
    /// Upper edge; it stands on the ground.
    pub top: f64,
    /// The step.
    pub step: Percent,
    /// Whether the front changes: hatched.
    pub front: bool,
    /// Whether it is over 20 %: marked on top.
    pub wide: bool,
    /// Teeth of the gear it leads to: "50×19".
    pub label: String,
    /// The step in words.
    pub words: String,
}

const LEFT: f64 = 48.0;
const RIGHT: f64 = 12.0;
const TOP: f64 = 18.0;
const HEIGHT: f64 = 140.0;
const BOTTOM: f64 = 52.0;
/// Between bars, as a share of their distance.
const GAP: f64 = 0.2;

impl StepPlot {
    /// The steps of a plan.
    ///
    /// # Errors
    /// When the teeth are not entered.
    pub fn of(plan: &Plan, options: PlotOptions) -> Result<StepPlot, ShiftingError> {
        let view = View::of(plan)?;
        let steps = view.steps();
        let gears = &view.gears;
        let mut most = WIDE_STEP.0 + 3.0;
        for (from, to) in &steps {
            most = most.max(gears.step(*from, *to).0);
        }
        let ground = TOP + HEIGHT;
        let height = |percent: f64| ground - HEIGHT * percent / most;
        let pitch = (options.width - LEFT - RIGHT) / steps.len().max(1) as f64;
        let mut bars = Vec::new();
        for (at, (from, to)) in steps.iter().enumerate() {
            let (from, to, step) = (*from, *to, gears.step(*from, *to));
            let front = from.ring != to.ring;
            let (wide, changes) = (
                step.0 > WIDE_STEP.0 + 1e-9,
                if front { ", the front changes" } else { "" },
            );
            let over = if wide { ", a wide step" } else { "" };
            bars.push(StepBar {
                from,
                to,
                x: LEFT + pitch * (at as f64 + GAP / 2.0),
                width: pitch * (1.0 - GAP),
                top: height(step.0.max(0.0)),
                step,
                front,
                wide,
                label: gears.words(to),
                words: format!(
                    "{} to {}: {step} harder{changes}{over}",
                    gears.words(from),
                    gears.words(to)
                ),
            });
        }
        let mut ticks = Vec::new();
        let mut percent = 0.0;
        while percent <= most {
            ticks.push((height(percent), Percent(percent)));
            percent += 10.0;
        }
        Ok(StepPlot {
            title: match view.ladder() {
                Some(_) => "Steps up the ladder".into(),
                None => "Steps from cog to cog".into(),
            },
            size: (options.width, ground + BOTTOM),
            bars,
            ticks,
            wide: height(WIDE_STEP.0),
            ground,
        })
    }
}

impl View<'_> {
    /// From gear to gear on the way up. Cogs make the same steps on every ring,
    /// so without a ladder one ring stands for all.
    fn steps(&self) -> Vec<(Gear, Gear)> {
        let mut steps = Vec::new();
        let cogs: Vec<Gear>;
        let path = match self.ladder() {
            Some(ladder) => &ladder.up,
            None => {
                cogs = self.gears.all().filter(|gear| gear.ring == 0).collect();
                &cogs
            }
        };
        for pair in path.windows(2) {
            steps.push((pair[0], pair[1]));
        }
        steps
    }
}
