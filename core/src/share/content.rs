//! What goes along when a plan is handed on.

use std::sync::Arc;

use crate::finding::Role;
use crate::plan::Plan;
use crate::practice;
use crate::record::{Code, Entry, Matter, PartKey, Record, Revision, Step};
use crate::review::Audience;
use crate::text::{Text, list};

vocabulary! {
    /// What goes along when a plan is handed on.
    pub enum Along as "choice of what goes along" {
        /// Bike and layouts only: hands, notes, reviews and names stay here.
        /// The usual choice.
        WithoutRider = "without-rider", "without rider details";
        /// Everything that everyone may see.
        WithRider = "with-rider", "with rider details";
        /// Everything, comments for rider and clinician only included.
        RiderAndClinician = "rider-and-clinician", "with rider details and comments for rider and clinician only";
        /// The layout in hand on its bike, for a QR code.
        Layout = "layout", "the layout only";
    }
}

impl Along {
    /// The choices that people have for a plan, the usual one first.
    pub fn choices(plan: &Plan) -> Vec<Along> {
        let is_private = |entry: &Arc<Entry>| matches!(&entry.matter, Matter::Comment { audience, .. } if *audience == Audience::RiderAndClinician);
        let privately = plan.record.entries.iter().any(is_private);
        let mut choices = vec![Along::WithoutRider, Along::WithRider];
        choices.extend(privately.then_some(Along::RiderAndClinician));
        choices
    }

    /// What goes along and what stays, in sentences.
    pub const fn explained(self) -> &'static str {
        match self {
            Along::WithoutRider => {
                "Along go the plan’s name and job number, bike, brakes, system, road and all layouts. Here stay the nickname, what the hands can do, the rider’s own words, notes, reviews, practice, and who did what."
            }
            Along::WithRider => {
                "Everything in the plan goes along: hands, own words, notes, reviews. Practice goes along once the rider has sent it. Comments for rider and clinician only stay here."
            }
            Along::RiderAndClinician => {
                "Everything in the plan goes along, comments for rider and clinician only included. Send it to nobody else."
            }
            Along::Layout => {
                "The layout in hand goes along on its bike: no rider, no other layouts, nothing of its past."
            }
        }
    }
}

/// What people wrote that does not go along, counted: "1 decision, 2 comments
/// and 3 requested changes stay here." `None` where nothing of that kind stays.
pub fn stays(plan: &Plan, along: Along) -> Option<String> {
    let sent = content(plan, along);
    let goes = |entry: &Entry| {
        let found = sent.record.entry(entry.id);
        found.is_some_and(|sent| sent.matter == entry.matter)
    };
    let (mut decisions, mut comments, mut changes) = (0, 0, 0);
    for entry in plan.record.standing().filter(|entry| !goes(entry)) {
        match &entry.matter {
            Matter::Review(review) => {
                decisions += 1;
                changes += review.changes.len();
            }
            Matter::Comment { .. } => comments += 1,
            _ => {}
        }
    }
    let counts = [
        (decisions, "decision", "decisions"),
        (comments, "comment", "comments"),
        (changes, "requested change", "requested changes"),
    ];
    let some = counts.into_iter().filter(|(count, ..)| *count > 0);
    let said: Vec<String> = some
        .map(|(count, one, many)| format!("{count} {}", if count == 1 { one } else { many }))
        .collect();
    let verb = match decisions + comments + changes {
        0 => return None,
        1 => "stays",
        _ => "stay",
    };
    Some(format!("{} {verb} here.", list(&said, "and")))
}

/// What is said beside the choice without rider details.
pub const IMPLIED: &str = "A layout itself still shows which hand does the work.";

/// What is said beside a link.
pub const LASTING: &str = "Whoever has the link has the plan. Links stay in browser histories and chats; a file can be deleted.";

/// Practice that a choice would send but for the rider's word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PracticeLeft {
    /// What is said beside the choice.
    pub words: &'static str,
    /// The sessions that stay; whoever may include them writes a
    /// [`Matter::Sent`] for each. Empty for who may not.
    pub may_include: Vec<Code>,
}

