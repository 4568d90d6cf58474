//! How many findings stand open.

use std::fmt;

use crate::finding::{Finding, Severity};
use crate::plan::Plan;

/// How many findings stand open, by what they weigh, and how many were accepted
/// with a reason.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Must be fixed.
    pub must_fix: usize,
    /// To be looked at.
    pub check: usize,
    /// Good to know.
    pub good_to_know: usize,
    /// Accepted with a reason; counted nowhere else.
    pub accepted: usize,
}

impl Tally {
    /// Counts the findings about a plan.
    pub fn of(plan: &Plan, findings: &[Finding]) -> Tally {
        let mut tally = Tally::default();
        for finding in findings {
            *match (plan.acceptance_of(finding), finding.severity) {
                (Some(_), _) => &mut tally.accepted,
                (None, Severity::MustFix) => &mut tally.must_fix,
                (None, Severity::Check) => &mut tally.check,
                (None, Severity::GoodToKnow) => &mut tally.good_to_know,
            } += 1;
        }
        tally
    }

    /// How many of this weight stand open.
    pub fn open(&self, severity: Severity) -> usize {
        match severity {
            Severity::MustFix => self.must_fix,
            Severity::Check => self.check,
            Severity::GoodToKnow => self.good_to_know,
        }
    }
}

/// The heaviest in words: "4 must fix, 2 to check". What is good to know is named
/// only where nothing weighs more.
impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.must_fix, self.check, self.good_to_know) {
            (0, 0, 0) => f.write_str("nothing open"),
            (0, 0, n) => write!(f, "{n} good to know"),
            (0, n, _) => write!(f, "{n} to check"),
            (n, 0, _) => write!(f, "{n} must fix"),
            (n, m, _) => write!(f, "{n} must fix, {m} to check"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Tally;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, LayoutEdit, PlanEdit};
    use crate::finding::{Acceptable, Acceptance, Role, Severity};
    use crate::rules;

    #[test]
    fn words_name_the_heaviest() {
        let tally = |must_fix, check, good_to_know| Tally {
            must_fix,
            check,
            good_to_know,
            accepted: 9,
        };
        assert_eq!(tally(4, 2, 7).to_string(), "4 must fix, 2 to check");
        assert_eq!(tally(4, 0, 7).to_string(), "4 must fix");
        assert_eq!(tally(0, 2, 7).to_string(), "2 to check");
        assert_eq!(tally(0, 0, 7).to_string(), "7 good to know");
        assert_eq!(tally(0, 0, 0).to_string(), "nothing open");
    }

    #[test]
    fn an_accepted_finding_moves_from_its_weight_to_the_accepted() {
        let blank = Edit::Layout(LayoutEdit::Clear);
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let plan = plan.apply(&blank).expect("a layout can be cleared");
        let findings = rules::findings(&plan);
        let before = Tally::of(&plan, &findings);
        let finding = findings
            .iter()
            .find(|f| f.severity == Severity::MustFix && f.acceptable != Acceptable::Never)
            .expect("functions are missing");
        let accept = Edit::Plan(PlanEdit::Accept(Acceptance {
            finding: finding.key(),
            reason: "shifted by the pilot".into(),
            by: "bench".into(),
            role: Role::Shop,
            date: None,
            lapsed: false,
        }));
        let plan = plan.apply(&accept).expect("it can be accepted");
        let after = Tally::of(&plan, &findings);
        assert_eq!(after.must_fix, before.must_fix - 1);
        assert_eq!(after.open(Severity::Check), before.check);
        assert_eq!(after.accepted, 1);
    }
}
