//! Changes worked out before they are made.
//!
//! While a hand still carries a function, what letting it go would come to can be shown; once it is
//! let go, nothing has to be worked out a second time.

use std::sync::Arc;

use super::{History, is_only_written_into};
use crate::edit::{Edit, EditError};
use crate::plan::Plan;
use crate::record::Desk;

/// A change that was worked out and not made.
#[derive(Debug, Clone, PartialEq)]
pub struct Foreseen {
    edit: Edit,
    before: Arc<Plan>,
    desk: Desk,
    plan: Arc<Plan>,
    label: String,
}

impl Foreseen {
    /// The change.
    pub fn edit(&self) -> &Edit {
        &self.edit
    }

    /// The plan as the change would leave it.
    pub fn plan(&self) -> &Arc<Plan> {
        &self.plan
    }
}

impl History {
    /// What a change would come to. `None` where it would be refused, change nothing, or only write
    /// into the record.
    pub fn foresee(&self, edit: &Edit) -> Option<Foreseen> {
        let next = self.present.apply(edit).ok()?;
        let is_idle = next == *self.present || is_only_written_into(&self.present, &next);
        if is_idle || self.may_change(&next).is_err() {
            return None;
        }
        let (plan, label) = self.revised(edit, next);
        Some(Foreseen {
            edit: edit.clone(),
            before: self.shared_plan(),
            desk: self.desk.clone(),
            plan: Arc::new(plan),
            label,
        })
    }

    /// Makes a change exactly as [`History::commit`] does. What was foreseen of it is taken over if
    /// nothing happened since.
    ///
    /// # Errors
    /// As [`History::commit`].
    pub fn commit_foreseen(&mut self, edit: &Edit, foreseen: Foreseen) -> Result<(), EditError> {
        let still_holds = foreseen.edit == *edit
            && foreseen.desk == self.desk
            && foreseen.plan.revision == self.next_revision()
            && Arc::ptr_eq(&foreseen.before, &self.present);
        if !still_holds {
            return self.commit(edit);
        }
        self.step_to(foreseen.plan, foreseen.label);
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::history::History;
    use crate::record::Desk;
    use crate::testing::plan_and_edits;
    use crate::text::Text;

    proptest! {
        /// Whatever happens between foreseeing a change and making it, it comes to what it would
        /// have come to had nothing been foreseen.
        #[test]
        fn what_was_foreseen_comes_out_as_if_it_had_not_been(
            (plan, edits) in plan_and_edits(),
            acts in prop::collection::vec(0..8u8, 1..40)
        ) {
            let mut plain = History::new(plan);
            let mut edits = edits.iter().cycle();
            for act in acts {
                let edit = edits.next().expect("edits are cycled");
                let mut foresighted = plain.clone();
                let foreseen = plain.foresee(edit);
                if let Some(foreseen) = &foreseen {
                    let mut made = plain.clone();
                    prop_assert!(made.commit(edit).is_ok());
                    prop_assert_eq!(made.plan(), foreseen.plan().as_ref());
                }
                for history in [&mut plain, &mut foresighted] {
                    match act {
                        0 => { history.undo(); }
                        1 => { history.redo(); }
                        2 => { let _ = history.commit(edits.clone().next().expect("edits are cycled")); }
                        3 => history.remove_hand_details(None),
                        4 => history.sit_down(Desk { by: Text::new("Ira"), ..Desk::default() }),
                        _ => {}
                    }
                }
                let made = plain.commit(edit);
                if let Some(foreseen) = foreseen {
                    prop_assert_eq!(&made, &foresighted.commit_foreseen(edit, foreseen));
                    prop_assert_eq!(&plain, &foresighted);
                }
            }
        }

        /// Another change than the one foreseen is the one that is made.
        #[test]
        fn another_change_than_the_one_foreseen_is_worked_out(
            (plan, edits) in plan_and_edits()
        ) {
            let mut history = History::new(plan);
            for pair in edits.windows(2) {
                let Some(foreseen) = history.foresee(&pair[0]) else { continue };
                let mut plain = history.clone();
                let made = plain.commit(&pair[1]);
                prop_assert_eq!(made, history.commit_foreseen(&pair[1], foreseen));
                prop_assert_eq!(&plain, &history);
            }
        }
    }
}
