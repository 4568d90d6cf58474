//! Two copies of a plan become one, part by part.
//!
//! Each part of a copy has a version: the number of the revision that made it
//! and a digest. Of two versions the later one stays; so any order of merging
//! any copies gives the same plan. Where both copies changed a part since they
//! parted, people may choose otherwise: a choice is a change like any other,
//! with a revision of its own, and so wins in every copy that it reaches. What
//! people wrote into the record is joined without loss. What was said of the
//! hands before it was removed does not come back.
//!
//! ```
//! use leverwright_core::catalogue::{TemplateId, template};
//! use leverwright_core::edit::{Edit, LayoutEdit};
//! use leverwright_core::history::History;
//! use leverwright_core::merge::{Merge, Stand};
//!
//! let mine = template(TemplateId::RoadPlain).plan("Over the pass");
//! let mut theirs = History::new(mine.clone());
//! theirs.commit(&Edit::Layout(LayoutEdit::Clear))?;
//!
//! let merge = Merge::of(&mine, theirs.plan());
//! let changed: Vec<_> = merge.changed().collect();
//! assert_eq!(changed.len(), 1);
//! assert_eq!(changed[0].stand, Stand::TheirsNewer);
//! # Ok::<(), leverwright_core::edit::EditError>(())
//! ```

mod join;
mod lineage;
#[cfg(test)]
mod tests;

pub use join::join;
pub(crate) use join::show_what_is_held;

use serde_json::Value;

use crate::document::{self, DocumentError, pieces};
use crate::layout::LayoutId;
use crate::plan::Plan;
use crate::record::{self, Desk, Matter, PartKey, Pin};
use crate::revision::{Difference, differences_of_part};
use crate::text::list;
use join::State;

vocabulary! {
    /// How a part of two copies stands.
    pub enum Stand as "stand of a part" {
        /// Both say the same.
        Same = "same", "the same";
        /// Theirs was made from mine.
        TheirsNewer = "theirs-newer", "theirs is newer";
        /// Mine was made from theirs.
        MineNewer = "mine-newer", "mine is newer";
        /// Both were changed since the copies parted, or nobody can tell.
        BothChanged = "both-changed", "both were changed";
    }
}

vocabulary! {
    /// What becomes of a part.
    pub enum Choice as "choice" {
        /// Mine stays.
        Mine = "mine", "keep mine";
        /// Theirs is taken.
        Theirs = "theirs", "take theirs";
        /// Both layouts stay; theirs under a number of its own.
        Both = "both", "keep both";
    }
}

/// One part of two copies.
#[derive(Debug, Clone, PartialEq)]
pub struct MergePart {
    /// The part.
    pub part: PartKey,
    /// What it is called: "left hand", "layout “Evening”".
    pub name: String,
    /// How it stands.
    pub stand: Stand,
    /// What becomes of it unless somebody chooses otherwise: the later version
    /// stays, whoever merges.
    pub usual: Choice,
    /// The choices there are.
    pub choices: Vec<Choice>,
    /// What differs, from mine to theirs.
    pub differences: Vec<Difference>,
}

/// What people wrote in the other copy that mine does not have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct NewEntries {
    /// Decisions.
    pub decisions: usize,
    /// What was added to earlier entries.
    pub addenda: usize,
    /// What was withdrawn.
    pub withdrawals: usize,
    /// Comments.
    pub comments: usize,
    /// Marks on buttons.
    pub marks: usize,
    /// What the rider said in own words.
    pub own_words: usize,
    /// What a newer version wrote, of a kind that this one does not know.
    pub others: usize,
    /// Steps of checks.
    pub checks: usize,
    /// Practice sessions.
    pub practice: usize,
}

/// A merge to look at and decide on.
#[derive(Debug, Clone, PartialEq)]
pub struct Merge {
    /// The parts in order, those that are the same too.
    pub parts: Vec<MergePart>,
    /// What people wrote there; it is taken up in any case.
    pub new_entries: NewEntries,
    /// Whether hand details were removed in the other copy and go here, too.
    pub removes_hands: bool,
    mine: Plan,
    theirs: Plan,
}

