//! A blade farther from the bar than levers are made for.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;
use crate::units::Mm;

/// Largest grip dimension of a brake lever: ISO 4210-2 cl. 4.6.2.2, 90 mm (from
/// memory; 75 mm for young adults).
const MOST: Mm = Mm(90.0);

pub(super) static RULE: Rule = Rule {
    id: "blade-far-from-bar",
    family: Family::Brake,
    title: "A blade lies far from the bar",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "A blade, as measured at rest, lies at most 90 mm from the bar.",
    why: "Beyond that few hands close on it with force, whoever rides.",
    remedy: "Turn the reach screw in or fit another lever, then measure blade and throw again.",
    origin: Origin::Published("ISO 4210-2 cl. 4.6.2.2: grip dimension at most 90 mm (from memory)"),
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let reach = |lever| situation.plan.bike.control(lever)?.blade?.reach;
    situation
        .live_runs()
        .filter_map(|run| Some((run.lever, reach(run.lever)?)))
        .filter(|(_, reach)| reach.0 > MOST.0)
        .map(|(lever, reach)| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Control(lever)],
            message: format!(
                "The blade of the {} lies {reach} from the bar; levers are made for at most {MOST}.",
                situation.lever_name(lever)
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::BikeEdit;
    use crate::rider::Side;
    use crate::rules::testing::{drop_bar, fired, lever};
    use crate::units::Mm;

    #[test]
    fn fires_over_ninety_millimetres() {
        let measured = |mm| {
            let setup = drop_bar();
            let left = lever(&setup, Side::Left);
            let reach = BikeEdit::BladeReach(left, Some(Mm(mm)));
            fired(&setup.bike_edit(reach).plan(), &RULE).len()
        };
        assert_eq!(measured(91.0), 1);
        assert_eq!(measured(90.0), 0);
        assert!(fired(&drop_bar().plan(), &RULE).is_empty(), "not measured");
    }
}
