//! Which copy of a plan counts, and where the next one goes.

use std::collections::BTreeSet;

use super::drawer::{Drawer, Full};
use super::plan_id::PlanId;
use super::slot::{Damage, Slot, SlotKey};

/// Letters of slots: two in turn, and room beside copies that cannot be read
/// and are kept for download.
const LETTERS: std::ops::RangeInclusive<char> = 'a'..='z';

/// What lies in the store about one plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Found<T> {
    /// The newest copy that can be read, and what was read.
    pub best: Option<(Slot, T)>,
    /// The highest counter of any copy whose checksum matches; 0 for none.
    pub known: u64,
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
pub fn plans(drawer: &impl Drawer) -> BTreeSet<PlanId> {
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
    copies.sort_by_key(|(_, _, slot)| std::cmp::Reverse(counter(slot)));
    let mut found = Found {
        best: None,
        known: copies.first().map_or(0, |(_, _, slot)| counter(slot)),
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

/// The newest copy whose checksum matches, whoever wrote it.
pub fn newest(drawer: &impl Drawer, plan: &PlanId) -> Option<Slot> {
    copies(drawer, plan)
        .into_iter()
        .filter_map(|(_, _, slot)| slot.ok())
        .max_by_key(|slot| slot.counter)
}

/// Saves a plan beside its newest copy. `known` is the highest counter that
/// this tab wrote or read, 0 for a plan that was never saved; `aside` are slots that keep what cannot be read. Gives the new counter.
///
/// # Errors
/// When there is no room, or another tab was quicker; the store stays as it
/// was.
pub fn save(
    drawer: &mut impl Drawer,
    plan: &PlanId,
    known: u64,
    aside: &[SlotKey],
    slot: impl FnOnce(u64) -> Slot,
) -> Result<u64, Unsaved> {
    unchanged(drawer, plan, known)?;
    let counter = known + 1;
    let key = next_key(drawer, plan, aside);
    match drawer.put(&key.key(), &slot(counter)) {
        Ok(()) => Ok(counter),
        Err(Full) => Err(Unsaved::Full),
    }
}

/// Saves a plan as its only copy: nothing older stays, readable or not. At
/// every moment one whole copy is there.
///
/// # Errors
/// As for [`save`].
pub fn save_alone(
    drawer: &mut impl Drawer,
    plan: &PlanId,
    known: u64,
    slot: impl FnOnce(u64) -> Slot,
) -> Result<u64, Unsaved> {
    unchanged(drawer, plan, known)?;
    let newest = newest_key(drawer, plan);
    for (key, ..) in copies(drawer, plan) {
        if Some(&key) != newest.as_ref() {
            drawer.remove(&key.key());
        }
    }
    let counter = save(drawer, plan, known, &[], slot)?;
    if let Some(key) = newest {
        drawer.remove(&key.key());
    }
    Ok(counter)
}

/// Takes everything about a plan away.
pub fn remove(drawer: &mut impl Drawer, plan: &PlanId) {
    for (key, ..) in copies(drawer, plan) {
        drawer.remove(&key.key());
    }
}

/// Whether the store still holds what this tab knows.
fn unchanged(drawer: &impl Drawer, plan: &PlanId, known: u64) -> Result<(), Unsaved> {
    match newest(drawer, plan).map(|slot| slot.counter) {
        None if known > 0 => Err(Unsaved::GoneElsewhere),
        Some(counter) if counter > known => Err(Unsaved::ChangedElsewhere),
        _ => Ok(()),
    }
}

fn counter(slot: &Result<Slot, Damage>) -> u64 {
    slot.as_ref().map_or(0, |slot| slot.counter)
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
        .filter_map(|(key, _, slot)| Some((key, slot.ok()?.counter)))
        .max_by_key(|(_, counter)| *counter)
        .map(|(key, _)| key)
}

/// The older of two good copies, or the first slot that is free.
fn next_key(drawer: &impl Drawer, plan: &PlanId, aside: &[SlotKey]) -> SlotKey {
    let copies = copies(drawer, plan);
    let mut good: Vec<(u64, &SlotKey)> = copies
        .iter()
        .filter(|(key, ..)| !aside.contains(key))
        .filter_map(|(key, _, slot)| Some((slot.as_ref().ok()?.counter, key)))
        .collect();
    good.sort_unstable();
    if let [(_, oldest), _, ..] = good[..] {
        return oldest.clone();
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

    fn slot(document: &str) -> impl FnOnce(u64) -> Slot {
        let document = document.to_owned();
        move |counter| Slot::new(counter, "tab", 1000 + counter, document)
    }

    /// A store with a plan saved this many times: "plan 1", "plan 2", …
    fn saved(times: u64) -> Fake {
        let mut store = Fake::default();
        for known in 0..times {
            let document = format!("plan {}", known + 1);
            save(&mut store, &id(), known, &[], slot(&document)).expect("there is room");
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
        assert_eq!(plans(&saved(3)), BTreeSet::from([id()]));
    }

    #[test]
    fn a_write_torn_anywhere_leaves_the_copy_before() {
        let whole = serde_json::to_string(&Slot::new(4, "tab", 1004, "plan 4".into()))
            .expect("a slot can be written");
        for cut in 0..whole.len() {
            let mut store = saved(3);
            store.fault = Fault::Tears(cut);
            let _ = save(&mut store, &id(), 3, &[], slot("plan 4"));
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
        let outcome = save(&mut store, &id(), 3, &[], slot("plan 4"));
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
        let mut known = found.known;
        for document in ["plan 4", "plan 5", "plan 6"] {
            known = save(&mut store, &id(), known, &aside, slot(document)).expect("there is room");
            assert_eq!(best(&store).as_deref(), Some(document));
            assert_eq!(store.raw('a'), Some("plan 3 torn"));
        }
        assert_eq!(store.keys().len(), 3);
    }

    #[test]
    fn a_document_that_cannot_be_opened_counts_as_damaged_and_is_not_overtaken() {
        let mut store = saved(2);
        save(&mut store, &id(), 2, &[], slot("from the future")).expect("there is room");
        let found = find(&store, &id(), open);
        assert_eq!(found.best.as_ref().expect("a copy").1, "plan 2");
        assert_eq!(found.known, 3);
        let aside: Vec<SlotKey> = found.damaged.into_iter().map(|d| d.key).collect();
        save(&mut store, &id(), found.known, &aside, slot("plan 4")).expect("there is room");
        assert_eq!(best(&store).as_deref(), Some("plan 4"));
        let document = find(&store, &id(), open).damaged[0].damage.clone();
        assert_eq!(document, Damage::Document("not a plan".into()));
    }

    #[test]
    fn what_another_tab_saved_is_not_overwritten() {
        let mut store = saved(3);
        save(&mut store, &id(), 3, &[], slot("plan of the other tab")).expect("there is room");
        let before = store.clone();
        let outcome = save(&mut store, &id(), 3, &[], slot("plan of this tab"));
        assert_eq!(outcome, Err(Unsaved::ChangedElsewhere));
        let outcome = save_alone(&mut store, &id(), 3, slot("plan of this tab"));
        assert_eq!(outcome, Err(Unsaved::ChangedElsewhere));
        assert_eq!(store, before);
    }

    #[test]
    fn what_another_tab_deleted_does_not_come_back_by_itself() {
        let mut store = saved(3);
        remove(&mut store, &id());
        let outcome = save(&mut store, &id(), 3, &[], slot("plan 4"));
        assert_eq!(outcome, Err(Unsaved::GoneElsewhere));
        assert!(store.keys().is_empty());
    }

    #[test]
    fn an_only_copy_leaves_nothing_older_behind() {
        let mut store = saved(3);
        store.spoil('c', "plan 9, never to be seen again");
        save_alone(&mut store, &id(), 3, slot("plan without it")).expect("there is room");
        assert_eq!(best(&store).as_deref(), Some("plan without it"));
        assert_eq!(store.keys().len(), 1);
    }

    #[test]
    fn an_only_copy_torn_anywhere_leaves_the_newest() {
        let mut store = saved(3);
        store.fault = Fault::Tears(20);
        let _ = save_alone(&mut store, &id(), 3, slot("plan without it"));
        assert_eq!(best(&store).as_deref(), Some("plan 3"));
    }
}
