//! A brake is wanted on a ride while its hand is away.

use super::ride_load::ride;
use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "brake-wanted-while-hand-away",
    family: Family::Load,
    title: "A brake is wanted while its hand is away",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "On the ride that was worked out every brake is wanted with its hand in place.",
    why: "A hand that has left its place to shift or to move along the bar brakes late.",
    remedy: "Put functions where they are pressed without letting go, brake from another position, or let the other hand brake as well.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(ride) = ride(situation) else {
        return Vec::new();
    };
    let away = |side: &&Side| ride.hand(**side).wanted > 0;
    let hands = Side::ALL.iter().filter(away);
    hands
        .map(|side| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Hand(*side)],
            message: format!(
                "On the ride “{}” a brake is wanted {} times while the {side} hand is away from it.",
                ride.road,
                ride.hand(*side).wanted
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::{Edit, LayoutEdit};
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_where_a_hand_was_away() {
        let away = drop_bar().with_ride(|ride| ride.left.wanted = 2);
        let found = fired(&away.plan(), &RULE);
        assert!(
            found[0]
                .message
                .contains("wanted 2 times while the left hand is away")
        );
        let there = drop_bar().with_ride(|ride| ride.left.pulls = 9);
        assert!(fired(&there.plan(), &RULE).is_empty());
    }

    #[test]
    fn a_ride_of_an_older_state_of_the_plan_says_nothing() {
        let away = drop_bar().with_ride(|ride| ride.left.wanted = 2);
        let changed = away.edit(&Edit::Layout(LayoutEdit::Mirror));
        assert!(fired(&changed.plan(), &RULE).is_empty());
    }
}
