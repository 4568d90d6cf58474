//! Undo and redo.

use crate::edit::{Edit, EditError};
use crate::plan::Plan;

/// A plan with its past and its undone future.
///
/// Snapshots are kept whole: a plan is small, and one way of going back is
/// simpler than an inverse for every edit.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    present: Plan,
    past: Vec<Step>,
    future: Vec<Step>,
}

#[derive(Debug, Clone, PartialEq)]
struct Step {
    plan: Plan,
    label: String,
}

impl History {
    /// How many steps back are kept.
    pub const DEPTH: usize = 400;

    /// A history that begins with this plan.
    pub fn new(plan: Plan) -> History {
        History {
            present: plan,
            past: Vec::new(),
            future: Vec::new(),
        }
    }

    /// The plan as it stands.
    pub fn plan(&self) -> &Plan {
        &self.present
    }

    /// Makes a change. One that changes nothing leaves no trace.
    ///
    /// # Errors
    /// When the edit goes against the plan; the plan stays as it was.
    pub fn commit(&mut self, edit: &Edit) -> Result<(), EditError> {
        let next = self.present.apply(edit)?;
        if next == self.present {
            return Ok(());
        }
        let label = edit.label(&self.present);
        let mut next = next;
        next.revision = self.highest_revision().saturating_add(1);
        let plan = std::mem::replace(&mut self.present, next);
        self.past.push(Step { plan, label });
        if self.past.len() > Self::DEPTH {
            self.past.remove(0);
        }
        self.future.clear();
        Ok(())
    }

    /// What undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        self.past.last().map(|step| step.label.as_str())
    }

    /// What redo would make again.
    pub fn redo_label(&self) -> Option<&str> {
        self.future.last().map(|step| step.label.as_str())
    }

    /// Takes the last change back; whether there was one.
    pub fn undo(&mut self) -> bool {
        let Some(step) = self.past.pop() else {
            return false;
        };
        let plan = std::mem::replace(&mut self.present, step.plan);
        self.future.push(Step {
            plan,
            label: step.label,
        });
        true
    }

    /// Makes the last undone change again; whether there was one.
    pub fn redo(&mut self) -> bool {
        let Some(step) = self.future.pop() else {
            return false;
        };
        let plan = std::mem::replace(&mut self.present, step.plan);
        self.past.push(Step {
            plan,
            label: step.label,
        });
        true
    }

    /// Removes hand details from the plan and from everything undo and redo
    /// keep. It cannot be undone: that is its purpose. Steps that changed
    /// nothing else go too, because their labels speak of the hands.
    pub fn remove_hand_details(&mut self) {
        let revision = self.highest_revision().saturating_add(1);
        for step in self.past.iter_mut().chain(&mut self.future) {
            step.plan = step.plan.without_hand_details();
        }
        self.present = self.present.without_hand_details();
        drop_idle(&mut self.past, &self.present);
        drop_idle(&mut self.future, &self.present);
        self.present.revision = revision;
    }

    /// The highest revision ever given out, so that a number never means two
    /// different plans.
    fn highest_revision(&self) -> u32 {
        self.future
            .iter()
            .map(|step| step.plan.revision)
            .chain([self.present.revision])
            .max()
            .unwrap_or(0)
    }
}

/// Drops the steps, latest last, that lead to a plan no different from their
/// own.
fn drop_idle(steps: &mut Vec<Step>, present: &Plan) {
    let differs = |a: &Plan, b: &Plan| {
        let revision = a.revision;
        *a != Plan {
            revision,
            ..b.clone()
        }
    };
    let mut kept: Vec<Step> = Vec::new();
    for step in steps.drain(..).rev() {
        let next = kept.last().map_or(present, |step| &step.plan);
        if differs(&step.plan, next) {
            kept.push(step);
        }
    }
    kept.reverse();
    *steps = kept;
}

#[cfg(test)]
mod tests {
    use super::History;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{Ease, HandPosition, SeenReach};
    use crate::edit::{BikeEdit, Edit, LayoutEdit, RiderEdit};
    use crate::rider::{Contact, HandPlace, Side};

    #[test]
    fn hand_details_leave_no_trace_in_undo_and_redo() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let (button, ..) = plan.bike.buttons()[0];
        let seen = SeenReach {
            from: HandPosition::Hoods,
            contact: Contact::Ring,
            ease: Some(Ease::Move),
        };
        let mut history = History::new(plan);
        for edit in [
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
            Edit::Bike(BikeEdit::SeenReach(button, seen)),
            Edit::Layout(LayoutEdit::Clear),
            Edit::Rider(RiderEdit::OwnWords("the thumb tires".into())),
        ] {
            history.commit(&edit).expect("the edit is possible");
        }
        history.undo();
        history.remove_hand_details();

        let trace = format!("{history:?}");
        for word in ["Rests", "thumb tires", "contact: Ring", "right hand"] {
            assert!(!trace.contains(word), "{word} is left");
        }
        assert_eq!(history.undo_label(), Some("clear the layout"));
        assert!(history.undo() && history.undo() && !history.undo());
        assert!(history.redo() && history.redo() && !history.redo());
    }
}
