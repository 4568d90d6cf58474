//! Proof: first that the bike is *wired and working*, on the stand; then that
//! it was *tried by the rider*. Both are for one revision only and lapse on any
//! change.
//!
//! A check is a list of steps that follow from the plan. Each step that is done
//! is an [`Entry`] of the record, so progress is
//! kept, several people may work on one check, and copies merge without loss.
//! Brakes come first: nothing else is asked before every brake step is OK. The
//! last step of each check, [`PROVED`], is the word of the person who did it.

mod cause;
mod instead;
mod mended;
mod rider_steps;
mod road_card;
mod run;
pub(crate) mod stand_steps;
mod state;
#[cfg(test)]
mod tests;

pub use cause::{Advice, advice};
pub use instead::Answer;
pub use road_card::{CardSize, RoadCard};
pub use run::{Miss, Progress, Run, StepDone};
pub use state::{Proof, ProofState};

use crate::cockpit::Blade;
use crate::finding::Place;
use crate::plan::Plan;
use crate::record::{Check, Entry, Outcome, Step};
use crate::rules;
use crate::sheet::Readiness;
use crate::situation::Situation;
use crate::tally::Tally;
use crate::units::Mm;

/// The step by which somebody says that every other step is OK.
pub const PROVED: &str = "proved";

/// When a first ride is stopped at once (*common practice*).
pub const STOP_WHEN: &[&str] = &[
    "A hand comes off, or goes numb.",
    "A brake is not there at the first pull.",
    "Something shifts that nobody asked for.",
    "The rider looks down to find a button a second time.",
    "Pain, or the rider says stop.",
];

vocabulary! {
    /// What a step is about.
    pub enum StepKind as "kind of step" {
        /// A lever, pulled hard.
        Brake = "brake", "brakes first";
        /// A wheel held by its brake.
        Wheel = "wheel", "wheels";
        /// Bar turned to full lock.
        FullLock = "full-lock", "full lock";
        /// A button that does something.
        Button = "button", "buttons";
        /// A blank button.
        Blank = "blank", "blank buttons";
        /// A button kept pressed.
        Hold = "hold", "holds";
        /// Two buttons together.
        Chord = "chord", "two buttons together";
        /// The ends of the cassette.
        End = "end", "ends of the cassette";
        /// Where the front shifts.
        Crossover = "crossover", "crossovers";
        /// Off and on.
        Power = "power", "off and on, again";
        /// Before the rider's part.
        Ready = "ready", "before it begins";
        /// A function on call.
        Call = "call", "called shifts";
        /// Braking and shifting at once.
        BrakeAndShift = "brake-and-shift", "brake and shift";
        /// A stop at walking pace.
        Stop = "stop", "stops first";
        /// A shift at walking pace.
        Shift = "shift", "then shifts";
        /// After the ride.
        After = "after", "after the ride";
        /// The word of the person who did it.
        Proved = "proved", "all of it";
    }
}

/// A step of a check.
#[derive(Debug, Clone, PartialEq)]
pub struct CheckStep {
    /// Its stable name within the check.
    pub key: String,
    /// What it is about.
    pub kind: StepKind,
    /// What to do.
    pub act: String,
    /// What is to be seen.
    pub expect: String,
    /// How often.
    pub times: u8,
    /// How long, in seconds; 0 for no longer than it takes.
    pub seconds: u8,
    /// Whether nothing may happen.
    pub expects_nothing: bool,
    /// Where on the drawing.
    pub places: Vec<Place>,
    /// What to measure.
    pub measure: Option<Measure>,
    /// What to write down beside the outcome; empty for nothing.
    pub note: &'static str,
    /// What it looks at besides `places`: when one of these is mended, the step
    /// is to be done again.
    rests_on: Vec<Place>,
}

/// A length to measure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measure {
    /// What it is.
    pub label: &'static str,
    /// The least that is OK.
    pub least: Mm,
}

impl Measure {
    const GAP: Measure = Measure {
        label: "Gap at full pull",
        least: Blade::LEAST_GAP,
    };
}

