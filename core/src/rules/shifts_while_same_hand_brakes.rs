//! A hand shifts while it brakes, or shifts late because of it.

use super::ride_load::ride;
use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "shifts-while-same-hand-brakes",
    family: Family::Load,
    title: "A hand shifts while it brakes",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "On the ride that was worked out no hand presses a button while it pulls a brake, and none puts a shift off for it.",
    why: "A hand that does both at once brakes less evenly; one that puts the shift off sets off again in too hard a gear.",
    remedy: "Move shifting, or braking, to the other hand where it is able; choose a shift plan with fewer presses before a stop; or practise shifting earlier.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(ride) = ride(situation) else {
        return Vec::new();
    };
    let mut findings = Vec::new();
    for side in Side::ALL {
        let hand = ride.hand(*side);
        if hand.clashes == 0 && hand.delays == 0 {
            continue;
        }
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Hand(*side)],
            message: format!(
                "On the ride “{}” the {side} hand presses {} times while it brakes, and puts {} shifts off until the brake is let go.",
                ride.road, hand.clashes, hand.delays
            ),
            fixes: Vec::new(),
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_for_presses_while_braking_and_for_shifts_put_off() {
        let found = |clashes, delays| {
            let setup = drop_bar().with_ride(|ride| {
                (ride.right.clashes, ride.right.delays) = (clashes, delays);
            });
            fired(&setup.plan(), &RULE)
        };
        assert!(
            found(2, 5)[0]
                .message
                .contains("right hand presses 2 times while it brakes")
        );
        assert_eq!(found(0, 1).len(), 1);
        assert!(found(0, 0).is_empty());
    }
}
