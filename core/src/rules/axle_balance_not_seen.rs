//! Two wheels of an axle that were not seen to brake alike.

use super::{Family, Origin, Rule};
use crate::cockpit::Wheel;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::YesNo;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "axle-balance-not-seen",
    family: Family::Brake,
    title: "The wheels of an axle were not seen to brake alike",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Two wheels of one axle that one lever pulls were seen to brake alike.",
    why: "A doubler or splitter shares the pull, not the braking: one wheel that bites earlier turns the bike.",
    remedy: "Roll and brake on a dry, flat, closed place, even the two out, and note the outcome under Bike.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let brakes = &situation.plan.bike.brakes;
    let share = |left: Wheel, right: Wheel| {
        let mut runs = situation.live_runs();
        runs.any(|run| run.wheels.contains(&left) && run.wheels.contains(&right))
    };
    let alike = |wheel| {
        let brake = brakes.wheels.iter().find(|brake| brake.wheel == wheel);
        brake.map(|brake| brake.balanced)
    };
    brakes
        .wheels
        .iter()
        .filter_map(|brake| Some((brake.wheel, brake.wheel.beside()?)))
        .filter(|(left, right)| left < right && share(*left, *right))
        .filter_map(|(left, right)| {
            let seen = [alike(left)?, alike(right)?];
            if seen.iter().all(|answer| answer.is_yes()) {
                return None;
            }
            let uneven = seen.iter().any(|answer| answer.value == Some(YesNo::No));
            Some(finding(left, right, uneven))
        })
        .collect()
}

fn finding(left: Wheel, right: Wheel, uneven: bool) -> Finding {
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Wheel(left), Place::Wheel(right)],
        message: format!(
            "The {left} and the {right} {} to brake alike.",
            if uneven {
                "were seen not"
            } else {
                "were not yet seen"
            }
        ),
        fixes: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::Wheel;
    use crate::edit::BrakeEdit;
    use crate::rider::{Answer, YesNo};
    use crate::rules::testing::{bike, drop_bar, fired};

    #[test]
    fn fires_until_both_wheels_were_seen_to_brake_alike() {
        let with = |answer| {
            let edit = BrakeEdit::Balanced(Wheel::RearLeft, Answer::of(answer));
            fired(&bike(TemplateId::Tricycle).brake_edit(edit).plan(), &RULE)
        };
        assert_eq!(fired(&bike(TemplateId::Tricycle).plan(), &RULE).len(), 1);
        assert!(with(YesNo::No)[0].message.contains("not to brake alike"));
        assert!(with(YesNo::Yes).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty(), "no axle");
    }
}
