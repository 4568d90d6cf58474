//! The brakes as plumbing: each lever, its line, its joint, its wheels.

use std::fmt;

use super::{capital, levers, listed};
use crate::cockpit::{Bike, BrakeRun, Control, ControlId, Joint, Medium, Wheel};
use crate::rider::{Answer, Day, YesNo};
use crate::situation::Situation;
use crate::units::Mm;

/// All levers and what they pull.
#[derive(Debug, Clone, PartialEq)]
pub struct BrakeSheet {
    /// Each lever once, left to right.
    pub levers: Vec<BrakeLine>,
    /// What else the fitter must know: levers pulled together, wheels of one
    /// axle, wheels without a lever.
    pub notes: Vec<String>,
}

/// A lever and what it pulls.
#[derive(Debug, Clone, PartialEq)]
pub struct BrakeLine {
    /// The lever.
    pub lever: ControlId,
    /// Where it is.
    pub place: String,
    /// The line, and the joints in words where there are any; `None` for a
    /// lever that pulls nothing.
    pub plumbing: Option<(Medium, Option<String>)>,
    /// The wheels it brakes, with the kind of brake where it is known.
    pub wheels: Vec<String>,
    /// The blade.
    pub blade: BladeState,
    /// The throw test.
    pub throw: ThrowTest,
    /// The parking latch.
    pub latch: LatchState,
    /// The hand and finger that pull it, where any does.
    pub pulled_by: Option<String>,
}

impl BrakeLine {
    /// "left brake lever → cable → front wheel, rim brake".
    pub fn chain(&self) -> String {
        let Some((medium, joints)) = &self.plumbing else {
            return format!("{} → pulls nothing", self.place);
        };
        let mut chain = format!("{} → {medium}", self.place);
        if let Some(joints) = joints {
            chain.push_str(&format!(" → {joints}"));
        }
        format!("{chain} → {}", listed(&self.wheels))
    }
}

/// The state of a lever's blade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BladeState {
    /// It is fitted; measures from the bar, `None` to be measured.
    Fitted {
        /// At rest.
        reach: Option<Mm>,
        /// At full pull.
        gap: Option<Mm>,
    },
    /// It is fitted, but pulls nothing: a brake only to look at.
    PullsNothing,
    /// It is taken off.
    Removed,
}

impl fmt::Display for BladeState {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BladeState::Removed => f.write_str("blade removed"),
            BladeState::PullsNothing => f.write_str("take the blade off"),
            BladeState::Fitted { reach, gap } => {
                write!(f, "reach {}, full pull {}", Measure(*reach), Measure(*gap))
            }
        }
    }
}

struct Measure(Option<Mm>);

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 {
            Some(mm) => mm.fmt(f),
            None => f.write_str("____ mm"),
        }
    }
}

/// Whether a lever's throw was tested with its joint.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ThrowTest {
    /// One line to one wheel: the stand check is enough.
    NotNeeded,
    /// To be tested.
    Open,
    /// Seen: every wheel brake works fully before the blade nears the bar.
    Passed,
    /// Seen: it does not.
    TooShort,
}

impl fmt::Display for ThrowTest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            ThrowTest::NotNeeded => "not needed",
            ThrowTest::Open => "to be tested",
            ThrowTest::Passed => "tested, enough",
            ThrowTest::TooShort => "tested, not enough",
        })
    }
}

/// The state of a parking latch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LatchState {
    /// There is none.
    None,
    /// To be tried.
    Open,
    /// Seen: the hand sets and releases it.
    Works,
    /// Seen: the hand does not.
    DoesNot,
}

impl fmt::Display for LatchState {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            LatchState::None => "none",
            LatchState::Open => "to be tried by the rider",
            LatchState::Works => "set and released by the rider",
            LatchState::DoesNot => "not worked by the rider",
        })
    }
}

/// All levers and what they pull.
pub(super) fn sheet(situation: &Situation<'_>) -> BrakeSheet {
    let bike = &situation.plan.bike;
    BrakeSheet {
        levers: levers(bike).map(|lever| line(situation, lever)).collect(),
        notes: notes(bike),
    }
}

