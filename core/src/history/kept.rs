//! Undo as text, small enough to lie beside a plan.
//!
//! A step differs little from the one after it, so only what differs is
//! written. It is kept for this version of the program and for one plan: a text
//! that does not fit is left alone, as if there were none.

use serde_json::{Value, json};

use super::{History, Step};
use crate::document;
use crate::plan::Plan;
use crate::record::Record;

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
            let change = Change::between(&after, &before);
            let line = json!([
                step.label,
                step.plan.revision,
                change.front,
                change.back,
                change.middle
            ]);
            let line = match follows(&step.plan.record, &self.present.record, step.plan.revision) {
                true => line,
                false => json!([step.label, step.plan.revision, document::write(&step.plan)]),
            };
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
            let record = &self.present.record;
            let Some((before, step)) = read_step(&after, line, record) else {
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
/// stands far from what else does. The record, too: that of an earlier step
/// follows from that of a later one.
fn text_of(plan: &Plan) -> String {
    document::write(&Plan {
        revision: 1,
        record: Record::default(),
        ..plan.clone()
    })
}

/// Whether the record of an earlier step follows from that of the present.
fn follows(record: &Record, present: &Record, revision: u32) -> bool {
    let mut record = record.clone();
    record.take_entries(present);
    record == present.as_of(revision)
}

fn read_step(after: &str, line: &Value, record: &Record) -> Option<(String, Step)> {
    let number = |at: usize| usize::try_from(line.get(at)?.as_u64()?).ok();
    let label = line.get(0)?.as_str()?.to_owned();
    if let Some(whole) = line.get(2)?.as_str() {
        let plan = document::read(whole).ok()?.plan;
        return Some((text_of(&plan), Step { plan, label }));
    }
    let change = Change {
        front: number(2)?,
        back: number(3)?,
        middle: line.get(4)?.as_str()?,
    };
    let before = change.applied_to(after)?;
    let mut plan = document::read(&before).ok()?.plan;
    plan.revision = u32::try_from(number(1)?).ok()?;
    plan.record = record.as_of(plan.revision);
    Some((before, Step { plan, label }))
}

/// How one text differs from another: between what they begin and end with
/// alike, in bytes, one has something else.
struct Change<'a> {
    front: usize,
    back: usize,
    middle: &'a str,
}

impl<'a> Change<'a> {
    fn between(from: &str, to: &'a str) -> Change<'a> {
        let (a, b) = (from.as_bytes(), to.as_bytes());
        let alike =
            |pairs: &mut dyn Iterator<Item = (&u8, &u8)>| pairs.take_while(|(a, b)| a == b).count();
        let mut front = alike(&mut a.iter().zip(b));
        while !to.is_char_boundary(front) || !from.is_char_boundary(front) {
            front -= 1;
        }
        let mut back = alike(&mut a[front..].iter().rev().zip(b[front..].iter().rev()));
        while !to.is_char_boundary(to.len() - back) || !from.is_char_boundary(from.len() - back) {
            back -= 1;
        }
        Change {
            front,
            back,
            middle: &to[front..to.len() - back],
        }
    }

    fn applied_to(&self, from: &str) -> Option<String> {
        let front = from.get(..self.front)?;
        let back = from.get(from.len().checked_sub(self.back)?..)?;
        Some([front, self.middle, back].concat())
    }
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
    fn a_long_record_takes_no_more_room() {
        let history = named((0..300).map(|n| format!("bike {n}")));
        let whole = document::write(history.plan()).len();
        let kept = history.write_past(ROOM).len();
        assert!(kept < 8_000, "{kept} bytes for 50 steps of {whole}");
        let mut again = History::new(history.plan().clone());
        assert_eq!(again.recall(&history.write_past(ROOM)), History::KEPT);
        assert!(again.undo());
        assert_eq!(again.plan().record.revisions.len(), 299);
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
