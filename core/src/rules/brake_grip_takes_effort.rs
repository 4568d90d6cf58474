//! Braking takes effort, or fades.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "brake-grip-takes-effort",
    family: Family::Brake,
    title: "Braking takes effort",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "A hand that brakes does so hard, and ten firm pulls long, without much effort.",
    why: "The last pull of a long hill counts as much as the first one.",
    remedy: "Bring the blade closer, use brakes that ask for less force, let the other hand take the harder brake, and try ten firm pulls with the rider.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let hands = situation.braking_hands().into_iter();
    hands.filter_map(|side| look(situation, side)).collect()
}

fn look(situation: &Situation<'_>, side: Side) -> Option<Finding> {
    let takes_effort = |ability| {
        let step = situation.hand(side).step(ability, Day::Usual)?;
        (step >= Difficulty::Moderate).then_some(step)
    };
    let (hard, long) = (
        takes_effort(Ability::BrakesHard),
        takes_effort(Ability::BrakesLong),
    );
    let worst = hard.max(long)?;
    let what = match (hard, long) {
        (Some(_), None) => "braking hard",
        (None, _) => "braking down a long hill",
        (Some(_), Some(_)) => "braking hard and down a long hill",
    };
    let message = match worst {
        Difficulty::Moderate => {
            format!("For the {side} hand {what} takes effort. Try ten firm pulls with the rider.")
        }
        Difficulty::Severe => format!(
            "For the {side} hand {what} takes great effort: do not count on a full stop. Try ten firm pulls with the rider before anything else, and choose routes by it."
        ),
        _ => format!(
            "The {side} hand brakes, but cannot be counted on for {what}. Try ten firm pulls with the rider before anything else, and keep off long hills."
        ),
    };
    Some(Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Hand(side)],
        message,
        fixes: Vec::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rider::{Ability, Difficulty, Side};
    use crate::rules::testing::{drop_bar, fired, lever};

    #[test]
    fn fires_for_either_ability_and_speaks_stronger_at_severe() {
        for ability in [Ability::BrakesHard, Ability::BrakesLong] {
            let message = |step| {
                let plan = drop_bar().ability(Side::Left, ability, step).plan();
                fired(&plan, &RULE).first().map(|f| f.message.clone())
            };
            assert_eq!(message(Difficulty::Mild), None);
            assert!(message(Difficulty::Moderate).is_some_and(|m| m.contains(" takes effort")));
            assert!(message(Difficulty::Severe).is_some_and(|m| m.contains("great effort")));
        }
    }

    #[test]
    fn is_silent_for_a_hand_that_brakes_nothing() {
        let setup = drop_bar().ability(Side::Left, Ability::BrakesHard, Difficulty::Moderate);
        let right = lever(&setup, Side::Right);
        assert!(fired(&setup.all_brakes_on(right).plan(), &RULE).is_empty());
    }
}
