//! The store as far as plans need it.

use super::slot::Slot;

/// Something that keeps text under keys, as a browser's local storage does.
pub trait Drawer {
    /// What lies under a key.
    fn get(&self, key: &str) -> Option<String>;

    /// Puts a copy under a key, in place of what was there.
    ///
    /// # Errors
    /// When there is no room; what was there stays.
    fn put(&mut self, key: &str, slot: &Slot) -> Result<(), Full>;

    /// Puts back what was taken away, as it was.
    ///
    /// # Errors
    /// When there is no room any more.
    fn put_back(&mut self, key: &str, raw: &str) -> Result<(), Full>;

    /// Takes away what lies under a key.
    fn remove(&mut self, key: &str);

    /// Every key, ours or not.
    fn keys(&self) -> Vec<String>;
}

/// There is no room for more.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Full;

/// A store that can go wrong, for tests.
#[cfg(test)]
pub mod fake {
    use std::collections::BTreeMap;

    use super::{Drawer, Full};
    use crate::storage::plan_id::PlanId;
    use crate::storage::slot::{Slot, SlotKey};

    /// What goes wrong with the next writes.
    #[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
    pub enum Fault {
        /// Nothing.
        #[default]
        None,
        /// There is no room.
        Full,
        /// Only so many bytes arrive, then the machine stops: nothing is
        /// removed afterwards.
        Tears(usize),
    }

    #[derive(Debug, Clone, PartialEq, Eq, Default)]
    pub struct Fake {
        pub fault: Fault,
        pub(in crate::storage) stopped: bool,
        pub(in crate::storage) entries: BTreeMap<String, String>,
    }

    impl Fake {
        /// Puts anything into a slot of the tests' plan.
        pub fn spoil(&mut self, letter: char, raw: &str) {
            self.entries.insert(Self::key(letter), raw.to_owned());
        }

        /// What lies in a slot of the tests' plan.
        pub fn raw(&self, letter: char) -> Option<&str> {
            self.entries.get(&Self::key(letter)).map(String::as_str)
        }

        fn key(letter: char) -> String {
            let plan = PlanId::from_bits(1);
            SlotKey { plan, letter }.key()
        }
    }

    impl Drawer for Fake {
        fn get(&self, key: &str) -> Option<String> {
            self.entries.get(key).cloned()
        }

        fn put(&mut self, key: &str, slot: &Slot) -> Result<(), Full> {
            let mut raw = serde_json::to_string(slot).expect("a slot can be written");
            match self.fault {
                Fault::None => {}
                Fault::Full => return Err(Full),
                Fault::Tears(at) => {
                    raw.truncate(at);
                    self.stopped = true;
                }
            }
            self.entries.insert(key.to_owned(), raw);
            Ok(())
        }

        fn put_back(&mut self, key: &str, raw: &str) -> Result<(), Full> {
            self.entries.insert(key.to_owned(), raw.to_owned());
            Ok(())
        }

        fn remove(&mut self, key: &str) {
            if !self.stopped {
                self.entries.remove(key);
            }
        }

        fn keys(&self) -> Vec<String> {
            self.entries.keys().cloned().collect()
        }
    }
}
