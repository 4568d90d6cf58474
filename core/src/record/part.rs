//! The parts of a plan that travel and are merged one by one.

use std::fmt;

use super::Code;
use crate::layout::LayoutId;
use crate::rider::Side;
use crate::rules;
use crate::vocabulary::Vocabulary;

/// A part of a plan that is merged as a whole.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartKey {
    /// Name, job number, date.
    Title,
    /// The rider but for the hands: nickname, positions, mounting, own words,
    /// and what rides asked.
    Rider,
    /// What one hand can do.
    Hand(Side),
    /// Reach that was seen on this rider, levers tried together.
    Reach,
    /// The bike with its brakes, system and shift plan, and what was found.
    Bike,
    /// The road that is ridden.
    Road,
    /// One layout.
    Layout(LayoutId),
    /// The order of the layouts, the one in hand, the one chosen.
    Layouts,
    /// An accepted finding, by its name.
    Accepted(String),
}

impl PartKey {
    /// Its name in files.
    pub fn key(&self) -> String {
        match self {
            PartKey::Title => "title".into(),
            PartKey::Rider => "rider".into(),
            PartKey::Hand(side) => format!("hand:{}", side.code()),
            PartKey::Reach => "reach".into(),
            PartKey::Bike => "bike".into(),
            PartKey::Road => "road".into(),
            PartKey::Layout(id) => format!("layout:{}", id.0),
            PartKey::Layouts => "layouts".into(),
            PartKey::Accepted(finding) => format!("accepted:{finding}"),
        }
    }

    /// Reads what [`PartKey::key`] gives.
    pub fn parse(key: &str) -> Option<PartKey> {
        Some(match key.split_once(':') {
            None => match key {
                "title" => PartKey::Title,
                "rider" => PartKey::Rider,
                "reach" => PartKey::Reach,
                "bike" => PartKey::Bike,
                "road" => PartKey::Road,
                "layouts" => PartKey::Layouts,
                _ => return None,
            },
            Some(("hand", side)) => PartKey::Hand(Side::from_code(side)?),
            Some(("layout", id)) => PartKey::Layout(LayoutId(id.parse().ok()?)),
            Some(("accepted", finding)) => PartKey::Accepted(finding.to_owned()),
            Some(_) => return None,
        })
        .filter(|part| part.key() == key)
    }

    /// Whether it says anything about the hands or why something about them
    /// was accepted: what removing hand details removes.
    pub const fn is_about_hands(&self) -> bool {
        matches!(
            self,
            PartKey::Rider | PartKey::Hand(_) | PartKey::Reach | PartKey::Accepted(_)
        )
    }
}

/// In words; layouts by their numbers, findings by the titles of their rules.
impl fmt::Display for PartKey {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PartKey::Title => f.write_str("name, job and date"),
            PartKey::Rider => f.write_str("rider"),
            PartKey::Hand(side) => write!(f, "{side} hand"),
            PartKey::Reach => f.write_str("reach that was seen"),
            PartKey::Bike => f.write_str("bike"),
            PartKey::Road => f.write_str("road"),
            PartKey::Layout(id) => write!(f, "layout {}", id.0),
            PartKey::Layouts => f.write_str("order and choice of layouts"),
            PartKey::Accepted(finding) => {
                let rule = finding.split('|').next().unwrap_or_default();
                let title = rules::rule(rule).map_or(rule, |rule| rule.title);
                write!(f, "accepted finding “{title}”")
            }
        }
    }
}

/// One state of a part: the revision that made it, and the digest of what it
/// said then. Revision 0 is how the plan began.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Version {
    /// The number of the revision that made it.
    pub revision: u32,
    /// The digest of what it said.
    pub code: Code,
}

#[cfg(test)]
mod tests {
    use super::PartKey;
    use crate::layout::LayoutId;
    use crate::rider::Side;

    #[test]
    fn a_part_reads_what_it_is_called() {
        for part in [
            PartKey::Title,
            PartKey::Rider,
            PartKey::Hand(Side::Left),
            PartKey::Reach,
            PartKey::Bike,
            PartKey::Road,
            PartKey::Layout(LayoutId(7)),
            PartKey::Layouts,
            PartKey::Accepted("tap-lost|button:3.single".into()),
        ] {
            assert_eq!(PartKey::parse(&part.key()), Some(part));
        }
        for wrong in ["", "hand:", "hand:both", "layout:07", "layout:x", "wheels"] {
            assert_eq!(PartKey::parse(wrong), None, "{wrong}");
        }
    }
}
