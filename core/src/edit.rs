//! Every change to a plan: one enum, one way of applying it.
//!
//! The app never changes a plan by hand, so undo, revisions, fixes, tests and
//! import all go the same way.

mod bike;
mod brakes;
mod error;
mod layout;
mod plan;
mod rider;
mod starts;

pub use bike::BikeEdit;
pub use brakes::BrakeEdit;
pub use error::EditError;
pub use layout::{LayoutEdit, may_take};
pub use plan::PlanEdit;
pub use rider::RiderEdit;

use crate::document;
use crate::plan::Plan;

/// A change to a plan.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// About the plan as a document.
    Plan(PlanEdit),
    /// About the rider.
    Rider(RiderEdit),
    /// About the bike and its controls.
    Bike(BikeEdit),
    /// About the brakes.
    Brakes(BrakeEdit),
    /// About the layout in hand.
    Layout(LayoutEdit),
    /// Several changes that are one act.
    Several {
        /// What the act is called.
        label: String,
        /// The changes in order.
        edits: Vec<Edit>,
    },
}

impl Edit {
    /// What the change is called in undo, redo and the history of revisions.
    pub fn label(&self, plan: &Plan) -> String {
        match self {
            Edit::Plan(edit) => edit.label(),
            Edit::Rider(edit) => edit.label(),
            Edit::Bike(edit) => edit.label(plan),
            Edit::Brakes(edit) => edit.label(plan),
            Edit::Layout(edit) => edit.label(plan),
            Edit::Several { label, .. } => label.clone(),
        }
    }

    fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            Edit::Plan(edit) => edit.make(plan),
            Edit::Rider(edit) => edit.make(plan),
            Edit::Bike(edit) => edit.make(plan),
            Edit::Brakes(edit) => edit.make(plan),
            Edit::Layout(edit) => edit.make(plan),
            Edit::Several { edits, .. } => edits.iter().try_for_each(|edit| edit.make(plan)),
        }?;
        document::drop_ownerless(plan);
        Ok(())
    }
}

impl Plan {
    /// The plan after a change.
    ///
    /// # Errors
    /// When the change goes against the plan: it names something that is not
    /// there, or gives a button what it cannot have.
    pub fn apply(&self, edit: &Edit) -> Result<Plan, EditError> {
        let mut next = self.clone();
        edit.make(&mut next)?;
        Ok(next)
    }
}
