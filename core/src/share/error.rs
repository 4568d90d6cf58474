//! Why shared content is refused.

use thiserror::Error;

use crate::document::DocumentError;

/// Why something cannot be shared or opened: a sentence with the cure.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum ShareError {
    /// It does not fit into a link.
    #[error(
        "The link would have {length} characters, and programs cut links longer than {most}. Send the plan as a file, or leave the rider details out."
    )]
    LinkTooLong {
        /// Its length in characters.
        length: usize,
        /// The longest link that is made.
        most: usize,
    },
    /// Nothing stands after the address.
    #[error("The link is empty after its address. Ask for the whole link.")]
    Empty,
    /// More stands there than any plan needs.
    #[error(
        "The link is too long: {length} characters, and a plan has at most {most}. It is not opened."
    )]
    TooLong {
        /// Its length in characters.
        length: usize,
        /// The longest that is opened.
        most: usize,
    },
    /// A character that no link has.
    #[error(
        "The link holds “{found}”, which no link to a plan does (character {at} after “#/open/”). Copy it again, from its first character to its last."
    )]
    Stray {
        /// What was found.
        found: char,
        /// Where, counted from 1 after the address.
        at: usize,
    },
    /// The end is missing.
    #[error("The link is cut off: its end is missing. Ask for the whole link, or for a file.")]
    CutOff,
    /// It was changed on its way.
    #[error("The link was damaged on its way. Ask for it again, or for a file.")]
    Damaged,
    /// It swells to more than any plan is.
    #[error(
        "The link unpacks to more than any plan holds ({most} bytes). It is not opened. Ask who sent it."
    )]
    Swells {
        /// The largest plan in bytes.
        most: usize,
    },
    /// What it holds is no plan, or one that cannot be.
    #[error("What the link holds cannot be opened. {0}")]
    Document(#[from] DocumentError),
}
