//! Changes that answer several findings at once.

use std::cmp::Reverse;

use crate::finding::{Finding, Fix};
use crate::ordered::sort_by_key;
use crate::rules;
use crate::situation::Situation;
use crate::tally::Tally;

/// Listed at most: more than a person weighs at a glance helps nobody.
const MOST: usize = 3;

/// A fix that is offered for more than one finding.
#[derive(Debug, Clone, PartialEq)]
pub struct SharedFix {
    /// The change.
    pub fix: Fix,
    /// How many findings stand open after it.
    pub then: Tally,
}

/// The fixes that are offered for more than one open finding, those first after which least must be
/// fixed, then least is to be checked; at most three.
pub fn shared_fixes(situation: &Situation<'_>, findings: &[Finding]) -> Vec<SharedFix> {
    let mut offered: Vec<(&Fix, usize)> = Vec::new();
    let is_open = |finding: &&Finding| situation.plan.acceptance_of(finding).is_none();
    for fix in findings.iter().filter(is_open).flat_map(|f| &f.fixes) {
        match offered.iter_mut().find(|(one, _)| one.edit == fix.edit) {
            Some((_, times)) => *times += 1,
            None => offered.push((fix, 1)),
        }
    }
    offered.retain(|(_, times)| *times > 1);
    sort_by_key(&mut offered, |(_, times)| Reverse(*times));
    let most_offered = offered.into_iter().take(MOST);
    let mut shared: Vec<SharedFix> = most_offered
        .filter_map(|(fix, _)| {
            let after = situation.plan.apply(&fix.edit).ok()?;
            let findings = rules::findings_in(&situation.after(&after));
            let (fix, then) = (fix.clone(), Tally::of(&after, &findings));
            Some(SharedFix { fix, then })
        })
        .collect();
    sort_by_key(&mut shared, |one| (one.then.must_fix, one.then.check));
    shared
}

#[cfg(test)]
mod tests {
    use super::{Finding, SharedFix, Situation, Tally, rules, shared_fixes};
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, LayoutEdit, PlanEdit, RiderEdit};
    use crate::finding::{Acceptable, Acceptance, Role};
    use crate::plan::Plan;
    use crate::rider::{HandPlace, Side};

    fn right_hand_rests() -> Plan {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        plan.apply(&Edit::Rider(rests)).expect("a hand may rest")
    }

    fn shared_of(plan: &Plan) -> Vec<SharedFix> {
        let situation = Situation::of(plan);
        shared_fixes(&situation, &rules::findings_in(&situation))
    }

    #[test]
    fn each_says_what_stands_open_once_it_is_made() {
        let plan = right_hand_rests();
        let findings = rules::findings(&plan);
        let before = Tally::of(&plan, &findings);
        let shared = shared_of(&plan);
        let all_left = Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left));
        assert!(shared.iter().any(|one| one.fix.edit == all_left));
        for SharedFix { fix, then } in &shared {
            let offered = |f: &&Finding| f.fixes.iter().any(|other| other.edit == fix.edit);
            let answered: Vec<String> = findings.iter().filter(offered).map(Finding::key).collect();
            assert!(answered.len() > 1, "{}", fix.label);
            let after = plan.apply(&fix.edit).expect("a fix can be made");
            let left = rules::findings(&after);
            assert_eq!(left.iter().find(|f| answered.contains(&f.key())), None);
            assert_eq!(*then, Tally::of(&after, &left));
            assert!(then.must_fix < before.must_fix);
        }
        let least_first = |a: &SharedFix, b: &SharedFix| a.then.must_fix <= b.then.must_fix;
        assert!(shared.is_sorted_by(least_first));
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
        for one in then {
            assert!(offered(&one.fix.edit) > 1, "{}", one.fix.label);
        }
    }
}
