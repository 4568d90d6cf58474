//! Tries fixes before they are offered.

use super::{TRIED_BY_HAND, findings_in};
use crate::edit::Edit;
use crate::finding::{Finding, Fix, Severity};
use crate::ordered::SmallSet;
use crate::plan::Plan;
use crate::situation::Situation;

/// Fixes offered for one finding: more than a person weighs at a glance helps
/// nobody.
const MOST_FIXES: usize = 3;

/// Keeps those fixes that remove their finding and add no must-fix finding. A
/// rule proposes a fix for what it sees itself; whether the change does harm
/// elsewhere only all rules together can tell.
pub(super) fn keep_fixes_that_work(plan: &Plan, findings: &mut [Finding]) {
    let must_before = must_fix_keys(findings);
    let mut trials: Vec<Trial> = Vec::new();
    for finding in findings {
        let key = finding.key();
        let mut kept = Vec::new();
        for fix in std::mem::take(&mut finding.fixes) {
            if kept.len() < MOST_FIXES && works(plan, &mut trials, &must_before, &key, &fix) {
                kept.push(fix);
            }
        }
        finding.fixes = kept;
    }
}

/// What came of one change; several findings may propose the same.
struct Trial {
    edit: Edit,
    /// The findings that stand after it; `None` where it adds a must-fix one or
    /// is refused.
    after: Option<SmallSet<String>>,
}

fn works(
    plan: &Plan,
    trials: &mut Vec<Trial>,
    must_before: &SmallSet<String>,
    key: &str,
    fix: &Fix,
) -> bool {
    let at = trials
        .iter()
        .position(|trial| trial.edit == fix.edit)
        .unwrap_or_else(|| {
            trials.push(Trial {
                edit: fix.edit.clone(),
                after: outcome(plan, must_before, &fix.edit),
            });
            trials.len() - 1
        });
    let after = trials[at].after.as_ref();
    after.is_some_and(|after| !after.contains(key))
}

fn outcome(plan: &Plan, must_before: &SmallSet<String>, edit: &Edit) -> Option<SmallSet<String>> {
    let after = plan.apply(edit).ok()?;
    let findings = findings_in(&Situation::of_layout(&after, after.layout()));
    must_fix_keys(&findings)
        .is_subset(must_before)
        .then(|| findings.iter().map(Finding::key).collect())
}

/// What must be fixed; that something new is still to be tried by hand is not
/// held against a fix.
pub(super) fn must_fix_keys(findings: &[Finding]) -> SmallSet<String> {
    findings
        .iter()
        .filter(|f| f.severity == Severity::MustFix && !TRIED_BY_HAND.contains(&f.rule))
        .map(Finding::key)
        .collect()
}
