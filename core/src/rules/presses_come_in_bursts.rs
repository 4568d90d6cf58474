//! Presses of a ride come in long bursts.

use super::ride_load::ride;
use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "presses-come-in-bursts",
    family: Family::Load,
    title: "Presses come in bursts",
    severity: Severity::GoodToKnow,
    acceptable: Acceptable::ByClinician,
    what: "On the ride that was worked out no hand makes eight presses or more with less than three seconds between them.",
    why: "A run of presses without a pause tires more than the same presses spread out.",
    remedy: "Give the button a hold that repeats, if the hand keeps pressed and lets go well; or shift earlier and by fewer gears.",
    origin: Origin::OurJudgement,
    check,
};

/// A burst of so many presses is worth a word (our judgement).
const LONG: u16 = 8;

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(ride) = ride(situation) else {
        return Vec::new();
    };
    let long = |side: &&Side| ride.hand(**side).longest_burst >= LONG;
    let hands = Side::ALL.iter().filter(long);
    hands
        .map(|side| Finding {
            rule: RULE.id,
            severity: Severity::GoodToKnow,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Hand(*side)],
            message: format!(
                "On the ride “{}” the {side} hand presses in {} bursts, the longest of {} presses without a pause of three seconds.",
                ride.road,
                ride.hand(*side).bursts,
                ride.hand(*side).longest_burst
            ),
            fixes: Vec::new(),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_from_eight_presses_in_a_row() {
        let found = |longest| {
            let setup = drop_bar().with_ride(|ride| {
                (ride.left.bursts, ride.left.longest_burst) = (3, longest);
            });
            fired(&setup.plan(), &RULE)
        };
        assert!(
            found(8)[0]
                .message
                .contains("in 3 bursts, the longest of 8")
        );
        assert!(found(7).is_empty());
    }
}
