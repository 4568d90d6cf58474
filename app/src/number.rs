//! Numbers as people type them.

use wasm_bindgen::JsValue;

/// The number that a text says. The browser reads it: the tables that this
/// takes need not be in the download.
pub fn number(text: &str) -> Option<f64> {
    let text = text.trim();
    if text.is_empty() {
        return None;
    }
    let number = JsValue::from_str(text).unchecked_into_f64();
    number.is_finite().then_some(number)
}
