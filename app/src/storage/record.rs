//! What this tab knows about a plan in the store.

use std::sync::Arc;

use leverwright_core::history::History;
use leverwright_core::plan::Plan;

use super::browser::BrowserDrawer;
use super::plan_id::PlanId;
use super::shelf::{self, Unsaved};
use super::slot::{Slot, SlotKey, Stamp};
use super::undo;
use crate::parts::desk;

/// Where a plan is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeping {
    /// In this browser, until it is deleted.
    InBrowser,
    /// In this page only, until it is closed: for a computer that others use.
    InPage,
}

/// How far keeping a plan has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// Everything is saved.
    Saved,
    /// Something is not saved yet.
    Pending,
    /// It is kept in this page only, as asked.
    InPage,
    /// The last save did not come about.
    Unsaved(Unsaved),
}

impl Standing {
    /// In words, for beside the plan's name.
    pub fn words(self) -> &'static str {
        match self {
            Standing::Saved => "Saved in this browser",
            Standing::Pending => "Saving …",
            Standing::InPage => "In this page only",
            Standing::Unsaved(Unsaved::Full) => "Not saved: no room in this browser",
            Standing::Unsaved(Unsaved::ChangedElsewhere) => "Not saved: changed in another tab",
            Standing::Unsaved(Unsaved::GoneElsewhere) => "Not saved: deleted in another tab",
        }
    }
}

/// What this tab knows about a plan in the store.
#[derive(Debug, Clone, PartialEq)]
pub struct Record {
    /// The plan's name in the store.
    pub id: PlanId,
    /// Where it is kept.
    pub keeping: Keeping,
    /// The newest copy that this tab wrote or read.
    pub known: Option<Stamp>,
    /// Slots that keep what cannot be read.
    pub aside: Vec<SlotKey>,
    /// The plan as this tab last wrote or read it.
    pub saved: Option<Arc<Plan>>,
    /// The plan as it was last exported as a file.
    pub exported: Option<Arc<Plan>>,
    /// Why the last save did not come about.
    pub unsaved: Option<Unsaved>,
}

impl Record {
    /// A plan that was never saved.
    pub fn new(id: PlanId, keeping: Keeping) -> Record {
        Record {
            id,
            keeping,
            known: None,
            aside: Vec::new(),
            saved: None,
            exported: None,
            unsaved: None,
        }
    }

    /// How far keeping `plan` has come.
    pub fn standing(&self, plan: &Arc<Plan>) -> Standing {
        match (self.keeping, self.unsaved) {
            (Keeping::InPage, _) => Standing::InPage,
            (_, Some(unsaved)) => Standing::Unsaved(unsaved),
            _ if self.is_saved(plan) => Standing::Saved,
            _ => Standing::Pending,
        }
    }

    /// Whether `plan` is what lies in the store.
    pub fn is_saved(&self, plan: &Arc<Plan>) -> bool {
        self.saved.as_ref() == Some(plan)
    }

    /// Whether closing the page would lose something of `plan`.
    pub fn would_be_lost(&self, plan: &Arc<Plan>) -> bool {
        let stored = self.keeping == Keeping::InBrowser && self.is_saved(plan);
        !stored && self.exported.as_ref() != Some(plan)
    }

    /// As [`Record::would_be_lost`], for a plan that was put aside.
    pub fn would_be_lost_in(&self, history: &History) -> bool {
        self.would_be_lost(&history.shared_plan())
    }

    /// Saves a plan beside what lies there, with its undo. Undo makes room where
    /// there is none for the plan.
    pub fn save(&mut self, history: &History, writer: &str, now: u64) {
        let plan = &history.shared_plan();
        if self.keeping == Keeping::InPage || self.is_saved(plan) && self.unsaved.is_none() {
            return;
        }
        let slot = self.slot(plan, writer, now);
        let known = self.known.as_ref();
        let drawer = &mut BrowserDrawer;
        let mut outcome = shelf::save(drawer, &self.id, known, &self.aside, &slot);
        if outcome == Err(Unsaved::Full) {
            undo::forget_all(drawer);
            outcome = shelf::save(drawer, &self.id, known, &self.aside, &slot);
        }
        self.note(outcome, &slot, history, plan);
    }

    /// Saves a plan as the only copy, with its undo as it is now: nothing older
    /// stays.
    pub fn save_alone(&mut self, history: &History, writer: &str, now: u64) {
        if self.keeping == Keeping::InPage {
            return;
        }
        let plan = &history.shared_plan();
        undo::forget(&mut BrowserDrawer, &self.id);
        let slot = self.slot(plan, writer, now);
        let known = self.known.as_ref();
        let outcome = shelf::save_alone(&mut BrowserDrawer, &self.id, known, &slot);
        self.aside.clear();
        self.note(outcome, &slot, history, plan);
    }

    /// The next copy.
    fn slot(&self, plan: &Plan, writer: &str, now: u64) -> Slot {
        let stamp = Stamp {
            counter: self.known.as_ref().map_or(1, |known| known.counter + 1),
            writer: writer.to_owned(),
        };
        Slot::new(stamp, now, (desk().write)(plan))
    }

    fn note(
        &mut self,
        outcome: Result<(), Unsaved>,
        slot: &Slot,
        history: &History,
        plan: &Arc<Plan>,
    ) {
        match outcome {
            Ok(()) => {
                undo::keep(&mut BrowserDrawer, &self.id, &slot.stamp(), history);
                self.known = Some(slot.stamp());
                self.saved = Some(Arc::clone(plan));
                self.unsaved = None;
            }
            Err(unsaved) => self.unsaved = Some(unsaved),
        }
    }
}
