//! Undo and redo.

mod change;
mod foreseen;
mod kept;

use std::sync::Arc;

pub use self::foreseen::Foreseen;
use self::kept::Written;
use crate::edit::{Edit, EditError};
use crate::merge;
use crate::plan::Plan;
use crate::record::{self, Desk};
use crate::text::Date;

/// A plan with its past and its undone future.
///
/// Snapshots are kept whole: a plan is small, and one way of going back is
/// simpler than an inverse for every edit. They are shared with who looks at them.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    present: Arc<Plan>,
    desk: Desk,
    past: Vec<Step>,
    future: Vec<Step>,
}

#[derive(Debug, Clone, PartialEq)]
struct Step {
    plan: Arc<Plan>,
    label: String,
    written: Written,
}

impl Step {
    fn new(plan: Arc<Plan>, label: String) -> Step {
        Step {
            plan,
            label,
            written: Written::default(),
        }
    }
}

impl History {
    /// How many steps back are kept.
    pub const DEPTH: usize = 400;

    /// A history that begins with this plan.
    pub fn new(plan: Plan) -> History {
        History {
            present: Arc::new(plan),
            desk: Desk::default(),
            past: Vec::new(),
            future: Vec::new(),
        }
    }

    /// The plan as it stands.
    pub fn plan(&self) -> &Plan {
        &self.present
    }

    /// The plan as it stands, to keep. No later change alters it.
    pub fn shared_plan(&self) -> Arc<Plan> {
        Arc::clone(&self.present)
    }

    /// Who works at the plan from now on, and the day: it stands in the history
    /// of revisions beside every change.
    pub fn sit_down(&mut self, desk: Desk) {
        self.desk = desk;
    }

    /// Makes a change. One that changes nothing leaves no trace.
    ///
    /// # Errors
    /// When the edit goes against the plan, or changes the rider's own words in
    /// another role; the plan stays as it was.
    pub fn commit(&mut self, edit: &Edit) -> Result<(), EditError> {
        let next = self.present.apply(edit)?;
        if next == *self.present {
            return Ok(());
        }
        self.may_change(&next)?;
        if is_only_written_into(&self.present, &next) {
            // What is in the record stays there: undo does not take it back.
            Arc::make_mut(&mut self.present).record = next.record;
            self.rewrite_last();
            return Ok(());
        }
        let (next, label) = self.revised(edit, next);
        self.step_to(Arc::new(next), label);
        Ok(())
    }

    /// What a change makes of the present plan, as a revision of its own, and what the change is
    /// called.
    fn revised(&self, edit: &Edit, mut next: Plan) -> (Plan, String) {
        let label = edit.label(&self.present);
        next.revision = self.next_revision();
        record::stamp(&self.present, &mut next, &label, &self.desk);
        (merge::show_what_is_held(next), label)
    }

    /// Takes the next plan, as one step that undo takes back.
    fn step_to(&mut self, next: Arc<Plan>, label: String) {
        let plan = std::mem::replace(&mut self.present, next);
        self.keep(Step::new(plan, label));
    }

    /// The rider's own words are for the rider to change.
    fn may_change(&self, next: &Plan) -> Result<(), EditError> {
        let (was, now) = (&self.present.rider.own_words, &next.rider.own_words);
        let removed = next.record.removals > self.present.record.removals;
        let may = self.present.rider.lets_change_own_words(self.desk.role);
        if was != now && !removed && !may {
            return Err(EditError::NotPossible(
                "These are the rider’s own words, and only the rider changes them. Write a comment instead.".into(),
            ));
        }
        Ok(())
    }

    /// Takes a plan that came from elsewhere in place of this one, as one step
    /// that undo takes back. The plan stays exactly as it came. Where hand
    /// details were removed from it, undo forgets them, too.
    pub fn take_over(&mut self, plan: Plan, label: &str) {
        self.step_to(Arc::new(plan), label.to_owned());
        self.forget_removed();
    }

    /// What was removed from the present plan stands in no step any more.
    fn forget_removed(&mut self) {
        let removals = self.present.record.removals;
        let on = self.present.rider.hand_details_removed;
        let mut forgot = false;
        for step in &mut self.past {
            if step.plan.record.removals < removals {
                step.plan = Arc::new(without_hand_details(&step.plan, on, removals));
                forgot = true;
            }
        }
        if forgot {
            drop_idle(&mut self.past, &self.present);
            self.rewrite_all();
        }
    }

    /// Keeps a step for undo; what was undone before is gone.
    fn keep(&mut self, step: Step) {
        self.past.push(step);
        if self.past.len() > Self::DEPTH {
            self.past.remove(0);
        }
        self.future.clear();
    }

    /// What undo would take back.
    pub fn undo_label(&self) -> Option<&str> {
        self.past.last().map(|step| step.label.as_str())
    }

