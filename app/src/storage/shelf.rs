//! Which copy of a plan counts, and where the next one goes.

use leverwright_core::ordered::{self, SmallSet};

use super::drawer::{Drawer, Full};
use super::plan_id::PlanId;
use super::slot::{Damage, Slot, SlotKey, Stamp};
use super::undo;

/// Letters of slots: two in turn, and room beside copies that cannot be read
/// and are kept for download.
const LETTERS: std::ops::RangeInclusive<char> = 'a'..='z';

/// What lies in the store about one plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Found<T> {
    /// The newest copy that can be read, and what was read.
    pub best: Option<(Slot, T)>,
    /// The newest copy whose checksum matches, whether or not the document in it
    /// can be read.
    pub known: Option<Stamp>,
    /// Copies that cannot be read.
    pub damaged: Vec<Damaged>,
}

/// A copy that cannot be read, as it lies there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Damaged {
    /// Where it lies.
    pub key: SlotKey,
    /// Why.
    pub damage: Damage,
    /// What lies there.
    pub raw: String,
}

/// Why a plan was not saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unsaved {
    /// There is no room.
    Full,
    /// Another tab saved it meanwhile.
    ChangedElsewhere,
    /// Another tab deleted it meanwhile.
    GoneElsewhere,
}

/// The plans that have anything in the store.
pub fn plans(drawer: &impl Drawer) -> SmallSet<PlanId> {
    drawer
        .keys()
        .iter()
        .filter_map(|key| Some(SlotKey::parse(key)?.plan))
        .collect()
}

/// Looks at every copy of a plan; `open` reads the document in it.
pub fn find<T>(
    drawer: &impl Drawer,
    plan: &PlanId,
    open: impl Fn(&str) -> Result<T, String>,
) -> Found<T> {
    let mut copies = copies(drawer, plan);
    ordered::sort_by_key(&mut copies, |(_, _, slot)| std::cmp::Reverse(stamp(slot)));
    let mut found = Found {
        best: None,
        known: copies.first().and_then(|(_, _, slot)| stamp(slot)),
        damaged: Vec::new(),
    };
    for (key, raw, slot) in copies {
        let read = slot.and_then(|slot| match open(&slot.document) {
            Ok(read) => Ok((slot, read)),
            Err(reason) => Err(Damage::Document(reason)),
        });
        match read {
            Ok(read) if found.best.is_none() => found.best = Some(read),
            Ok(_) => {}
            Err(damage) => found.damaged.push(Damaged { key, damage, raw }),
        }
    }
    found
}

/// Saves a plan beside its newest copy. `known` is the newest copy that this tab
/// wrote or read, nothing for a plan that was never saved; `aside` are slots
/// that keep what cannot be read.
///
/// # Errors
/// When there is no room, or another tab was quicker; the store stays as it
/// was.
pub fn save(
    drawer: &mut impl Drawer,
    plan: &PlanId,
    known: Option<&Stamp>,
    aside: &[SlotKey],
    slot: &Slot,
) -> Result<(), Unsaved> {
    // Reading them is most of the work: once for both.
    let copies = copies(drawer, plan);
    unchanged_in(&copies, known)?;
    let key = next_key(&copies, plan, aside);
    match drawer.put(&key.key(), slot) {
        Ok(()) => Ok(()),
        Err(Full) => Err(Unsaved::Full),
    }
}

/// Saves a plan as its only copy: nothing older stays, readable or not. At
/// every moment one whole copy is there, as long as there is room for two.
///
/// # Errors
/// As for [`save`].
pub fn save_alone(
    drawer: &mut impl Drawer,
    plan: &PlanId,
    known: Option<&Stamp>,
    slot: &Slot,
) -> Result<(), Unsaved> {
    unchanged(drawer, plan, known)?;
    let newest = newest_key(drawer, plan);
    for (key, ..) in copies(drawer, plan) {
        if Some(&key) != newest.as_ref() {
            drawer.remove(&key.key());
        }
    }
    match (save(drawer, plan, known, &[], slot), newest) {
        (Ok(()), Some(key)) => drawer.remove(&key.key()),
        // No room beside it: what must not stay is written over.
        (Err(Unsaved::Full), Some(key)) => {
            drawer.put(&key.key(), slot).map_err(|Full| Unsaved::Full)?;
        }
        (outcome, _) => outcome?,
    }
    Ok(())
}

/// Whether the store still holds what this tab knows.
///
/// # Errors
/// When another tab saved or deleted the plan meanwhile.
pub fn unchanged(
    drawer: &impl Drawer,
    plan: &PlanId,
    known: Option<&Stamp>,
) -> Result<(), Unsaved> {
    unchanged_in(&copies(drawer, plan), known)
}

