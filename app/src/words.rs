//! How words are put on the page.

/// With a capital letter in front.
pub fn capitalised(text: &str) -> String {
    let mut text = text.to_owned();
    if let Some(first) = text.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    text
}
