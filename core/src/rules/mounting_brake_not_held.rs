//! The brake held while mounting cannot be held by that hand.

use super::{Family, Origin, Rule};
use crate::edit::{Edit, RiderEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::{Ability, Answer, Day, Side, Standing};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "mounting-brake-not-held",
    family: Family::Brake,
    title: "The brake held while mounting cannot be held",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "The hand that holds a brake while the rider gets on has a lever that pulls a brake and is able to pull it.",
    why: "Half on, with one foot down, a bike that rolls cannot be caught.",
    remedy: "Hold with the other hand, mount from the other side, use a parking latch or a helper.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(side) = situation.plan.rider.holds_brake_mounting.value else {
        return Vec::new();
    };
    let Some(why) = why_not(situation, side) else {
        return Vec::new();
    };
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Hand(side)],
        message: format!("While mounting, the {side} hand is to hold a brake, but {why}."),
        fixes: vec![Fix {
            label: format!("Hold it with the {} hand instead", side.other()),
            edit: Edit::Rider(RiderEdit::HoldsBrakeMounting(Answer::of(side.other()))),
        }],
    }]
}

fn why_not(situation: &Situation<'_>, side: Side) -> Option<&'static str> {
    let hand = situation.hand(side);
    let grips = hand.step(Ability::BrakesHard, Day::Usual);
    let own_lever = situation.live_runs().any(|run| {
        let control = situation.plan.bike.control(run.lever);
        control.is_some_and(|c| c.side.hand().is_none_or(|hand| hand == side))
    });
    if !hand.works() {
        Some("it does not work on the bar")
    } else if !own_lever {
        Some("no lever on that side pulls one")
    } else if grips.is_some_and(|step| step.standing() != Standing::Able) {
        Some("braking cannot be counted on there")
    } else {
        None
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::rider::{Ability, Answer, Difficulty, HandPlace, Side};
    use crate::rules::testing::{Setup, drop_bar, fired, lever};

    fn right_holds() -> Setup {
        drop_bar().rider_edit(RiderEdit::HoldsBrakeMounting(Answer::of(Side::Right)))
    }

    #[test]
    fn fires_for_a_hand_that_rests_has_no_lever_or_does_not_grip() {
        let rests = right_holds().hand_does_nothing(Side::Right, HandPlace::Rests);
        let left = lever(&right_holds(), Side::Left);
        let bare = right_holds().all_brakes_on(left);
        let grip = right_holds().ability(Side::Right, Ability::BrakesHard, Difficulty::Severe);
        for (setup, words) in [
            (rests, "does not work"),
            (bare, "no lever on that side"),
            (grip, "cannot be counted on"),
        ] {
            let found = fired(&setup.plan(), &RULE);
            assert_eq!(found.len(), 1);
            assert!(found[0].message.contains(words));
        }
    }

    #[test]
    fn is_silent_for_an_able_hand_and_while_not_asked() {
        assert!(fired(&right_holds().plan(), &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
