//! What the brake rules share: how they name things, and the plumbing that
//! they propose. A proposal is tried before it is offered.

use crate::catalogue::parts;
use crate::cockpit::{
    BrakeRun, ControlId, ControlKind, Ease, HandPosition, Joint, Latch, Medium, Wheel, Zone,
};
use crate::edit::{BikeEdit, BrakeEdit, Edit};
use crate::finding::Fix;
use crate::ordered;
use crate::reach;
use crate::rider::{Ability, Answer, Day, Difficulty, Side, Standing};
use crate::situation::Situation;
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

/// What a rider's reach keeps in hand before a blade counts as within it: a
/// glove, a worn pad, the cold (our judgement).
const REACH_MARGIN: Mm = Mm(5.0);

/// "a", "a and b", "a, b and c".
pub(super) fn listed(items: impl IntoIterator<Item = String>) -> String {
    let mut items: Vec<String> = items.into_iter().collect();
    match (items.pop(), items.is_empty()) {
        (None, _) => String::new(),
        (Some(last), true) => last,
        (Some(last), false) => format!("{} and {last}", items.join(", ")),
    }
}

/// Whether a run brakes both ends of the bike.
pub(super) fn brakes_both_ends(run: &BrakeRun) -> bool {
    run.wheels.iter().any(|wheel| wheel.is_front())
        && run.wheels.iter().any(|wheel| !wheel.is_front())
}

/// Whether a wheel is braked from a position by a hand that moves along its own
/// side of the bar first.
pub(super) fn braked_by_moving(
    situation: &Situation<'_>,
    wheel: Wheel,
    position: HandPosition,
) -> bool {
    let mut runs = situation.live_runs().filter(|r| r.wheels.contains(&wheel));
    runs.any(|run| {
        let pulls = situation.coverage.pulls(run.lever, position, Day::Usual);
        pulls.iter().any(|p| p.ease == Ease::Move && p.is_usable())
    })
}

/// Positions in which a blade, as measured, is farther than the hand's own
/// reach less [`REACH_MARGIN`]. What was not measured is not told.
pub(super) fn too_far_from(
    situation: &Situation<'_>,
    lever: ControlId,
    side: Side,
) -> Vec<HandPosition> {
    let control = situation.plan.bike.control(lever);
    let Some(blade) = control.and_then(|c| c.blade?.reach) else {
        return Vec::new();
    };
    let too_far = |position: &HandPosition| {
        let reach = situation.hand(side).blade_reach.value(*position);
        reach.is_some_and(|reach| blade.0 > reach.0 - REACH_MARGIN.0)
    };
    let positions = situation.positions().iter().copied();
    positions
        .filter(|p| situation.pulls_from(side, lever, *p))
        .filter(too_far)
        .collect()
}

/// Levers, their blades fitted or removed, that a hand able to brake reaches
/// and lets go, the easiest hand's first.
fn candidates(situation: &Situation<'_>) -> Vec<ControlId> {
    let effort = |lever: ControlId| {
        let hands = Side::ALL.iter().copied().filter(|side| {
            able_to_brake(situation, *side)
                && situation.brakes_with(*side, lever)
                && too_far_from(situation, lever, *side).is_empty()
        });
        let step = |side| situation.hand(side).step(Ability::BrakesHard, Day::Usual);
        hands
            .map(|side| step(side).unwrap_or(Difficulty::Moderate))
            .min()
    };
    let levers = situation.coverage.levers.iter().map(|row| row.lever);
    let mut found: Vec<(Difficulty, ControlId)> = levers
        .filter_map(|lever| Some((effort(lever)?, lever)))
        .collect();
    ordered::sort(&mut found);
    found.into_iter().map(|(_, lever)| lever).collect()
}

fn able_to_brake(situation: &Situation<'_>, side: Side) -> bool {
    let hand = situation.hand(side);
    let grips = hand.step(Ability::BrakesHard, Day::Usual);
    hand.works()
        && grips.is_none_or(|step| step.standing() == Standing::Able)
        && !hand.at_least(Ability::ReleasesBrake, Difficulty::Severe)
}

/// All wheel brakes on one lever that an able hand reaches, best first. Other
/// blades come off, so that none is left that pulls nothing; a parking latch goes
/// along.
pub(super) fn all_on_one_lever(situation: &Situation<'_>) -> Vec<Fix> {
    candidates(situation)
        .into_iter()
        .map(|lever| all_on(situation, lever))
        .collect()
}

