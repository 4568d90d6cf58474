//! Stopping: each wheel from each position, and who steers meanwhile.

use crate::cockpit::{HandPosition, Wheel};
use crate::coverage::{BrakeCell, BrakePull};
use crate::rider::{Ability, Day, Difficulty, Side, Standing};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

/// How a wheel is braked from a position on a day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stopping {
    /// The wheel.
    pub wheel: Wheel,
    /// From where.
    pub position: HandPosition,
    /// On which day.
    pub day: Day,
    /// Who brakes.
    pub brakes: Who,
    /// Who steers meanwhile, in words.
    pub steers: String,
}

/// Who brakes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Who {
    /// A hand that stays where it is.
    Hand(BrakePull),
    /// A hand that lets go for it.
    LetsGo(BrakePull),
    /// A hand of which nobody asked what becomes of it on this day.
    NotAsked,
    /// Nobody, and why.
    Nobody(String),
}

impl Who {
    /// Whether this is the first thing to look at.
    pub const fn is_out_of_reach(&self) -> bool {
        matches!(self, Who::LetsGo(_) | Who::Nobody(_))
    }

    /// "Left index finger, takes effort".
    pub fn words(&self) -> String {
        let pulled = |pull: &BrakePull| {
            let step = pull.step.map_or("not asked yet", Vocabulary::words);
            format!("{} {}, {step}", pull.hand, pull.contact)
        };
        match self {
            Who::Hand(pull) => pulled(pull),
            Who::LetsGo(pull) => format!("{}; the hand lets go of the bar for it", pulled(pull)),
            Who::NotAsked => "not asked".into(),
            Who::Nobody(why) => format!("nobody: {why}"),
        }
    }
}

/// Every wheel from every position in use, usual day and bad day.
pub(super) fn stopping(situation: &Situation<'_>) -> Vec<Stopping> {
    let coverage = &situation.coverage;
    let mut found = Vec::new();
    for row in &coverage.brakes {
        for ((position, day), cell) in coverage.columns().zip(&row.cells) {
            let is_open =
                |pull: &BrakePull| day == Day::Bad && situation.hand(pull.hand).bad_day_is_open();
            let brakes = match cell {
                BrakeCell::Reached(pull) | BrakeCell::ByLettingGo(pull) if is_open(pull) => {
                    Who::NotAsked
                }
                BrakeCell::Reached(pull) => Who::Hand(*pull),
                BrakeCell::ByLettingGo(pull) => Who::LetsGo(*pull),
                BrakeCell::No(why) => Who::Nobody(why.to_string()),
            };
            found.push(Stopping {
                wheel: row.wheel,
                position,
                day,
                steers: steers(situation, &brakes, day),
                brakes,
            });
        }
    }
    found
}

fn steers(situation: &Situation<'_>, brakes: &Who, day: Day) -> String {
    let (Who::Hand(pull) | Who::LetsGo(pull)) = brakes else {
        return String::new();
    };
    let other = pull.hand.other();
    match known(situation, other, Ability::SteersWhileOtherBrakes, day) {
        Some(words) => format!("{other} hand steers{words}"),
        None => match known(situation, pull.hand, Ability::SteersAlone, day) {
            Some(words) if matches!(brakes, Who::Hand(_)) => {
                format!("the same hand steers{words}")
            }
            _ => "nobody steers".into(),
        },
    }
}

/// What is to be said of a hand that steers; `None` where it does not.
fn known(
    situation: &Situation<'_>,
    side: Side,
    ability: Ability,
    day: Day,
) -> Option<&'static str> {
    let hand = situation.hand(side);
    if !hand.works() {
        return None;
    }
    let told = hand.told(hand.step(ability, day), day);
    match told.map(Difficulty::standing) {
        None => Some(", not asked yet"),
        Some(Standing::Able) => Some(""),
        Some(Standing::OnlyAfterCheck) => Some(", with great effort"),
        Some(Standing::NotUsable) => None,
    }
}
