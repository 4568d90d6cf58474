//! Keys placed like the hand.

use crate::cockpit::ButtonId;
use crate::coverage;
use crate::plan::Plan;
use crate::rider::{Contact, Day, Side};

/// Keys that a set may use, by their physical place (W3C UI Events KeyboardEvent
/// code values): the same fingers press, whatever is printed on them.
pub const MOVABLE: &[&str] = &[
    "KeyQ",
    "KeyW",
    "KeyE",
    "KeyR",
    "KeyT",
    "KeyY",
    "KeyU",
    "KeyI",
    "KeyO",
    "KeyP",
    "KeyA",
    "KeyS",
    "KeyD",
    "KeyF",
    "KeyG",
    "KeyH",
    "KeyJ",
    "KeyK",
    "KeyL",
    "Semicolon",
    "KeyZ",
    "KeyX",
    "KeyC",
    "KeyV",
    "KeyB",
    "KeyN",
    "KeyM",
    "Comma",
    "Period",
    "Slash",
    "Space",
];

/// Which key stands for which button.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeySet {
    keys: Vec<(ButtonId, &'static str)>,
}

impl KeySet {
    /// The keys for all buttons of the bike under one hand: each button on a key
    /// of the finger that presses it. Both sets differ only in the hand.
    pub fn for_hand(plan: &Plan, hand: Side) -> KeySet {
        let mut set = KeySet { keys: Vec::new() };
        for (button, ..) in plan.bike.buttons() {
            let finger = finger(plan, button);
            let own = keys_of(hand, finger).iter();
            let others = MOVABLE.iter();
            let free = own.chain(others).find(|key| set.button(key).is_none());
            set.keys.extend(free.map(|key| (button, *key)));
        }
        set
    }

    /// The button on a key.
    pub fn button(&self, key: &str) -> Option<ButtonId> {
        let mut keys = self.keys.iter();
        keys.find(|(_, known)| *known == key)
            .map(|(button, _)| *button)
    }

    /// The key of a button.
    pub fn key(&self, button: ButtonId) -> Option<&'static str> {
        let mut keys = self.keys.iter();
        keys.find(|(known, _)| *known == button)
            .map(|(_, key)| *key)
    }

    /// Every button with its key.
    pub fn all(&self) -> &[(ButtonId, &'static str)] {
        &self.keys
    }

    /// Puts a button on another key; what was on that key goes to the one left.
    /// Whether the key may be used.
    pub fn put(&mut self, button: ButtonId, key: &str) -> bool {
        let Some(key) = MOVABLE.iter().find(|known| **known == key).copied() else {
            return false;
        };
        let left = self.key(button);
        let was_on = self.button(key);
        self.keys
            .retain(|(known, _)| *known != button && Some(*known) != was_on);
        self.keys
            .extend(was_on.filter(|other| *other != button).zip(left));
        self.keys.push((button, key));
        self.keys.sort_unstable();
        true
    }
}

/// The finger that presses a button from the position most in use.
fn finger(plan: &Plan, button: ButtonId) -> Contact {
    let positions = plan.positions_used();
    let mut cells = positions
        .iter()
        .map(|p| coverage::press_of(plan, button, *p, Day::Usual));
    let way = cells.find_map(|cell| cell.way().copied());
    way.map_or(Contact::Index, |way| way.contact)
}

/// The keys under a finger of a hand that rests on the home row, the home key
/// first.
const fn keys_of(hand: Side, finger: Contact) -> &'static [&'static str] {
    match (hand, finger) {
        (Side::Left, Contact::Middle) => &["KeyD", "KeyE"],
        (Side::Left, Contact::Ring) => &["KeyS", "KeyW"],
        (Side::Left, Contact::Little) => &["KeyA", "KeyQ"],
        (Side::Left, Contact::Thumb) => &["Space", "KeyC", "KeyX", "KeyZ"],
        (Side::Left, _) => &["KeyF", "KeyR", "KeyG", "KeyV", "KeyT", "KeyB"],
        (Side::Right, Contact::Middle) => &["KeyK", "KeyI"],
        (Side::Right, Contact::Ring) => &["KeyL", "KeyO"],
        (Side::Right, Contact::Little) => &["Semicolon", "KeyP"],
        (Side::Right, Contact::Thumb) => &["Space", "Comma", "Period", "Slash"],
        (Side::Right, _) => &["KeyJ", "KeyU", "KeyH", "KeyM", "KeyY", "KeyN"],
    }
}