fn unchanged_in(copies: &[Copy], known: Option<&Stamp>) -> Result<(), Unsaved> {
    let newest = copies.iter().filter_map(|(.., slot)| stamp(slot)).max();
    match (newest, known) {
        (None, Some(_)) => Err(Unsaved::GoneElsewhere),
        (Some(_), None) => Err(Unsaved::ChangedElsewhere),
        (Some(newest), Some(known)) if newest.counter >= known.counter && newest != *known => {
            Err(Unsaved::ChangedElsewhere)
        }
        _ => Ok(()),
    }
}

/// Takes everything about a plan away, and gives it to whoever may want it
/// back.
pub fn remove(drawer: &mut impl Drawer, plan: &PlanId) -> Vec<(SlotKey, String)> {
    undo::forget(drawer, plan);
    copies(drawer, plan)
        .into_iter()
        .map(|(key, raw, _)| {
            drawer.remove(&key.key());
            (key, raw)
        })
        .collect()
}

fn stamp(slot: &Result<Slot, Damage>) -> Option<Stamp> {
    slot.as_ref().ok().map(Slot::stamp)
}

type Copy = (SlotKey, String, Result<Slot, Damage>);

/// Every copy of a plan, readable or not, in the order of their letters.
fn copies(drawer: &impl Drawer, plan: &PlanId) -> Vec<Copy> {
    LETTERS
        .map(|letter| SlotKey {
            plan: plan.clone(),
            letter,
        })
        .filter_map(|key| {
            let raw = drawer.get(&key.key())?;
            let slot = Slot::read(&raw);
            Some((key, raw, slot))
        })
        .collect()
}

fn newest_key(drawer: &impl Drawer, plan: &PlanId) -> Option<SlotKey> {
    copies(drawer, plan)
        .into_iter()
        .filter_map(|(key, _, slot)| Some((stamp(&slot)?, key)))
        .max()
        .map(|(_, key)| key)
}

