//! The page with what the hands can do, as answered. It can be left out.

use std::fmt;

use super::{Field, capital};
use crate::plan::Plan;
use crate::rider::{
    Ability, Answer, Contact, Difficulty, Hand, ICF_NOTE, Question, QuestionId, Rider, Side,
};
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
    /// What step numbers and codes are, where they are shown; else empty.
    pub icf_note: &'static str,
    /// Lines for the clinician who saw the hands.
    pub sign: Vec<Field>,
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

pub(super) fn page(plan: &Plan, clinical: bool) -> HandPage {
    let mut page = answers(plan, clinical);
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

fn answers(plan: &Plan, clinical: bool) -> HandPage {
    let rider = &plan.rider;
    HandPage {
        note: "Keep this page apart: it goes to the rider, or to the clinic’s file. The bench works without it. Steps are as told or seen; they are not a clinical rating.",
        hands: Side::ALL
            .iter()
            .map(|side| (*side, of_hand(plan, rider.hands.get(*side), clinical)))
            .collect(),
        once: once(plan, rider),
        own_words: rider.own_words.to_string(),
        not_assessed: NOT_ASSESSED,
        icf_note: if clinical { ICF_NOTE } else { "" },
        sign: vec![
            Field::blank("Clinician who saw the hands"),
            Field::blank("Signature"),
            Field::blank("Date"),
        ],
    }
}

fn of_hand(plan: &Plan, hand: &Hand, clinical: bool) -> Vec<HandLine> {
    let shown = Shown { clinical };
    let mut lines = vec![line(
        &shown.asked("on the bar", QuestionId::Place),
        hand.place,
    )];
    lines.extend(Ability::ALL.iter().map(|ability| {
        let question = Question::about(*ability);
        let asked = shown.coded(&ability.to_string(), question);
        let answer = hand.abilities.get(*ability);
        line(
            &asked,
            answer.map(|step| shown.step(step, ability.brief(step))),
        )
    }));
    let contacts = Contact::ALL.iter().copied();
    let pressing = contacts.filter(|c| c.is_digit() || hand.contacts.get(*c).is_known());
    lines.extend(pressing.map(|contact| {
        let asked = format!("presses with the {contact}");
        let answer = hand.contacts.get(contact);
        line(
            &shown.asked(&asked, QuestionId::Pressing),
            answer.map(|step| shown.step(step, step.brief())),
        )
    }));
    lines.extend(
        (hand.hurts.iter()).map(|(part, answer)| line(&format!("the {part} hurts"), answer)),
    );
    lines.push(line("contacts press", hand.pressing));
    let by_itself = |asked| shown.asked(asked, QuestionId::OnItsOwn);
    lines.push(line(
        &by_itself("tightens or moves by itself"),
        hand.moves_by_itself,
    ));
    lines.push(line(&by_itself("after an hour or in the cold"), hand.later));
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

/// Whether step numbers and codes are shown.
#[derive(Clone, Copy)]
struct Shown {
    clinical: bool,
}

impl Shown {
    fn asked(self, asked: &str, question: QuestionId) -> String {
        self.coded(asked, Question::named(question))
    }

    /// What was asked, with the closest codes.
    fn coded(self, asked: &str, question: Option<&Question>) -> String {
        match question.filter(|_| self.clinical) {
            Some(question) => format!("{asked} ({})", question.icf_words()),
            None => asked.to_owned(),
        }
    }

    /// A step in the words of the interview, with its number.
    fn step(self, step: Difficulty, brief: &str) -> String {
        if self.clinical {
            format!("{} · {brief}", step.number())
        } else {
            brief.to_owned()
        }
    }
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
