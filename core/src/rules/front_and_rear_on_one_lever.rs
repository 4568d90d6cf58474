//! One lever brakes front and rear.

use super::{Family, Origin, Rule, braking};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "front-and-rear-on-one-lever",
    family: Family::Brake,
    title: "One lever brakes front and rear",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Whether one lever pulls brakes at both ends of the bike.",
    why: "Some places allow it; in others it counts only as an extra system beside two that are independent. The rider also gives up braking one end more than the other.",
    remedy: "Ask where the bike is ridden, and note the answer. Set the front to bite no earlier than the rear, and practise on a closed road.",
    origin: Origin::Published(
        "ISO 4210-2 cl. 4.6.1: two independent braking systems; SI 1983/1176 reg. 7 (Great Britain): the same",
    ),
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let runs = situation.live_runs();
    runs.filter(|run| braking::brakes_both_ends(run))
        .map(|run| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Control(run.lever)],
            message: format!(
                "The {} brakes front and rear. Some places allow that, in others it counts only as an extra system: ask.",
                situation.lever_name(run.lever)
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::rider::Side;
    use crate::rules::testing::{bike, drop_bar, fired, lever};

    #[test]
    fn fires_for_one_lever_and_never_speaks_of_legal_or_illegal() {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        let found = fired(&setup.all_brakes_on(left).plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.contains("ask"));
        let words = [RULE.what, RULE.why, RULE.remedy, &found[0].message].concat();
        assert!(!words.contains("legal"));
    }

    #[test]
    fn is_silent_for_two_levers_and_for_one_axle() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        let tricycle = bike(TemplateId::Tricycle).plan();
        assert!(fired(&tricycle, &RULE).is_empty(), "one axle is one end");
    }
}