fn line(situation: &Situation<'_>, lever: &Control) -> BrakeLine {
    let bike = &situation.plan.bike;
    let run = bike.brakes.run(lever.id);
    BrakeLine {
        lever: lever.id,
        place: lever.place(),
        plumbing: run.map(|run| (run.medium, run.joints_in_words())),
        wheels: run.map_or_else(Vec::new, |run| wheels(bike, run)),
        blade: blade(lever, run.is_some()),
        throw: run.map_or(ThrowTest::NotNeeded, throw),
        latch: latch(lever),
        pulled_by: run.and_then(|run| pulled_by(situation, run)),
    }
}

fn wheels(bike: &Bike, run: &BrakeRun) -> Vec<String> {
    run.wheels
        .iter()
        .map(
            |wheel| match bike.brakes.wheels.iter().find(|b| b.wheel == *wheel) {
                Some(brake) => format!("{wheel} ({})", brake.kind),
                None => wheel.to_string(),
            },
        )
        .collect()
}

fn blade(lever: &Control, pulls: bool) -> BladeState {
    match lever.blade {
        Some(blade) if blade.fitted && !pulls => BladeState::PullsNothing,
        Some(blade) if blade.fitted => BladeState::Fitted {
            reach: blade.reach,
            gap: blade.gap_at_full_pull,
        },
        _ => BladeState::Removed,
    }
}

fn throw(run: &BrakeRun) -> ThrowTest {
    match (run.joint, run.throw_tested.value) {
        (_, Some(YesNo::Yes)) => ThrowTest::Passed,
        (_, Some(YesNo::No)) => ThrowTest::TooShort,
        (Joint::Direct, None) => ThrowTest::NotNeeded,
        (_, None) => ThrowTest::Open,
    }
}

fn latch(lever: &Control) -> LatchState {
    let Some(latch) = lever.blade.and_then(|blade| blade.latch) else {
        return LatchState::None;
    };
    match latch.tried.value {
        None => LatchState::Open,
        Some(YesNo::Yes) => LatchState::Works,
        Some(YesNo::No) => LatchState::DoesNot,
    }
}

/// Who pulls the lever from the first position in which anybody does without
/// letting go, as the coverage says.
fn pulled_by(situation: &Situation<'_>, run: &BrakeRun) -> Option<String> {
    situation.positions().iter().find_map(|position| {
        let pulls = situation.coverage.pulls(run.lever, *position, Day::Usual);
        let pull = pulls
            .iter()
            .filter(|pull| pull.counts())
            .min_by_key(|pull| (pull.ease, pull.contact))?;
        Some(format!("{} {}", pull.hand, pull.contact))
    })
}

fn notes(bike: &Bike) -> Vec<String> {
    let place = |id: ControlId| {
        bike.control(id)
            .map_or_else(|| "a missing lever".into(), Control::place)
    };
    let together = bike.brakes.together.iter().map(|pair| {
        format!(
            "The {} hand pulls the {} and the {} together: {}.",
            pair.hand,
            place(pair.first),
            place(pair.second),
            seen(pair.tried)
        )
    });
    let axles = bike.brakes.wheels.iter().filter_map(|brake| {
        let other = brake.wheel.beside().filter(|other| brake.wheel < *other)?;
        Some(format!(
            "{} and {other} brake alike: {}.",
            capital(&brake.wheel.to_string()),
            seen(brake.balanced)
        ))
    });
    let bare = bike
        .frame
        .wheels()
        .iter()
        .filter(|wheel| !braked(bike, **wheel));
    let bare = bare.map(|wheel| format!("No lever brakes the {wheel}."));
    together.chain(axles).chain(bare).collect()
}

/// Whether a lever with a blade brakes this wheel.
fn braked(bike: &Bike, wheel: Wheel) -> bool {
    bike.brakes
        .levers_of(wheel)
        .any(|run| bike.control(run.lever).is_some_and(Control::has_blade))
}

fn seen(answer: Answer<YesNo>) -> &'static str {
    match answer.value {
        None => "to be tried",
        Some(YesNo::Yes) => "tried, yes",
        Some(YesNo::No) => "tried, no",
    }
}
