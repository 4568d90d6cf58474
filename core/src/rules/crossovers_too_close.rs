//! A crossover lands close to the opposite one.

use super::{Family, Origin, Rule, ladder};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::gears::CLOSE;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "crossovers-too-close",
    family: Family::Gears,
    title: "Crossovers are close to each other",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "A crossover of the ladder lands more than two rungs from where the opposite one leaves.",
    why: "Where they are close, a few presses back on rolling ground change the front again: it is slow, it is where chains drop, and the rider did not ask for it.",
    remedy: "Move one of the two crossovers, or land on another cog.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some((gears, ladder)) = ladder::of(situation) else {
        return Vec::new();
    };
    let mut findings = Vec::new();
    for crossover in ladder.crossovers() {
        let Some(rungs) = ladder.rungs_to_opposite(crossover).filter(|n| *n <= CLOSE) else {
            continue;
        };
        let rungs = if rungs == 1 {
            "one rung".into()
        } else {
            format!("{rungs} rungs")
        };
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Gear(crossover.from), Place::Gear(crossover.to)],
            message: format!(
                "The crossover {} lands on {}, {rungs} from where the crossover {} leaves.",
                crossover.way,
                gears.words(crossover.to),
                crossover.way.other(),
            ),
            fixes: situation.propose(|| ladder::other_crossovers(situation, crossover)),
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::GearEdit;
    use crate::gears::{CogMove, Direction};
    use crate::rules::ladder::testing::ladder;
    use crate::rules::testing::{check_fixes, fired};

    #[test]
    fn fires_for_crossovers_next_to_each_other() {
        let early = CogMove {
            leaves: 5,
            lands: 3,
        };
        let plan = ladder()
            .gear_edit(GearEdit::Crossover(0, Direction::Up, early))
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(
            found[0].message,
            "The crossover up lands on 50×24, one rung from where the crossover down leaves."
        );
        assert_eq!(found.len(), 2);
        check_fixes(&plan, &RULE);
        assert!(fired(&ladder().plan(), &RULE).is_empty());
    }
}
