//! Small ordered collections.
//!
//! A bike has a dozen buttons, a rider two hands: a sorted list does for them
//! what the trees and sorts of the standard library do for millions. Those are
//! compiled anew for every type they hold and were a tenth of the download.
//!
//! ```
//! use leverwright_core::ordered::{SmallMap, SmallSet};
//!
//! let map: SmallMap<u8, &str> = [(2, "two"), (1, "one")].into_iter().collect();
//! assert_eq!(map.get(&1), Some(&"one"));
//! assert_eq!(map.keys().collect::<Vec<_>>(), [&1, &2]);
//!
//! let set: SmallSet<u8> = [2, 1, 2].into_iter().collect();
//! assert!(set.iter().eq([&1, &2]));
//! ```

use std::borrow::Borrow;
use std::cmp::Ordering;
use std::fmt;

/// Puts a list in order, in place. Items that compare equal keep their order.
pub fn sort_by<T>(items: &mut [T], mut compare: impl FnMut(&T, &T) -> Ordering) {
    for end in 1..items.len() {
        let mut at = end;
        while at > 0 && compare(&items[at], &items[at - 1]).is_lt() {
            items.swap(at, at - 1);
            at -= 1;
        }
    }
}

/// Puts a list in the order of a key, in place. Items with equal keys keep
/// their order.
pub fn sort_by_key<T, K: Ord>(items: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(items, |a, b| key(a).cmp(&key(b)));
}

/// Puts a list in order, in place.
pub fn sort<T: Ord>(items: &mut [T]) {
    sort_by(items, T::cmp);
}

/// One value for each key, in the order of the keys.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SmallMap<K, V>(Vec<(K, V)>);

impl<K, V> SmallMap<K, V> {
    /// Nothing yet.
    pub const fn new() -> Self {
        SmallMap(Vec::new())
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes all away.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Keys and values in order.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = (&K, &V)> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, value)| (key, value))
    }

    /// Keys in order.
    pub fn keys(&self) -> impl DoubleEndedIterator<Item = &K> + ExactSizeIterator + Clone {
        self.0.iter().map(|(key, _)| key)
    }

    /// Values in the order of their keys.
    pub fn values(&self) -> impl DoubleEndedIterator<Item = &V> + ExactSizeIterator + Clone {
        self.0.iter().map(|(_, value)| value)
    }

    /// Values in the order of their keys, to be changed.
    pub fn values_mut(&mut self) -> impl Iterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// Keeps what the test says yes to.
    pub fn retain(&mut self, mut keep: impl FnMut(&K, &mut V) -> bool) {
        self.0.retain_mut(|(key, value)| keep(key, value));
    }
}

impl<K: Ord, V> SmallMap<K, V> {
    /// Where a key is, or where it would go.
    fn place<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        self.0.binary_search_by(|(own, _)| own.borrow().cmp(key))
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().map(|at| &self.0[at].1)
    }

    /// The value of a key, to be changed.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().map(|at| &mut self.0[at].1)
    }

    /// Whether the key is there.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.place(key).is_ok()
    }

    /// Gives a key a value; what it had before.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(at) => Some(std::mem::replace(&mut self.0[at].1, value)),
            Err(at) => {
                self.0.insert(at, (key, value));
                None
            }
        }
    }

    /// Takes a key away; what it had.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        self.place(key).ok().map(|at| self.0.remove(at).1)
    }
}

impl<K, V> Default for SmallMap<K, V> {
    fn default() -> Self {
        SmallMap::new()
    }
}

impl<K: fmt::Debug, V: fmt::Debug> fmt::Debug for SmallMap<K, V> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_map().entries(self.iter()).finish()
    }
}

impl<K: Ord, V> Extend<(K, V)> for SmallMap<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, entries: I) {
        for (key, value) in entries {
            self.insert(key, value);
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for SmallMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(entries: I) -> Self {
        let mut map = SmallMap::new();
        map.extend(entries);
        map
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for SmallMap<K, V> {
    fn from(entries: [(K, V); N]) -> Self {
        entries.into_iter().collect()
    }
}

impl<K, V> IntoIterator for SmallMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a SmallMap<K, V> {
    type Item = (&'a K, &'a V);
    type IntoIter = std::iter::Map<std::slice::Iter<'a, (K, V)>, fn(&'a (K, V)) -> (&'a K, &'a V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter().map(|(key, value)| (key, value))
    }
}

/// Each item once, in order.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct SmallSet<T>(Vec<T>);

impl<T> SmallSet<T> {
    /// Nothing yet.
    pub const fn new() -> Self {
        SmallSet(Vec::new())
    }

    /// How many there are.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether there is none.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes all away.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// The items in order.
    pub fn iter(&self) -> std::slice::Iter<'_, T> {
        self.0.iter()
    }

    /// The first item.
    pub fn first(&self) -> Option<&T> {
        self.0.first()
    }
}

impl<T: Ord> SmallSet<T> {
    /// Whether an item is there.
    pub fn contains<Q: Ord + ?Sized>(&self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        self.0
            .binary_search_by(|own| own.borrow().cmp(item))
            .is_ok()
    }