/// What is said where practice stays although everything else goes along: the
/// rider may include it, and whoever did not say who sits there. `None` where no
/// practice is kept, all of it was sent already, or the choice sends none.
pub fn practice_left(plan: &Plan, along: Along, role: Option<Role>) -> Option<PracticeLeft> {
    let sends_practice = matches!(along, Along::WithRider | Along::RiderAndClinician);
    let layouts = plan.layouts.iter();
    let unsent: Vec<Code> = layouts
        .flat_map(|layout| practice::unsent(plan, layout.id))
        .collect();
    if !sends_practice || unsent.is_empty() {
        return None;
    }
    let left = match role {
        None | Some(Role::Rider) => PracticeLeft {
            words: "Your practice stays here.",
            may_include: unsent,
        },
        Some(Role::Shop | Role::Clinician) => PracticeLeft {
            words: "Practice stays here until the rider includes it.",
            may_include: Vec::new(),
        },
    };
    Some(left)
}

/// Revisions of which a link tells where they came from, newest first.
const MOST_TOLD: usize = 12;

/// The plan as it is handed on.
pub fn content(plan: &Plan, along: Along) -> Plan {
    match along {
        Along::WithRider => with_rider(plan, false),
        Along::RiderAndClinician => with_rider(plan, true),
        Along::WithoutRider => without_rider(plan),
        Along::Layout => layout_only(plan),
    }
}

/// Practice stays with the rider until it is sent; comments for rider and
/// clinician only stay among them.
fn with_rider(plan: &Plan, privately: bool) -> Plan {
    let mut sent = plan.clone();
    let record = &plan.record;
    let is_sent = |entry: &Entry| {
        let mut all = record.entries.iter();
        all.any(|other| matches!(other.matter, Matter::Sent(id) if id == entry.id))
    };
    sent.record.entries.retain(|entry| match &entry.matter {
        Matter::Practice(_) => is_sent(entry),
        Matter::Comment { audience, .. } => privately || *audience != Audience::RiderAndClinician,
        _ => true,
    });
    sent
}

fn without_rider(plan: &Plan) -> Plan {
    let mut sent = plan.without_hand_details(plan.rider.hand_details_removed);
    sent.rider.nickname = Text::default();
    if let Some(chosen) = &mut sent.chosen {
        chosen.by = Text::default();
        chosen.reason = Text::default();
    }
    let record = &mut sent.record;
    record.entries = record
        .entries
        .iter()
        .map(|entry| Arc::new(nameless(entry)))
        .collect();
    record.revisions = record.revisions.iter().map(|r| Arc::new(bare(r))).collect();
    sent
}

/// The plan with as much of its past as a link carries: where its latest
/// revisions came from.
pub(super) fn light(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    let revisions = &mut plan.record.revisions;
    let more = revisions.len().saturating_sub(MOST_TOLD);
    revisions.drain(..more);
    for revision in revisions {
        let mut light = revision.as_ref().clone();
        light.parts.iter_mut().for_each(|step| step.was.clear());
        *revision = Arc::new(light);
    }
    plan
}

/// A layout on its bike and nothing of its past.
fn layout_only(plan: &Plan) -> Plan {
    let mut sent = plan.without_hand_details(plan.rider.hand_details_removed);
    sent.rider.nickname = Text::default();
    sent.layouts.retain(|layout| layout.id == plan.current);
    sent.chosen = None;
    let layout = PartKey::Layout(plan.current);
    sent.record.stamps.retain(|stamp| {
        stamp.held.is_none() && (stamp.part == layout || stamp.part == PartKey::Bike)
    });
    sent.record = Record {
        stamps: sent.record.stamps,
        removals: sent.record.removals,
        ..Record::default()
    };
    sent
}

/// A step of the stand check without the words and the name on it.
fn nameless(entry: &Entry) -> Entry {
    let mut entry = entry.clone();
    entry.by = Text::default();
    if let Matter::Step(Step { what, .. }) = &mut entry.matter {
        *what = Text::default();
    }
    entry
}

/// Where a revision came from, without who, when and what. Digests of what was
/// said of the hands go, too: somebody might guess what they were made of.
fn bare(revision: &Revision) -> Revision {
    let mut bare = revision.clone();
    bare.by = Text::default();
    bare.role = None;
    bare.date = None;
    bare.what = Text::default();
    bare.parts.retain(|step| !step.part.is_about_hands());
    for step in &mut bare.parts {
        step.was.clear();
    }
    bare
}
