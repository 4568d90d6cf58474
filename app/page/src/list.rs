//! A list as it is drawn: rows that keep their keys keep their elements, and stay where they are.
//!
//! The list of Leptos takes rows out of the page and puts them back when one before them goes and
//! another comes: what is in them loses the focus and is laid out anew.

use std::any::Any;
use std::hash::{DefaultHasher, Hash, Hasher};

use leptos::prelude::{AnyView, Mountable, Owner, Render};
use leptos::tachys::reactive_graph::{OwnedView, OwnedViewState};
use leptos::tachys::renderer::Rndr;
use leptos::tachys::view::any_view::AnyViewState;

use crate::in_a_browser::drawn_in_a_browser;

/// Rows in order.
pub struct List {
    pub rows: Vec<Row>,
    /// What the rows belong to.
    pub owner: Owner,
}

/// An item whose view is still to be made.
pub struct Row {
    pub key: Key,
    pub view: Box<dyn FnOnce() -> AnyView + Send>,
}

/// A [`List`] on the page, and the mark after its last row.
pub struct ListState {
    rows: Vec<RowState>,
    end: web_sys::Comment,
}

struct RowState {
    key: Key,
    view: OwnedViewState<AnyViewState>,
}

impl Row {
    fn build(self, list: &Owner) -> RowState {
        let owner = list.with(Owner::new);
        let view = owner.with(self.view);
        RowState {
            key: self.key,
            view: OwnedView::new_with_owner(view, owner).build(),
        }
    }
}

impl Render for List {
    type State = ListState;

    fn build(self) -> ListState {
        let rows = self.rows.into_iter();
        ListState {
            rows: rows.map(|row| row.build(&self.owner)).collect(),
            end: Rndr::create_placeholder(),
        }
    }

    fn rebuild(self, state: &mut ListState) {
        let old = std::mem::take(&mut state.rows);
        let mut old: Vec<Option<RowState>> = old.into_iter().map(Some).collect();
        let mut came_from = Vec::new();
        let mut kept = Vec::new();
        for row in &self.rows {
            let same = |old: &Option<RowState>| old.as_ref().is_some_and(|old| old.key == row.key);
            let at = old.iter().position(same);
            came_from.push(at);
            kept.push(at.and_then(|at| old[at].take()));
        }
        for mut gone in old.into_iter().flatten() {
            gone.view.unmount();
        }
        let rows = self.rows.into_iter().zip(kept);
        let rows = rows.map(|(row, kept)| kept.unwrap_or_else(|| row.build(&self.owner)));
        state.rows = rows.collect();
        for (at, stays) in staying(&came_from).into_iter().enumerate().rev() {
            if !stays {
                state.place(at);
            }
        }
    }
}

impl ListState {
    /// Puts a row before the one after it, all of which are in their places.
    fn place(&mut self, at: usize) {
        let (before, after) = self.rows.split_at_mut(at + 1);
        let row = &mut before[at].view;
        // A row may show nothing; a list that is on no page yet is put there whole.
        let _ = after.iter().any(|next| next.view.insert_before_this(row))
            || self.end.insert_before_this(row);
    }
}

/// Which rows need not be moved, by the places they had before: as many as can be.
fn staying(came_from: &[Option<usize>]) -> Vec<bool> {
    // The longest rising run, by patience: the row that best ends a run of each length.
    let mut ends: Vec<usize> = Vec::new();
    let mut before = vec![None; came_from.len()];
    for (row, from) in came_from.iter().enumerate() {
        if from.is_none() {
            continue;
        }
        let length = ends.partition_point(|end| came_from[*end] < *from);
        before[row] = length.checked_sub(1).map(|shorter| ends[shorter]);
        match ends.get_mut(length) {
            Some(end) => *end = row,
            None => ends.push(row),
        }
    }
    let mut stays = vec![false; came_from.len()];
    let mut row = ends.last().copied();
    while let Some(at) = row {
        stays[at] = true;
        row = before[at];
    }
    stays
}

impl Mountable for ListState {
    fn unmount(&mut self) {
        for row in &mut self.rows {
            row.view.unmount();
        }
        self.end.unmount();
    }

    fn mount(&mut self, parent: &web_sys::Element, marker: Option<&web_sys::Node>) {
        for row in &mut self.rows {
            row.view.mount(parent, marker);
        }
        self.end.mount(parent, marker);
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        let mut rows = self.rows.iter();
        rows.any(|row| row.view.insert_before_this(child)) || self.end.insert_before_this(child)
    }

    fn elements(&self) -> Vec<web_sys::Element> {
        let rows = self.rows.iter();
        rows.flat_map(|row| row.view.elements()).collect()
    }
}

drawn_in_a_browser!(List, ListState);

/// A key of any type.
pub struct Key {
    value: Box<dyn Any + Send + Sync>,
    hash: u64,
    equals: fn(&dyn Any, &dyn Any) -> bool,
}

impl Key {
    pub fn new<K: Eq + Hash + Send + Sync + 'static>(key: K) -> Self {
        let mut hasher = DefaultHasher::new();
        key.hash(&mut hasher);
        Key {
            hash: hasher.finish(),
            value: Box::new(key),
            equals: |a, b| a.downcast_ref::<K>() == b.downcast_ref::<K>(),
        }
    }
}

impl PartialEq for Key {
    fn eq(&self, other: &Self) -> bool {
        self.hash == other.hash && (self.equals)(&*self.value, &*other.value)
    }
}

#[cfg(test)]
mod tests {
    use super::staying;

    fn moved(came_from: &[Option<usize>]) -> Vec<usize> {
        let stays = staying(came_from);
        let kept = came_from
            .iter()
            .enumerate()
            .filter(|(_, from)| from.is_some());
        kept.filter(|(row, _)| !stays[*row])
            .map(|(row, _)| row)
            .collect()
    }

    #[test]
    fn what_goes_and_comes_moves_nothing_else() {
        // The first goes, one comes in the middle and one at the end.
        assert!(moved(&[Some(1), Some(2), None, Some(3), Some(4), None]).is_empty());
        assert!(moved(&[None, Some(0), None, Some(5)]).is_empty());
    }

    #[test]
    fn as_few_as_can_be_are_moved() {
        assert_eq!(moved(&[Some(3), Some(0), Some(1), Some(2)]), [0]);
        assert_eq!(moved(&[Some(1), Some(2), Some(3), Some(0)]), [3]);
        assert_eq!(moved(&[Some(2), Some(1), Some(0)]).len(), 2);
        assert_eq!(
            moved(&[Some(0), Some(4), None, Some(1), Some(2), Some(5)]),
            [1]
        );
    }

    #[test]
    fn what_is_new_has_no_place_yet() {
        assert_eq!(staying(&[None, None]), [false, false]);
        assert!(staying(&[]).is_empty());
    }
}
