//! The ladder does not lead through the gears.

use super::{Family, Origin, Rule};
use crate::edit::{Edit, GearEdit, PlanEdit};
use crate::finding::{Acceptable, Finding, Fix, Severity};
use crate::gears::ShiftingError;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "ladder-broken",
    family: Family::Gears,
    title: "The ladder does not lead through the gears",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "The ladder leads from the easiest gear allowed to the hardest and back, whatever is forbidden or set by hand.",
    why: "Where it breaks off, a press does nothing, and part of the gears is out of reach of the only two buttons there are.",
    remedy: "Allow forbidden gears again, take the crossovers worked out, or choose another shift plan.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Err(ShiftingError::Ladder(error)) = situation.shifting() else {
        return Vec::new();
    };
    vec![Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::ByShop,
        places: Vec::new(),
        message: error.to_string(),
        fixes: situation.propose(|| proposals(situation)),
    }]
}

fn proposals(situation: &Situation<'_>) -> Vec<Fix> {
    let forbidden = &situation.plan.shift_settings.ladder.forbidden;
    let mut allow = Vec::new();
    for gear in forbidden {
        allow.push(Edit::Gears(GearEdit::Forbid(*gear, false)));
    }
    let worked_out = Edit::Gears(GearEdit::CrossoversWorkedOut);
    let mut fixes = vec![
        Fix {
            label: "Take the crossovers worked out".into(),
            edit: worked_out.clone(),
        },
        Fix {
            label: "Allow all gears again".into(),
            edit: Edit::Several {
                label: "allow all gears again".into(),
                edits: allow.clone(),
            },
        },
    ];
    allow.push(worked_out);
    fixes.push(Fix {
        label: "Allow all gears, crossovers worked out".into(),
        edit: Edit::Several {
            label: "allow all gears, crossovers worked out".into(),
            edits: allow,
        },
    });
    fixes.push(Fix {
        label: "Change to separate".into(),
        edit: Edit::Plan(PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Separate)),
    });
    fixes
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::GearEdit;
    use crate::gears::{CogMove, Direction, Gear};
    use crate::rules::ladder::testing::ladder;
    use crate::rules::testing::{check_fixes, fired, fixes_of};

    #[test]
    fn fires_for_forbidden_gears_in_the_way_of_both_rings() {
        let mut setup = ladder();
        for cog in 1..11 {
            for ring in 0..2 {
                setup = setup.gear_edit(GearEdit::Forbid(Gear::new(ring, cog), true));
            }
        }
        let plan = setup.plan();
        assert_eq!(fixes_of(&plan, &RULE)[0], "Allow all gears again");
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_forbidden_gear_on_a_way_set_by_hand() {
        let up = CogMove {
            leaves: 8,
            lands: 6,
        };
        let plan = ladder()
            .gear_edit(GearEdit::Crossover(0, Direction::Up, up))
            .gear_edit(GearEdit::Forbid(Gear::new(0, 6), true))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The up crossover between ring 1 and ring 2 does not work: a forbidden gear lies on the way. Move it, or take the one worked out."
        );
        assert_eq!(fixes_of(&plan, &RULE)[0], "Take the crossovers worked out");
        check_fixes(&plan, &RULE);
        assert!(fired(&ladder().plan(), &RULE).is_empty());
    }
}