    /// What redo would make again.
    pub fn redo_label(&self) -> Option<&str> {
        self.future.last().map(|step| step.label.as_str())
    }

    /// Takes the last change back; whether there was one.
    pub fn undo(&mut self) -> bool {
        let Some(step) = self.past.pop() else {
            return false;
        };
        let plan = self.go_to(step.plan);
        self.rewrite_last();
        self.future.push(Step::new(plan, step.label));
        true
    }

    /// Makes the last undone change again; whether there was one.
    pub fn redo(&mut self) -> bool {
        let Some(step) = self.future.pop() else {
            return false;
        };
        let plan = self.go_to(step.plan);
        self.past.push(Step::new(plan, step.label));
        true
    }

    /// Takes another state of the plan; what people wrote meanwhile stays.
    fn go_to(&mut self, mut plan: Arc<Plan>) -> Arc<Plan> {
        Arc::make_mut(&mut plan)
            .record
            .take_entries(&self.present.record);
        std::mem::replace(&mut self.present, plan)
    }

    /// Removes hand details, on this day, from the plan and from everything undo
    /// and redo keep. It cannot be undone: that is its purpose. Steps that changed
    /// nothing else go too, because their labels speak of the hands.
    pub fn remove_hand_details(&mut self, on: Option<Date>) {
        let revision = self.next_revision();
        let removals = self.present.record.removals.saturating_add(1);
        for step in self.past.iter_mut().chain(&mut self.future) {
            step.plan = Arc::new(without_hand_details(&step.plan, on, removals));
        }
        let present = Arc::make_mut(&mut self.present);
        present.remove_hand_details(on);
        drop_idle(&mut self.past, present);
        drop_idle(&mut self.future, present);
        present.revision = revision;
        self.rewrite_all();
    }

    /// One more than the highest revision ever given out, so that a number never
    /// means two different plans.
    fn next_revision(&self) -> u32 {
        let steps = self.past.iter().chain(&self.future);
        let given = steps.map(|step| step.plan.revision);
        let highest = given.chain([self.present.revision]).max().unwrap_or(0);
        highest.saturating_add(1)
    }
}

/// A plan as it is kept after hand details were removed for this many times.
fn without_hand_details(plan: &Plan, on: Option<Date>, removals: u32) -> Plan {
    let mut plan = plan.without_hand_details(on);
    plan.record.removals = removals;
    plan
}

/// Whether a change only wrote into the record.
fn is_only_written_into(before: &Plan, next: &Plan) -> bool {
    if before.record.entries.len() == next.record.entries.len() {
        return false;
    }
    let mut record = next.record.clone();
    record.entries.clone_from(&before.record.entries);
    *before
        == Plan {
            record,
            ..next.clone()
        }
}

