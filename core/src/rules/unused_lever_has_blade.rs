//! A blade that pulls nothing.

use super::{Family, Origin, Rule};
use crate::cockpit::ControlId;
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "unused-lever-has-blade",
    family: Family::Brake,
    title: "A blade pulls nothing",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Every lever with a blade pulls a brake.",
    why: "A false brake: in a fright a hand pulls what it has always pulled, and nothing happens.",
    remedy: "Remove the blade, or let it pull a brake.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let live: Vec<ControlId> = situation.live_runs().map(|run| run.lever).collect();
    let controls = situation.plan.bike.controls.iter();
    controls
        .filter(|control| control.has_blade() && !live.contains(&control.id))
        .map(|control| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Control(control.id)],
            message: format!(
                "The {} still has its blade, which pulls no brake: a false brake.",
                control.place()
            ),
            fixes: vec![Fix {
                label: format!("Remove the blade of the {}", control.place()),
                edit: Edit::Bike(BikeEdit::BladeFitted(control.id, false)),
            }],
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::BrakeEdit;
    use crate::rider::Side;
    use crate::rules::testing::{check_fixes, drop_bar, fired, lever};

    #[test]
    fn fires_for_the_lever_left_over_and_takes_its_blade_off() {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        let plan = setup.brake_edit(BrakeEdit::AllOnLever(left)).plan();
        assert_eq!(fired(&plan, &RULE).len(), 1);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_where_every_blade_pulls() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
