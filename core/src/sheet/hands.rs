//! The page with what the hands can do, as answered. It can be left out.

use std::fmt;

use super::capital;
use crate::plan::Plan;
use crate::rider::{Ability, Answer, Contact, Hand, Rider, Side};
use crate::vocabulary::Vocabulary;

/// What the plan asks nobody about.
pub const NOT_ASSESSED: &[&str] = &[
    "attention",
    "sight",
    "thinking and memory",
    "seizures",
    "medicines",
];

/// What the hands can do, as answered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandPage {
    /// Why the page stands alone.
    pub note: &'static str,
    /// Each hand's answers, left first.
    pub hands: Vec<(Side, Vec<HandLine>)>,
    /// What was asked once.
    pub once: Vec<HandLine>,
    /// The rider's own words; may be empty.
    pub own_words: String,
    /// What is not assessed here, [`NOT_ASSESSED`].
    pub not_assessed: &'static [&'static str],
}

/// What stands where nobody answered.
const NOT_ASKED: &str = "not asked, or not sure: try with the fitter";

/// One answer with where it came from.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HandLine {
    /// What was asked.
    pub asked: String,
    /// The answer; "not asked" is not "no difficulty".
    pub answer: String,
    /// Who says so; empty without an answer.
    pub source: String,
    /// When; empty without a source.
    pub date: String,
    /// What was worn; empty without a source.
    pub worn: String,
    /// What somebody said before, with its source; empty where nothing was
    /// replaced.
    pub before: String,
}

pub(super) fn page(plan: &Plan) -> HandPage {
    let mut page = answers(plan);
    if let Some(date) = plan.rider.hand_details_removed {
        let lines = page.hands.iter_mut().flat_map(|(_, lines)| lines);
        for line in lines.chain(&mut page.once) {
            if line.answer == NOT_ASKED {
                line.answer = format!("not known: hand details were removed on {date}");
            }
        }
    }
    page
}

fn answers(plan: &Plan) -> HandPage {
    let rider = &plan.rider;
    HandPage {
        note: "Keep this page apart: it goes to the rider, or to the clinic’s file. The bench works without it. Steps are as told or seen; they are not a clinical rating.",
        hands: Side::ALL
            .iter()
            .map(|side| (*side, of_hand(plan, rider.hands.get(*side))))
            .collect(),
        once: once(plan, rider),
        own_words: rider.own_words.to_string(),
        not_assessed: NOT_ASSESSED,
    }
}

fn of_hand(plan: &Plan, hand: &Hand) -> Vec<HandLine> {
    let mut lines = vec![line("on the bar", hand.place)];
    lines.extend(
        Ability::ALL
            .iter()
            .map(|ability| line(&ability.to_string(), of_ability(hand, *ability))),
    );
    lines.extend(
        Contact::ALL
            .iter()
            .filter(|c| c.is_digit() || hand.contacts.get(**c).is_known())
            .map(|contact| {
                let asked = format!("presses with the {contact}");
                line(&asked, hand.contacts.get(*contact))
            }),
    );
    lines.extend(
        (hand.hurts.iter()).map(|(part, answer)| line(&format!("the {part} hurts"), answer)),
    );
    lines.push(line("contacts press", hand.pressing));
    lines.push(line("the arm moves by itself", hand.moves_by_itself));
    lines.push(line("after an hour, or in the cold", hand.later));
    lines.extend(plan.positions_used().into_iter().map(|position| {
        let asked = format!("farthest blade it pulls from the {position}");
        line(&asked, hand.blade_reach.get(position))
    }));
    if let Some(device) = hand.device {
        lines.push(line("device lets go in a fall", device.releases_in_fall));
        lines.push(line("device", device.acts));
    }
    lines
}

fn of_ability(hand: &Hand, ability: Ability) -> Answer<&'static str> {
    let answer = hand.abilities.get(ability);
    answer.map(|step| ability.answer(step))
}

fn once(plan: &Plan, rider: &Rider) -> Vec<HandLine> {
    let mut lines: Vec<HandLine> = plan
        .bike
        .bar
        .kind
        .positions()
        .iter()
        .map(|position| {
            line(
                &format!("rides on the {position}"),
                rider.positions.get(*position),
            )
        })
        .collect();
    lines.push(line("mounts from the", rider.mounts_from));
    lines.push(line(
        "holds a brake while mounting with the",
        rider.holds_brake_mounting,
    ));
    lines.push(line(
        "expects the front brake on the",
        rider.front_brake_habit,
    ));
    lines.push(line(
        "presses in a ride that was fine",
        rider.fine_ride_presses,
    ));
    lines
}

fn line<T: fmt::Display>(asked: &str, answer: Answer<T>) -> HandLine {
    let words = |known: Option<String>| known.unwrap_or_else(|| "not recorded".into());
    let open = HandLine {
        asked: capital(asked),
        answer: NOT_ASKED.into(),
        source: String::new(),
        date: String::new(),
        worn: String::new(),
        before: answer.before_in_words().unwrap_or_default(),
    };
    let Some(value) = answer.value else {
        return open;
    };
    let Some(evidence) = answer.evidence else {
        return HandLine {
            answer: value.to_string(),
            source: words(None),
            ..open
        };
    };
    HandLine {
        answer: value.to_string(),
        source: evidence.words(),
        date: words(evidence.date.map(|d| d.to_string())),
        worn: words(evidence.worn.map(|w| w.to_string())),
        ..open
    }
}