impl CheckStep {
    fn new(key: impl Into<String>, kind: StepKind, act: impl Into<String>) -> CheckStep {
        CheckStep {
            key: key.into(),
            kind,
            act: act.into(),
            expect: String::new(),
            times: 1,
            seconds: 0,
            expects_nothing: false,
            places: Vec::new(),
            measure: None,
            note: "",
            rests_on: Vec::new(),
        }
    }

    fn shows(mut self, expect: impl Into<String>) -> CheckStep {
        self.expect = expect.into();
        self
    }

    fn times(mut self, times: u8) -> CheckStep {
        self.times = times;
        self
    }

    fn lasts(mut self, seconds: u8) -> CheckStep {
        self.seconds = seconds;
        self
    }

    fn expects_nothing(mut self, nothing: bool) -> CheckStep {
        self.expects_nothing = nothing;
        self
    }

    fn measures(mut self, measure: Measure) -> CheckStep {
        self.measure = Some(measure);
        self
    }

    fn notes(mut self, note: &'static str) -> CheckStep {
        self.note = note;
        self
    }

    fn at(mut self, places: impl IntoIterator<Item = Place>) -> CheckStep {
        self.places.extend(places);
        self
    }

    fn rests_on(mut self, places: impl IntoIterator<Item = Place>) -> CheckStep {
        self.rests_on.extend(places);
        self
    }
}

/// The steps of a check for the layout in hand, in order, without [`PROVED`].
pub fn steps(plan: &Plan, check: Check) -> Vec<CheckStep> {
    let situation = Situation::of_layout(plan, plan.layout());
    match check {
        Check::Stand => stand_steps::of(&situation),
        Check::Rider => rider_steps::of_check(&situation),
        Check::FirstRide => rider_steps::of_first_ride(&situation),
    }
}

/// What comes before a check; `None` where it may begin.
pub fn comes_first(plan: &Plan, check: Check) -> Option<&'static str> {
    let (before, words) = match check {
        Check::Stand => return None,
        Check::Rider => (
            Check::Stand,
            "The stand check of this revision comes first. Finish it.",
        ),
        Check::FirstRide => (
            Check::Rider,
            "The rider check of this revision comes first. Finish it.",
        ),
    };
    if !Run::of(plan, before).is_proved() {
        return Some(words);
    }
    let tally = Tally::of(plan, &rules::findings(plan));
    (Readiness::of(&tally) == Readiness::NotReady).then_some(
        "The sheet says NOT READY. Mend what must be fixed, then do the stand check again.",
    )
}

/// Why a step may not be written down now; `None` where it may.
pub(crate) fn refusal(plan: &Plan, done: &Step) -> Option<&'static str> {
    let check = done.check;
    if done.step != PROVED {
        let steps = steps(plan, check);
        let Some(step) = steps.iter().find(|known| known.key == done.step) else {
            return Some("This check has no such step. Choose one from its list.");
        };
        let least = step.measure.map(|measure| measure.least);
        let too_little = least.zip(done.measured).is_some_and(|(l, m)| m.0 < l.0);
        return (too_little && done.outcome == Outcome::Ok).then_some(
            "That is less than it must be, so it is not OK. Choose “Not as it should be”, then mend it.",
        );
    }
    if let Some(words) = comes_first(plan, check) {
        return Some(words);
    }
    let run = Run::of(plan, check);
    if !run.missed_twice().is_empty() {
        return Some(
            "Something was missed twice in one place. Change the layout there, or begin this check again.",
        );
    }
    (!(run.is_all_ok() && done.outcome == Outcome::Ok))
        .then_some("Not every step is OK yet. Do the open ones, or mend and repeat.")
}

/// Whether an entry is about what the plan says now.
fn is_current(
    entry: &Entry,
    check: Check,
    code: crate::record::Code,
    hands: crate::record::Code,
) -> bool {
    entry.code == code && (check == Check::Stand || entry.hands == hands)
}
