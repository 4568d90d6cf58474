//! What is typed into the shift system, in the order of typing.

use crate::cockpit::{Bike, ButtonId, Freedom, ProfileOrigin, SystemProfile};
use crate::gears::{Crossover, Direction, Gears, Ladder, Scheme};
use crate::layout::{Chord, Layout};
use crate::rider::YesNo;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;

/// The settings, as typed into the shift system with its maker's own tool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SettingsList {
    /// What the settings are for, and what its manual is known to say.
    pub system: String,
    /// The settings in the order of typing: the shift plan, each button with
    /// its hold, buttons pressed together, then what is left blank.
    pub settings: Vec<Setting>,
    /// Buttons that are not typed in, and why.
    pub left_alone: Vec<String>,
    /// What a reset or an update does to them.
    pub after_reset: &'static str,
}

/// One setting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Setting {
    /// The balloon numbers it is about.
    pub numbers: Vec<usize>,
    /// What is set: "shift plan", "left outer paddle".
    pub what: String,
    /// To what; `None` is written in by hand.
    pub value: Option<String>,
}

pub(super) fn list(situation: &Situation<'_>) -> SettingsList {
    let (plan, layout) = (situation.plan, situation.layout);
    let bike = &plan.bike;
    let mut settings = shift_plan(situation);
    settings.extend(
        bike.buttons()
            .into_iter()
            .filter(|(id, control, button)| {
                control.connected && button.is_remappable() && has_own(layout, *id)
            })
            .map(|(id, ..)| of_button(bike, layout, id)),
    );
    let plugged = |id: ButtonId| bike.control(id.control).is_some_and(|c| c.connected);
    settings.extend(
        layout
            .chords
            .iter()
            .filter(|chord| plugged(chord.first) && plugged(chord.second))
            .map(|chord| of_chord(bike, chord)),
    );
    settings.extend(blank_ones(bike, layout));
    settings.extend(bike.system.holds.map(|_| Setting {
        numbers: Vec::new(),
        what: "every other hold".into(),
        value: Some("off".into()),
    }));
    SettingsList {
        system: system(&bike.system),
        settings,
        left_alone: left_alone(bike),
        after_reset: after_reset(&bike.system),
    }
}

fn system(profile: &SystemProfile) -> String {
    let name = if profile.name.is_empty() {
        "The shift system"
    } else {
        profile.name.as_str()
    };
    match profile.origin {
        ProfileOrigin::Generic => {
            format!("{name}. What it can program is a guess: check its manual first.")
        }
        ProfileOrigin::FromManual => format!("{name}, as entered from its manual."),
    }
}

/// The shift plan; what the gears still have to decide is left open.
pub(super) fn shift_plan(situation: &Situation<'_>) -> Vec<Setting> {
    let kind = situation.plan.shift_plan;
    let mut settings = vec![set("shift plan", Some(kind.to_string()))];
    let shifting = situation.shifting().ok();
    match shifting.map(|shifting| (&shifting.gears, &shifting.scheme)) {
        Some((_, Scheme::Paired(paired))) => {
            let cogs = |n: u8| Some(super::counted(n.into(), "cog", "cogs"));
            settings.push(set("rear shifts with front larger", cogs(paired.larger)));
            settings.push(set("rear shifts with front smaller", cogs(paired.smaller)));
        }
        Some((gears, Scheme::Ladder(ladder))) => {
            for crossover in ladder.crossovers() {
                settings.push(of_crossover(gears, ladder, crossover));
            }
            let stops = match situation.plan.shift_settings.holds_cross {
                false => "stop",
                true => "run on",
            };
            settings.push(set("holds where the front changes", Some(stops.into())));
        }
        Some(_) => {}
        None => open_ones(kind, &mut settings),
    }
    settings
}

fn set(what: &str, value: Option<String>) -> Setting {
    Setting {
        numbers: Vec::new(),
        what: what.into(),
        value,
    }
}

