//! What may be behind a step that did not go as expected, and what to do
//! (*common practice*; the makers' manuals win).

use super::{CheckStep, StepKind};
use crate::record::Outcome;

/// Likely causes, likeliest first, and what to do about each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Advice {
    /// What may be behind it.
    pub cause: &'static str,
    /// What to do.
    pub remedy: &'static str,
}

const fn advise(cause: &'static str, remedy: &'static str) -> Advice {
    Advice { cause, remedy }
}

const UNPLUGGED: Advice = advise(
    "The control is unplugged or not paired.",
    "Push every plug home until it clicks, or pair the control again.",
);
const NO_POWER: Advice = advise(
    "The battery or a coin cell is empty.",
    "Look at the charge; charge, or fit a fresh cell the right way round.",
);
const ADJUSTING: Advice = advise(
    "The system is in its adjusting state: presses trim instead of shift.",
    "Leave the adjusting state as the manual says, then press again.",
);
const NOT_SAVED: Advice = advise(
    "The settings were not saved, or an update brought old ones back.",
    "Compare every setting with the sheet, save, switch off and on.",
);
const OTHER_BUTTON: Advice = advise(
    "The setting went to another button.",
    "Compare the balloon numbers with the list in the maker’s tool.",
);
const RELEASED: Advice = advise(
    "A derailleur released itself after a knock.",
    "Let it engage again as the manual says; look at the hanger.",
);
const AT_THE_END: Advice = advise(
    "The front derailleur refuses the outermost gears; there it may be right.",
    "Start in the middle of the cassette and press again.",
);
const HANGER: Advice = advise(
    "The hanger is bent, or the limits are off.",
    "Check the hanger with its gauge, then the limits.",
);
const FRONT_SET: Advice = advise(
    "The front derailleur’s height, angle or limits are off.",
    "Set it as its manual says; fit a chain catcher.",
);
const AIR: Advice = advise(
    "Air in a hose, a cable that slips, or housing that gives.",
    "Bleed, or clamp the cable anew; squeeze again for ten seconds.",
);
const PULL: Advice = advise(
    "Lever and brake do not go together, or a splitter asks for more throw.",
    "Compare the pull of lever and brake; test the throw anew.",
);
const PADS: Advice = advise(
    "Pads are worn, soiled or far from rim or disc.",
    "Clean or change them, set them closer, pull again.",
);
const BLADE: Advice = advise(
    "A blade is left on that should be off, or its gap is open.",
    "Take the blade off and cover the gap.",
);
const SHORT: Advice = advise(
    "A wire, cable or hose is too short or caught.",
    "Route it anew, or fit a longer one; turn to full lock again.",
);
const HOLD_SET: Advice = advise(
    "The hold is set to another run, or is on where it should be off.",
    "Compare the hold with the sheet, set it, save.",
);
const WEIGHT: Advice = advise(
    "The button is hard to find or lies under something else.",
    "Ask where the hand looked for it; change the layout there.",
);
const TOO_MUCH: Advice = advise(
    "It asks more of the hand than it does at ease.",
    "Move it to an easier button, or ask a clinician to look.",
);

/// Likely causes of a step that did not go as expected.
pub fn advice(step: &CheckStep, outcome: Outcome) -> &'static [Advice] {
    let nothing = match outcome {
        Outcome::Ok => return &[],
        Outcome::SomethingElse => false,
        Outcome::Nothing => true,
    };
    match step.kind {
        StepKind::Brake if step.is_look() => &[BLADE],
        StepKind::Brake if step.is_called_brake() => &[WEIGHT, TOO_MUCH],
        StepKind::Brake | StepKind::Wheel | StepKind::Stop => &[AIR, PADS, PULL],
        StepKind::FullLock => &[SHORT],
        StepKind::Button | StepKind::Shift if nothing => {
            &[UNPLUGGED, NO_POWER, ADJUSTING, AT_THE_END, RELEASED]
        }
        StepKind::Button | StepKind::Shift => &[OTHER_BUTTON, ADJUSTING, NOT_SAVED, HANGER],
        StepKind::Blank => &[NOT_SAVED, OTHER_BUTTON],
        StepKind::Hold => &[HOLD_SET, NOT_SAVED],
        StepKind::Chord if nothing => &[UNPLUGGED, NOT_SAVED],
        StepKind::Chord => &[NOT_SAVED, OTHER_BUTTON],
        StepKind::End => &[HANGER, NOT_SAVED],
        StepKind::Crossover if nothing => &[AT_THE_END, UNPLUGGED, NO_POWER],
        StepKind::Crossover => &[FRONT_SET, NOT_SAVED],
        StepKind::Power if nothing => &[NO_POWER, UNPLUGGED, NOT_SAVED],
        StepKind::Power => &[NOT_SAVED, UNPLUGGED],
        StepKind::Call | StepKind::BrakeAndShift => &[WEIGHT, TOO_MUCH],
        StepKind::Ready | StepKind::After | StepKind::Proved => &[TOO_MUCH],
    }
}
