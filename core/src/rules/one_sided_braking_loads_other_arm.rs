//! One hand brakes, and the other arm takes the load.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "one-sided-braking-loads-other-arm",
    family: Family::Brake,
    title: "Braking with one hand loads the other arm",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Where one hand does all the braking and the other is on the bar, the other stays on and steers while the first brakes hard. Not asked is a check too.",
    why: "Hard braking throws the rider forward onto both arms while only one pulls: an arm that gives way turns the bar.",
    remedy: "Try hard braking at walking pace with a helper. A forearm or palm rest, a shorter reach or a more upright seat takes load off.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let [braking] = situation.braking_hands()[..] else {
        return Vec::new();
    };
    let other = braking.other();
    let hand = situation.hand(other);
    if !hand.on_bar() {
        return Vec::new();
    }
    let steers = hand.step(Ability::SteersWhileOtherBrakes, Day::Usual);
    let message = match steers {
        Some(step) if step >= Difficulty::Moderate => {
            takes_effort(braking, "steering meanwhile", step)
        }
        _ => match hand.step(Ability::StaysOn, Day::Usual) {
            Some(step) if step >= Difficulty::Moderate => {
                takes_effort(braking, "staying on and taking weight", step)
            }
            _ if steers.is_none() => format!(
                "The {braking} hand does all the braking. Whether the {other} hand steers meanwhile was not asked yet: try it with the fitter."
            ),
            _ => return Vec::new(),
        },
    };
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Hand(other), Place::Hand(braking)],
        message,
        fixes: Vec::new(),
    }]
}

fn takes_effort(braking: Side, what: &str, step: Difficulty) -> String {
    let other = braking.other();
    let begins = format!("The {braking} hand does all the braking");
    match step {
        Difficulty::Complete => {
            format!("{begins}; the {other} hand is on the bar and {what} cannot be counted on.")
        }
        step => format!("{begins}; for the {other} hand {what} {step}."),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::rider::{Ability, Answer, Difficulty, HandPlace, Side};
    use crate::rules::testing::{Setup, drop_bar, fired, lever};

    fn left_brakes_all() -> Setup {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        setup.all_brakes_on(left)
    }

    #[test]
    fn fires_for_an_arm_that_does_not_steer_or_stay() {
        for ability in [Ability::SteersWhileOtherBrakes, Ability::StaysOn] {
            let with = |step| {
                let setup = left_brakes_all().ability(Side::Right, ability, step);
                fired(&setup.plan(), &RULE)
            };
            assert!(with(Difficulty::Mild).is_empty());
            assert!(
                with(Difficulty::Moderate)[0]
                    .message
                    .contains("takes effort")
            );
            assert!(with(Difficulty::Complete)[0].message.contains("counted on"));
        }
    }

    #[test]
    fn fires_where_it_was_not_asked() {
        let not_asked = RiderEdit::Ability(
            Side::Right,
            Ability::SteersWhileOtherBrakes,
            Answer::NOT_ASKED,
        );
        let found = fired(&left_brakes_all().rider_edit(not_asked).plan(), &RULE);
        assert!(found[0].message.contains("not asked yet"));
    }

    #[test]
    fn is_silent_for_two_braking_hands_and_for_an_arm_off_the_bar() {
        let plan = drop_bar()
            .ability(Side::Right, Ability::StaysOn, Difficulty::Severe)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        let plan = left_brakes_all()
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
