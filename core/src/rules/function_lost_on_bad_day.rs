//! A needed function works on a usual day but not on a bad one.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::HandPosition;
use crate::coverage::Cell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::Day;
use crate::situation::Situation;
use crate::text::list;

pub(super) static RULE: Rule = Rule {
    id: "function-lost-on-bad-day",
    family: Family::Reach,
    title: "A function works on a usual day but not on a bad one",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "What is reached on a usual day is also reached from the same position after an hour, in the cold or on a bad day, as far as the answers tell.",
    why: "The hand gives out on the way home, not in the shop. Then the gear that is wanted most cannot be had.",
    remedy: "Put the function on a second button for the hand or contact that lasts, or agree what the rider does when the hand tires.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for row in situation.coverage.rows.iter().filter(|row| row.needed) {
        let lost: Vec<HandPosition> = situation
            .positions()
            .iter()
            .copied()
            .filter(|position| is_lost(situation, row.function, *position))
            .collect();
        let Some(way) = lost
            .first()
            .and_then(|position| situation.reached(row.function, *position))
        else {
            continue;
        };
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Function(row.function), Place::Hand(way.hand)],
            message: format!(
                "On a bad day the {} hand no longer presses “{}” from the {}.",
                way.hand,
                row.function,
                list(&lost, "and")
            ),
            fixes: situation.propose(|| {
                fixes::put(situation, row.function, Day::Bad, |suited| {
                    lost.iter()
                        .all(|position| !suited.missed.contains(position))
                })
            }),
        });
    }
    findings
}

fn is_lost(situation: &Situation<'_>, function: Function, position: HandPosition) -> bool {
    let bad = situation.coverage.cell(function, position, Day::Bad);
    situation.reached(function, position).is_some() && !matches!(bad, Some(Cell::Reached(_)))
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::{Edit, RiderEdit};
    use crate::rider::{Answer, Contact, Difficulty, Later, Side};
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of, gravel};

    fn later(side: Side, later: Later) -> Edit {
        Edit::Rider(RiderEdit::Later(side, Answer::of(later)))
    }

    #[test]
    fn fires_for_a_hand_not_to_be_counted_on_and_adds_a_second_button() {
        let plan = gravel()
            .edit(&later(Side::Right, Later::DoNotCountOnIt))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "On a bad day the right hand no longer presses “rear harder” from the hoods and drops."
        );
        assert_eq!(
            fixes_of(&plan, &RULE)[0],
            "Put “rear harder” on the left outer paddle"
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_while_another_contact_lasts_or_one_step_still_presses() {
        let plan = drop_bar()
            .contact(Side::Right, Contact::Index, Difficulty::Severe)
            .edit(&later(Side::Right, Later::OneStepHarder))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
