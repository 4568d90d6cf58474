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
    /// keep. It cannot be undone: that is its purpose.
    pub fn remove_hand_details(&mut self) {
        let revision = self.highest_revision().saturating_add(1);
        for step in self.past.iter_mut().chain(&mut self.future) {
            step.plan.rider = step.plan.rider.without_hand_details();
        }
        self.present.rider = self.present.rider.without_hand_details();
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
