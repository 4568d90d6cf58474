//! What can be done with a plan of the list, open or not.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::history::History;
use leverwright_core::plan::Plan;
use leverwright_core::text::Text;

use super::{BrowserDrawer, Library, now};
use crate::parts::desk;
use crate::storage::drawer::Drawer;
use crate::storage::plan_id::PlanId;
use crate::storage::record::{Keeping, Record};
use crate::storage::shelf;
use crate::storage::slot::SlotKey;
use crate::today::today;
use crate::workspace::Offer;

/// A deleted plan, as long as it may be wanted back.
#[derive(Clone)]
struct Deleted {
    was_open: bool,
    held: Option<(Record, History)>,
    copies: Vec<(SlotKey, String)>,
}

impl Library {
    /// A plan as it stands, open or not.
    pub(super) fn plan(self, id: &PlanId) -> Option<Arc<Plan>> {
        if self.is_open(id) {
            return self.workspace.plan.get_untracked();
        }
        let held = self.take_up(id)?;
        let plan = held.1.shared_plan();
        self.hold(held);
        Some(plan)
    }

    /// Gives a plan another name.
    pub fn rename(self, id: &PlanId, name: &str) {
        let edit = Edit::Plan(PlanEdit::Name(Text::new(name)));
        self.change(id, |history| {
            // A name is never refused.
            let _ = (desk().commit)(history, &edit);
        });
        self.workspace.say("Renamed.");
    }

    /// Makes a plan of its own from another, and opens it.
    pub fn duplicate(self, id: &PlanId) {
        let Some(plan) = self.plan(id) else { return };
        let name = self.free_name(&format!("{} (copy)", plan.name));
        self.start(Plan::clone(&plan), &name);
        self.workspace.say(format!("“{name}” is open."));
    }

    /// Deletes a plan and offers to bring it back.
    pub fn delete(self, id: &PlanId, name: &str) {
        let was_open = self.is_open(id);
        if was_open {
            self.put_aside();
        }
        let deleted = Deleted {
            was_open,
            held: self.aside.try_update_value(|a| a.remove(id)).flatten(),
            copies: shelf::remove(&mut BrowserDrawer, id),
        };
        self.forget_if_opened(id);
        let back = Offer::new("Bring it back", move || self.bring_back(deleted.clone()));
        let text = format!(
            "“{name}” is deleted. It can be brought back until this message is dismissed or the \
             page is closed."
        );
        self.workspace.leave(text, false, vec![back]);
        self.look_again();
        self.save_now();
    }

    fn bring_back(self, deleted: Deleted) {
        let full = deleted
            .copies
            .iter()
            .filter(|(key, raw)| BrowserDrawer.put_back(&key.key(), raw).is_err())
            .count();
        let id = match (&deleted.held, deleted.copies.first()) {
            (Some((record, _)), _) => record.id.clone(),
            (None, Some((key, _))) => key.plan.clone(),
            (None, None) => return,
        };
        if let Some((mut record, history)) = deleted.held {
            if full > 0 {
                record.unsaved = Some(shelf::Unsaved::Full);
            }
            self.hold((record, history));
        }
        if deleted.was_open {
            self.open(&id);
        }
        self.look_again();
        self.workspace.say("It is back.");
    }

    /// Keeps a plan in this page only: what lies in the browser goes.
    pub fn keep_in_page(self, id: &PlanId) {
        let Some(held) = self.lift(id) else { return };
        let (record, history) = held;
        shelf::remove(&mut BrowserDrawer, id);
        let record = Record {
            exported: record.exported,
            ..Record::new(id.clone(), Keeping::InPage)
        };
        self.put_down((record, history));
        self.workspace.say(
            "In this page only, from now on: it is gone when the page is closed. Nothing of it is \
             left in this browser.",
        );
    }

    /// Keeps a plan in this browser.
    pub fn keep_in_browser(self, id: &PlanId) {
        let Some((record, history)) = self.lift(id) else {
            return;
        };
        let mut record = Record {
            keeping: Keeping::InBrowser,
            ..record
        };
        record.save(&history, &self.tab(), now());
        self.tell_outcome(None, record.unsaved);
        self.put_down((record, history));
    }

    /// Removes hand details from a plan, its undo and every copy here.
    pub fn remove_hand_details(self, id: &PlanId) {
        let Some((mut record, mut history)) = self.lift(id) else {
            return;
        };
        (desk().forget_hands)(&mut history, today());
        let plan = history.shared_plan();
        record.exported = None;
        record.save_alone(&history, &self.tab(), now());
        let outcome = record.unsaved;
        let name = plan.name.clone();
        self.put_down((record, history));
        match outcome {
            None => self.workspace.tell(format!(
                "Hand details are removed from “{name}”, from its undo and from every copy in this \
                 browser. Files, prints and other open tabs keep what they have."
            )),
            Some(_) => {
                self.workspace.refuse(&format!(
                    "Hand details are removed from “{name}” here and from its undo, but the copy \
                     in this browser could not be written: it may still hold them."
                ));
                self.tell_outcome(None, outcome);
            }
        }
    }

    /// Changes a plan that may not be open, and saves it.
    fn change(self, id: &PlanId, change: impl FnOnce(&mut History)) {
        if self.is_open(id) {
            self.workspace.change_history(change);
            self.save_now();
            self.look_again();
            return;
        }
        let Some((mut record, mut history)) = self.take_up(id) else {
            return;
        };
        change(&mut history);
        record.save(&history, &self.tab(), now());
        self.tell_outcome(None, record.unsaved);
        self.hold((record, history));
        self.look_again();
    }

    /// Takes a plan in hand, from the desk or from where it lies; the open one
    /// stays on the desk meanwhile.
    fn lift(self, id: &PlanId) -> Option<(Record, History)> {
        if self.is_open(id) {
            self.desk.get_untracked().zip(self.workspace.history())
        } else {
            self.take_up(id)
        }
    }

    /// Puts a plan back where it was taken from.
    fn put_down(self, held: (Record, History)) {
        if self.is_open(&held.0.id) {
            let (record, history) = held;
            self.lay_out(record, history);
        } else {
            self.hold(held);
        }
        self.look_again();
    }

    fn hold(self, held: (Record, History)) {
        self.aside.update_value(|aside| {
            aside.insert(held.0.id.clone(), held);
        });
    }

    /// Changes what is known of a plan's place, where this page holds it.
    pub(super) fn with_record(self, id: &PlanId, change: impl Fn(&mut Record)) {
        if self.is_open(id) {
            self.desk.update(|desk| desk.iter_mut().for_each(&change));
        }
        self.aside.update_value(|aside| {
            if let Some((record, _)) = aside.get_mut(id) {
                change(record);
            }
        });
    }

    pub(super) fn is_open(self, id: &PlanId) -> bool {
        self.desk
            .with_untracked(|desk| desk.as_ref().is_some_and(|record| record.id == *id))
    }

    fn tab(self) -> String {
        self.tabs.name.get_value()
    }
}
