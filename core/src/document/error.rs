//! Why a file cannot be opened.

use thiserror::Error;

use crate::text::Text;

/// Why a file cannot be opened: a sentence that names the place and the cure.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum DocumentError {
    /// Nothing is in it.
    #[error("The file is empty. Choose another file, or get a fresh copy of it.")]
    Empty,
    /// It holds more than a plan can.
    #[error(
        "The file is too large: {bytes} bytes, and a plan has at most {most}. Choose a plan file."
    )]
    TooLarge {
        /// Its size in bytes.
        bytes: usize,
        /// The largest size in bytes.
        most: usize,
    },
    /// It is not UTF-8 text.
    #[error("The file is not text: what stands at byte {byte} cannot be read. Choose a plan file.")]
    NotText {
        /// The first byte at fault, counted from 1.
        byte: usize,
    },
    /// It ends too early.
    #[error(
        "The file breaks off at line {line}, column {column}{}: the rest is missing. Get a fresh copy of it.",
        within(.place)
    )]
    Truncated {
        /// The line, counted from 1.
        line: usize,
        /// The column, counted from 1.
        column: usize,
        /// The place inside the plan, empty at the top.
        place: String,
    },
    /// It is not JSON.
    #[error(
        "The file cannot be read at line {line}, column {column}{}: {what}. Correct it there, or get a fresh copy of it.",
        within(.place)
    )]
    NotJson {
        /// The line, counted from 1.
        line: usize,
        /// The column, counted from 1.
        column: usize,
        /// The place inside the plan, empty at the top.
        place: String,
        /// What is wrong.
        what: String,
    },
    /// It is JSON, but not a plan.
    #[error(
        "The file is JSON, but no plan of Leverwright: it does not begin with \"leverwright\": \"plan\". Choose a plan file."
    )]
    NotAPlan,
    /// A newer version wrote it.
    #[error(
        "The file has format {format}; this version of the app reads formats up to {newest}. Keep the file as it is and update the app."
    )]
    Newer {
        /// The file's format number.
        format: u64,
        /// The newest format number that this version reads.
        newest: u64,
    },
    /// Lists in lists in lists.
    #[error(
        "The file is nested more than {most} levels deep{}, and a plan is not. Choose a plan file.",
        within(.place)
    )]
    TooDeep {
        /// The most levels.
        most: usize,
        /// The place inside the plan, empty at the top.
        place: String,
    },
    /// Something in the plan cannot be.
    #[error("{place}: {what}. Correct the file there, or get a fresh copy of it.")]
    At {
        /// The place inside the plan: `bike.controls[3].side`.
        place: String,
        /// What is wrong there.
        what: String,
    },
}

impl DocumentError {
    /// Something at a place of the plan cannot be.
    pub(super) fn at(place: impl Into<String>, what: impl Into<String>) -> Self {
        DocumentError::At {
            place: tidy(&place.into()),
            what: tidy(&what.into()),
        }
    }
}

/// Longest piece of a file that a message repeats, in characters.
const LONGEST: usize = 160;

/// A piece of a file made fit for a message: nothing that does not print, and
/// not too long. The text of a file may be hostile.
pub(super) fn tidy(piece: &str) -> String {
    let text = Text::new(piece);
    let mut chars = text.as_str().chars();
    let short: String = chars.by_ref().take(LONGEST).collect();
    if chars.next().is_some() {
        format!("{short}…")
    } else {
        short
    }
}

/// A path as people read it; empty at the top.
pub(super) fn place(path: &serde_path_to_error::Path) -> String {
    // A question mark stands for a name that was still being read.
    let path = path.to_string();
    tidy(path.trim_end_matches('?').trim_end_matches('.'))
}

fn within(place: &str) -> String {
    if place.is_empty() {
        String::new()
    } else {
        format!(", in {place}")
    }
}

/// A message of serde_json without its line and column, which are told apart.
pub(super) fn plain(message: &str) -> &str {
    match message.rfind(" at line ") {
        Some(end) => &message[..end],
        None => message,
    }
}

#[cfg(test)]
mod tests {
    use super::tidy;

    #[test]
    fn hostile_pieces_are_tidied() {
        assert_eq!(tidy("a\u{7}b\u{202E}c"), "a bc");
        assert_eq!(tidy(&"x".repeat(10_000)).chars().count(), 161);
    }
}
