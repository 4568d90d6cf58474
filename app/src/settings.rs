//! How the app behaves for this person on this device. Kept apart from plans.

use gloo_storage::{LocalStorage, Storage};
use leptos::prelude::*;
use serde::{Deserialize, Serialize};

use crate::storage::is_available;

/// Where settings lie in the browser's store.
const KEY: &str = "leverwright/settings";

/// The tones of the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Theme {
    /// As the device prefers.
    #[default]
    AsDevice,
    /// Dark ink on light paper.
    Light,
    /// Light ink on dark paper.
    Dark,
    /// Black on white.
    HighContrast,
}

/// The side of a thumb or of a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ThumbSide {
    /// The left.
    Left,
    /// The right.
    #[default]
    Right,
}

/// Where the slots of the drawing stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Lists {
    /// In the margin of their own side.
    #[default]
    BothSides,
    /// All in one list on the left.
    Left,
    /// All in one list on the right.
    Right,
}

/// How soon after a tap the next one counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TapPause {
    /// At once.
    #[default]
    None,
    /// After 0.3 seconds.
    Short,
    /// After 0.6 seconds.
    Medium,
    /// After 1 second.
    Long,
}

impl TapPause {
    /// In milliseconds.
    pub const fn milliseconds(self) -> f64 {
        match self {
            TapPause::None => 0.0,
            TapPause::Short => 300.0,
            TapPause::Medium => 600.0,
            TapPause::Long => 1000.0,
        }
    }
}

/// What may be set. What is missing or not understood in the store is as usual.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Chosen {
    /// The tones of the screen.
    pub theme: Theme,
    /// The side of the thumb that holds the phone.
    pub thumb: ThumbSide,
    /// Where the slots of the drawing stand.
    pub lists: Lists,
    /// How soon after a tap the next one counts.
    pub tap_pause: TapPause,
}

/// The settings. A context: fetch it with [`Settings::here`].
#[derive(Clone, Copy)]
pub struct Settings {
    chosen: RwSignal<Chosen>,
}

impl Settings {
    /// The settings as kept, mirrored to the page from now on.
    pub fn load() -> Self {
        let kept = match is_available() {
            true => LocalStorage::get(KEY).unwrap_or_default(),
            false => Chosen::default(),
        };
        let settings = Settings {
            chosen: RwSignal::new(kept),
        };
        Effect::new(move |_| settings.mirror());
        settings
    }

    /// The settings that [`crate::App`] provides.
    pub fn here() -> Self {
        expect_context()
    }

    /// What is set now.
    pub fn get(self) -> Chosen {
        self.chosen.get()
    }

    /// How long a tap does not count after the one before, in milliseconds.
    pub fn tap_pause(self) -> f64 {
        self.chosen
            .with_untracked(|chosen| chosen.tap_pause.milliseconds())
    }

    /// Changes a setting and keeps it. Without room it holds until the page is
    /// closed.
    pub fn change(self, change: impl FnOnce(&mut Chosen)) {
        self.chosen.update(change);
        if is_available() {
            let _ = LocalStorage::set(KEY, self.chosen.get_untracked());
        }
    }

    /// Names the settings on the page's root, where the style sheets look.
    fn mirror(self) {
        let chosen = self.chosen.get();
        let Some(root) = document().document_element() else {
            return;
        };
        let names = [
            ("data-theme", code(&chosen.theme)),
            ("data-thumb", code(&chosen.thumb)),
            ("data-lists", code(&chosen.lists)),
        ];
        for (attribute, value) in names {
            // Fails only for names that are no attributes.
            let _ = root.set_attribute(attribute, &value);
        }
    }
}

/// A choice's code, as in the store.
fn code(choice: &impl Serialize) -> String {
    match serde_json::to_value(choice) {
        Ok(serde_json::Value::String(code)) => code,
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_is_as_usual() {
        let kept: Chosen = serde_json::from_str(r#"{"theme":"dark","later":1}"#).expect("settings");
        assert_eq!(
            kept,
            Chosen {
                theme: Theme::Dark,
                ..Chosen::default()
            }
        );
        assert_eq!(code(&Theme::HighContrast), "high-contrast");
    }
}
