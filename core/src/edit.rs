//! Every change to a plan: one enum, one way of applying it.
//!
//! The app never changes a plan by hand, so undo, revisions, fixes and tests all
//! go the same way.

mod bike;
mod brakes;
mod error;
mod gears;
mod lapse;
mod layout;
mod plan;
mod record;
mod ride;
mod rider;
mod starts;

pub use bike::BikeEdit;
pub use brakes::BrakeEdit;
pub use error::EditError;
pub use gears::GearEdit;
pub use layout::{LayoutEdit, may_take};
pub use plan::PlanEdit;
pub use record::RecordEdit;
pub use ride::RideEdit;
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
    /// About the drivetrain and how the shift plan is tuned.
    Gears(GearEdit),
    /// About the layout in hand.
    Layout(LayoutEdit),
    /// About roads and rides.
    Ride(RideEdit),
    /// Into the record.
    Record(RecordEdit),
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
            Edit::Gears(edit) => edit.label(plan),
            Edit::Layout(edit) => edit.label(plan),
            Edit::Ride(edit) => edit.label(),
            Edit::Record(edit) => edit.label(),
            Edit::Several { label, .. } => label.clone(),
        }
    }

    fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            Edit::Plan(edit) => edit.make(plan),
            Edit::Rider(edit) => edit.make(plan),
            Edit::Bike(edit) => edit.make(plan),
            Edit::Brakes(edit) => edit.make(plan),
            Edit::Gears(edit) => edit.make(plan),
            Edit::Layout(edit) => edit.make(plan),
            Edit::Ride(edit) => edit.make(plan),
            Edit::Record(edit) => edit.make(plan),
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
        lapse::mark(self, &mut next);
        Ok(next)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::edit::{Edit, LayoutEdit, RiderEdit};
    use crate::rules;
    use crate::testing::{after, plan_and_edits, plan_from_document};

    proptest! {
        /// Also on names of nothing; and what comes of it can be looked at.
        #[test]
        fn no_edit_panics((plan, edits) in plan_and_edits()) {
            for edit in &edits {
                prop_assert!(!edit.label(&plan).is_empty());
            }
            let plan = after(plan, edits.iter());
            prop_assert!(!plan.layouts.is_empty());
            prop_assert!(plan.layouts.iter().any(|layout| layout.id == plan.current));
            let _ = rules::findings(&plan);
        }

        #[test]
        fn no_edit_panics_on_what_a_document_brings(
            plan in plan_from_document(),
            (_, edits) in plan_and_edits()
        ) {
            let _ = rules::findings(&after(plan, edits.iter()));
        }

        /// A refused act leaves nothing half done: the plan it was tried on is
        /// untouched, and its reason ends as a sentence.
        #[test]
        fn a_refusal_is_a_sentence((plan, edits) in plan_and_edits()) {
            for edit in &edits {
                if let Err(error) = plan.apply(edit) {
                    let reason = error.to_string();
                    prop_assert!(reason.ends_with('.') && reason.len() > 20, "{}", reason);
                }
            }
        }

        #[test]
        fn an_empty_act_changes_nothing((plan, _) in plan_and_edits()) {
            let nothing = Edit::Several { label: "nothing".into(), edits: Vec::new() };
            prop_assert_eq!(plan.apply(&nothing), Ok(plan));
        }
    }

    #[test]
    fn several_edits_are_all_made_or_none() {
        use crate::catalogue::{TemplateId, template};
        use crate::cockpit::{ButtonId, ButtonPart, ControlId};
        use crate::rider::{Answer, Side};
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let nowhere = ButtonId {
            control: ControlId(99),
            part: ButtonPart::Near,
        };
        let edits = vec![
            Edit::Rider(RiderEdit::MountsFrom(Answer::of(Side::Left))),
            Edit::Layout(LayoutEdit::Tap(nowhere, None)),
        ];
        let act = Edit::Several {
            label: "act".into(),
            edits,
        };
        assert_eq!(
            plan.apply(&act).map_err(|error| error.to_string()),
            Err("There is no near button on this bike. Choose a button of the drawing.".into())
        );
    }
}
