//! Tries fixes before they are offered.

use super::{ALL, Rule, TRIED_BY_HAND};
use crate::edit::Edit;
use crate::finding::{Finding, Severity};
use crate::ordered::SmallSet;
use crate::situation::Situation;

/// Fixes offered for one finding: more than a person weighs at a glance helps
/// nobody.
const MOST_FIXES: usize = 3;

/// Keeps those fixes that remove their finding and add no must-fix finding. A
/// rule proposes a fix for what it sees itself; whether the change does harm
/// elsewhere only all rules together can tell.
pub(super) fn keep_fixes_that_work(situation: &Situation<'_>, findings: &mut [Finding]) {
    let mut trials = Trials {
        situation,
        must_before: must_fix_keys(findings),
        rules: rules_that_tell(findings),
        done: Vec::new(),
    };
    for finding in findings {
        let key = finding.key();
        let mut kept = Vec::new();
        for fix in std::mem::take(&mut finding.fixes) {
            if kept.len() < MOST_FIXES && trials.removes(&fix.edit, &key) {
                kept.push(fix);
            }
        }
        finding.fixes = kept;
    }
}

/// The rules that tell whether a fix works: those that can say that something
/// must be fixed, and those that proposed one. What the others say of it does
/// not matter, and a plan has many fixes to be tried after each change.
fn rules_that_tell(findings: &[Finding]) -> Vec<&'static Rule> {
    let proposes = |rule: &Rule| {
        let mut own = findings.iter().filter(|finding| finding.rule == rule.id);
        own.any(|finding| !finding.fixes.is_empty())
    };
    let all = ALL.iter().copied();
    all.filter(|rule| rule.severity == Severity::MustFix || proposes(rule))
        .collect()
}

/// Changes tried so far; several findings may propose the same.
struct Trials<'a> {
    situation: &'a Situation<'a>,
    must_before: SmallSet<String>,
    rules: Vec<&'static Rule>,
    done: Vec<Trial>,
}

/// What came of one change.
struct Trial {
    edit: Edit,
    /// The findings that stand after it; `None` where it adds a must-fix one or
    /// is refused.
    after: Option<SmallSet<String>>,
}

impl Trials<'_> {
    /// Whether a change removes a finding without adding a must-fix one.
    fn removes(&mut self, edit: &Edit, key: &str) -> bool {
        let at = self.done.iter().position(|trial| trial.edit == *edit);
        let at = at.unwrap_or_else(|| {
            self.done.push(Trial {
                edit: edit.clone(),
                after: self.outcome(edit),
            });
            self.done.len() - 1
        });
        let after = self.done[at].after.as_ref();
        after.is_some_and(|after| !after.contains(key))
    }

    fn outcome(&self, edit: &Edit) -> Option<SmallSet<String>> {
        let after = self.situation.plan.apply(edit).ok()?;
        let situation = self.situation.after(&after);
        let mut keys = Vec::new();
        for rule in &self.rules {
            for finding in (rule.check)(&situation) {
                let key = finding.key();
                if weighs_on_a_fix(&finding) && !self.must_before.contains(&key) {
                    return None;
                }
                keys.push(key);
            }
        }
        Some(keys.into_iter().collect())
    }
}

/// What must be fixed.
pub(super) fn must_fix_keys(findings: &[Finding]) -> SmallSet<String> {
    let must_fix = findings.iter().filter(|finding| weighs_on_a_fix(finding));
    must_fix.map(Finding::key).collect()
}

/// Whether a finding must be fixed; that something new is still to be tried by
/// hand is not held against a fix.
fn weighs_on_a_fix(finding: &Finding) -> bool {
    finding.severity == Severity::MustFix && !TRIED_BY_HAND.contains(&finding.rule)
}
