//! A function the bike needs is on no button that the rider reaches.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "needed-function-missing",
    family: Family::Function,
    title: "A needed function is missing",
    severity: Severity::MustFix,
    what: "Each function that the shift plan needs is on some button that a working hand reaches from at least one position in use.",
    why: "Without it the rider cannot get to part of the gears: on a hill there is no easier gear, or the chain stays on one ring.",
    remedy: "Put the function on a button that the hand reaches, or choose a shift plan that needs fewer functions.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    situation
        .coverage
        .rows
        .iter()
        .filter(|row| row.needed)
        .filter(|row| {
            !situation
                .positions()
                .iter()
                .any(|position| situation.callable_from(row.function, *position))
        })
        .map(|row| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Function(row.function)],
            message: format!(
                "“{}” is needed and no working hand can call it up from any position in use.",
                row.function
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_on_a_blank_layout_and_is_silent_on_the_usual_one() {
        let plan = drop_bar().blank().plan();
        assert_eq!(fired(&plan, &RULE).len(), 4);
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
