//! Undo as text, small enough to lie beside a plan.
//!
//! A step differs little from the one after it, in a few places far apart, so
//! only the lines that differ are written. It is kept for this version of the
//! program and for one plan: a text
//! that does not fit is left alone, as if there were none.

use serde_json::{Value, json};

use super::{History, Step};
use crate::document;
use crate::plan::Plan;

impl History {
    /// How many steps back are written at most.
    pub const KEPT: usize = 50;

    /// The latest steps of undo as text of at most `room` bytes, as many as go
    /// into it. What was undone is not kept.
    pub fn write_past(&self, room: usize) -> String {
        let mut steps: Vec<Value> = Vec::new();
        let mut used = 2;
        let mut after = text_of(&self.present);
        for step in self.past.iter().rev().take(Self::KEPT) {
            let before = text_of(&step.plan);
            let changes: Vec<Value> = changes(&after, &before)
                .into_iter()
                .map(|change| json!([change.keep, change.drop, change.put]))
                .collect();
            let line = json!([step.label, step.plan.revision, changes]);
            used += line.to_string().len() + 1;
            if used > room {
                break;
            }
            steps.push(line);
            after = before;
        }
        Value::from(steps).to_string()
    }

    /// Takes up undo that was written when the oldest plan here was the present
    /// one. Steps that cannot be read, and all before them, are left out; how
    /// many were taken up.
    pub fn recall(&mut self, text: &str) -> usize {
        let oldest = self.past.first().map_or(&self.present, |step| &step.plan);
        let mut after = text_of(oldest);
        let mut steps = Vec::new();
        let lines: Vec<Value> = serde_json::from_str(text).unwrap_or_default();
        for line in lines.iter().take(Self::KEPT) {
            let Some((before, step)) = read_step(&after, line) else {
                break;
            };
            after = before;
            steps.push(step);
        }
        let taken = steps.len();
        steps.reverse();
        steps.append(&mut self.past);
        self.past = steps;
        taken
    }
}

/// A plan as text, whatever its revision: that changes with every step and
/// stands far from what else does.
fn text_of(plan: &Plan) -> String {
    document::write(&Plan {
        revision: 1,
        ..plan.clone()
    })
}

fn read_step(after: &str, line: &Value) -> Option<(String, Step)> {
    let changes = line.get(2)?.as_array()?.iter();
    let changes = changes.map(read_change).collect::<Option<Vec<Change>>>()?;
    let before = changed(after, &changes)?;
    let mut plan = document::read(&before).ok()?.plan;
    plan.revision = u32::try_from(line.get(1)?.as_u64()?).ok()?;
    let label = line.get(0)?.as_str()?.to_owned();
    Some((before, Step { plan, label }))
}

fn read_change(part: &Value) -> Option<Change> {
    let lines = |at: usize| usize::try_from(part.get(at)?.as_u64()?).ok();
    Some(Change {
        keep: lines(0)?,
        drop: lines(1)?,
        put: part.get(2)?.as_str()?.to_owned(),
    })
}

/// One place where a text differs from another: after some lines that stay,
/// other lines stand in place of some.
struct Change {
    /// How many lines stay.
    keep: usize,
    /// How many lines go.
    drop: usize,
    /// What comes in their place: whole lines.
    put: String,
}

fn lines(text: &str) -> Vec<&str> {
    text.split_inclusive('\n').collect()
}

/// Every place where a text differs from another, in order.
fn changes(from: &str, to: &str) -> Vec<Change> {
    let (from, to) = (lines(from), lines(to));
    let (mut a, mut b) = (&from[..], &to[..]);
    let mut found = Vec::new();
    loop {
        let keep = alike(a.iter().zip(b));
        (a, b) = (&a[keep..], &b[keep..]);
        if a.is_empty() && b.is_empty() {
            return found;
        }
        let (drop, put) = meet(a, b);
        found.push(Change {
            keep,
            drop,
            put: b[..put].concat(),
        });
        (a, b) = (&a[drop..], &b[put..]);
    }
}

fn alike<'a>(pairs: impl Iterator<Item = (&'a &'a str, &'a &'a str)>) -> usize {
    pairs.take_while(|(a, b)| a == b).count()
}

