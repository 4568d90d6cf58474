//! Undo as text, small enough to lie beside a plan.
//!
//! A step differs little from the one after it, so only what differs is
//! written. It is kept for this version of the program and for one plan: a text
//! that does not fit is left alone, as if there were none.

use std::sync::{Arc, OnceLock};

use serde_json::{Value, json};

use super::{History, Step, change};
use crate::document;

impl History {
    /// How many steps back are written at most.
    pub const KEPT: usize = 50;

    /// The latest steps of undo as text of at most `room` bytes, as many as go
    /// into it. What was undone is not kept.
    pub fn write_past(&self, room: usize) -> String {
        let mut steps: Vec<&str> = Vec::new();
        let mut used = 2;
        let (mut after, mut value) = (&self.present, None);
        for step in self.past.iter().rev().take(Self::KEPT) {
            let known = value.take();
            let line = step.written.0.get_or_init(|| {
                let now = known.unwrap_or_else(|| document::value(after));
                let before = document::value(&step.plan);
                let line = json!([step.label, change::between(&now, &before)]).to_string();
                value = Some(before);
                line
            });
            used += line.len() + 1;
            if used > room {
                break;
            }
            steps.push(line);
            after = &step.plan;
        }
        format!("[{}]", steps.join(","))
    }

    /// The present plan is another than the last step was written for.
    pub(super) fn rewrite_last(&mut self) {
        if let Some(step) = self.past.last_mut() {
            step.written = Written::default();
        }
    }

    /// Plans of the past are others than they were.
    pub(super) fn rewrite_all(&mut self) {
        for step in &mut self.past {
            step.written = Written::default();
        }
    }

    /// Takes up undo that was written when the oldest plan here was the present
    /// one. Steps that cannot be read, and all before them, are left out; how
    /// many were taken up.
    pub fn recall(&mut self, text: &str) -> usize {
        let oldest = self.past.first().map_or(&self.present, |step| &step.plan);
        let mut after = document::value(oldest);
        let mut steps = Vec::new();
        let lines: Vec<Value> = serde_json::from_str(text).unwrap_or_default();
        for line in lines.iter().take(Self::KEPT) {
            let Some((before, step)) = read_step(after, line) else {
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

/// A step as text, once it was written: it says what differs from the step after it, or from the
/// present. Writing it takes longer than everything else about saving, and it stays the same.
#[derive(Debug, Clone, Default)]
pub(super) struct Written(OnceLock<String>);

/// It follows from the plans: histories do not differ by it.
impl PartialEq for Written {
    fn eq(&self, _: &Written) -> bool {
        true
    }
}

fn read_step(after: Value, line: &Value) -> Option<(Value, Step)> {
    let before = match line.get(1)? {
        Value::Null => after,
        change => change::apply(change, after)?,
    };
    let plan = document::read(before.to_string()).ok()?.plan;
    let label = line.get(0)?.as_str()?.to_owned();
    Some((before, Step::new(Arc::new(plan), label)))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, Edit, RiderEdit};
    use crate::plan::Plan;
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
        fn what_was_written_once_is_written_the_same_again(
            (plan, edits) in plan_and_edits(),
            acts in prop::collection::vec(0..9u8, 1..40)
        ) {
            let other = plan.without_hand_details(None);
            let mut history = History::new(plan);
            let mut edits = edits.iter().cycle();
            for act in acts {
                match act {
                    0 | 1 => { history.undo(); }
                    2 => { history.redo(); }
                    3 => history.remove_hand_details(None),
                    4 => history.take_over(other.clone(), "take it over"),
                    5 | 6 => { let _ = history.commit(edits.next().expect("edits are cycled")); }
                    _ => { history.write_past(ROOM); }
                }
                let mut anew = history.clone();
                anew.rewrite_all();
                prop_assert_eq!(history.clone().write_past(ROOM), anew.write_past(ROOM));
            }
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
    fn after_one_change_one_step_is_written() {
        let mut history = named((0..80).map(|n| format!("bike {n}")));
        let unwritten = |history: &History| {
            let steps = history.past.iter().rev().take(History::KEPT);
            steps.filter(|step| step.written.0.get().is_none()).count()
        };
        history.write_past(ROOM);
        assert_eq!(unwritten(&history), 0);
        let name = Edit::Bike(BikeEdit::Name("another".into()));
        history.commit(&name).expect("a bike is named");
        assert_eq!(unwritten(&history), 1);
    }

    #[test]
    fn steps_are_small() {
        let history = named((0..50).map(|n| format!("bike {n}")));
        let whole = document::write(history.plan()).len();
        let kept = history.write_past(ROOM).len();
        assert!(kept < whole, "{kept} bytes for 50 steps of {whole}");
    }

    #[test]
    fn a_long_record_takes_little_room() {
        let history = named((0..300).map(|n| format!("bike {n}")));
        let whole = document::write(history.plan()).len();
        let kept = history.write_past(ROOM);
        assert!(
            kept.len() < whole / 4,
            "{} bytes for 50 steps of {whole}",
            kept.len()
        );
        let mut again = History::new(history.plan().clone());
        assert_eq!(again.recall(&kept), History::KEPT);
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
