//! A hand that brakes does not let the brake go.

use super::{Family, Origin, Rule, braking};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "brake-not-let-go",
    family: Family::Brake,
    title: "A hand does not let the brake go easily",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "A hand that brakes lets the brake go without effort. Check where it takes effort, must fix where it takes great effort.",
    why: "A wheel that stays braked skids, and on two wheels a locked front wheel throws the rider.",
    remedy: "Let the other hand brake, or use a lever with a stronger return spring and try it with the rider.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let hands = situation.braking_hands().into_iter();
    hands.filter_map(|side| look(situation, side)).collect()
}

fn look(situation: &Situation<'_>, side: Side) -> Option<Finding> {
    let step = situation
        .hand(side)
        .step(Ability::ReleasesBrake, Day::Usual)?;
    let severity = match step {
        Difficulty::None | Difficulty::Mild => return None,
        Difficulty::Moderate => Severity::Check,
        Difficulty::Severe | Difficulty::Complete => Severity::MustFix,
    };
    Some(Finding {
        rule: RULE.id,
        severity,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Hand(side)],
        message: match step {
            Difficulty::Complete => {
                format!("The {side} hand brakes and does not let the brake go.")
            }
            step => format!("The {side} hand brakes, and letting the brake go {step}."),
        },
        fixes: situation.propose(|| braking::all_on_one_lever(situation)),
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::finding::Severity;
    use crate::rider::{Ability, Difficulty, Side};
    use crate::rules::testing::{check_fixes, drop_bar, fired, lever};

    #[test]
    fn grows_with_the_step_and_hands_the_brakes_over() {
        let with = |step| {
            drop_bar()
                .ability(Side::Left, Ability::ReleasesBrake, step)
                .plan()
        };
        let severity = |step| fired(&with(step), &RULE).first().map(|f| f.severity);
        assert_eq!(severity(Difficulty::Mild), None);
        assert_eq!(severity(Difficulty::Moderate), Some(Severity::Check));
        assert_eq!(severity(Difficulty::Severe), Some(Severity::MustFix));
        assert_eq!(severity(Difficulty::Complete), Some(Severity::MustFix));
        assert_eq!(fired(&with(Difficulty::Severe), &RULE)[0].fixes.len(), 1);
        check_fixes(&with(Difficulty::Severe), &RULE);
    }

    #[test]
    fn is_silent_for_a_hand_that_brakes_nothing() {
        let setup = drop_bar().ability(Side::Left, Ability::ReleasesBrake, Difficulty::Severe);
        let right = lever(&setup, Side::Right);
        assert!(fired(&setup.all_brakes_on(right).plan(), &RULE).is_empty());
    }
}
