//! Left and right wheel of one axle on two levers of one hand.

use super::{Family, Origin, Rule};
use crate::cockpit::{BrakeRun, Joint, Medium, Wheel};
use crate::edit::{BikeEdit, BrakeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::ordered;
use crate::rider::{Answer, Side};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "axle-wheels-braked-apart",
    family: Family::Brake,
    title: "One hand brakes left and right wheel apart",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Where one hand brakes both wheels of an axle, one lever pulls both.",
    why: "One hand never pulls two levers quite alike, and a tricycle braked on one side turns to that side.",
    remedy: "Join both wheels on one lever with a doubler or splitter that evens out, and test its throw.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let brakes = situation.plan.bike.brakes.wheels.iter();
    brakes
        .filter_map(|brake| Some((brake.wheel, brake.wheel.beside()?)))
        .filter(|(left, right)| left < right)
        .filter_map(|(left, right)| look(situation, left, right))
        .collect()
}

fn look(situation: &Situation<'_>, left: Wheel, right: Wheel) -> Option<Finding> {
    let of = |wheel: Wheel| -> Vec<&BrakeRun> {
        let runs = situation.live_runs();
        runs.filter(|run| run.wheels.contains(&wheel)).collect()
    };
    let (lefts, rights) = (of(left), of(right));
    if lefts.is_empty() || rights.is_empty() || lefts.iter().any(|run| run.wheels.contains(&right))
    {
        return None;
    }
    let hands = |runs: &[&BrakeRun]| -> Vec<Side> {
        let brakes = |side: &Side| runs.iter().any(|r| situation.brakes_with(*side, r.lever));
        Side::ALL.iter().copied().filter(brakes).collect()
    };
    let [hand] = hands(&lefts)[..] else {
        return None;
    };
    if hands(&rights) != [hand] {
        return None;
    }
    let fixes = match (&lefts[..], &rights[..]) {
        ([a], [b]) => [join(situation, a, b), join(situation, b, a)]
            .into_iter()
            .flatten()
            .collect(),
        _ => Vec::new(),
    };
    Some(Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Wheel(left), Place::Wheel(right), Place::Hand(hand)],
        message: format!(
            "The {hand} hand brakes the {left} and the {right} with two levers: the bike turns to the side that is pulled harder."
        ),
        fixes,
    })
}

/// One lever takes over what another pulls, whose blade comes off. Left out
/// where the other has a parking latch.
fn join(situation: &Situation<'_>, keep: &BrakeRun, drop: &BrakeRun) -> Option<Fix> {
    let bike = &situation.plan.bike;
    let has_latch = bike.control(drop.lever)?.blade?.latch.is_some();
    if has_latch {
        return None;
    }
    let mut wheels = [&keep.wheels[..], &drop.wheels[..]].concat();
    ordered::sort(&mut wheels);
    wheels.dedup();
    let run = BrakeRun {
        joint: match keep.medium {
            Medium::Cable => Joint::CableDoubler,
            Medium::Hose => Joint::HoseSplitter,
        },
        throw_tested: Answer::NOT_ASKED,
        wheels,
        ..keep.clone()
    };
    let name = situation.lever_name(keep.lever);
    Some(Fix {
        label: format!("Join both wheels on the {name}; then test its throw"),
        edit: Edit::Several {
            label: format!("both wheels of the axle on the {name}"),
            edits: vec![
                Edit::Brakes(BrakeEdit::RemoveRun(drop.lever)),
                Edit::Brakes(BrakeEdit::NotTogether(keep.lever, drop.lever)),
                Edit::Bike(BikeEdit::BladeFitted(drop.lever, false)),
                Edit::Brakes(BrakeEdit::SetRun(run)),
            ],
        },
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::{BrakeRun, ControlKind, Joint, Medium, Wheel, Zone};
    use crate::edit::{BikeEdit, BrakeEdit};
    use crate::plan::Plan;
    use crate::rider::{Answer, Side};
    use crate::rules::testing::{bike, check_fixes, fired, lever};

    /// A tricycle whose rear wheels have a lever each: the right one on the
    /// right, the left one on a second lever on `side`.
    fn rear_wheels_apart(side: Side) -> Plan {
        let setup = bike(TemplateId::Tricycle).bike_edit(BikeEdit::Add(
            ControlKind::BrakeLever,
            side,
            Zone::Grip,
        ));
        let right = lever(&setup, Side::Right);
        let plan = setup.plan();
        let added = plan.bike.controls.last().expect("just added").id;
        let direct = |lever, wheel| {
            BrakeEdit::SetRun(BrakeRun {
                lever,
                medium: Medium::Cable,
                joint: Joint::Direct,
                throw_tested: Answer::NOT_ASKED,
                wheels: vec![wheel],
            })
        };
        crate::rules::testing::Setup::of(plan)
            .brake_edit(direct(right, Wheel::RearRight))
            .brake_edit(direct(added, Wheel::RearLeft))
            .plan()
    }

    #[test]
    fn fires_for_two_levers_of_one_hand_and_joins_them() {
        let plan = rear_wheels_apart(Side::Right);
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].fixes.len(), 2);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_one_lever_and_for_two_hands() {
        assert!(fired(&bike(TemplateId::Tricycle).plan(), &RULE).is_empty());
        assert!(fired(&rear_wheels_apart(Side::Left), &RULE).is_empty());
    }
}
