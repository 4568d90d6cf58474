//! The hands cannot pull all wheel brakes at the same time.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::{BrakeRun, ControlId, HandPosition, Wheel};
use crate::coverage::BrakeCell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Day, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "brakes-not-pulled-together",
    family: Family::Brake,
    title: "The hands cannot pull all brakes together",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "From each position in use, the hands that brake pull all wheel brakes at the same time: each hand one lever, or two that it was tried to pull together.",
    why: "Going from one lever to the other doubles the way to a stop.",
    remedy: "Put all brakes on one lever, or try whether one hand pulls both levers at once and note it.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let positions = situation.positions().iter().copied();
    positions
        .filter(|position| !all_together(situation, *position))
        .map(|position| finding(situation, position))
        .collect()
}

fn finding(situation: &Situation<'_>, position: HandPosition) -> Finding {
    let levers = situation
        .live_runs()
        .map(|run| situation.lever_name(run.lever));
    let mut places = vec![Place::Position(position)];
    let wheels = situation.coverage.brakes.iter().map(|row| row.wheel);
    places.extend(wheels.map(Place::Wheel));
    Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::Never,
        places,
        message: format!(
            "From the {position} the hands that brake cannot pull all wheel brakes together, on {}.",
            braking::listed(levers.map(|lever| format!("the {lever}")))
        ),
        fixes: situation.propose(|| braking::all_on_one_lever(situation)),
    }
}

/// Whether the brakes that are in reach one by one can be pulled all at once.
/// What is out of reach is another rule's finding.
fn all_together(situation: &Situation<'_>, position: HandPosition) -> bool {
    let rows = situation.coverage.brakes.iter().map(|row| row.wheel);
    let wanted: Vec<Wheel> = rows
        .filter(|wheel| {
            let cell = situation.coverage.brake_cell(*wheel, position, Day::Usual);
            cell.and_then(BrakeCell::reached).is_some()
        })
        .collect();
    let left = grasps(situation, Side::Left, position);
    let right = grasps(situation, Side::Right, position);
    let mut both = left.iter().flat_map(|l| right.iter().map(move |r| (l, r)));
    both.any(|(l, r)| {
        wanted
            .iter()
            .all(|wheel| l.contains(wheel) || r.contains(wheel))
    })
}

/// The wheels that a hand brakes with each lever or pair of levers it can pull
/// at once, and with none.
fn grasps(situation: &Situation<'_>, side: Side, position: HandPosition) -> Vec<Vec<Wheel>> {
    let reached: Vec<&BrakeRun> = situation
        .live_runs()
        .filter(|run| situation.pulls_from(side, run.lever, position))
        .collect();
    let run = |lever: ControlId| reached.iter().find(|run| run.lever == lever);
    let together = situation.plan.bike.brakes.together.iter();
    let pairs = together
        .filter(|pair| pair.hand == side && pair.tried.is_yes())
        .filter_map(|pair| {
            Some([&run(pair.first)?.wheels[..], &run(pair.second)?.wheels].concat())
        });
    let singles = reached.iter().map(|run| run.wheels.clone());
    singles.chain(pairs).chain([Vec::new()]).collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::{
        BrakeRun, ControlId, ControlKind, Joint, Medium, PulledTogether, Wheel, Zone,
    };
    use crate::edit::{BikeEdit, BrakeEdit};
    use crate::finding::Acceptable;
    use crate::rider::{Answer, HandPlace, Side, YesNo};
    use crate::rules::testing::{Setup, bike, check_fixes, fired, lever};
    use crate::vocabulary::Vocabulary;

    /// Two levers on the right, one a wheel, for a right hand alone.
    fn two_levers_on_the_right() -> (Setup, ControlId, ControlId) {
        let setup = bike(TemplateId::FlatSingle).hand_does_nothing(Side::Left, HandPlace::OffBar);
        let left = lever(&setup, Side::Left);
        let right = lever(&setup, Side::Right);
        let setup = setup
            .bike_edit(BikeEdit::Remove(left))
            .bike_edit(BikeEdit::Add(
                ControlKind::BrakeLever,
                Side::Right,
                Zone::Grip,
            ));
        let mut plan = setup.plan();
        let second = plan.bike.controls.last().expect("just added").id;
        plan.bike.brakes.runs.push(BrakeRun {
            lever: second,
            medium: Medium::Cable,
            joint: Joint::Direct,
            throw_tested: Answer::NOT_ASKED,
            wheels: vec![Wheel::Front],
        });
        (Setup::of(plan), right, second)
    }

    #[test]
    fn one_hand_and_two_levers_must_be_tried_together() {
        let (setup, first, second) = two_levers_on_the_right();
        let plan = setup.plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].acceptable, Acceptable::Never);
        assert!(!found[0].fixes.is_empty());
        check_fixes(&plan, &RULE);

        for (tried, silent) in [(YesNo::No, false), (YesNo::Yes, true)] {
            let pair = PulledTogether {
                hand: Side::Right,
                first,
                second,
                tried: Answer::of(tried),
            };
            let tried = Setup::of(plan.clone()).brake_edit(BrakeEdit::Together(pair));
            assert_eq!(fired(&tried.plan(), &RULE).is_empty(), silent);
        }
    }

    #[test]
    fn is_silent_for_a_lever_in_each_hand_and_for_one_lever() {
        for id in TemplateId::ALL {
            assert!(fired(&bike(*id).plan(), &RULE).is_empty(), "{id}");
        }
        let setup = bike(TemplateId::FlatSingle).hand_does_nothing(Side::Left, HandPlace::OffBar);
        let right = lever(&setup, Side::Right);
        let plan = setup.all_brakes_on(right).plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
