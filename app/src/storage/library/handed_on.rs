//! What somebody handed on: as a plan of its own, or merged with a copy of it
//! that lies here.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::document::Opened;
use leverwright_core::plan::Plan;

use super::{Library, now};
use crate::arrivals::Origin;
use crate::parts::desk;
use crate::storage::plan_id::PlanId;

impl Library {
    /// The plans here that are copies of one that came, the open one first, then
    /// the newest.
    pub fn copies_of(self, came: &Plan) -> Vec<(PlanId, Arc<Plan>)> {
        self.look_again();
        let copies = self.cards.with_untracked(|cards| {
            let copy = |id: &PlanId, plan: &Arc<Plan>| {
                // The open plan may have been changed since it was saved.
                let plan = match self.is_open(id) {
                    true => self.workspace.plan.get_untracked()?,
                    false => Arc::clone(plan),
                };
                (desk().are_copies)(&plan, came).then(|| (id.clone(), plan))
            };
            let cards = cards.iter();
            let found = cards.filter_map(|card| copy(&card.id, card.plan.as_ref()?));
            found.collect::<Vec<_>>()
        });
        let (open, others): (Vec<_>, Vec<_>) =
            copies.into_iter().partition(|(id, _)| self.is_open(id));
        open.into_iter().chain(others).collect()
    }

    /// A copy as it stands.
    pub fn copy(self, id: &PlanId) -> Option<Arc<Plan>> {
        self.plan(id)
    }

    /// Takes what came as a new plan and opens it.
    pub fn take_in(self, from: &Origin, opened: Opened) {
        let name = opened.plan.name.to_string();
        let has_namesake = self.free_name(&name) != name;
        self.start(opened.plan, &name);
        let came = from.words();
        let kept = match from {
            Origin::Link => "",
            Origin::File(_) => "; the file stays as it is",
        };
        if opened.notes.is_empty() {
            let beside = match has_namesake {
                true => " beside another of the same name",
                false => "",
            };
            self.workspace.report(format!(
                "{came} was opened. It is a new plan here{beside}{kept}."
            ));
            return;
        }
        let remarks: Vec<&str> = opened.notes.iter().map(|n| n.words.as_str()).collect();
        self.workspace
            .tell(format!("{came} is open. {}", remarks.join(" ")));
    }

    /// Puts a merged plan in the place of the copy it was made with, as one act
    /// that undo takes back; whether the copy was there.
    pub fn take_over(self, id: &PlanId, merged: Plan) -> bool {
        if !self.open(id) {
            return false;
        }
        let removals = |plan: &Plan| plan.record.removals;
        let before = self.workspace.plan.get_untracked();
        let forgets = before.is_some_and(|plan| removals(&plan) < removals(&merged));
        self.workspace.change_history(|history| {
            (desk().take_over)(history, merged, "merge with another copy");
        });
        match forgets {
            true => self.save_the_only_copy(),
            false => self.save_now(),
        }
        self.look_again();
        true
    }

    /// Saves the open plan so that no older copy stays beside it.
    fn save_the_only_copy(self) {
        let record = self.desk.get_untracked();
        if let (Some(mut record), Some(history)) = (record, self.workspace.history()) {
            record.exported = None;
            record.save_alone(&history, &self.tabs.name.get_value(), now());
            let outcome = record.unsaved;
            self.desk.set(Some(record));
            self.tell_outcome(None, outcome);
        }
    }
}