fn all_on(situation: &Situation<'_>, lever: ControlId) -> Fix {
    let bike = &situation.plan.bike;
    let has_latch = |id| {
        bike.control(id)
            .is_some_and(|c| c.blade.is_some_and(|b| b.latch.is_some()))
    };
    let others: Vec<ControlId> = bike
        .controls
        .iter()
        .filter(|control| control.id != lever && control.has_blade())
        .map(|control| control.id)
        .collect();
    let mut edits = vec![Edit::Brakes(BrakeEdit::AllOnLever(lever))];
    if others.iter().any(|id| has_latch(*id)) && !has_latch(lever) {
        edits.push(Edit::Bike(BikeEdit::Latch(lever, Some(Latch::default()))));
    }
    let bare = others.iter().map(|id| BikeEdit::BladeFitted(*id, false));
    edits.extend(bare.map(Edit::Bike));
    let name = situation.lever_name(lever);
    Fix {
        label: format!("Put all brakes on the {name}; then test its throw"),
        edit: Edit::Several {
            label: format!("all brakes on the {name}"),
            edits,
        },
    }
}

/// A lever that pulls nothing yet, in the reach of an able hand, takes a wheel
/// brake.
pub(super) fn lever_of_its_own(situation: &Situation<'_>, wheel: Wheel) -> Vec<Fix> {
    let pulls_nothing = |lever: &ControlId| !situation.live_runs().any(|r| r.lever == *lever);
    candidates(situation)
        .into_iter()
        .filter(pulls_nothing)
        .map(|lever| own_run(situation, lever, wheel))
        .collect()
}

fn own_run(situation: &Situation<'_>, lever: ControlId, wheel: Wheel) -> Fix {
    let runs = &situation.plan.bike.brakes.runs;
    let label = format!(
        "Let the {} pull the {wheel}’s brake",
        situation.lever_name(lever)
    );
    let run = BrakeRun {
        lever,
        medium: runs.first().map_or(Medium::Cable, |run| run.medium),
        joint: Joint::Direct,
        throw_tested: Answer::NOT_ASKED,
        wheels: vec![wheel],
    };
    Fix {
        edit: Edit::Several {
            label: label.clone(),
            edits: vec![
                Edit::Brakes(BrakeEdit::SetRun(run)),
                Edit::Bike(BikeEdit::BladeFitted(lever, true)),
            ],
        },
        label,
    }
}

/// A brake lever more for a position, on each side whose hand works: it pulls
/// what the lever of that side pulls. Only where the brakes take cables, which a
/// second lever can pull on their way; a hose needs other parts.
pub(super) fn levers_for(situation: &Situation<'_>, position: HandPosition) -> Vec<Fix> {
    let plan = situation.plan;
    let zones = parts::zones_for(plan.bike.bar.kind, ControlKind::BrakeLever);
    zones
        .iter()
        .filter_map(|zone| lever_in(situation, position, *zone))
        .collect()
}

fn lever_in(situation: &Situation<'_>, position: HandPosition, zone: Zone) -> Option<Fix> {
    let mut bike = situation.plan.bike.clone();
    let (mut edits, mut added, mut joined) = (Vec::new(), 0, false);
    for side in Side::ALL.iter().copied() {
        let own = |run: &&BrakeRun| {
            let lever = situation.plan.bike.control(run.lever);
            lever.is_some_and(|lever| lever.side.hand() == Some(side) && lever.zone != zone)
        };
        let Some(run) = situation.live_runs().find(own) else {
            continue;
        };
        let id = bike.free_control_id();
        let lever = parts::control(&bike.bar, id, ControlKind::BrakeLever, side, zone)?;
        let mut reaches = reach::of_blade(&lever, position);
        let held = reaches.any(|reach| matches!(reach.ease, Ease::Natural | Ease::Stretch));
        if run.medium != Medium::Cable || !held || !situation.hand(side).works() {
            continue;
        }
        bike.controls.push(lever);
        let run = BrakeRun {
            lever: id,
            throw_tested: Answer::NOT_ASKED,
            ..run.clone()
        };
        joined |= run.joint != Joint::Direct;
        added += 1;
        edits.push(Edit::Bike(BikeEdit::Add(
            ControlKind::BrakeLever,
            side,
            zone,
        )));
        edits.push(Edit::Brakes(BrakeEdit::SetRun(run)));
    }
    let what = match added {
        0 => return None,
        1 => "a brake lever",
        _ => "brake levers",
    };
    let test = match (joined, added) {
        (false, _) => "",
        (true, 1) => "; then test its throw",
        (true, _) => "; then test their throw",
    };
    Some(Fix {
        label: format!("Add {what} for the {position}{test}"),
        edit: Edit::Several {
            label: format!("add {what} for the {position}"),
            edits,
        },
    })
}
