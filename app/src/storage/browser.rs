//! The browser's local storage.

use gloo_storage::{LocalStorage, SessionStorage, Storage};
use leptos::prelude::window;

use super::drawer::{Drawer, Full};
use super::slot::Slot;

/// Whether this browser keeps anything for this page.
pub fn is_available() -> bool {
    window().local_storage().ok().flatten().is_some()
}

/// Where this tab notes that others use the computer.
const SHARED: &str = "leverwright/shared-computer";

/// Whether it was said in this tab that others use the computer.
pub fn is_shared_here() -> bool {
    window().session_storage().is_ok_and(|kept| kept.is_some())
        && SessionStorage::get(SHARED).unwrap_or(false)
}

/// Notes for this tab whether others use the computer. Without room it holds
/// until the page is reloaded.
pub fn note_shared_here(shared: bool) {
    if window().session_storage().is_ok_and(|kept| kept.is_some()) {
        let _ = SessionStorage::set(SHARED, shared);
    }
}

/// Whether the page was opened from a file rather than from a server.
pub fn is_page_from_file() -> bool {
    window().location().protocol().as_deref() == Ok("file:")
}

/// The browser's local storage, or nothing where the browser keeps none: an
/// always empty, always full one.
#[derive(Debug, Clone, Copy, Default)]
pub struct BrowserDrawer;

impl Drawer for BrowserDrawer {
    fn get(&self, key: &str) -> Option<String> {
        if !is_available() {
            return None;
        }
        // As it lies there, readable or not.
        LocalStorage::raw().get_item(key).ok().flatten()
    }

    fn put(&mut self, key: &str, slot: &Slot) -> Result<(), Full> {
        if !is_available() {
            return Err(Full);
        }
        LocalStorage::set(key, slot).map_err(|_| Full)
    }

    fn put_back(&mut self, key: &str, raw: &str) -> Result<(), Full> {
        if !is_available() {
            return Err(Full);
        }
        LocalStorage::raw().set_item(key, raw).map_err(|_| Full)
    }

    fn remove(&mut self, key: &str) {
        if is_available() {
            LocalStorage::delete(key);
        }
    }

    fn keys(&self) -> Vec<String> {
        if !is_available() {
            return Vec::new();
        }
        let store = LocalStorage::raw();
        (0..LocalStorage::length())
            .filter_map(|at| store.key(at).ok().flatten())
            .collect()
    }
}
