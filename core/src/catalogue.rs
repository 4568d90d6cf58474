//! Generic cockpits to start from.
//!
//! Each is named only by what it is. Places come from a plausible cockpit and
//! functions from what shops usually find (*common practice*).

mod demos;
pub mod parts;
mod templates;

pub use demos::{Demo, DemoId, demo};
pub use templates::template;

use crate::cockpit::{Bike, ButtonId};
use crate::edit::{Edit, PlanEdit};
use crate::function::Function;
use crate::layout::Chord;
use crate::plan::Plan;
use crate::rider::Rider;

vocabulary! {
    /// The generic cockpits.
    pub enum TemplateId as "template" {
        /// Road drop bar, 2x12.
        RoadPlain = "road-2x12", "Road drop bar, 2x12";
        /// The same with tops pods and sprint buttons.
        RoadPods = "road-2x12-pods", "Road drop bar, 2x12, with tops pods and sprint buttons";
        /// One paddle per lever, the front by both together.
        RoadOnePaddle = "road-2x12-one-paddle", "Road drop bar, 2x12, one paddle per lever, front by both together";
        /// Gravel drop bar, 1x12.
        Gravel = "gravel-1x12", "Gravel drop bar, 1x12";
        /// Aero bar, 2x12, two-button tips.
        AeroTwoButton = "aero-2x12-two-button", "Aero bar, 2x12, two-button extension tips and base-bar levers";
        /// Aero bar, 2x12, one-button tips.
        AeroOneButton = "aero-2x12-one-button", "Aero bar, 2x12, one-button extension tips and base-bar levers";
        /// Flat bar, 1x12.
        FlatSingle = "flat-1x12", "Flat bar, 1x12";
        /// Flat bar, 2x11.
        FlatDouble = "flat-2x11", "Flat bar, 2x11";
        /// Tricycle flat bar, 1x12.
        Tricycle = "tricycle-1x12", "Tricycle flat bar, 1x12, with parking latch";
        /// Recumbent side grips, 1x12.
        Recumbent = "recumbent-1x12", "Recumbent side grips, 1x12";
        /// Single-sided drop bar, all on the left.
        SingleSidedLeft = "single-sided-left", "Single-sided drop bar, 2x12, every control on the left";
        /// Single-sided drop bar, all on the right.
        SingleSidedRight = "single-sided-right", "Single-sided drop bar, 2x12, every control on the right";
    }
}

/// A generic cockpit with what its buttons usually do when it comes in.
#[derive(Debug, Clone, PartialEq)]
pub struct Template {
    /// Which one.
    pub id: TemplateId,
    /// The bike.
    pub bike: Bike,
    /// What taps usually do.
    pub taps: Vec<(ButtonId, Function)>,
    /// What two buttons together usually do.
    pub chords: Vec<Chord>,
}

impl Template {
    /// A plan that starts from this cockpit, what its buttons do noted as
    /// found, nothing known of the rider yet.
    pub fn plan(&self, name: &str) -> Plan {
        let mut plan = Plan::new(name, self.bike.clone(), Rider::default());
        let layout = plan.layout_mut();
        layout.taps = self.taps.iter().copied().collect();
        layout.chords = self.chords.clone();
        plan.apply(&Edit::Plan(PlanEdit::NoteAsFound))
            .unwrap_or(plan)
    }
}