/// Where the front changes: the rung it leaves, and from which gear to which.
fn of_crossover(gears: &Gears, ladder: &Ladder, crossover: Crossover) -> Setting {
    let path = ladder.path(crossover.way);
    let rung = path.iter().position(|gear| *gear == crossover.from);
    // Rungs are counted as they are walked.
    let from = match crossover.way {
        Direction::Up => "easiest",
        Direction::Down => "hardest",
    };
    let value = format!(
        "{} of {} from {from}: {} to {}",
        rung.map_or(0, |at| at + 1),
        path.len(),
        gears.words(crossover.from),
        gears.words(crossover.to)
    );
    set(&format!("front {} at rung", crossover.way), Some(value))
}

/// What is written in by hand until the gears are known.
fn open_ones(kind: ShiftPlanKind, settings: &mut Vec<Setting>) {
    let open: &[&str] = match kind {
        ShiftPlanKind::SingleRing | ShiftPlanKind::Separate => &[],
        ShiftPlanKind::Paired => &[
            "rear shifts with front larger",
            "rear shifts with front smaller",
        ],
        ShiftPlanKind::Ladder => &["front up at rung", "front down at rung"],
    };
    for what in open {
        settings.push(set(what, None));
    }
}

/// Whether a tap or a hold was given to it.
fn has_own(layout: &Layout, id: ButtonId) -> bool {
    layout.taps.contains_key(&id) || layout.holds.contains_key(&id)
}

/// Every button that is set to do nothing by itself, in one line: forgetting
/// one leaves its old function on it.
fn blank_ones(bike: &Bike, layout: &Layout) -> Option<Setting> {
    let numbers: Vec<usize> = bike
        .buttons()
        .into_iter()
        .enumerate()
        .filter(|(_, (id, control, button))| {
            control.connected && button.is_remappable() && !has_own(layout, *id)
        })
        .map(|(at, _)| at + 1)
        .collect();
    (!numbers.is_empty()).then(|| Setting {
        numbers,
        what: "each of these".into(),
        value: Some("blank".into()),
    })
}

fn of_button(bike: &Bike, layout: &Layout, id: ButtonId) -> Setting {
    let mut value = match layout.taps.get(&id) {
        Some(function) => function.to_string(),
        None => "blank".into(),
    };
    if let Some(hold) = layout.holds.get(&id) {
        value.push_str(&format!("; hold: {hold}"));
    }
    Setting {
        numbers: bike.balloon(id).into_iter().collect(),
        what: bike.place_of(id),
        value: Some(value),
    }
}

fn of_chord(bike: &Bike, chord: &Chord) -> Setting {
    Setting {
        numbers: [chord.first, chord.second]
            .into_iter()
            .filter_map(|id| bike.balloon(id))
            .collect(),
        what: "both together".into(),
        value: Some(chord.function.to_string()),
    }
}

fn left_alone(bike: &Bike) -> Vec<String> {
    bike.buttons()
        .into_iter()
        .enumerate()
        .filter_map(|(at, (id, control, button))| {
            let place = control.place_of(id.part);
            let why = match &button.freedom {
                _ if !control.connected => "unplugged".to_string(),
                Freedom::Fixed(function) => format!("fixed to {function}"),
                Freedom::Copies(original) => match bike.balloon(*original) {
                    Some(number) => format!("copies {number}"),
                    None => "copies a missing button".into(),
                },
                Freedom::Free | Freedom::Limited(_) => return None,
            };
            Some(format!("{} {place}: {why}", at + 1))
        })
        .collect()
}

fn after_reset(profile: &SystemProfile) -> &'static str {
    match profile.keeps_settings.value {
        Some(YesNo::Yes) => {
            "Its manual says that settings stay after a reset or an update. Look all the same, and do the stand check again."
        }
        Some(YesNo::No) => {
            "A reset or an update brings the old functions back. Type these in again, then do the stand check again."
        }
        None => {
            "A reset or an update may bring the old functions back. Compare with this list, type in what differs, then do the stand check again."
        }
    }
}
