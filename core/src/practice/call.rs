//! What is called for on the road ahead.

use crate::cockpit::{ButtonId, HandPosition};
use crate::coverage::Via;
use crate::function::Function;
use crate::layout::{Hold, Layout};
use crate::plan::Plan;

vocabulary! {
    /// How much hurry there is.
    pub enum Pace as "level" {
        /// The road waits.
        NoHurry = "no-hurry", "no hurry";
        /// A slow road.
        Easy = "easy", "easy";
        /// Faster.
        Brisk = "brisk", "brisk";
        /// As when riding.
        AsOnTheRoad = "as-on-the-road", "as on the road";
    }
}

impl Pace {
    /// Seconds from a call to its place on the road; `None`: the road waits
    /// (our judgement: 2.5 s are left before a hill seen at 20 km/h must be
    /// met in the right gear).
    pub const fn seconds(self) -> Option<f64> {
        match self {
            Pace::NoHurry => None,
            Pace::Easy => Some(8.0),
            Pace::Brisk => Some(4.5),
            Pace::AsOnTheRoad => Some(2.5),
        }
    }
}

vocabulary! {
    /// What comes toward the rider.
    pub enum Scene as "scene" {
        /// The road rises.
        Hill = "hill", "hill";
        /// The road falls after a hill.
        Crest = "crest", "crest";
        /// The road bends.
        Bend = "bend", "bend";
        /// A stop: shift before it.
        Stop = "stop", "stop";
        /// Nothing much.
        Flat = "flat", "flat road";
    }
}

/// One call.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Call {
    /// What comes.
    pub scene: Scene,
    /// What is wanted.
    pub function: Function,
    /// What is shown and, if wanted, spoken: "Easier: you are climbing".
    pub words: String,
    /// From where the hands are.
    pub position: HandPosition,
    /// Everything that answers it.
    pub answers: Vec<Via>,
    /// Whether the press is to be kept until it is told to let go.
    pub keep: bool,
}

/// A press as the page saw it: by touch, by key, or by a switch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pressed {
    /// A short press.
    Tap(ButtonId),
    /// Kept pressed, then let go.
    Held(ButtonId),
    /// Two buttons together.
    Both(ButtonId, ButtonId),
}

impl Pressed {
    /// The buttons.
    pub fn buttons(self) -> Vec<ButtonId> {
        match self {
            Pressed::Tap(id) | Pressed::Held(id) => vec![id],
            Pressed::Both(a, b) => vec![a, b],
        }
    }

    /// What it does on the bike, if anything.
    pub fn does(self, plan: &Plan, layout: &Layout) -> Option<Function> {
        let bike = &plan.bike;
        match self {
            Pressed::Tap(id) => layout.tap(bike, id),
            Pressed::Held(id) => match layout.holds.get(&id) {
                Some(Hold::Does(function)) if layout.is_live(bike, id) => Some(*function),
                _ => layout.tap(bike, id),
            },
            Pressed::Both(a, b) => {
                let mut chords = layout.chords.iter();
                let chord = chords.find(|c| c.is_connected(bike) && c.includes(a) && c.includes(b));
                chord.map(|chord| chord.function)
            }
        }
    }

    pub(super) fn is(self, via: Via) -> bool {
        match (self, via) {
            (Pressed::Tap(a), Via::Tap(b)) | (Pressed::Held(a), Via::Hold(b)) => a == b,
            (Pressed::Both(a, b), Via::Chord(chord)) => chord.includes(a) && chord.includes(b),
            _ => false,
        }
    }
}

/// A function in a word or two, as it is called out.
pub(super) const fn what(function: Function) -> &'static str {
    match function {
        Function::RearHarder | Function::RungUp => "Harder",
        Function::RearEasier | Function::RungDown => "Easier",
        Function::FrontLarger => "Large ring",
        Function::FrontSmaller => "Small ring",
        Function::FrontToggle => "Other ring",
        Function::NextScreen => "Next screen",
        Function::Lights => "Lights",
    }
}

/// What is said with a call for a function in a scene.
pub(super) fn words(function: Function, scene: Scene, keep: bool) -> String {
    let what = what(function);
    let why = match scene {
        Scene::Hill => "you are climbing",
        Scene::Crest => "over the top",
        Scene::Bend => "before the bend",
        Scene::Stop => "before you stop",
        Scene::Flat => "when you like",
    };
    if keep {
        format!("{what}, several: keep it pressed, then let go: {why}")
    } else {
        format!("{what}: {why}")
    }
}

/// The scene that goes with a function: the road asks for easier on a hill and
/// before a stop.
pub(super) fn scene_for(function: Function, turn: u32) -> Scene {
    match function {
        Function::RearEasier | Function::RungDown => match turn % 3 {
            1 => Scene::Hill,
            2 => Scene::Bend,
            _ => Scene::Stop,
        },
        Function::FrontSmaller => Scene::Hill,
        Function::RearHarder | Function::RungUp | Function::FrontLarger => Scene::Crest,
        Function::FrontToggle | Function::NextScreen | Function::Lights => Scene::Flat,
    }
}
