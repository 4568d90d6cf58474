//! The browser speaks, where it can.

use leptos::prelude::*;
use web_sys::{SpeechSynthesis, SpeechSynthesisUtterance};

fn voice() -> Option<SpeechSynthesis> {
    window().speech_synthesis().ok()
}

/// Whether there is a voice at all.
pub fn is_there() -> bool {
    voice().is_some()
}

/// Says something in place of what is being said.
pub fn say(words: &str) {
    let Some(voice) = voice() else { return };
    if let Ok(words) = SpeechSynthesisUtterance::new_with_text(words) {
        words.set_lang("en");
        voice.cancel();
        voice.speak(&words);
    }
}

/// Says no more.
pub fn hush() {
    if let Some(voice) = voice() {
        voice.cancel();
    }
}
