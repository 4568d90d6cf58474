//! Five steps of difficulty.

vocabulary! {
    /// How hard something is for a hand, in five steps.
    ///
    /// Ordered like the WHO ICF generic qualifier (WHO 2001: 0 no problem,
    /// 1 mild, 2 moderate, 3 severe, 4 complete); *not an ICF rating*. Steps
    /// are ranks: they are never summed or averaged.
    pub enum Difficulty as "step" {
        /// Step 0: no difficulty.
        None = "none", "no difficulty";
        /// Step 1.
        Mild = "mild", "takes a little effort";
        /// Step 2.
        Moderate = "moderate", "takes effort";
        /// Step 3.
        Severe = "severe", "takes great effort";
        /// Step 4: not usable.
        Complete = "complete", "does not do it";
    }
}

/// What a step means for a layout.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Standing {
    /// Steps 0 to 2: may be asked of the hand.
    Able,
    /// Step 3: only after the rider or a clinician says so.
    OnlyAfterCheck,
    /// Step 4: never.
    NotUsable,
}

impl Difficulty {
    /// The step as a number from 0 to 4.
    pub const fn number(self) -> u8 {
        self as u8
    }

    /// The step with this number from 0 to 4.
    pub fn from_number(number: u8) -> Option<Self> {
        use crate::vocabulary::Vocabulary;
        Self::ALL.get(usize::from(number)).copied()
    }

    /// The step in a word or two, for a row of choices.
    pub const fn brief(self) -> &'static str {
        match self {
            Difficulty::None => "easily",
            Difficulty::Mild => "a little effort",
            Difficulty::Moderate => "effort",
            Difficulty::Severe => "great effort",
            Difficulty::Complete => "does not",
        }
    }

    /// What the step means for a layout (our judgement).
    pub const fn standing(self) -> Standing {
        match self {
            Difficulty::None | Difficulty::Mild | Difficulty::Moderate => Standing::Able,
            Difficulty::Severe => Standing::OnlyAfterCheck,
            Difficulty::Complete => Standing::NotUsable,
        }
    }

    /// One step harder, at most [`Difficulty::Complete`].
    pub const fn one_harder(self) -> Self {
        match self {
            Difficulty::None => Difficulty::Mild,
            Difficulty::Mild => Difficulty::Moderate,
            Difficulty::Moderate => Difficulty::Severe,
            Difficulty::Severe | Difficulty::Complete => Difficulty::Complete,
        }
    }
}
