//! What a change would come to, shown before it is made: while a function is carried over a button,
//! the findings are those that would stand once it is let go there.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::edit::Edit;
use leverwright_core::history::Foreseen;
use leverwright_core::plan::Plan;
use leverwright_core::tally::Tally;

use super::{Derived, Workspace};
use crate::parts;

/// The change that is foreseen, if one is; at most one at a time.
#[derive(Clone, Copy)]
pub(super) struct Foresight {
    prospect: RwSignal<Option<Prospect>>,
    /// What the history takes over should the change be made.
    change: StoredValue<Option<Foreseen>>,
}

/// What a change would come to.
#[derive(Clone)]
struct Prospect {
    edit: Edit,
    /// The plan that it would change.
    from: Arc<Plan>,
    plan: Arc<Plan>,
    derived: Arc<Derived>,
}

/// A plan with its findings, as they are shown.
#[derive(Debug, Clone)]
pub struct Seen {
    /// The plan as it stands, or as a foreseen change would leave it.
    pub plan: Arc<Plan>,
    /// What follows from it.
    pub derived: Arc<Derived>,
}

/// The findings are the same ones and stand the same way: nothing has to be shown anew when a change
/// that was foreseen is made.
impl PartialEq for Seen {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.derived, &other.derived) && self.plan.accepted == other.plan.accepted
    }
}

impl Foresight {
    pub(super) fn new() -> Foresight {
        Foresight {
            prospect: RwSignal::new(None),
            change: StoredValue::new(None),
        }
    }

    /// What follows from a plan, if that plan is what was foreseen.
    pub(super) fn derived(self, plan: &Arc<Plan>) -> Option<Arc<Derived>> {
        self.prospect.with_untracked(|prospect| {
            let prospect = prospect.as_ref().filter(|p| Arc::ptr_eq(&p.plan, plan))?;
            Some(Arc::clone(&prospect.derived))
        })
    }

    /// What a change of this plan would come to, if one is foreseen.
    pub(super) fn of(self, plan: &Arc<Plan>) -> Option<Seen> {
        self.prospect.with(|prospect| {
            let prospect = prospect.as_ref().filter(|p| Arc::ptr_eq(&p.from, plan))?;
            Some(Seen {
                plan: Arc::clone(&prospect.plan),
                derived: Arc::clone(&prospect.derived),
            })
        })
    }

    /// What the history takes over, which can be once only.
    pub(super) fn take(self) -> Option<Foreseen> {
        self.change.try_update_value(Option::take).flatten()
    }
}

impl Workspace {
    /// Shows what a change would come to, in place of what stands. One that cannot be made, or
    /// changes nothing, shows nothing.
    pub fn foresee(self, edit: &Edit) {
        let Some(from) = self.plan.get_untracked() else {
            return;
        };
        let is_shown = |p: &Prospect| p.edit == *edit && Arc::ptr_eq(&p.from, &from);
        let foresight = self.foresight;
        if foresight
            .prospect
            .with_untracked(|p| p.as_ref().is_some_and(is_shown))
        {
            return;
        }
        let desk = self.desk();
        let mut change = None;
        self.history.maybe_update(|history| {
            if let Some(history) = history {
                history.sit_down(desk);
                change = (parts::desk().foresee)(history, edit);
            }
            false
        });
        let Some(change) = change else {
            return self.stop_foreseeing();
        };
        let plan = Arc::clone(change.plan());
        let derived = Arc::new((parts::desk().derive)(&plan));
        foresight.change.set_value(Some(change));
        foresight.prospect.set(Some(Prospect {
            edit: edit.clone(),
            from,
            plan,
            derived,
        }));
    }

    /// Shows what stands again.
    pub fn stop_foreseeing(self) {
        self.foresight.take();
        let prospect = self.foresight.prospect;
        if prospect.with_untracked(Option::is_some) {
            prospect.set(None);
        }
    }

    /// Whether what is shown is only foreseen: nothing there can be acted on yet.
    pub fn foresees(self) -> bool {
        self.foreseen_plan().is_some()
    }

    /// The plan as a foreseen change would leave it, while one is.
    pub fn foreseen_plan(self) -> Option<Arc<Plan>> {
        let plan = self.plan.get()?;
        Some(self.foresight.of(&plan)?.plan)
    }

    /// How many findings a change would leave open, if it is the one that is foreseen.
    pub fn tally_after(self, edit: &Edit) -> Option<Tally> {
        let plan = self.plan.get()?;
        self.foresight.prospect.with(|prospect| {
            let is_it = |p: &&Prospect| p.edit == *edit && Arc::ptr_eq(&p.from, &plan);
            let prospect = prospect.as_ref().filter(is_it)?;
            Some(Tally::of(&prospect.plan, &prospect.derived.findings))
        })
    }
}