impl Merge {
    /// Looks at another copy beside mine.
    pub fn of(mine: &Plan, theirs: &Plan) -> Merge {
        let (mut a, mut b) = (State::of(mine), State::of(theirs));
        State::forget_removed(&mut a, &mut b);
        let parts = a.parts_with(&b);
        let parts = parts
            .iter()
            .map(|part| part_of(part, (mine, &a), (theirs, &b)));
        Merge {
            parts: parts.collect(),
            new_entries: NewEntries::of(mine, theirs),
            removes_hands: mine.record.removals < theirs.record.removals && mine.has_hand_details(),
            mine: mine.clone(),
            theirs: theirs.clone(),
        }
    }

    /// The parts that differ.
    pub fn changed(&self) -> impl Iterator<Item = &MergePart> {
        self.parts.iter().filter(|part| part.stand != Stand::Same)
    }

    /// Whether the other copy brings nothing new.
    pub fn is_idle(&self) -> bool {
        self.changed().all(|part| part.stand == Stand::MineNewer)
            && self.new_entries == NewEntries::default()
            && !self.removes_hands
    }

    /// What is to be known before the choices, in sentences: what is taken up in
    /// any case, what goes, what is to be decided.
    pub fn said(&self, mine: &str) -> Vec<String> {
        let mut said = Vec::new();
        if self.is_idle() {
            said.push(format!(
                "This copy brings nothing that “{mine}” does not have."
            ));
        }
        if self.removes_hands {
            said.push(
                "In the copy that came, hand details were removed. They go here, too, also from undo."
                    .into(),
            );
        }
        if self.mine.record.removals > self.theirs.record.removals {
            said.push(
                "Here hand details were removed. What the copy that came says of the hands does not come back."
                    .into(),
            );
        }
        if let Some(words) = self.new_entries.words() {
            said.push(format!("Taken up in any case: {words}."));
        }
        let of = |stand| {
            self.changed()
                .filter(move |part| part.stand == stand)
                .count()
        };
        match of(Stand::TheirsNewer) {
            0 => {}
            1 => said.push(
                "One part is newer in theirs and is taken, unless you choose otherwise.".into(),
            ),
            n => said.push(format!(
                "{n} parts are newer in theirs and are taken, unless you choose otherwise."
            )),
        }
        match of(Stand::BothChanged) {
            0 => {}
            1 => said.push("One part was changed in both. Look at it and choose.".into()),
            n => said.push(format!(
                "{n} parts were changed in both. Look at them and choose."
            )),
        }
        said
    }

    /// The merged plan, with the choices that somebody made. Choices against
    /// the usual become a revision of their own.
    ///
    /// # Errors
    /// When the copies together are more than a plan holds.
    pub fn make(&self, choices: &[(PartKey, Choice)], desk: &Desk) -> Result<Plan, DocumentError> {
        let joined = join(&self.mine, &self.theirs)?;
        let mut said = document::pieces(&joined);
        let [mine, theirs] = [&self.mine, &self.theirs].map(document::pieces);
        let mut also = Vec::new();
        for (key, choice) in choices {
            let Some(part) = self.changed().find(|part| part.part == *key) else {
                continue;
            };
            let of = |pieces: &pieces::Pieces| pieces::find(pieces, key).clone();
            match choice {
                _ if !part.choices.contains(choice) || part.usual == *choice => {}
                Choice::Mine => set(&mut said, key, of(&mine)),
                Choice::Theirs => set(&mut said, key, of(&theirs)),
                Choice::Both => {
                    set(&mut said, key, of(&mine));
                    also.push(of(&theirs));
                }
            }
        }
        for layout in also {
            add_under_free_number(&mut said, &joined, layout);
        }
        if said == document::pieces(&joined) {
            return Ok(joined);
        }
        let chosen = document::assemble(&said, joined.revision.saturating_add(1))?;
        let mut chosen = Plan {
            record: joined.record.clone(),
            unknown: join::with_those_of_record(chosen.unknown, &joined.unknown),
            ..chosen
        };
        record::stamp(&joined, &mut chosen, "choose while merging", desk);
        Ok(chosen)
    }
}

