//! From a position, the rider shifts one way but not back.

use super::{Family, Origin, Rule, fixes};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "one-direction-only",
    family: Family::Function,
    title: "Only one of a pair is reached from a position",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Of two functions that undo each other, both or neither are reached from a position in use.",
    why: "A press too many cannot be taken back from there, and the hand looks for a button that is not in reach.",
    remedy: "Put the other function within reach of the same position as well.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for missing in Function::ALL.iter().copied() {
        let Some(reached) = missing.opposite() else {
            continue;
        };
        // A pair of which one cannot be called up while riding is another problem.
        if !situation.is_callable(missing) {
            continue;
        }
        for position in situation.positions() {
            let one_only = situation.reached(missing, *position).is_none()
                && situation.reached(reached, *position).is_some();
            if one_only {
                findings.push(Finding {
                    rule: RULE.id,
                    severity: Severity::Check,
                    acceptable: Acceptable::ByShop,
                    places: vec![
                        Place::Function(missing),
                        Place::Position(*position),
                        Place::Function(reached),
                    ],
                    message: format!(
                        "From the {position} the rider reaches “{reached}” but not “{missing}”, which undoes it."
                    ),
                    fixes: situation.propose(|| {
                        fixes::put_within_reach_of(situation, missing, *position)
                    }),
                });
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::function::Function::RearEasier;
    use crate::rules::testing::{check_fixes, drop_bar, fired, gravel};

    #[test]
    fn fires_for_a_harder_gear_without_an_easier_one() {
        let plan = gravel()
            .tap("right outer paddle", None)
            .tap("right hood button", Some(RearEasier))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "From the drops the rider reaches “rear harder” but not “rear easier”, which undoes it."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_where_both_or_neither_are_reached() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        assert!(fired(&drop_bar().blank().plan(), &RULE).is_empty());
    }
}
