//! A hand is on the bar and does not stay there over bumps.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary as _;

pub(super) static RULE: Rule = Rule {
    id: "hand-does-not-stay-on",
    family: Family::Rest,
    title: "A hand on the bar does not stay on over bumps",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "A hand that is on the bar stays on over bumps and takes weight, on a usual day. Where that takes great effort or cannot be counted on, it is a check.",
    why: "A hand that slips off takes the bar along, or falls against a wheel, a blade or a knee, and the rider's weight goes to the other side.",
    remedy: "Try bumps at walking pace with a helper. A wider or shaped rest, softer tyres and a more upright seat help. Nothing ties a hand to the bar that was not seen to let go by itself in a fall.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let finding = |side: &Side| {
        let hand = situation.hand(*side);
        let step = hand.step(Ability::StaysOn, Day::Usual)?;
        let slips = hand.on_bar() && step >= Difficulty::Severe;
        let how = match step {
            Difficulty::Complete => "cannot be counted on".to_owned(),
            step => step.to_string(),
        };
        slips.then(|| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Hand(*side)],
            message: format!("The {side} hand is on the bar, and staying on over bumps {how}."),
            fixes: Vec::new(),
        })
    };
    Side::ALL.iter().filter_map(finding).collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rider::{Ability, Difficulty, HandPlace, Side};
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_for_a_resting_and_for_a_working_hand() {
        let plan = drop_bar().ability(Side::Right, Ability::StaysOn, Difficulty::Severe);
        let found = fired(&plan.plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(
            found[0].message,
            "The right hand is on the bar, and staying on over bumps takes great effort."
        );
        let plan = drop_bar()
            .hand_does_nothing(Side::Left, HandPlace::Rests)
            .ability(Side::Left, Ability::StaysOn, Difficulty::Complete);
        assert!(
            fired(&plan.plan(), &RULE)[0]
                .message
                .ends_with("cannot be counted on.")
        );
    }

    #[test]
    fn is_silent_where_it_takes_less_or_the_hand_is_off_the_bar() {
        let plan = drop_bar().ability(Side::Right, Ability::StaysOn, Difficulty::Moderate);
        assert!(fired(&plan.plan(), &RULE).is_empty());
        let plan = drop_bar()
            .ability(Side::Right, Ability::StaysOn, Difficulty::Complete)
            .hand_does_nothing(Side::Right, HandPlace::OffBar);
        assert!(fired(&plan.plan(), &RULE).is_empty());
    }
}
