//! Saves the open plan by itself: soon after a change, and when the page goes
//! out of sight.

use std::time::Duration;

use leptos::ev;
use leptos::prelude::*;
use web_sys::VisibilityState;

use super::{Library, now};
use crate::storage::record::{Keeping, Record, Standing};
use crate::storage::shelf::Unsaved;
use crate::storage::slot::SlotKey;
use crate::workspace::Offer;

/// How long after a change the plan is saved, so that quick changes are saved
/// together.
const REST: Duration = Duration::from_millis(400);

impl Library {
    /// Saves from now on, as long as the page lives.
    pub(super) fn keep_saving(self) {
        Effect::new(move |_| {
            self.workspace.plan.track();
            self.save_soon();
        });
        let _ = window_event_listener(ev::storage, move |event| {
            let ours = event.key().is_none_or(|key| SlotKey::parse(&key).is_some());
            if ours {
                self.look_at_store();
                self.look_again();
            }
        });
        let _ = window_event_listener(ev::pagehide, move |_| self.leave_page());
        let _ = window_event_listener(ev::visibilitychange, move |_| {
            match document().visibility_state() {
                VisibilityState::Hidden => self.save_now(),
                _ => self.come_back(),
            }
        });
        let _ = window_event_listener(ev::beforeunload, move |event| {
            self.save_now();
            if self.would_lose() {
                // The browser asks in its own words.
                event.prevent_default();
                event.set_return_value("unsaved");
            }
        });
    }

    fn save_soon(self) {
        let pending = self.standing.get_untracked() != Some(Standing::Saved);
        if pending && !self.due.get_value() {
            self.due.set_value(true);
            set_timeout(move || self.save_now(), REST);
        }
    }

    /// Saves the open plan if anything of it is not saved.
    pub(super) fn save_now(self) {
        self.due.set_value(false);
        let plan = self.workspace.plan.get_untracked();
        let record = self.desk.get_untracked();
        let (Some(plan), Some(mut record)) = (plan, record) else {
            return;
        };
        if record.keeping == Keeping::InPage || record.standing(&plan) == Standing::Saved {
            return;
        }
        if self.is_contested(&record) {
            self.tell_conflict();
            return;
        }
        let before = record.unsaved;
        let writer = self.tabs.name.get_value();
        self.workspace
            .with_history(|history| record.save(history, &writer, now()));
        let after = record.unsaved;
        self.desk.set(Some(record));
        self.tell_outcome(before, after);
    }

    /// Tells how a save went, where that is news.
    pub(super) fn tell_outcome(self, before: Option<Unsaved>, after: Option<Unsaved>) {
        match (before, after) {
            (Some(Unsaved::Full), None) => self.workspace.tell("There is room again: saved."),
            (None, Some(Unsaved::Full)) => self.tell_full(),
            (_, Some(Unsaved::ChangedElsewhere | Unsaved::GoneElsewhere)) => self.tell_conflict(),
            _ => {}
        }
    }

    fn tell_full(self) {
        let export = Offer::new("Export the plan", move || {
            if let Some(id) = self.open_id() {
                self.export(&id);
            }
        });
        let text = "There is no room left in this browser: your last changes are in this page \
                    only, and the copy saved before them stays. Export the plan as a file, or \
                    delete plans that are no longer needed.";
        self.workspace.leave(text.to_owned(), true, vec![export]);
    }

    /// Whether loading the page again would lose something. Saves first.
    pub fn would_lose_on_reload(self) -> bool {
        self.save_now();
        self.would_lose()
    }

    /// Whether closing the page would lose something.
    fn would_lose(self) -> bool {
        let open = self.desk.with_untracked(|desk| {
            let plan = self.workspace.plan.get_untracked()?;
            Some(desk.as_ref()?.would_be_lost(&plan))
        });
        let lost = |(record, history): &(Record, _)| record.would_be_lost_in(history);
        open == Some(true) || self.aside.with_value(|aside| aside.values().any(lost))
    }

    fn leave_page(self) {
        self.save_now();
        self.rescue_contested();
        self.tabs.closed();
    }

    /// Other tabs were not heard while this one rested.
    fn come_back(self) {
        self.look_at_store();
        self.look_again();
        if let Some(id) = self.open_id() {
            self.tabs.opened(&id.to_string());
        }
    }
}
