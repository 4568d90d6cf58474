//! A blade that comes too near the bar at full pull.

use super::{Family, Origin, Rule};
use crate::cockpit::Blade;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "blade-near-bar-at-full-pull",
    family: Family::Brake,
    title: "A blade comes too near the bar",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "At full pull a blade, as measured, stays 20 mm from the bar.",
    why: "With a little wear the blade meets the bar, or the other fingers, before the brake bites.",
    remedy: "Bleed or take up the cable, renew pads, or use a lever of the right pull, and measure again.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let gap = |lever| situation.plan.bike.control(lever)?.blade?.gap_at_full_pull;
    situation
        .live_runs()
        .filter_map(|run| Some((run.lever, gap(run.lever)?)))
        .filter(|(_, gap)| gap.0 < Blade::LEAST_GAP.0)
        .map(|(lever, gap)| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::Never,
            places: vec![Place::Control(lever)],
            message: format!(
                "At full pull the blade of the {} is {gap} from the bar; {} must be left.",
                situation.lever_name(lever),
                Blade::LEAST_GAP
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::BikeEdit;
    use crate::finding::Acceptable;
    use crate::rider::Side;
    use crate::rules::testing::{drop_bar, fired, lever};
    use crate::units::Mm;

    #[test]
    fn fires_under_twenty_millimetres() {
        let with_gap = |mm| {
            let setup = drop_bar();
            let left = lever(&setup, Side::Left);
            let gap = BikeEdit::BladeGap(left, Some(Mm(mm)));
            fired(&setup.bike_edit(gap).plan(), &RULE)
        };
        assert_eq!(with_gap(19.0)[0].acceptable, Acceptable::Never);
        assert!(with_gap(20.0).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty(), "not measured");
    }
}
