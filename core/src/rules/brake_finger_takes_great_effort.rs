//! The finger that leads on a blade presses buttons only with great effort.

use super::{Family, Origin, Rule};
use crate::coverage::BrakePull;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::ordered;
use crate::rider::{Contact, Day, Difficulty, Side};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "brake-finger-takes-great-effort",
    family: Family::Brake,
    title: "The braking finger presses only with great effort",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "The finger with which a hand best pulls a blade, from each position in use, presses buttons with less than great effort.",
    why: "Braking is asked about the whole hand, pressing about each finger. Where the two answers do not go together one of them may have been given too fast: a finger that hardly moves a button does not easily haul a blade.",
    remedy: "Ask once more, and see the pull: which fingers take the blade, and how often in a row. Then correct the answer about braking or about the finger.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let sides = Side::ALL.iter().copied();
    sides
        .flat_map(|side| fingers(situation, side).into_iter().map(move |f| (side, f)))
        .map(|(side, finger)| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Hand(side)],
            message: format!(
                "The {side} hand brakes with its {finger} first, which presses a button only with great effort: ask whether it pulls the blade."
            ),
            fixes: Vec::new(),
        })
        .take(Side::ALL.len())
        .collect()
}

/// The first finger of a hand that leads on some blade from some position and
/// takes great effort.
fn fingers(situation: &Situation<'_>, side: Side) -> Option<Contact> {
    let hard = |contact| {
        let step = situation.hand(side).contact_step(contact, Day::Usual);
        step == Some(Difficulty::Severe)
    };
    let runs = situation.live_runs();
    let leads = runs.flat_map(|run| {
        let positions = situation.positions().iter();
        positions.filter_map(move |position| {
            let pulls = situation.coverage.pulls(run.lever, *position, Day::Usual);
            let own = pulls
                .iter()
                .filter(|pull| pull.hand == side && pull.counts());
            own.min_by_key(|pull| pull.difficulty())
                .map(|pull: &BrakePull| pull.contact)
        })
    });
    let mut found: Vec<Contact> = leads.filter(|contact| hard(*contact)).collect();
    ordered::sort(&mut found);
    found.first().copied()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HandPosition::{Drops, Hoods};
    use crate::coverage::{BrakeCell, Coverage};
    use crate::rider::{Contact, Day, Difficulty, Side};
    use crate::rules::testing::{Setup, drop_bar, fired};

    fn with(fingers: &[Contact], step: Difficulty) -> Setup {
        let setup = drop_bar();
        let fold = |setup: Setup, finger: &Contact| setup.contact(Side::Left, *finger, step);
        fingers.iter().fold(setup, fold)
    }

    const ALL: [Contact; 5] = [
        Contact::Thumb,
        Contact::Index,
        Contact::Middle,
        Contact::Ring,
        Contact::Little,
    ];

    #[test]
    fn asks_where_every_finger_of_the_blade_takes_great_effort() {
        let plan = with(&ALL, Difficulty::Severe).plan();
        let found = fired(&plan, &RULE);
        assert_eq!(
            found[0].message,
            "The left hand brakes with its index finger first, which presses a button only with great effort: ask whether it pulls the blade."
        );
        // The table no longer says that it takes no effort.
        let coverage = Coverage::of(&plan, plan.layout());
        for position in [Hoods, Drops] {
            let cell = coverage.brake_cell(crate::cockpit::Wheel::Front, position, Day::Usual);
            let step = cell.and_then(BrakeCell::reached).and_then(|pull| pull.step);
            assert_eq!(step, Some(Difficulty::Severe));
        }
    }

    #[test]
    fn is_silent_while_another_finger_takes_the_blade_or_effort_is_less() {
        assert!(fired(&with(&ALL, Difficulty::Moderate).plan(), &RULE).is_empty());
        assert!(fired(&with(&[Contact::Index], Difficulty::Severe).plan(), &RULE).is_empty());
    }
}
