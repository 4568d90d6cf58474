//! The shift plan needs tooth counts that are not entered.

use super::{Family, Origin, Rule};
use crate::edit::{Edit, GearEdit};
use crate::finding::{Acceptable, Finding, Fix, Severity};
use crate::gears::PresetId;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "gears-not-entered",
    family: Family::Gears,
    title: "Teeth are not entered",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "For a paired plan or a ladder the teeth of rings and cogs are entered.",
    why: "Without them nobody can tell where the front should change, or how many rear shifts should go with it.",
    remedy: "Count the teeth and enter them; most are stamped into ring and cog.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let plan = situation.plan;
    let needs = matches!(
        plan.shift_plan,
        ShiftPlanKind::Paired | ShiftPlanKind::Ladder
    );
    let Some(what) = plan.bike.drivetrain.not_entered().filter(|_| needs) else {
        return Vec::new();
    };
    let usual = PresetId::with(plan.bike.rings(), plan.bike.cogs());
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: Vec::new(),
        message: format!(
            "The teeth of the {what} are not entered yet; the {} plan needs them.",
            plan.shift_plan
        ),
        fixes: usual
            .map(|preset| Fix {
                label: format!("Take a usual set, then compare: {preset}"),
                edit: Edit::Gears(GearEdit::Preset(preset)),
            })
            .into_iter()
            .collect(),
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::BikeEdit;
    use crate::rules::ladder::testing::ladder;
    use crate::rules::testing::{check_fixes, drop_bar, fired};

    #[test]
    fn fires_for_a_ladder_of_which_only_the_number_of_cogs_is_known() {
        let plan = ladder().bike_edit(BikeEdit::Cogs(11)).plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The teeth of the cogs are not entered yet; the ladder plan needs them."
        );
        check_fixes(&plan, &RULE);
        assert!(fired(&ladder().plan(), &RULE).is_empty());
        let separate = drop_bar().bike_edit(BikeEdit::Cogs(11)).plan();
        assert!(fired(&separate, &RULE).is_empty());
    }
}
