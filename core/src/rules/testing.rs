//! What the tests of rules share.

use super::{Rule, findings};
use crate::catalogue::{TemplateId, template};
use crate::edit::{Edit, LayoutEdit, RiderEdit};
use crate::finding::{Finding, Severity};
use crate::plan::Plan;
use crate::rider::{Hand, HandPlace, Hands, Rider, Side};
use crate::situation::Situation;

/// A plan in the making.
pub(super) struct Setup(Plan);

/// The road drop bar with two able hands and its usual layout.
pub(super) fn drop_bar() -> Setup {
    bike(TemplateId::RoadPlain)
}

/// A template with two able hands and its usual layout.
pub(super) fn bike(id: TemplateId) -> Setup {
    let mut plan = template(id).plan("Test");
    plan.rider = Rider {
        hands: Hands {
            left: Hand::does_all(None),
            right: Hand::does_all(None),
        },
        ..Rider::default()
    };
    Setup(plan)
}

impl Setup {
    pub(super) fn plan(self) -> Plan {
        self.0
    }

    /// Every button blank.
    pub(super) fn blank(self) -> Self {
        self.edit(&Edit::Layout(LayoutEdit::Clear))
    }

    #[track_caller]
    pub(super) fn edit(self, edit: &Edit) -> Self {
        Setup(self.0.apply(edit).expect("the edit is possible"))
    }

    pub(super) fn hand_does_nothing(self, side: Side, place: HandPlace) -> Self {
        self.edit(&Edit::Rider(RiderEdit::HandDoesNothing(side, place, None)))
    }
}

/// What one rule says about the layout in hand.
pub(super) fn fired(plan: &Plan, rule: &Rule) -> Vec<Finding> {
    (rule.check)(&Situation::of(plan))
}

/// Each fix of each finding of a rule removes that finding and adds no must-fix
/// finding.
#[track_caller]
pub(super) fn check_fixes(plan: &Plan, rule: &Rule) {
    let found = fired(plan, rule);
    assert!(!found.is_empty(), "{} does not fire", rule.id);
    let must = |plan: &Plan| -> Vec<String> {
        findings(plan)
            .iter()
            .filter(|f| f.severity == Severity::MustFix)
            .map(Finding::key)
            .collect()
    };
    let before = must(plan);
    for finding in found {
        for fix in &finding.fixes {
            let after = plan.apply(&fix.edit).expect("a fix is possible");
            assert!(
                !fired(&after, rule).iter().any(|f| f.key() == finding.key()),
                "“{}” does not remove {}",
                fix.label,
                finding.key()
            );
            for key in must(&after) {
                assert!(before.contains(&key), "“{}” adds {key}", fix.label);
            }
        }
    }
}
