//! Where answers come from: who says so, and what was worn.

use leverwright_core::rider::{Evidence, Source, Worn};

use crate::today::today;

/// Where answers come from now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EvidenceChoice {
    /// Who says so.
    pub source: Source,
    /// What is worn, if it is noted.
    pub worn: Option<Worn>,
}

impl Default for EvidenceChoice {
    fn default() -> Self {
        EvidenceChoice {
            source: Source::Told,
            worn: None,
        }
    }
}

impl EvidenceChoice {
    /// What is kept with an answer given today.
    pub fn evidence(self) -> Evidence {
        Evidence {
            source: self.source,
            date: today(),
            worn: self.worn,
            in_one_tap: false,
        }
    }
}