/// How many lines of each are passed over until both go on alike; where that is
/// far, until both end alike.
fn meet(a: &[&str], b: &[&str]) -> (usize, usize) {
    /// So many lines alike are no chance.
    const ALIKE: usize = 3;
    /// So far is looked.
    const FAR: usize = 400;
    for passed in 1..=FAR.min(a.len() + b.len()) {
        for drop in passed.saturating_sub(b.len())..=passed.min(a.len()) {
            let (rest, other) = (&a[drop..], &b[passed - drop..]);
            let enough = ALIKE.min(rest.len()).min(other.len());
            if enough > 0 && rest[..enough] == other[..enough] {
                return (drop, passed - drop);
            }
        }
    }
    let end = alike(a.iter().rev().zip(b.iter().rev()));
    (a.len() - end, b.len() - end)
}

/// A text with changes made to it; `None` where they do not fit.
fn changed(from: &str, changes: &[Change]) -> Option<String> {
    let from = lines(from);
    let mut rest = &from[..];
    let mut text = String::new();
    for change in changes {
        let kept = rest.get(..change.keep)?;
        text.push_str(&kept.concat());
        text.push_str(&change.put);
        rest = rest.get(change.keep..)?.get(change.drop..)?;
    }
    text.push_str(&rest.concat());
    Some(text)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, Edit, RiderEdit};
    use crate::rider::{HandPlace, Side};
    use crate::testing::plan_and_edits;

    const ROOM: usize = 1_000_000;

    /// Everything undo gives, newest first, with what each step is called.
    fn unwound(mut history: History) -> Vec<(Option<String>, Plan)> {
        let mut seen = Vec::new();
        loop {
            let label = history.undo_label().map(str::to_owned);
            seen.push((label, history.plan().clone()));
            if !history.undo() {
                return seen;
            }
        }
    }

    fn named(names: impl IntoIterator<Item = String>) -> History {
        let mut history = History::new(template(TemplateId::RoadPods).plan("Ärger"));
        for name in names {
            let name = Edit::Bike(BikeEdit::Name(name.as_str().into()));
            history.commit(&name).expect("a bike is named");
        }
        history
    }

    proptest! {
        #[test]
        fn undo_comes_back_as_it_was((plan, edits) in plan_and_edits()) {
            let mut history = History::new(plan);
            for edit in &edits {
                let _ = history.commit(edit);
            }
            let mut again = History::new(history.plan().clone());
            again.recall(&history.write_past(ROOM));
            prop_assert_eq!(unwound(again), unwound(history));
        }

        #[test]
        fn any_other_text_is_left_alone(text in "\\PC{0,80}", cut in 0..400_usize) {
            let history = named(["Übung".into(), "Rad “x”".into()]);
            let mut again = History::new(history.plan().clone());
            prop_assert_eq!(again.recall(&text), 0);
            let kept = history.write_past(ROOM);
            let torn = kept.get(..cut.min(kept.len() - 1)).unwrap_or_default();
            prop_assert_eq!(again.recall(torn), 0);
            // Of another plan nothing, or nothing that cannot be read.
            let mut other = History::new(template(TemplateId::Tricycle).plan("Other"));
            other.recall(&kept);
            for (_, plan) in unwound(other) {
                let opened = document::read(document::write(&plan));
                prop_assert_eq!(opened.map(|opened| opened.plan).ok(), Some(plan));
            }
        }
    }

    #[test]
    fn the_latest_steps_are_kept_as_far_as_there_is_room() {
        let history = named((0..80).map(|n| format!("bike {n}")));
        let recalled = |room| {
            let mut again = History::new(history.plan().clone());
            again.recall(&history.write_past(room))
        };
        assert_eq!(recalled(ROOM), History::KEPT);
        let few = recalled(800);
        assert!((2..40).contains(&few), "{few}");
        assert!(history.write_past(800).len() <= 800);
        assert_eq!(recalled(0), 0);
    }

    #[test]
    fn steps_are_small() {
        let history = named((0..50).map(|n| format!("bike {n}")));
        let whole = document::write(history.plan()).len();
        let kept = history.write_past(ROOM).len();
        assert!(kept < whole, "{kept} bytes for 50 steps of {whole}");
    }

    #[test]
    fn what_was_removed_from_undo_is_not_written() {
        let mut history = History::new(template(TemplateId::RoadPods).plan("Test"));
        for edit in [
            RiderEdit::OwnWords("the thumb tires".into()),
            RiderEdit::OwnWords("better now".into()),
            RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None),
        ] {
            history.commit(&Edit::Rider(edit)).expect("it can be said");
        }
        assert!(history.write_past(ROOM).contains("thumb tires"));
        history.remove_hand_details(None);
        let kept = history.write_past(ROOM);
        assert!(
            !kept.contains("thumb tires") && !kept.contains("rests"),
            "{kept}"
        );
    }
}
