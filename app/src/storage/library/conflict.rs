//! Another tab changed or deleted the open plan, and what to do about it.

use std::sync::Arc;

use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::text::Text;

use super::{BrowserDrawer, Library, fresh_bits, read_document};
use crate::parts::desk;
use crate::storage::plan_id::PlanId;
use crate::storage::record::{Keeping, Record};
use crate::storage::shelf::{self, Unsaved};
use crate::workspace::Offer;

impl Library {
    /// Looks whether another tab changed or deleted the open plan.
    pub(super) fn look_at_store(self) {
        let Some(record) = self.desk.get_untracked() else {
            return;
        };
        if record.keeping == Keeping::InPage || record.known.is_none() {
            return;
        }
        if self.is_contested(&record) {
            return;
        }
        let known = record.known.as_ref();
        if let Err(unsaved) = shelf::unchanged(&BrowserDrawer, &record.id, known) {
            self.desk.update(|desk| {
                if let Some(record) = desk {
                    record.unsaved = Some(unsaved);
                }
            });
            self.tell_conflict();
        }
    }

    /// Whether another tab has a say in the plan, so that it may not be saved
    /// over.
    pub(super) fn is_contested(self, record: &Record) -> bool {
        matches!(
            record.unsaved,
            Some(Unsaved::ChangedElsewhere | Unsaved::GoneElsewhere)
        )
    }

    /// Asks which of the two counts, unless that question stands already.
    pub(super) fn tell_conflict(self) {
        let name = self.name();
        let unsaved = self.desk.with_untracked(|desk| desk.as_ref()?.unsaved);
        let copy = Offer::new("Keep mine as a copy", move || self.keep_as_copy());
        let (text, offers) = match unsaved {
            Some(Unsaved::GoneElsewhere) => (
                format!(
                    "“{name}” was deleted in another tab. Until you choose, it is in this page \
                     only."
                ),
                vec![copy, Offer::new("Close it", move || self.close())],
            ),
            _ => (
                format!(
                    "“{name}” is open in another tab, and was changed there. Until you choose, \
                     what you change here is not saved."
                ),
                vec![Offer::new("Take theirs", move || self.take_theirs()), copy],
            ),
        };
        let stands = |notices: &Vec<crate::workspace::Notice>| {
            notices.iter().any(|notice| notice.text == text)
        };
        if !self.workspace.notices.with_untracked(stands) {
            self.workspace.leave(text, true, offers);
        }
    }

    /// Takes what the other tab saved; undo gives back what was here.
    fn take_theirs(self) {
        let Some(record) = self.desk.get_untracked() else {
            return;
        };
        let found = shelf::find(&BrowserDrawer, &record.id, read_document);
        let Some((_, plan)) = found.best else {
            self.workspace
                .refuse("What the other tab saved cannot be read. Keep yours as a copy.");
            return;
        };
        self.workspace.change_history(|history| {
            (desk().take_over)(history, plan.clone(), "take what another tab saved")
        });
        self.desk.set(Some(Record {
            known: found.known,
            saved: Some(Arc::new(plan)),
            unsaved: None,
            ..record
        }));
        self.workspace.say("This is what the other tab saved.");
    }

    /// Goes on with what is here under another name, in a place of its own.
    fn keep_as_copy(self) {
        let name = Text::new(&format!("{} (copy)", self.name()));
        self.workspace.commit(Edit::Plan(PlanEdit::Name(name)));
        let record = Record::new(PlanId::from_bits(fresh_bits()), Keeping::InBrowser);
        if let Some(history) = self.workspace.history() {
            self.tabs.closed();
            self.lay_out(record, history);
        }
        self.save_now();
        self.look_again();
        self.workspace.say("Kept as a copy.");
    }

    /// The page goes before anybody chose: what was changed here is kept as a
    /// copy rather than lost.
    pub(super) fn rescue_contested(self) {
        let record = self.desk.get_untracked();
        let plan = self.workspace.plan.get_untracked();
        if let (Some(record), Some(plan)) = (record, plan) {
            let changed = !record.is_saved(&plan);
            if changed && self.is_contested(&record) {
                self.keep_as_copy();
            }
        }
    }

    /// Clears the desk of a plan that is no longer wanted.
    fn close(self) {
        self.tabs.closed();
        self.desk.set(None);
        self.workspace.close();
        self.look_again();
    }

    /// The open plan's name.
    fn name(self) -> String {
        let plan = self.workspace.plan.get_untracked();
        plan.map_or_else(String::new, |plan| plan.name.to_string())
    }
}
