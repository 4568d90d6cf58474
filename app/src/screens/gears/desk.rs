//! What the parts of the screen share: what is shown of the gears, and what is
//! being dragged.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::edit::{Edit, GearEdit};
use leverwright_core::gears::plot::{CadenceBand, GearPlot, PlotOptions, Quantity, StepPlot};
use leverwright_core::gears::{Gear, Shifting};
use leverwright_core::plan::Plan;

use crate::erase::memo;
use crate::workspace::Workspace;

/// What is shown of the gears. A context.
#[derive(Clone, Copy)]
pub struct GearDesk {
    pub workspace: Workspace,
    /// What the axis shows, as far as it is known.
    pub quantity: RwSignal<Quantity>,
    /// The cadences of speeds.
    pub band: RwSignal<CadenceBand>,
    /// The room for the pictures, in user units; 0 until measured.
    pub width: RwSignal<f64>,
    /// The gear whose values are shown.
    pub shown: RwSignal<Gear>,
    /// What is being dragged, not committed yet.
    pub draft: RwSignal<Option<GearEdit>>,
    /// All gears; `None` until the teeth are entered.
    pub plot: Memo<Option<Arc<GearPlot>>>,
    /// The steps, likewise.
    pub steps: Memo<Option<Arc<StepPlot>>>,
    /// Why there are no gears, or no ladder.
    pub trouble: Memo<Option<String>>,
}

impl GearDesk {
    /// Nothing is dragged, the ratio is shown.
    pub fn new() -> GearDesk {
        let workspace = Workspace::here();
        let quantity = RwSignal::new(Quantity::Ratio);
        let band = RwSignal::new(CadenceBand::default());
        let width = RwSignal::new(0.0);
        let draft = RwSignal::new(None::<GearEdit>);
        // The plan with what is being dragged.
        let drawn = memo(move || {
            let plan = workspace.plan.get()?;
            let dragged = draft
                .get()
                .and_then(|edit| plan.apply(&Edit::Gears(edit)).ok());
            Some(dragged.map_or(plan, Arc::new))
        });
        let options = move |plan: &Plan| {
            let known = Quantity::known(&plan.bike.drivetrain);
            let quantity = quantity.get();
            PlotOptions {
                quantity: if known.contains(&quantity) {
                    quantity
                } else {
                    known[0]
                },
                band: band.get(),
                width: width.get(),
                ..PlotOptions::default()
            }
        };
        let measured = move || drawn.get().filter(|_| width.get() > 0.0);
        GearDesk {
            workspace,
            quantity,
            band,
            width,
            shown: RwSignal::new(Gear::default()),
            draft,
            plot: memo(move || {
                let plan = measured()?;
                GearPlot::of(&plan, options(&plan)).ok().map(Arc::new)
            }),
            steps: memo(move || {
                let plan = measured()?;
                StepPlot::of(&plan, options(&plan)).ok().map(Arc::new)
            }),
            trouble: memo(move || {
                let plan = workspace.plan.get()?;
                Shifting::of(&plan).err().map(|error| error.to_string())
            }),
        }
    }

    /// The desk of the screen.
    pub fn here() -> GearDesk {
        expect_context()
    }

    /// Reads the plan; `None` only for a moment while it is closed.
    pub fn read<T>(self, read: impl FnOnce(&Plan) -> T) -> Option<T> {
        self.workspace.plan.with(|plan| plan.as_deref().map(read))
    }

    /// Makes a change; a refusal is told near the thumb.
    pub fn commit(self, edit: GearEdit) -> bool {
        self.workspace.commit(Edit::Gears(edit))
    }

    /// Makes a change, or says why not.
    pub fn try_commit(self, edit: GearEdit) -> Result<(), String> {
        self.workspace
            .try_commit(&Edit::Gears(edit))
            .map_err(|error| error.to_string())
    }

    /// The gear whose values are shown, where the bike has it; else the easiest.
    pub fn shown_gear(self) -> Gear {
        let shown = self.shown.get();
        let has = |plot: &Option<Arc<GearPlot>>| {
            plot.as_ref()
                .is_some_and(|plot| plot.marks.iter().any(|mark| mark.gear == shown))
        };
        if self.plot.with(has) {
            shown
        } else {
            Gear::default()
        }
    }
}
