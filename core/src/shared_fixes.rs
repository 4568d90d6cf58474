//! Changes that answer several findings at once.

use std::cmp::Reverse;

use crate::finding::{Finding, Fix};
use crate::ordered::sort_by_key;
use crate::plan::Plan;
use crate::rules;
use crate::situation::Situation;
use crate::tally::Tally;

/// Listed at most: more than a person weighs at a glance helps nobody.
const MOST: usize = 3;

/// The fixes that are offered for more than one open finding, most offered first; at most three.
pub fn shared_fixes(plan: &Plan, findings: &[Finding]) -> Vec<Fix> {
    let mut offered: Vec<(&Fix, usize)> = Vec::new();
    let is_open = |finding: &&Finding| plan.acceptance_of(finding).is_none();
    for fix in findings.iter().filter(is_open).flat_map(|f| &f.fixes) {
        match offered.iter_mut().find(|(one, _)| one.edit == fix.edit) {
            Some((_, times)) => *times += 1,
            None => offered.push((fix, 1)),
        }
    }
    offered.retain(|(_, times)| *times > 1);
    sort_by_key(&mut offered, |(_, times)| Reverse(*times));
    let most_offered = offered.into_iter().take(MOST);
    most_offered.map(|(fix, _)| fix.clone()).collect()
}

/// How many findings stand open after each of these changes; `None` where it cannot be made. Asks all
/// rules for each.
pub fn open_after(plan: &Plan, fixes: &[Fix]) -> Vec<Option<Tally>> {
    let situation = Situation::of(plan);
    let then = |fix: &Fix| {
        let after = plan.apply(&fix.edit).ok()?;
        let findings = rules::findings_in(&situation.after(&after));
        Some(Tally::of(&after, &findings))
    };
    fixes.iter().map(then).collect()
}

#[cfg(test)]
mod tests {
    use super::{Finding, Fix, Plan, Tally, open_after, rules, shared_fixes};
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, LayoutEdit, PlanEdit, RiderEdit};
    use crate::finding::{Acceptable, Acceptance, Role};
    use crate::rider::{HandPlace, Side};

    fn right_hand_rests() -> Plan {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        plan.apply(&Edit::Rider(rests)).expect("a hand may rest")
    }

    fn shared_of(plan: &Plan) -> Vec<Fix> {
        shared_fixes(plan, &rules::findings(plan))
    }

    #[test]
    fn each_comes_to_what_it_says() {
        let plan = right_hand_rests();
        let findings = rules::findings(&plan);
        let before = Tally::of(&plan, &findings);
        let shared = shared_of(&plan);
        let all_left = Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left));
        assert_eq!(shared[0].edit, all_left);
        let then = open_after(&plan, &shared);
        let mut offered = Vec::new();
        for (fix, then) in shared.iter().zip(then) {
            let offers = |f: &&Finding| f.fixes.iter().any(|other| other.edit == fix.edit);
            let answered: Vec<String> = findings.iter().filter(offers).map(Finding::key).collect();
            assert!(answered.len() > 1, "{}", fix.label);
            offered.push(answered.len());
            let after = plan.apply(&fix.edit).expect("a fix can be made");
            let left = rules::findings(&after);
            assert_eq!(left.iter().find(|f| answered.contains(&f.key())), None);
            let then = then.expect("a fix can be made");
            assert_eq!(then, Tally::of(&after, &left));
            assert!(then.must_fix < before.must_fix);
        }
        assert!(offered.is_sorted_by(|a, b| a >= b), "{offered:?}");
    }

    #[test]
    fn what_answers_only_one_open_finding_is_not_shared() {
        let mut plan = right_hand_rests();
        let findings = rules::findings(&plan);
        let shared = shared_of(&plan);
        let may_be_accepted = |f: &&Finding| f.acceptable != Acceptable::Never;
        for finding in findings.iter().filter(may_be_accepted) {
            let accept = Edit::Plan(PlanEdit::Accept(Acceptance {
                finding: finding.key(),
                reason: "tried on the road".into(),
                by: "bench".into(),
                role: Role::Shop,
                date: None,
                lapsed: false,
            }));
            plan = plan.apply(&accept).expect("it can be accepted");
        }
        let offered = |edit: &Edit| {
            let open = findings.iter().filter(|f| plan.acceptance_of(f).is_none());
            open.filter(|f| f.fixes.iter().any(|fix| fix.edit == *edit))
                .count()
        };
        let then = shared_of(&plan);
        assert!(then.len() < shared.len());
        for fix in then {
            assert!(offered(&fix.edit) > 1, "{}", fix.label);
        }
    }
}
