//! Offers the plan as a file now and then, where it is not kept for long.

use leptos::prelude::*;

use super::Library;
use crate::storage::browser::is_page_from_file;
use crate::storage::record::Keeping;
use crate::workspace::Offer;

/// After this many changes the plan is offered as a file (our judgement: about
/// as much as one does again without anger).
const EVERY: u32 = 12;

impl Library {
    /// Counts changes from now on, as long as the page lives.
    pub(super) fn keep_reminding(self) {
        let changes = StoredValue::new(0_u32);
        Effect::new(move |_| {
            self.workspace.plan.track();
            let Some(reason) = self.reason_to_export() else {
                changes.set_value(0);
                return;
            };
            changes.update_value(|changes| *changes += 1);
            if changes.get_value() > EVERY {
                changes.set_value(0);
                self.offer_file(reason);
            }
        });
    }

    /// Why the open plan had better be a file, unless it is one as it stands.
    fn reason_to_export(self) -> Option<&'static str> {
        let plan = self.workspace.plan.get_untracked()?;
        let record = self.desk.get_untracked()?;
        if record.exported.as_ref() == Some(&plan) {
            return None;
        }
        match record.keeping {
            Keeping::InPage => Some("This plan is in this page only. Export it if it is to stay."),
            Keeping::InBrowser if is_page_from_file() => Some(
                "Export the plan now and then: this page was opened from a file, and browsers \
                 may forget what such a page keeps.",
            ),
            Keeping::InBrowser => None,
        }
    }

    fn offer_file(self, reason: &str) {
        let export = Offer::new("Export the plan", move || {
            if let Some(id) = self.open_id() {
                self.export(&id);
            }
        });
        self.workspace.leave(reason.to_owned(), false, vec![export]);
    }
}
