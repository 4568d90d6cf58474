//! How somebody practises here: kept on this device, apart from plans.

use gloo_storage::{LocalStorage, Storage};
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::practice::{KeySet, Pace, Switch};
use leverwright_core::rider::Side;
use serde::{Deserialize, Serialize};

use super::pad::{PadButton, PadSet};
use crate::settings::{Chosen, ThumbSide};
use crate::storage::is_available;

/// Where it lies in the browser's store.
const KEY: &str = "leverwright/practice";

/// What is chosen before it starts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Choices {
    /// The level.
    pub pace: Pace,
    /// The hand on the keys.
    pub hand: Side,
    /// Whether the browser speaks the calls.
    pub speaks: bool,
    /// Whether calls answered late are counted.
    pub counts_late: bool,
    /// Whether pictures stand still.
    pub is_still: bool,
}

/// What is kept. Buttons go by their place, so that it holds for other plans
/// with a button there.
#[derive(Debug, Default, Serialize, Deserialize)]
#[serde(default)]
struct Kept {
    hand: Option<String>,
    speaks: bool,
    counts_late: bool,
    is_still: bool,
    keys: Vec<(String, String)>,
    pads: Vec<(String, u32, u32)>,
}

fn kept() -> Kept {
    match is_available() {
        true => LocalStorage::get(KEY).unwrap_or_default(),
        false => Kept::default(),
    }
}

/// The choices as kept. The hand on the keys is first the one under which
/// everything lies, or else the thumb's.
pub fn load(settings: Chosen, plan: Option<&Plan>) -> Choices {
    let kept = kept();
    let at_work = plan.and_then(|plan| Switch::one_hand(&plan.bike, plan.layout()));
    let usual = match settings.thumb {
        ThumbSide::Left => Side::Left,
        ThumbSide::Right => Side::Right,
    };
    Choices {
        pace: Pace::NoHurry,
        hand: kept
            .hand
            .and_then(|code| Side::from_code(&code))
            .unwrap_or(at_work.unwrap_or(usual)),
        speaks: kept.speaks,
        counts_late: kept.counts_late,
        is_still: kept.is_still,
    }
}

/// The keys of a hand, with those that were changed.
pub fn keys(plan: &Plan, hand: Side) -> KeySet {
    let mut set = KeySet::for_hand(plan, hand);
    for (place, key) in kept().keys {
        if let Some(switch) = at(plan, &place) {
            set.put(switch, &key);
        }
    }
    set
}

/// What the buttons of a controller stand for.
pub fn pads(plan: &Plan) -> PadSet {
    let known = kept().pads.into_iter();
    known
        .filter_map(|(place, pad, button)| Some((at(plan, &place)?, PadButton { pad, button })))
        .collect()
}

fn at(plan: &Plan, place: &str) -> Option<Switch> {
    let all = Switch::all(&plan.bike).into_iter();
    all.into_iter()
        .find(|switch| switch.place(&plan.bike) == place)
}

/// Keeps it. Keys that are as usual are not listed.
pub fn save(plan: &Plan, choices: Choices, keys: &KeySet, pads: &PadSet) {
    if !is_available() {
        return;
    }
    let place = |switch: &Switch| switch.place(&plan.bike);
    let usual = KeySet::for_hand(plan, choices.hand);
    let changed = keys.all().iter();
    let changed = changed.filter(|(switch, key)| usual.key(*switch) != Some(key));
    let kept = Kept {
        hand: Some(choices.hand.code().to_owned()),
        speaks: choices.speaks,
        counts_late: choices.counts_late,
        is_still: choices.is_still,
        keys: changed
            .map(|(switch, key)| (place(switch), (*key).to_owned()))
            .collect(),
        pads: pads
            .iter()
            .map(|(switch, at)| (place(switch), at.pad, at.button))
            .collect(),
    };
    // Without room it holds until the page is closed.
    let _ = LocalStorage::set(KEY, kept);
}
