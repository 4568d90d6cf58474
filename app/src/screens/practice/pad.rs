//! Game controllers and switch boxes, through the browser's Gamepad API: read in
//! the frame, without asking for anything.

use leptos::prelude::*;
use leverwright_core::practice::Switch;
use wasm_bindgen::JsCast;
use web_sys::{Gamepad, GamepadButton};

/// A button of a controller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PadButton {
    /// Which controller.
    pub pad: u32,
    /// Which of its buttons.
    pub button: u32,
}

impl PadButton {
    /// Its words: controllers number their buttons from 0, people from 1.
    pub fn words(self) -> String {
        match self.pad {
            0 => format!("controller button {}", self.button + 1),
            pad => format!("controller {}, button {}", pad + 1, self.button + 1),
        }
    }
}

/// What the buttons of controllers stand for.
pub type PadSet = Vec<(Switch, PadButton)>;

/// Every button of every controller that is down now.
pub fn down() -> Vec<PadButton> {
    let Ok(pads) = window().navigator().get_gamepads() else {
        return Vec::new();
    };
    let mut found = Vec::new();
    for (at, pad) in pads.iter().enumerate() {
        // Places of controllers that are gone are empty.
        if pad.is_null() || pad.is_undefined() {
            continue;
        }
        let pad: Gamepad = pad.unchecked_into();
        for (button, state) in pad.buttons().iter().enumerate() {
            if state.unchecked_into::<GamepadButton>().pressed() {
                found.push(PadButton {
                    pad: at as u32,
                    button: button as u32,
                });
            }
        }
    }
    found
}
