//! A hold runs on across a crossover of the ladder.

use super::{Family, Origin, Rule, fixes, ladder};
use crate::cockpit::HoldRun;
use crate::edit::{Edit, GearEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::Hold;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "hold-crosses-over",
    family: Family::Gears,
    title: "A hold runs across a crossover",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "A hold on the ladder stops where the front changes.",
    why: "Held across, the front changes in the middle of a run of rear shifts, under whatever load there is, and the rider does not know on which ring the hold ends.",
    remedy: "Stop holds at crossovers, or take the hold off.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let plan = situation.plan;
    if !plan.shift_settings.holds_cross
        || ladder::of(situation).is_none_or(|(_, ladder)| ladder.crossovers().is_empty())
    {
        return Vec::new();
    }
    let mut findings = Vec::new();
    for (id, hold) in situation.layout.holds.iter() {
        let Hold::Repeats(run) = hold else {
            continue;
        };
        let tap = situation.layout.tap(&plan.bike, *id);
        if *run <= HoldRun::Cogs(1) || !tap.is_some_and(|function| function.is_rung()) {
            continue;
        }
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(*id)],
            message: format!(
                "Keeping the {} pressed shifts on across crossovers: {run}.",
                plan.bike.place_of(*id)
            ),
            fixes: vec![
                Fix {
                    label: "Stop holds at crossovers".into(),
                    edit: Edit::Gears(GearEdit::HoldsCross(false)),
                },
                fixes::no_hold(situation, *id),
            ],
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HoldRun;
    use crate::edit::GearEdit;
    use crate::layout::Hold;
    use crate::rules::ladder::testing::ladder;
    use crate::rules::testing::{check_fixes, fired, fixes_of};

    #[test]
    fn fires_for_a_hold_that_may_cross_over() {
        let held = || ladder().hold("right outer paddle", Hold::Repeats(HoldRun::Cogs(3)));
        let crosses = held().gear_edit(GearEdit::HoldsCross(true)).plan();
        assert_eq!(
            fired(&crosses, &RULE)[0].message,
            "Keeping the right outer paddle pressed shifts on across crossovers: 3 cogs."
        );
        assert_eq!(fixes_of(&crosses, &RULE)[0], "Stop holds at crossovers");
        check_fixes(&crosses, &RULE);
        assert!(fired(&held().plan(), &RULE).is_empty());
        let one = ladder()
            .hold("right outer paddle", Hold::Repeats(HoldRun::Cogs(1)))
            .gear_edit(GearEdit::HoldsCross(true));
        assert!(fired(&one.plan(), &RULE).is_empty());
    }
}
