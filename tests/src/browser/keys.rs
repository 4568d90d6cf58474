//! The keyboard, and where its focus is.

use super::Browser;
use serde_json::{Value, json};
use thirtyfour::Key;
use thirtyfour::common::command::{Actions, Command};

impl Browser {
    /// Presses keys together, by the names that pages know them by: `Tab`, `Shift+Tab`,
    /// `Control+z`, `ArrowLeft`.
    #[track_caller]
    pub fn press(&self, keys: &str) {
        let keys: Vec<char> = keys.split('+').map(key).collect();
        let downs = keys
            .iter()
            .map(|key| json!({ "type": "keyDown", "value": key }));
        let ups = keys
            .iter()
            .rev()
            .map(|key| json!({ "type": "keyUp", "value": key }));
        self.perform_keys(downs.chain(ups).collect());
    }

    /// Presses one after the other.
    #[track_caller]
    pub fn press_all(&self, keys: &[&str]) {
        keys.iter().for_each(|keys| self.press(keys));
    }

    /// Types text into whatever has the focus.
    #[track_caller]
    pub fn type_text(&self, text: &str) {
        let strokes = text.chars().flat_map(|letter| {
            [
                json!({ "type": "keyDown", "value": letter }),
                json!({ "type": "keyUp", "value": letter }),
            ]
        });
        self.perform_keys(strokes.collect());
    }

    /// Presses `Tab` until the element with this role and name has the focus.
    ///
    /// # Panics
    /// When it has not come round after 200 presses.
    #[track_caller]
    pub fn tab_to(&self, role: &str, name: &str) {
        let wanted = (role.to_owned(), name.to_owned());
        let mut passed = Vec::new();
        for _ in 0..200 {
            self.press("Tab");
            let focused = self.focused();
            if focused == wanted {
                return;
            }
            passed.push(focused);
        }
        passed.dedup();
        panic!("Tab never reached the {role} {name:?}, but {passed:?}");
    }

    /// The role and the name, as assistive technology gets them, of what has the focus.
    #[track_caller]
    pub fn focused(&self) -> (String, String) {
        let active = self.cdp(
            "Runtime.evaluate",
            json!({ "expression": "document.activeElement" }),
        );
        let query = json!({ "objectId": active["result"]["objectId"], "fetchRelatives": false });
        let tree = self.cdp("Accessibility.getPartialAXTree", query);
        let part = |part: &str| {
            tree["nodes"][0][part]["value"]
                .as_str()
                .unwrap_or_default()
                .to_owned()
        };
        (part("role"), part("name"))
    }

    #[track_caller]
    fn perform_keys(&self, actions: Vec<Value>) {
        let source = json!([{ "type": "key", "id": "keyboard", "actions": actions }]);
        let command = Command::PerformActions(Actions::from(source));
        self.run("press keys", self.session().cmd(command));
    }
}

/// The character that stands for a key in the driver's protocol.
#[track_caller]
fn key(name: &str) -> char {
    let key = match name {
        "Tab" => Key::Tab,
        "Enter" => Key::Enter,
        "Escape" => Key::Escape,
        "Space" => return ' ',
        "Delete" => Key::Delete,
        "Backspace" => Key::Backspace,
        "Home" => Key::Home,
        "End" => Key::End,
        "PageUp" => Key::PageUp,
        "PageDown" => Key::PageDown,
        "ArrowLeft" => Key::Left,
        "ArrowRight" => Key::Right,
        "ArrowUp" => Key::Up,
        "ArrowDown" => Key::Down,
        "Shift" => Key::Shift,
        "Control" => Key::Control,
        "Alt" => Key::Alt,
        "Meta" => Key::Meta,
        letter => {
            let mut letters = letter.chars();
            match (letters.next(), letters.next()) {
                (Some(letter), None) => return letter,
                _ => panic!("no key is called {name:?}"),
            }
        }
    };
    key.value()
}
