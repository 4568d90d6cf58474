//! Keys placed like the hand.

use super::Switch;
use crate::coverage;
use crate::plan::Plan;
use crate::rider::{Contact, Day, Side};

/// Keys that a set may use, by their physical place (W3C UI Events KeyboardEvent
/// code values), each with what an English keyboard has printed on it: the same
/// fingers press, whatever is printed there.
pub const MOVABLE: &[(&str, &str)] = &[
    ("KeyQ", "Q"),
    ("KeyW", "W"),
    ("KeyE", "E"),
    ("KeyR", "R"),
    ("KeyT", "T"),
    ("KeyY", "Y"),
    ("KeyU", "U"),
    ("KeyI", "I"),
    ("KeyO", "O"),
    ("KeyP", "P"),
    ("KeyA", "A"),
    ("KeyS", "S"),
    ("KeyD", "D"),
    ("KeyF", "F"),
    ("KeyG", "G"),
    ("KeyH", "H"),
    ("KeyJ", "J"),
    ("KeyK", "K"),
    ("KeyL", "L"),
    ("Semicolon", ";"),
    ("KeyZ", "Z"),
    ("KeyX", "X"),
    ("KeyC", "C"),
    ("KeyV", "V"),
    ("KeyB", "B"),
    ("KeyN", "N"),
    ("KeyM", "M"),
    ("Comma", ","),
    ("Period", "."),
    ("Slash", "/"),
    ("Space", "Space"),
];

/// What is printed on a key; empty for a key that no set uses.
pub fn printed(key: &str) -> &'static str {
    let mut keys = MOVABLE.iter();
    keys.find(|(code, _)| *code == key)
        .map_or("", |(_, printed)| printed)
}

/// Which key stands for which button or brake lever.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct KeySet {
    keys: Vec<(Switch, &'static str)>,
}

impl KeySet {
    /// The keys for everything that is pressed on the bike under one hand: each
    /// button on a key of the finger that presses it, the first brake lever on
    /// the space bar, which is found without looking. Both sets differ only in
    /// the hand.
    pub fn for_hand(plan: &Plan, hand: Side) -> KeySet {
        let mut set = KeySet { keys: Vec::new() };
        let switches = Switch::all(&plan.bike);
        let (brakes, buttons): (Vec<Switch>, Vec<Switch>) =
            switches.into_iter().partition(|s| s.is_brake());
        for switch in brakes
            .iter()
            .take(1)
            .chain(&buttons)
            .chain(brakes.iter().skip(1))
        {
            let own: &[&str] = match switch {
                Switch::Brake(_) if set.keys.is_empty() => &["Space"],
                Switch::Brake(_) => keys_of(hand, Contact::Thumb),
                Switch::Button(_) => keys_of(hand, finger(plan, *switch)),
            };
            let others = MOVABLE.iter().map(|(code, _)| code);
            let free = own
                .iter()
                .chain(others)
                .find(|key| set.switch(key).is_none());
            set.keys.extend(free.map(|key| (*switch, *key)));
        }
        set.keys.sort_unstable();
        set
    }

    /// What is on a key.
    pub fn switch(&self, key: &str) -> Option<Switch> {
        let mut keys = self.keys.iter();
        keys.find(|(_, known)| *known == key)
            .map(|(switch, _)| *switch)
    }

    /// The key of a button or a brake lever.
    pub fn key(&self, switch: Switch) -> Option<&'static str> {
        let mut keys = self.keys.iter();
        keys.find(|(known, _)| *known == switch)
            .map(|(_, key)| *key)
    }

    /// Everything with its key.
    pub fn all(&self) -> &[(Switch, &'static str)] {
        &self.keys
    }

    /// Puts something on another key; what was on that key goes to the one left.
    /// Whether the key may be used.
    pub fn put(&mut self, switch: Switch, key: &str) -> bool {
        let Some((key, _)) = MOVABLE.iter().find(|(known, _)| *known == key) else {
            return false;
        };
        let left = self.key(switch);
        let was_on = self.switch(key);
        self.keys
            .retain(|(known, _)| *known != switch && Some(*known) != was_on);
        self.keys
            .extend(was_on.filter(|other| *other != switch).zip(left));
        self.keys.push((switch, key));
        self.keys.sort_unstable();
        true
    }
}

/// The finger that presses a button from the position most in use.
fn finger(plan: &Plan, switch: Switch) -> Contact {
    let Switch::Button(button) = switch else {
        return Contact::Index;
    };
    let positions = plan.positions_used();
    let mut cells = positions
        .iter()
        .map(|p| coverage::press_of(plan, button, *p, Day::Usual));
    let way = cells.find_map(|cell| cell.way().copied());
    way.map_or(Contact::Index, |way| way.contact)
}

/// The keys under a finger of a hand that rests on the home row, the home key
/// first. The space bar is kept for a brake.
const fn keys_of(hand: Side, finger: Contact) -> &'static [&'static str] {
    match (hand, finger) {
        (Side::Left, Contact::Middle) => &["KeyD", "KeyE"],
        (Side::Left, Contact::Ring) => &["KeyS", "KeyW"],
        (Side::Left, Contact::Little) => &["KeyA", "KeyQ"],
        (Side::Left, Contact::Thumb) => &["KeyC", "KeyV", "KeyX", "KeyZ"],
        (Side::Left, _) => &["KeyF", "KeyR", "KeyG", "KeyT", "KeyB"],
        (Side::Right, Contact::Middle) => &["KeyK", "KeyI"],
        (Side::Right, Contact::Ring) => &["KeyL", "KeyO"],
        (Side::Right, Contact::Little) => &["Semicolon", "KeyP"],
        (Side::Right, Contact::Thumb) => &["KeyM", "Comma", "Period", "Slash"],
        (Side::Right, _) => &["KeyJ", "KeyU", "KeyH", "KeyY", "KeyN"],
    }
}
