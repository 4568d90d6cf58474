//! What the shift system can program.

use std::fmt;

use super::BarSide;
use crate::function::Function;
use crate::ordered::SmallSet;
use crate::rider::{Answer, YesNo};
use crate::shift_plan::ShiftPlanKind;
use crate::text::Text;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// Where the profile came from.
    pub enum ProfileOrigin as "profile origin" {
        /// A generic one to start from.
        Generic = "generic", "generic, check the manual";
        /// Entered from the system's manual.
        FromManual = "from-manual", "entered from the manual";
    }
}

/// How many cogs one hold may move.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HoldRun {
    /// This many.
    Cogs(u8),
    /// To the end of the cassette.
    ToEnd,
}

impl fmt::Display for HoldRun {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            HoldRun::Cogs(1) => f.write_str("one cog"),
            HoldRun::Cogs(n) => write!(f, "{n} cogs"),
            HoldRun::ToEnd => f.write_str("to the end of the cassette"),
        }
    }
}

/// What the shift system can program, entered from its manual. A layout that
/// it cannot program is unbuildable.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SystemProfile {
    /// What the shop calls it.
    pub name: Text,
    /// Where the profile came from.
    pub origin: ProfileOrigin,
    /// Functions that a button can be given.
    pub functions: SmallSet<Function>,
    /// The longest hold run, if holds can be programmed.
    pub holds: Option<HoldRun>,
    /// Whether two buttons together can have a function.
    pub chords: bool,
    /// The shift plans it offers.
    pub shift_plans: SmallSet<ShiftPlanKind>,
    /// Levers without which it does not start.
    pub required_levers: SmallSet<BarSide>,
    /// Whether settings are kept after a reset or an update.
    pub keeps_settings: Answer<YesNo>,
}

impl SystemProfile {
    /// A profile that can do everything, to start from.
    pub fn generic() -> SystemProfile {
        SystemProfile {
            name: Text::new("Generic system"),
            origin: ProfileOrigin::Generic,
            functions: Function::ALL.iter().copied().collect(),
            holds: Some(HoldRun::ToEnd),
            chords: true,
            shift_plans: ShiftPlanKind::ALL.iter().copied().collect(),
            required_levers: SmallSet::new(),
            keeps_settings: Answer::NOT_ASKED,
        }
    }
}
