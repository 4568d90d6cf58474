//! What a hand is asked to do on a bike.

use super::Difficulty;
use crate::vocabulary::Vocabulary;

vocabulary! {
    /// Something a hand may be asked to do while riding.
    ///
    /// Each is asked as a step of difficulty; the words fit after "this hand".
    pub enum Ability as "ability" {
        /// Stays on over bumps and takes weight.
        StaysOn = "stays-on", "stays on over bumps and takes weight";
        /// Steers alone for a moment.
        SteersAlone = "steers-alone", "steers alone for a moment";
        /// Steers while the other hand brakes hard.
        SteersWhileOtherBrakes = "steers-while-other-brakes", "steers while the other hand brakes hard";
        /// Keeps steady: does not brush what is near.
        Steady = "steady", "keeps steady, without brushing what is near";
        /// Swings a long paddle.
        SwingsPaddle = "swings-paddle", "swings a long paddle";
        /// Keeps a button pressed for three seconds.
        KeepsPressed = "keeps-pressed", "keeps a button pressed for three seconds";
        /// Lets go of a button at once.
        LetsGo = "lets-go", "lets go of a button at once";
        /// Brakes hard.
        BrakesHard = "brakes-hard", "brakes hard";
        /// Brakes down a long hill, ten firm pulls without fading.
        BrakesLong = "brakes-long", "brakes down a long hill";
        /// Lets the brake go.
        ReleasesBrake = "releases-brake", "lets the brake go";
        /// Moves along the bar and back without looking.
        MovesAlong = "moves-along", "moves along the bar and back without looking";
        /// Tells two buttons apart without looking.
        TellsApart = "tells-apart", "tells two buttons apart without looking";
        /// Pain during the ride or next morning.
        Comfort = "comfort", "hurts while riding, or next morning";
    }
}

impl Ability {
    /// Whether it is work that a hand does at the controls. That a hand does
    /// nothing says no to these and nothing about the others, such as whether it
    /// stays on or hurts.
    pub const fn is_work(self) -> bool {
        matches!(
            self,
            Ability::SteersAlone
                | Ability::SteersWhileOtherBrakes
                | Ability::SwingsPaddle
                | Ability::KeepsPressed
                | Ability::BrakesHard
                | Ability::BrakesLong
                | Ability::MovesAlong
        )
    }
}

impl Ability {
    /// A step as the answer to this, in a word or two for a row of choices.
    pub const fn brief(self, step: Difficulty) -> &'static str {
        match (self, step) {
            (Ability::Comfort, Difficulty::None) => "never",
            (Ability::Comfort, Difficulty::Mild) => "a little",
            (Ability::Comfort, Difficulty::Moderate) => "clearly",
            (Ability::Comfort, Difficulty::Severe) => "badly",
            (Ability::Comfort, Difficulty::Complete) => "too much to ride",
            (_, step) => step.brief(),
        }
    }

    /// A step as the answer to this, as the sheet prints it.
    pub fn answer(self, step: Difficulty) -> &'static str {
        match self {
            Ability::Comfort => self.brief(step),
            _ => step.words(),
        }
    }
}
