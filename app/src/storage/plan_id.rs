//! What a plan is called in this browser's store.

use std::fmt;

/// The name of a plan in this browser's store: lower-case letters and digits.
/// It is not in the document: an imported file is always a plan of its own.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PlanId(String);

impl PlanId {
    /// A name made of random bits.
    pub fn from_bits(bits: u64) -> Self {
        PlanId(format!("{bits:016x}"))
    }

    /// The name, if it could be one.
    pub fn parse(text: &str) -> Option<Self> {
        let fits = (1..=32).contains(&text.len())
            && text
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
        fits.then(|| PlanId(text.to_owned()))
    }
}

impl fmt::Display for PlanId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
