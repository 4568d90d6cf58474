//! A ride asks for more presses than the rider found fine.

use super::ride_load::ride;
use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "more-presses-than-fine",
    family: Family::Load,
    title: "More presses than in the ride that was fine",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "On the ride that was worked out no hand presses more often than in a ride that the rider names as fine.",
    why: "What a rider has done before without trouble is the best measure there is; limits for work do not fit a ride.",
    remedy: "Try another layout or shift plan over the same road, ride a gentler or shorter one first, or ask the rider and a clinician.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let Some(ride) = ride(situation) else {
        return Vec::new();
    };
    let mut findings = Vec::new();
    let mut say = |places: Vec<Place>, message: String| {
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByClinician,
            places,
            message,
            fixes: Vec::new(),
        });
    };
    let plan = situation.plan;
    if let Some(fine) = plan.rider.fine_ride_presses.value
        && ride.presses() > u32::from(fine)
    {
        let (road, presses) = (&ride.road, ride.presses());
        let message = format!(
            "The ride “{road}” asks for {presses} presses in all; the ride that was fine had {fine}."
        );
        say(Vec::new(), message);
    }
    if let Some(known) = &plan.rides.known {
        for side in Side::ALL {
            let fine = known.hand(*side).presses_per_hour;
            let (least, most) = ride.hand(*side).presses_per_hour;
            if most > fine {
                let message = format!(
                    "The {side} hand presses {least} to {most} times an hour; in “{}”, which was fine, {fine} times.",
                    known.name
                );
                say(vec![Place::Hand(*side)], message);
            }
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::ride::kept::{FineHand, KnownRide};
    use crate::rider::Answer;
    use crate::rules::testing::{Setup, drop_bar, fired};

    fn rides(presses: u16) -> Setup {
        drop_bar().with_ride(|ride| {
            ride.right.presses = presses;
            ride.right.presses_per_hour = (presses / 2, presses);
        })
    }

    #[test]
    fn fires_above_the_presses_that_the_rider_remembers() {
        let told = RiderEdit::FineRidePresses(Answer::of(150));
        let setup = |presses| {
            drop_bar()
                .rider_edit(told.clone())
                .with_ride(|ride| ride.left.presses = presses)
        };
        let found = fired(&setup(151).plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.contains("asks for 151 presses in all"));
        assert!(fired(&setup(150).plan(), &RULE).is_empty());
        assert!(
            fired(&rides(500).plan(), &RULE).is_empty(),
            "nothing to compare with"
        );
    }

    #[test]
    fn fires_for_each_hand_that_presses_more_often_than_in_the_known_ride() {
        let known = |setup: Setup| {
            setup.document(|plan, _| {
                let fine = FineHand {
                    presses_per_hour: 100,
                    ..FineHand::default()
                };
                plan.rides.known = Some(KnownRide {
                    name: "Sunday loop".into(),
                    left: fine,
                    right: fine,
                });
            })
        };
        let found = fired(&known(rides(120)).plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert!(
            found[0]
                .message
                .starts_with("The right hand presses 60 to 120 times an hour")
        );
        assert!(fired(&known(rides(100)).plan(), &RULE).is_empty());
    }
}
