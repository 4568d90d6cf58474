//! One contact makes most of the presses of a ride.

use super::ride_load::{TELLING, ride};
use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "one-contact-takes-most-presses",
    family: Family::Load,
    title: "One contact makes most of the presses",
    severity: Severity::GoodToKnow,
    acceptable: Acceptable::ByClinician,
    what: "On the ride that was worked out no single contact makes more than four fifths of all presses.",
    why: "A contact that does nearly everything has no relief when it tires.",
    remedy: "Put a function where another contact or the other hand presses it, if there is one that is able.",
    origin: Origin::OurJudgement,
    check,
};

/// Above this share of all presses (our judgement).
const MOST: f64 = 0.8;

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(ride) = ride(situation).filter(|ride| ride.presses() >= TELLING) else {
        return Vec::new();
    };
    let all = f64::from(ride.presses());
    let mut findings = Vec::new();
    for side in Side::ALL {
        for (contact, presses) in &ride.hand(*side).contacts {
            let share = f64::from(*presses) / all;
            if share > MOST {
                findings.push(Finding {
                    rule: RULE.id,
                    severity: Severity::GoodToKnow,
                    acceptable: Acceptable::ByClinician,
                    places: vec![Place::Hand(*side)],
                    message: format!(
                        "On the ride “{}” the {side} {contact} makes {presses} of {} presses.",
                        ride.road,
                        ride.presses()
                    ),
                    fixes: Vec::new(),
                });
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rider::Contact;
    use crate::rules::testing::{drop_bar, fired};

    #[test]
    fn fires_above_four_fifths_of_the_presses() {
        let shares = |thumb, index| {
            let setup = drop_bar().with_ride(|ride| {
                ride.left.presses = thumb + index;
                ride.left.contacts = vec![(Contact::Thumb, thumb), (Contact::Index, index)];
            });
            fired(&setup.plan(), &RULE)
        };
        let found = shares(90, 10);
        assert_eq!(found.len(), 1);
        assert!(
            found[0]
                .message
                .contains("left thumb makes 90 of 100 presses")
        );
        assert!(shares(80, 20).is_empty());
        assert!(shares(9, 1).is_empty(), "too few to tell");
        assert!(fired(&drop_bar().plan(), &RULE).is_empty(), "no ride");
    }
}
