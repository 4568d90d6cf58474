//! Undo kept beside a plan in the store.
//!
//! It belongs to one copy of the plan, by its stamp, and carries a checksum: a
//! torn one, or one of another copy, counts as none. It never takes the room
//! that a plan needs.

use leverwright_core::history::History;

use super::drawer::Drawer;
use super::plan_id::PlanId;
use super::slot::{Slot, Stamp};
use crate::parts::desk;

/// Bytes of undo for one plan, of the five million that browsers give a page
/// (our judgement).
const ROOM: usize = 100_000;

/// Keeps the undo of the copy with this stamp; without room none is kept.
pub fn keep(drawer: &mut impl Drawer, plan: &PlanId, copy: &Stamp, history: &History) {
    let slot = Slot::new(copy.clone(), 0, (desk().write_undo)(history, ROOM));
    if drawer.put(&key(plan), &slot).is_err() {
        forget(drawer, plan);
    }
}

/// The undo of the copy with this stamp.
pub fn find(drawer: &impl Drawer, plan: &PlanId, copy: &Stamp) -> Option<String> {
    let slot = Slot::read(&drawer.get(&key(plan))?).ok()?;
    (slot.stamp() == *copy).then_some(slot.document)
}

/// Takes the undo away.
pub fn forget(drawer: &mut impl Drawer, plan: &PlanId) {
    drawer.remove(&key(plan));
}

/// Takes the undo of every plan away, to make room.
pub fn forget_all(drawer: &mut impl Drawer) {
    for key in drawer.keys() {
        if key.starts_with(PREFIX) {
            drawer.remove(&key);
        }
    }
}

const PREFIX: &str = "leverwright/undo/";

fn key(plan: &PlanId) -> String {
    format!("{PREFIX}{plan}")
}

#[cfg(test)]
mod tests {
    use leverwright_core::catalogue::{TemplateId, template};
    use leverwright_core::edit::{Edit, PlanEdit};

    use super::*;
    use crate::storage::drawer::fake::{Fake, Fault};

    fn stamp(counter: u64) -> Stamp {
        let writer = "tab".to_owned();
        Stamp { counter, writer }
    }

    fn history() -> History {
        let mut history = History::new(template(TemplateId::RoadPlain).plan("Test"));
        let named = Edit::Plan(PlanEdit::Name("Ärger".into()));
        history.commit(&named).expect("a plan is named");
        history
    }

    #[test]
    fn it_comes_back_for_its_own_copy_only() {
        let (mut drawer, plan) = (Fake::default(), PlanId::from_bits(1));
        keep(&mut drawer, &plan, &stamp(4), &history());
        let found = find(&drawer, &plan, &stamp(4)).expect("it is there");
        let mut again = History::new(history().plan().clone());
        assert_eq!(again.recall(&found), 1);
        assert_eq!(find(&drawer, &plan, &stamp(5)), None);
        forget(&mut drawer, &plan);
        assert_eq!(find(&drawer, &plan, &stamp(4)), None);
    }

    #[test]
    fn torn_anywhere_it_counts_as_none() {
        let plan = PlanId::from_bits(1);
        let mut whole = Fake::default();
        keep(&mut whole, &plan, &stamp(1), &history());
        let length = whole.get(&key(&plan)).expect("it is kept").len();
        for at in 0..length {
            let mut drawer = Fake {
                fault: Fault::Tears(at),
                ..Fake::default()
            };
            keep(&mut drawer, &plan, &stamp(1), &history());
            assert_eq!(find(&drawer, &plan, &stamp(1)), None, "torn at {at}");
        }
    }

    #[test]
    fn without_room_none_stays() {
        let (mut drawer, plan) = (Fake::default(), PlanId::from_bits(1));
        keep(&mut drawer, &plan, &stamp(1), &history());
        drawer.fault = Fault::Full;
        keep(&mut drawer, &plan, &stamp(2), &history());
        assert_eq!(find(&drawer, &plan, &stamp(1)), None);
        assert!(drawer.keys().is_empty());
    }
}
