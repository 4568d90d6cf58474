//! A parking latch that no able hand was seen to work.

use super::{Family, Origin, Rule};
use crate::cockpit::Control;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Side, Standing};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "parking-latch-untried",
    family: Family::Brake,
    title: "The parking latch was not tried",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "A parking latch was set and released in a try, by a hand of its own side that is able to brake hard and to let the brake go.",
    why: "A latch that is not set lets the bike roll away while the rider gets on or off; one that is not released keeps it from moving, or drags.",
    remedy: "Put the latch on the lever of the able hand, try it with the rider, and note the outcome under Bike.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let levers = situation.live_runs().map(|run| run.lever);
    levers
        .filter_map(|lever| situation.plan.bike.control(lever))
        .filter_map(|control| look(situation, control))
        .collect()
}

fn look(situation: &Situation<'_>, control: &Control) -> Option<Finding> {
    let latch = control.blade?.latch?;
    let own = |side: &Side| control.side.hand().is_none_or(|hand| hand == *side);
    let mut hands = Side::ALL.iter().copied().filter(own);
    let able = hands.any(|side| is_able(situation, side));
    let latch_of = format!("parking latch of the {}", control.place());
    let message = match (able, latch.tried.is_yes()) {
        (true, true) => return None,
        (true, false) => format!(
            "Try the {latch_of} with the rider, set and release, and note it: it was not tried yet."
        ),
        (false, _) => format!("No able hand sets and releases the {latch_of}."),
    };
    Some(Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::ByShop,
        // The hand whose able grip the message speaks of.
        places: [Place::Control(control.id)]
            .into_iter()
            .chain(control.side.hand().map(Place::Hand))
            .collect(),
        message,
        fixes: Vec::new(),
    })
}

/// What was not asked does not count against what was seen in the try.
fn is_able(situation: &Situation<'_>, side: Side) -> bool {
    let hand = situation.hand(side);
    let able = |ability| {
        let step = hand.step(ability, Day::Usual);
        step.is_none_or(|step| step.standing() == Standing::Able)
    };
    hand.works() && able(Ability::BrakesHard) && able(Ability::ReleasesBrake)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::Latch;
    use crate::edit::BikeEdit;
    use crate::rider::{Ability, Answer, Difficulty, Side, YesNo};
    use crate::rules::testing::{Setup, bike, drop_bar, fired, lever};

    fn tried() -> Setup {
        let setup = bike(TemplateId::Tricycle);
        let left = lever(&setup, Side::Left);
        let tried = Answer::of(YesNo::Yes);
        setup.bike_edit(BikeEdit::Latch(left, Some(Latch { tried })))
    }

    #[test]
    fn fires_until_it_was_tried() {
        assert_eq!(fired(&bike(TemplateId::Tricycle).plan(), &RULE).len(), 1);
        assert!(fired(&tried().plan(), &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty(), "no latch");
    }

    #[test]
    fn fires_where_the_hand_of_that_side_is_not_able() {
        for ability in [Ability::BrakesHard, Ability::ReleasesBrake] {
            let with = |step| fired(&tried().ability(Side::Left, ability, step).plan(), &RULE);
            assert_eq!(with(Difficulty::Severe).len(), 1);
            assert!(with(Difficulty::Moderate).is_empty());
        }
    }
}