/// Drops the steps, latest last, that lead to a plan no different from their
/// own.
fn drop_idle(steps: &mut Vec<Step>, present: &Plan) {
    let differs = |a: &Plan, b: &Plan| {
        *a != Plan {
            revision: a.revision,
            record: a.record.clone(),
            ..b.clone()
        }
    };
    let mut kept: Vec<Step> = Vec::new();
    for step in steps.drain(..).rev() {
        let next = kept.last().map_or(present, |step| &step.plan);
        if differs(&step.plan, next) {
            kept.push(step);
        }
    }
    kept.reverse();
    *steps = kept;
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use proptest::prelude::*;

    use super::History;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{Ease, HandPosition, SeenReach};
    use crate::edit::{BikeEdit, Edit, LayoutEdit, RiderEdit};
    use crate::plan::Plan;
    use crate::record::Record;
    use crate::rider::{Contact, HandPlace, Side};
    use crate::testing::plan_and_edits;

    /// What undo leaves alone is left out.
    fn without_entries(plan: &Plan) -> Plan {
        let mut plan = plan.clone();
        plan.record.entries.clear();
        plan
    }

    proptest! {
        #[test]
        fn undo_and_redo_restore_plans_exactly((plan, edits) in plan_and_edits()) {
            let mut history = History::new(plan);
            let mut stood = vec![history.plan().clone()];
            for edit in &edits {
                let before = history.plan().clone();
                let possible = history.commit(edit).is_ok();
                if without_entries(history.plan()) == without_entries(&before) {
                    continue;
                }
                prop_assert!(possible);
                let label = edit.label(&before);
                prop_assert_eq!(history.undo_label(), Some(label.as_str()));
                stood.push(history.plan().clone());
            }
            for plan in stood.iter().rev().skip(1) {
                prop_assert!(history.undo());
                prop_assert_eq!(without_entries(history.plan()), without_entries(plan));
            }
            prop_assert!(!history.undo());
            for plan in stood.iter().skip(1) {
                prop_assert!(history.redo());
                prop_assert_eq!(without_entries(history.plan()), without_entries(plan));
            }
            prop_assert!(!history.redo());
        }

        #[test]
        fn a_revision_never_means_two_plans(
            (plan, edits) in plan_and_edits(),
            acts in prop::collection::vec(0..6u8, 1..60)
        ) {
            let mut history = History::new(plan);
            let mut edits = edits.iter().cycle();
            let mut seen = BTreeMap::new();
            for act in acts {
                match act {
                    0 | 1 => { history.undo(); }
                    2 => { history.redo(); }
                    3 => history.remove_hand_details(None),
                    _ => { let _ = history.commit(edits.next().expect("edits are cycled")); }
                }
                // Removing hand details changes what is kept, on purpose.
                let mut plan = history.plan().without_hand_details(None);
                plan.record = Record::default();
                let known = seen.entry(plan.revision).or_insert_with(|| plan.clone());
                prop_assert_eq!(&*known, &plan);
            }
        }
    }

    #[test]
    fn a_refused_edit_and_one_that_changes_nothing_leave_no_trace() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let sprint = plan
            .bike
            .buttons()
            .into_iter()
            .find(|(_, _, b)| !b.is_remappable());
        let (sprint, ..) = sprint.expect("there is a fixed button");
        let mut history = History::new(plan.clone());
        let refused = Edit::Layout(LayoutEdit::Tap(sprint, None));
        assert!(history.commit(&refused).is_err());
        let same = Edit::Bike(BikeEdit::Name(plan.bike.name.clone()));
        assert_eq!(history.commit(&same), Ok(()));
        assert_eq!((history.plan(), history.undo_label()), (&plan, None));
    }

    #[test]
    fn undo_goes_back_as_far_as_it_says() {
        let mut history = History::new(template(TemplateId::RoadPlain).plan("Test"));
        for n in 0..History::DEPTH + 50 {
            let name = Edit::Bike(BikeEdit::Name(format!("bike {n}").as_str().into()));
            assert_eq!(history.commit(&name), Ok(()));
        }
        let steps = (0..).take_while(|_| history.undo()).count();
        assert_eq!(steps, History::DEPTH);
        assert_eq!(history.plan().bike.name.as_str(), "bike 49");
    }

    #[test]
    fn a_plan_taken_over_can_be_given_back() {
        let mine = template(TemplateId::RoadPlain).plan("Mine");
        let theirs = template(TemplateId::Gravel).plan("Theirs");
        let mut history = History::new(mine.clone());
        history.take_over(theirs.clone(), "take theirs");
        assert_eq!(history.plan(), &theirs);
        assert_eq!(history.undo_label(), Some("take theirs"));
        assert!(history.undo());
        assert_eq!(history.plan(), &mine);
        assert!(history.redo());
        assert_eq!(history.plan(), &theirs);
    }

    /// Also what was said of them before, and under labels that speak of them.
    #[test]
    fn hand_details_removed_elsewhere_leave_no_trace_in_undo() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let mut theirs = History::new(plan.clone());
        theirs.remove_hand_details(None);
        let mut mine = History::new(plan);
        for edit in [
            Edit::Rider(RiderEdit::OwnWords("the thumb tires".into())),
            Edit::Layout(LayoutEdit::Clear),
        ] {
            mine.commit(&edit).expect("the edit is possible");
        }
        let merge = crate::merge::Merge::of(mine.plan(), theirs.plan());
        let merged = merge.make(&[], &crate::record::Desk::default());
        mine.take_over(merged.expect("they go together"), "merge");
        assert!(!format!("{mine:?}").contains("thumb tires"));
        assert_eq!(mine.undo_label(), Some("clear the layout"));
        assert!(mine.undo());
        assert!(!mine.plan().layout().taps.is_empty());
        assert!(!mine.plan().has_hand_details());
    }

    #[test]
    fn hand_details_leave_no_trace_in_undo_and_redo() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let (button, ..) = plan.bike.buttons()[0];
        let seen = SeenReach {
            from: HandPosition::Hoods,
            contact: Contact::Ring,
            ease: Some(Ease::Move),
        };
        let mut history = History::new(plan);
        for edit in [
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
            Edit::Bike(BikeEdit::SeenReach(button, seen)),
            Edit::Layout(LayoutEdit::Clear),
            Edit::Rider(RiderEdit::OwnWords("the thumb tires".into())),
        ] {
            history.commit(&edit).expect("the edit is possible");
        }
        history.undo();
        history.remove_hand_details(None);

        let trace = format!("{history:?}");
        for word in ["Rests", "thumb tires", "contact: Ring", "right hand"] {
            assert!(!trace.contains(word), "{word} is left");
        }
        assert_eq!(history.undo_label(), Some("clear the layout"));
        assert!(history.undo() && history.undo() && !history.undo());
        assert!(history.redo() && history.redo() && !history.redo());
    }
}
