//! Plans as files: export, import, and copies that cannot be read.

use std::sync::Arc;

use leverwright_core::document::{MOST_BYTES, Opened};
use leverwright_core::plan::Plan;
use wasm_bindgen_futures::JsFuture;
use web_sys::File;

use super::{BrowserDrawer, Library};
use crate::arrivals::{Arrivals, Arrived, Origin};
use crate::parts::{Part, desk};
use crate::storage::download::download;
use crate::storage::drawer::Drawer;
use crate::storage::file_name;
use crate::storage::plan_id::PlanId;
use crate::storage::shelf::Damaged;
use crate::workspace::Offer;

impl Library {
    /// Hands a plan to the person as a file.
    pub fn export(self, id: &PlanId) {
        let Some(plan) = self.plan(id) else { return };
        let file = file_name::for_plan(plan.name.as_str());
        let text = (desk().write)(&plan);
        match download(&file, "application/json", &text) {
            Ok(()) => {
                self.note_exported(id, &plan);
                match self.shared_computer.get_untracked() {
                    true => self.workspace.tell(format!(
                        "Exported as {file}. It lies in the downloads of this computer, which \
                         others use: take it along, and delete it there."
                    )),
                    false => self.workspace.report(format!("Exported as {file}.")),
                }
            }
            Err(_) => self
                .workspace
                .refuse("The browser did not make the file. Look whether it may download."),
        }
    }

    /// Hands part of the open plan to the person as a file.
    pub fn export_part(self, part: &Plan) {
        let file = file_name::for_plan(part.name.as_str());
        match download(&file, "application/json", &(desk().write)(part)) {
            Ok(()) => self.workspace.report(format!("Saved as {file}.")),
            Err(_) => self
                .workspace
                .refuse("The browser did not make the file. Look whether it may download."),
        }
    }

    fn note_exported(self, id: &PlanId, plan: &Arc<Plan>) {
        self.with_record(id, |record| record.exported = Some(Arc::clone(plan)));
    }

    /// Reads a file. One that is a copy of a plan here waits for a choice; any
    /// other is taken in as a new plan. One that cannot be a plan is told in a
    /// sentence; the open plan stays as it is.
    /// `taken_in` goes on from there, `waits` to the choice.
    pub fn import(self, file: File, arrivals: Arrivals, taken_in: fn(), waits: fn()) {
        leptos::task::spawn_local(async move {
            let from = Origin::File(file.name());
            if let Err(error) = Part::Desk.fetch().await {
                return self.workspace.refuse(&error.to_string());
            }
            match read_file(&file).await {
                Ok(opened) if !self.copies_of(&opened.plan).is_empty() => {
                    let opened = Ok(opened);
                    arrivals.add(Arrived { from, opened });
                    waits();
                }
                Ok(opened) => {
                    self.take_in(&from, opened);
                    taken_in();
                }
                Err(reason) => {
                    let from = from.words();
                    self.workspace
                        .refuse(&format!("{from} was not opened. {reason}"));
                }
            }
        });
    }

    /// Tells that copies of a plan cannot be read, and what was opened instead.
    pub(super) fn tell_damaged(self, plan: &Plan, saved: u64, damaged: &[Damaged]) {
        for copy in damaged {
            let (download, discard) = (copy.clone(), copy.clone());
            let offers = vec![
                Offer::new("Download the unreadable copy", move || {
                    self.download_damaged(&download);
                }),
                Offer::new("Discard it", move || self.discard_damaged(&discard)),
            ];
            let text = format!(
                "One saved copy of “{}” cannot be read: {}. The newest readable copy, saved {}, \
                 was opened. Look whether your last change is in it.",
                plan.name,
                copy.damage,
                in_words(saved)
            );
            self.workspace.leave(text, true, offers);
        }
    }

    /// Hands a copy that cannot be read to the person, as it lies there.
    pub fn download_damaged(self, copy: &Damaged) {
        let file = file_name::for_unreadable(&copy.key.plan.to_string(), copy.key.letter);
        if download(&file, "text/plain", &copy.raw).is_err() {
            self.workspace
                .refuse("The browser did not make the file. Look whether it may download.");
        }
    }

    /// Takes a copy that cannot be read away.
    pub fn discard_damaged(self, copy: &Damaged) {
        BrowserDrawer.remove(&copy.key.key());
        self.with_record(&copy.key.plan, |record| {
            record.aside.retain(|key| *key != copy.key);
        });
        self.workspace.say("Discarded.");
        self.look_again();
    }
}

/// Reads a file, unless it is larger than any plan.
async fn read_file(file: &File) -> Result<Opened, String> {
    let bytes = file.size();
    if bytes > MOST_BYTES as f64 {
        return Err(format!(
            "It has {:.1} MB; a plan has at most {:.0} MB. Choose a file that was exported here.",
            bytes / 1e6,
            MOST_BYTES as f64 / 1e6
        ));
    }
    let buffer = JsFuture::from(file.array_buffer())
        .await
        .map_err(|_| "The browser could not read it. Choose it again.".to_owned())?;
    let bytes = js_sys::Uint8Array::new(&buffer).to_vec();
    (desk().read)(&bytes)
}

/// A moment as people here write it: day and minute.
pub fn in_words(milliseconds: u64) -> String {
    let date = js_sys::Date::new(&(milliseconds as f64).into());
    let style = js_sys::Object::new();
    for (part, length) in [("dateStyle", "medium"), ("timeStyle", "short")] {
        // A plain object takes any entry.
        let _ = js_sys::Reflect::set(&style, &part.into(), &length.into());
    }
    date.to_locale_string("default", &style).into()
}
