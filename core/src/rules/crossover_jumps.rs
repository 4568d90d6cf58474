//! A crossover of the ladder moves far, or makes the legs jump.

use super::{Family, Origin, Rule, ladder};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::gears::WIDE_STEP;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "crossover-jumps",
    family: Family::Gears,
    title: "A crossover jumps",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Where the front of the ladder changes, the rear moves three cogs at most, and the step that the rider feels is 20 % at most.",
    why: "While the chain moves far, the rider has no gear to pedal in; after a large step the legs spin or stand still. On a climb, with one hand on the bar, that is felt most.",
    remedy: "Move the crossover, land on another cog, or take the crossovers worked out.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some((gears, ladder)) = ladder::of(situation) else {
        return Vec::new();
    };
    let mut findings = Vec::new();
    for crossover in ladder.crossovers() {
        let step = crossover.step(gears);
        let far = crossover.cogs() > ladder::MOST_LANDING;
        if !far && step <= WIDE_STEP {
            continue;
        }
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Gear(crossover.from), Place::Gear(crossover.to)],
            message: format!(
                "The crossover {}, from {} to {}, moves {} and is a step of {step}.",
                crossover.way,
                gears.words(crossover.from),
                gears.words(crossover.to),
                ladder::cogs(crossover.cogs()),
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
    use crate::gears::{CogMove, Direction, Teeth};
    use crate::rules::ladder::testing::ladder;
    use crate::rules::testing::{check_fixes, fired, fixes_of};

    #[test]
    fn fires_for_a_large_step_and_takes_the_one_worked_out() {
        let jump = CogMove {
            leaves: 7,
            lands: 6,
        };
        let plan = ladder()
            .gear_edit(GearEdit::Crossover(0, Direction::Up, jump))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The crossover up, from 34×15 to 50×17, moves one cog and is a step of 30 %."
        );
        assert_eq!(fixes_of(&plan, &RULE)[0], "Take the crossovers worked out");
        check_fixes(&plan, &RULE);
        assert!(fired(&ladder().plan(), &RULE).is_empty());
    }

    #[test]
    fn fires_where_the_rear_moves_far() {
        let rings = [Teeth(26), Teeth(50)];
        let plan = ladder().gear_edit(GearEdit::Rings(rings.to_vec())).plan();
        let found = fired(&plan, &RULE);
        assert!(
            found.iter().all(|f| f.message.contains("moves")),
            "{found:?}"
        );
        assert!(!found.is_empty());
    }
}