    /// Adds an item; whether it is new.
    pub fn insert(&mut self, item: T) -> bool {
        let place = self.0.binary_search(&item);
        if let Err(at) = place {
            self.0.insert(at, item);
        }
        place.is_err()
    }

    /// Takes an item away; whether it was there.
    pub fn remove<Q: Ord + ?Sized>(&mut self, item: &Q) -> bool
    where
        T: Borrow<Q>,
    {
        let place = self.0.binary_search_by(|own| own.borrow().cmp(item));
        if let Ok(at) = place {
            self.0.remove(at);
        }
        place.is_ok()
    }

    /// Whether every item is in the other one, too.
    pub fn is_subset(&self, other: &Self) -> bool {
        self.iter().all(|item| other.contains(item))
    }
}

impl<T> Default for SmallSet<T> {
    fn default() -> Self {
        SmallSet::new()
    }
}

impl<T: fmt::Debug> fmt::Debug for SmallSet<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_set().entries(&self.0).finish()
    }
}

impl<T: Ord> Extend<T> for SmallSet<T> {
    fn extend<I: IntoIterator<Item = T>>(&mut self, items: I) {
        for item in items {
            self.insert(item);
        }
    }
}

impl<T: Ord> FromIterator<T> for SmallSet<T> {
    fn from_iter<I: IntoIterator<Item = T>>(items: I) -> Self {
        let mut set = SmallSet::new();
        set.extend(items);
        set
    }
}

impl<T: Ord, const N: usize> From<[T; N]> for SmallSet<T> {
    fn from(items: [T; N]) -> Self {
        items.into_iter().collect()
    }
}

impl<T> IntoIterator for SmallSet<T> {
    type Item = T;
    type IntoIter = std::vec::IntoIter<T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, T> IntoIterator for &'a SmallSet<T> {
    type Item = &'a T;
    type IntoIter = std::slice::Iter<'a, T>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::{BTreeMap, BTreeSet};

    proptest! {
        #[test]
        fn sorting_is_that_of_the_standard_library(
            mut items in prop::collection::vec((0u8..8, 0u8..8), 0..40),
        ) {
            let mut expected = items.clone();
            expected.sort_by_key(|item| item.0);
            sort_by_key(&mut items, |item| item.0);
            prop_assert_eq!(items, expected);
        }

        #[test]
        fn a_map_does_what_the_tree_does(
            changes in prop::collection::vec((0u8..12, prop::option::of(0u8..4)), 0..60),
        ) {
            let (mut map, mut tree) = (SmallMap::new(), BTreeMap::new());
            for (key, value) in changes {
                match value {
                    Some(value) => prop_assert_eq!(map.insert(key, value), tree.insert(key, value)),
                    None => prop_assert_eq!(map.remove(&key), tree.remove(&key)),
                }
                prop_assert_eq!(map.get(&key), tree.get(&key));
                prop_assert!(map.iter().eq(tree.iter()));
                prop_assert_eq!(format!("{map:?}"), format!("{tree:?}"));
            }
        }

        #[test]
        fn a_set_does_what_the_tree_does(
            changes in prop::collection::vec((0u8..12, any::<bool>()), 0..60),
        ) {
            let (mut set, mut tree) = (SmallSet::new(), BTreeSet::new());
            for (item, add) in changes {
                match add {
                    true => prop_assert_eq!(set.insert(item), tree.insert(item)),
                    false => prop_assert_eq!(set.remove(&item), tree.remove(&item)),
                }
                prop_assert_eq!(set.contains(&item), add);
                prop_assert!(set.iter().eq(tree.iter()));
                prop_assert_eq!(format!("{set:?}"), format!("{tree:?}"));
            }
        }
    }
}