/// The older of two good copies, or the first slot that is free.
fn next_key(copies: &[Copy], plan: &PlanId, aside: &[SlotKey]) -> SlotKey {
    let mut good: Vec<(Stamp, &SlotKey)> = copies
        .iter()
        .filter(|(key, ..)| !aside.contains(key))
        .filter_map(|(key, _, slot)| Some((stamp(slot)?, key)))
        .collect();
    ordered::sort(&mut good);
    if let [(_, oldest), _, ..] = &good[..] {
        return (*oldest).clone();
    }
    let taken = |letter| copies.iter().any(|(key, ..)| key.letter == letter);
    SlotKey {
        plan: plan.clone(),
        letter: LETTERS
            .clone()
            .find(|letter| !taken(*letter))
            .unwrap_or('a'),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::storage::drawer::fake::{Fake, Fault};

    /// What the tests take for a document: anything that says "plan".
    fn open(document: &str) -> Result<String, String> {
        match document.starts_with("plan") {
            true => Ok(document.to_owned()),
            false => Err("not a plan".into()),
        }
    }

    fn id() -> PlanId {
        PlanId::from_bits(1)
    }

    fn stamp(counter: u64) -> Stamp {
        let writer = "tab".to_owned();
        Stamp { counter, writer }
    }

    fn slot(counter: u64, document: &str) -> Slot {
        Slot::new(stamp(counter), 1000 + counter, document.to_owned())
    }

    /// Saves over the copy with the counter before.
    fn put(store: &mut Fake, counter: u64, document: &str) -> Result<(), Unsaved> {
        put_beside(store, counter, document, &[])
    }

    fn put_beside(
        store: &mut Fake,
        counter: u64,
        document: &str,
        aside: &[SlotKey],
    ) -> Result<(), Unsaved> {
        let known = (counter > 1).then(|| stamp(counter - 1));
        save(
            store,
            &id(),
            known.as_ref(),
            aside,
            &slot(counter, document),
        )
    }

    fn put_alone(store: &mut Fake, counter: u64, document: &str) -> Result<(), Unsaved> {
        let known = stamp(counter - 1);
        save_alone(store, &id(), Some(&known), &slot(counter, document))
    }

    /// A store with a plan saved this many times: "plan 1", "plan 2", …
    fn saved(times: u64) -> Fake {
        let mut store = Fake::default();
        for counter in 1..=times {
            put(&mut store, counter, &format!("plan {counter}")).expect("there is room");
        }
        store
    }

    fn best(store: &Fake) -> Option<String> {
        find(store, &id(), open).best.map(|(_, read)| read)
    }

    #[test]
    fn two_slots_are_written_in_turn_and_the_newest_is_found() {
        for times in 1..6 {
            let store = saved(times);
            assert_eq!(best(&store), Some(format!("plan {times}")));
            assert_eq!(store.keys().len(), times.min(2) as usize);
        }
        assert_eq!(plans(&saved(3)), SmallSet::from([id()]));
    }

    #[test]
    fn a_write_torn_anywhere_leaves_the_copy_before() {
        let whole = serde_json::to_string(&slot(4, "plan 4")).expect("a slot can be written");
        for cut in 0..whole.len() {
            let mut store = saved(3);
            store.fault = Fault::Tears(cut);
            let _ = put(&mut store, 4, "plan 4");
            let found = find(&store, &id(), open);
            assert_eq!(found.best.expect("a copy").1, "plan 3", "cut at {cut}");
            assert_eq!(found.damaged.len(), 1);
            assert_eq!(found.damaged[0].raw, whole[..cut]);
        }
    }

    #[test]
    fn a_full_store_keeps_both_copies() {
        let mut store = saved(3);
        let before = store.clone();
        store.fault = Fault::Full;
        let outcome = put(&mut store, 4, "plan 4");
        assert_eq!(outcome, Err(Unsaved::Full));
        store.fault = Fault::None;
        assert_eq!(store, before);
    }

    #[test]
    fn what_cannot_be_read_is_kept_and_written_around() {
        let mut store = saved(3);
        store.spoil('a', "plan 3 torn");
        let found = find(&store, &id(), open);
        assert_eq!(found.best.expect("the copy before").1, "plan 2");
        let aside: Vec<SlotKey> = found.damaged.into_iter().map(|d| d.key).collect();
        assert_eq!(found.known, Some(stamp(2)));
        for counter in 3..6 {
            let document = format!("plan {counter}");
            put_beside(&mut store, counter, &document, &aside).expect("there is room");
            assert_eq!(best(&store), Some(document));
            assert_eq!(store.raw('a'), Some("plan 3 torn"));
        }
        assert_eq!(store.keys().len(), 3);
    }

    #[test]
    fn a_document_that_cannot_be_opened_counts_as_damaged_and_is_not_overtaken() {
        let mut store = saved(2);
        put(&mut store, 3, "from the future").expect("there is room");
        let found = find(&store, &id(), open);
        assert_eq!(found.best.as_ref().expect("a copy").1, "plan 2");
        assert_eq!(found.known, Some(stamp(3)));
        let aside: Vec<SlotKey> = found.damaged.into_iter().map(|d| d.key).collect();
        put_beside(&mut store, 4, "plan 4", &aside).expect("there is room");
        assert_eq!(best(&store).as_deref(), Some("plan 4"));
        let document = find(&store, &id(), open).damaged[0].damage.clone();
        assert_eq!(document, Damage::Document("not a plan".into()));
    }

    #[test]
    fn what_another_tab_saved_is_not_overwritten() {
        let mut store = saved(3);
        put(&mut store, 4, "plan of the other tab").expect("there is room");
        let before = store.clone();
        let outcome = put(&mut store, 4, "plan of this tab");
        assert_eq!(outcome, Err(Unsaved::ChangedElsewhere));
        let outcome = put_alone(&mut store, 4, "plan of this tab");
        assert_eq!(outcome, Err(Unsaved::ChangedElsewhere));
        assert_eq!(store, before);
    }

    #[test]
    fn two_tabs_that_save_at_the_same_moment_are_told_apart() {
        let mut store = saved(3);
        put(&mut store, 4, "plan of the other tab").expect("there is room");
        let mine = Stamp {
            writer: "this tab".into(),
            ..stamp(4)
        };
        let outcome = unchanged(&store, &id(), Some(&mine));
        assert_eq!(outcome, Err(Unsaved::ChangedElsewhere));
        assert_eq!(unchanged(&store, &id(), Some(&stamp(4))), Ok(()));
    }

    #[test]
    fn what_another_tab_deleted_does_not_come_back_by_itself() {
        let mut store = saved(3);
        let removed = remove(&mut store, &id());
        let outcome = put(&mut store, 4, "plan 4");
        assert_eq!(outcome, Err(Unsaved::GoneElsewhere));
        assert!(store.keys().is_empty());
        for (key, raw) in removed {
            store.put_back(&key.key(), &raw).expect("there is room");
        }
        assert_eq!(store, saved(3));
    }

    #[test]
    fn an_only_copy_leaves_nothing_older_behind() {
        let mut store = saved(3);
        store.spoil('c', "plan 9, never to be seen again");
        put_alone(&mut store, 4, "plan without it").expect("there is room");
        assert_eq!(best(&store).as_deref(), Some("plan without it"));
        assert_eq!(store.keys().len(), 1);
    }

    #[test]
    fn an_only_copy_torn_anywhere_leaves_the_newest() {
        let mut store = saved(3);
        store.fault = Fault::Tears(20);
        let _ = put_alone(&mut store, 4, "plan without it");
        assert_eq!(best(&store).as_deref(), Some("plan 3"));
    }
}
