//! What the shift system can program was not entered from its manual.

use super::{Family, Origin, Rule};
use crate::cockpit::ProfileOrigin;
use crate::finding::{Acceptable, Finding, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "system-profile-guessed",
    family: Family::Function,
    title: "What the system can program is a guess",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "What the shift system can program was entered from its manual. A new plan starts from a generic profile that can do everything.",
    why: "Whether the layout can be built at all rests on it: a system that cannot hold, join two buttons or follow the shift plan shows that only at the bench, with the bar taped.",
    remedy: "Open the manual of the system, go through the list under Bike, and choose “entered from the manual”.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let system = &situation.plan.bike.system;
    if system.origin == ProfileOrigin::FromManual {
        return Vec::new();
    }
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: Vec::new(),
        message: "What this shift system can program is still the generic guess: look it up in its manual before anything is built on it.".into(),
        fixes: Vec::new(),
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::ProfileOrigin;
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_until_the_manual_was_read() {
        assert_eq!(fired(&drop_bar().plan(), &RULE).len(), 1);
        let read = drop_bar().system(|system| system.origin = ProfileOrigin::FromManual);
        assert!(fired(&read.plan(), &RULE).is_empty());
    }
}
