//! What a plan keeps beside what it says: who changed what when, what people
//! wrote into it, and what merging needs.
//!
//! A plan travels between people who have no common server, so each copy
//! carries enough to be joined with any other in any order: a version for each
//! part, revisions with what they replaced, and entries that are only added to.

mod code;
mod entry;
mod log;
mod part;
mod revision;

pub use code::Code;
pub use entry::{Check, Entry, Matter, MixUp, Outcome, Pin, Practised, Step, signed};
pub(crate) use log::stamp;
pub use part::{PartKey, Version};
pub use revision::{PartStep, Revision, Was};

use std::sync::Arc;

use serde_json::Value;

use crate::document;
use crate::finding::Role;
use crate::text::{Date, Text};

/// What a plan keeps beside what it says.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Record {
    /// How often hand details were removed. What was said of the hands before
    /// the last time never comes back, whatever older copy is merged.
    pub removals: u32,
    /// The version of each part that was changed since the plan began, in the
    /// order of the parts.
    pub stamps: Vec<Stamp>,
    /// The changes, oldest first; shared, because undo keeps many copies.
    pub revisions: Vec<Arc<Revision>>,
    /// What people wrote, oldest first.
    pub entries: Vec<Arc<Entry>>,
}

/// The version of a part.
#[derive(Debug, Clone, PartialEq)]
pub struct Stamp {
    /// The part.
    pub part: PartKey,
    /// Its version.
    pub version: Version,
    /// What the part says, where the plan cannot show it: more layouts than a
    /// plan holds, reach seen on a button that is gone. Null for a part that
    /// was removed.
    pub held: Option<Arc<Value>>,
}

/// Who works at a plan, and when: it stands beside every change.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Desk {
    /// What they are called; a typed name is not a signature.
    pub by: Text,
    /// In what role; `None` where nobody said.
    pub role: Option<Role>,
    /// The day.
    pub date: Option<Date>,
}

/// Whether a text of a file says more than another, of which something may have
/// been left out: the longer one; of two as long, the later in the alphabet, so
/// that every copy decides alike.
pub(crate) fn is_fuller(text: &str, than: &str) -> bool {
    (text.len(), text) > (than.len(), than)
}

impl Record {
    /// The most revisions that a plan keeps; the oldest go first.
    pub const MOST_REVISIONS: usize = 1000;

    /// Whether nothing is kept.
    pub fn is_empty(&self) -> bool {
        *self == Record::default()
    }

    /// The version of a part, if it was changed since the plan began.
    pub fn version(&self, part: &PartKey) -> Option<Version> {
        self.stamp(part).map(|stamp| stamp.version)
    }

    pub(crate) fn stamp(&self, part: &PartKey) -> Option<&Stamp> {
        let at = self.stamps.binary_search_by(|stamp| stamp.part.cmp(part));
        at.ok().map(|at| &self.stamps[at])
    }

    /// Keeps the version of a part.
    pub(crate) fn set_stamp(&mut self, new: Stamp) {
        match self.stamps.binary_search_by(|s| s.part.cmp(&new.part)) {
            Ok(at) => self.stamps[at] = new,
            Err(at) => self.stamps.insert(at, new),
        }
    }

    /// An entry by its name.
    pub fn entry(&self, id: Code) -> Option<&Entry> {
        let found = self.entries.iter().find(|entry| entry.id == id);
        found.map(Arc::as_ref)
    }

    /// Why an entry no longer stands, and who says so.
    pub fn withdrawn(&self, id: Code) -> Option<(&Entry, &Text)> {
        self.entries.iter().find_map(|entry| match &entry.matter {
            Matter::Withdrawn { what, reason } if *what == id => Some((entry.as_ref(), reason)),
            _ => None,
        })
    }

    /// What was added to an entry, oldest first.
    pub fn addenda(&self, id: Code) -> impl Iterator<Item = (&Entry, &Text)> {
        let entries = self.entries.iter();
        entries.filter_map(move |entry| match &entry.matter {
            Matter::Addendum { to, text } if *to == id => Some((entry.as_ref(), text)),
            _ => None,
        })
    }

    /// The entries that stand, oldest first.
    pub fn standing(&self) -> impl Iterator<Item = &Entry> {
        let entries = self.entries.iter().map(Arc::as_ref);
        entries.filter(|entry| self.withdrawn(entry.id).is_none())
    }

    /// The revision with a number; of several with the same, the one that this
    /// plan descends from.
    pub fn revision(&self, number: u32) -> Option<&Revision> {
        let of = |revision: &&Arc<Revision>| revision.number == number;
        let stands = |revision: &&Arc<Revision>| {
            let versions = revision.parts.iter();
            versions.map(|step| step.version(number)).any(|version| {
                self.stamps.iter().any(|stamp| stamp.version == version)
                    || self
                        .revisions
                        .iter()
                        .any(|later| later.parts.iter().any(|step| step.from == version))
            })
        };
        let mut all = self.revisions.iter().filter(of);
        let found = all.clone().find(stands).or_else(|| all.next());
        found.map(Arc::as_ref)
    }

    /// Puts the lists in their order; of what is there twice, the fuller stays.
    pub(crate) fn put_in_order(&mut self) {
        self.stamps.sort_unstable_by(|a, b| a.part.cmp(&b.part));
        self.stamps.dedup_by(|a, b| a.part == b.part);
        (self.revisions).sort_unstable_by_key(|revision| (revision.number, revision.id));
        self.entries
            .sort_unstable_by_key(|entry| (entry.turn, entry.id));
    }

    /// Takes up what people wrote in another copy; nothing is lost, and nothing
    /// comes back that was removed.
    pub(crate) fn take_entries(&mut self, other: &Record) {
        let removed = other.removals < self.removals;
        let theirs = other.entries.iter();
        let theirs = theirs.filter(|entry| !(removed && entry.matter.is_about_hands()));
        for entry in theirs {
            match self.entries.iter_mut().find(|mine| mine.id == entry.id) {
                None => self.entries.push(entry.clone()),
                Some(mine) if Arc::ptr_eq(mine, entry) => {}
                // The same entry, with a name left out on one side.
                Some(mine) if is_fuller(&document::entry(entry), &document::entry(mine)) => {
                    *mine = entry.clone();
                }
                Some(_) => {}
            }
        }
        self.put_in_order();
    }

    /// The step that made a version of a part, where the record reaches back.
    pub(crate) fn step_to(&self, part: &PartKey, version: Version) -> Option<&PartStep> {
        // Revisions stand in the order of their numbers.
        let revisions = &self.revisions;
        let first = revisions.partition_point(|r| r.number < version.revision);
        let mut of_number =
            (revisions[first..].iter()).take_while(|r| r.number == version.revision);
        of_number.find_map(|revision| {
            let mut steps = revision.parts.iter();
            // A step leads back, or the record was tampered with.
            let leads_back = |step: &&PartStep| step.from.revision < version.revision;
            steps
                .find(|step| step.part == *part && step.to == version.code)
                .filter(leads_back)
        })
    }

    /// Forgets what was said of the hands, also before earlier changes.
    pub(crate) fn without_hand_details(&self) -> Record {
        let mut record = self.clone();
        record.stamps.retain(|stamp| !stamp.part.is_about_hands());
        record
            .entries
            .retain(|entry| !entry.matter.is_about_hands());
        for revision in &mut record.revisions {
            if revision.parts.iter().any(|step| step.part.is_about_hands()) {
                *revision = Arc::new(log::without_hands(revision));
            }
        }
        record
    }
}
