//! Where the program is split, and how the other parts come.

use thiserror::Error;

/// A part could not be fetched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error(
    "The rest of the program could not be fetched. Look whether there is a network, then try \
     again; where that does not help, load the page again."
)]
pub struct NotFetched;

#[cfg(feature = "parts")]
pub use split::{desk, further};
#[cfg(not(feature = "parts"))]
pub use whole::{desk, further};

/// Whether the program is in one piece.
pub const fn comes_with_the_first() -> bool {
    cfg!(not(feature = "parts"))
}

// The attribute declares what is imported from and exported to the other parts,
// which Rust counts as unsafe.
#[cfg(feature = "parts")]
#[allow(unsafe_code)]
mod split {
    use wasm_split_helpers::{SplitLoaderError, wasm_split};

    use super::super::desk::{self as at_the_desk, Desk};
    use super::super::further::{self as beyond, Further};
    use super::NotFetched;

    impl From<SplitLoaderError> for NotFetched {
        fn from(_: SplitLoaderError) -> Self {
            NotFetched
        }
    }

    #[wasm_split(desk, fallible)]
    pub fn desk() -> Result<Desk, NotFetched> {
        Ok(at_the_desk::all())
    }

    #[wasm_split(further, fallible)]
    pub fn further() -> Result<Further, NotFetched> {
        Ok(beyond::all())
    }
}

#[cfg(not(feature = "parts"))]
mod whole {
    use super::super::desk::{self as at_the_desk, Desk};
    use super::super::further::{self as beyond, Further};
    use super::NotFetched;

    pub async fn desk() -> Result<Desk, NotFetched> {
        Ok(at_the_desk::all())
    }

    pub async fn further() -> Result<Further, NotFetched> {
        Ok(beyond::all())
    }
}