fn part_of(part: &PartKey, (mine, a): (&Plan, &State), (theirs, b): (&Plan, &State)) -> MergePart {
    let (my, their) = (a.piece(part), b.piece(part));
    let stand = lineage::stand(part, &my, &their, &mine.record, &theirs.record);
    let both_there = !my.says.is_null() && !their.says.is_null();
    let mut choices = vec![Choice::Mine, Choice::Theirs];
    if matches!(part, PartKey::Layout(_)) && stand == Stand::BothChanged && both_there {
        choices.push(Choice::Both);
    }
    if mine.record.removals != theirs.record.removals && part.is_about_hands() {
        choices.clear();
    }
    MergePart {
        part: part.clone(),
        name: name(part, mine, theirs),
        stand,
        usual: match their.rank() > my.rank() {
            true => Choice::Theirs,
            false => Choice::Mine,
        },
        choices,
        differences: differences_of_part(part, &my.says, &their.says, mine, theirs),
    }
}

fn name(part: &PartKey, mine: &Plan, theirs: &Plan) -> String {
    let id = match part {
        PartKey::Layout(id) => id,
        PartKey::Accepted(finding) => {
            return format!("accepted {}", Pin::Finding(finding.clone()).words(mine));
        }
        _ => return part.to_string(),
    };
    let mut layouts = mine.layouts.iter().chain(&theirs.layouts);
    match layouts.find(|layout| layout.id == *id) {
        Some(layout) => format!("layout “{}”", layout.name),
        None => part.to_string(),
    }
}

fn set(said: &mut pieces::Pieces, part: &PartKey, value: Value) {
    match said.binary_search_by(|(key, _)| key.cmp(part)) {
        Ok(at) if value.is_null() => drop(said.remove(at)),
        Ok(at) => said[at].1 = value,
        Err(_) if value.is_null() => {}
        Err(at) => said.insert(at, (part.clone(), value)),
    }
}

fn add_under_free_number(said: &mut pieces::Pieces, joined: &Plan, mut layout: Value) {
    let stamps = joined.record.stamps.iter().map(|stamp| &stamp.part);
    let taken = said.iter().map(|(key, _)| key).chain(stamps);
    let highest = taken.filter_map(|key| match key {
        PartKey::Layout(id) => Some(id.0),
        _ => None,
    });
    let number = highest.max().map_or(1, |highest| highest.saturating_add(1));
    layout["id"] = number.into();
    set(said, &PartKey::Layout(LayoutId(number)), layout);
}

impl MergePart {
    /// Why there is no choice, where there is none.
    pub const fn decided(&self) -> &'static str {
        "Nothing to choose: hand details were removed in one of the two, and removal stands."
    }
}

impl NewEntries {
    /// "1 decision and 2 comments"; nothing where there is nothing.
    pub fn words(&self) -> Option<String> {
        let counts = [
            (self.decisions, "decision", "decisions"),
            (self.addenda, "addendum", "addenda"),
            (self.withdrawals, "withdrawal", "withdrawals"),
            (self.comments, "comment", "comments"),
            (self.marks, "mark on a button", "marks on buttons"),
            (
                self.own_words,
                "entry in the rider’s own words",
                "entries in the rider’s own words",
            ),
            (self.others, "other entry", "other entries"),
            (self.checks, "step of a check", "steps of checks"),
            (self.practice, "practice session", "practice sessions"),
        ];
        let some = counts.into_iter().filter(|(count, ..)| *count > 0);
        let words: Vec<String> = some
            .map(|(count, one, many)| format!("{count} {}", if count == 1 { one } else { many }))
            .collect();
        (!words.is_empty()).then(|| list(&words, "and"))
    }

    fn of(mine: &Plan, theirs: &Plan) -> NewEntries {
        let mut new = NewEntries::default();
        let removed = theirs.record.removals < mine.record.removals;
        for entry in &theirs.record.entries {
            let known = mine.record.entry(entry.id).is_some();
            if known || removed && entry.matter.is_about_hands() {
                continue;
            }
            let count = match entry.matter {
                Matter::Review(_) => &mut new.decisions,
                Matter::Addendum { .. } => &mut new.addenda,
                Matter::Withdrawn { .. } => &mut new.withdrawals,
                Matter::Comment { .. } => &mut new.comments,
                Matter::Words(_) => &mut new.own_words,
                Matter::Mark { .. } => &mut new.marks,
                Matter::Other => &mut new.others,
                Matter::Step(_) | Matter::Again(_) => &mut new.checks,
                Matter::Practice(_) | Matter::Sent(_) => &mut new.practice,
            };
            *count += 1;
        }
        new
    }
}
