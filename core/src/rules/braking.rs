//! What the brake rules share: how they name things, and the plumbing that
//! they propose.

use crate::cockpit::{BrakeRun, ControlId, Ease, HandPosition, Joint, Latch, Medium, Wheel};
use crate::coverage::{BrakeCell, WhyNot};
use crate::edit::{BikeEdit, BrakeEdit, Edit};
use crate::finding::Fix;
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
    runs.any(|run| pulled_by_moving(situation, run.lever, position))
}

fn pulled_by_moving(situation: &Situation<'_>, lever: ControlId, position: HandPosition) -> bool {
    let pulls = situation.coverage.pulls(lever, position, Day::Usual);
    pulls.iter().any(|p| p.ease == Ease::Move && p.is_usable())
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

/// A lever with the hand that would pull it.
#[derive(Clone, Copy)]
struct Candidate {
    lever: ControlId,
    hand: Side,
}

/// Levers, their blades fitted or removed, that a hand able to brake reaches
/// and lets go, the easiest hand first.
fn candidates(situation: &Situation<'_>) -> Vec<Candidate> {
    let mut found: Vec<Candidate> = situation
        .coverage
        .levers
        .iter()
        .flat_map(|row| Side::ALL.iter().map(|hand| (row.lever, *hand)))
        .filter(|(lever, hand)| {
            able_to_brake(situation, *hand)
                && situation.brakes_with(*hand, *lever)
                && too_far_from(situation, *lever, *hand).is_empty()
        })
        .map(|(lever, hand)| Candidate { lever, hand })
        .collect();
    found.sort_by_key(|c| {
        let step = situation.hand(c.hand).step(Ability::BrakesHard, Day::Usual);
        (step.unwrap_or(Difficulty::Moderate), c.lever)
    });
    found
}

fn able_to_brake(situation: &Situation<'_>, side: Side) -> bool {
    let hand = situation.hand(side);
    let grips = hand.step(Ability::BrakesHard, Day::Usual);
    hand.works()
        && grips.is_none_or(|step| step.standing() == Standing::Able)
        && !hand.at_least(Ability::ReleasesBrake, Difficulty::Severe)
}

/// Whether a brake on this lever stays in reach from a position, or can be had
/// there as well as a bar with extensions allows.
fn in_reach(situation: &Situation<'_>, candidate: Candidate, position: HandPosition) -> bool {
    situation.pulls_from(candidate.hand, candidate.lever, position)
        || position == HandPosition::Extensions
            && pulled_by_moving(situation, candidate.lever, position)
}

/// All wheel brakes on one lever that an able hand reaches, best first, as far as
/// hand and lever are `wanted`. Other blades come off, so that none is left that
/// pulls nothing; a parking latch goes along.
///
/// Left out where it would take a brake out of reach that now is in reach.
pub(super) fn all_on_one_lever(
    situation: &Situation<'_>,
    wanted: impl Fn(Side, ControlId) -> bool,
) -> Vec<Fix> {
    candidates(situation)
        .into_iter()
        .filter(|candidate| wanted(candidate.hand, candidate.lever))
        .filter(|candidate| {
            let mut positions = situation.positions().iter();
            positions.all(|p| in_reach(situation, *candidate, *p) || no_brake_from(situation, *p))
        })
        .filter(|candidate| !has_all(situation, candidate.lever))
        .map(|candidate| all_on(situation, candidate.lever))
        .collect()
}

/// Whether no wheel brake is in reach from a position, although each has a
/// lever.
fn no_brake_from(situation: &Situation<'_>, position: HandPosition) -> bool {
    let mut rows = situation.coverage.brakes.iter();
    rows.all(|row| {
        let cell = situation
            .coverage
            .brake_cell(row.wheel, position, Day::Usual);
        matches!(cell, Some(BrakeCell::ByLettingGo(_) | BrakeCell::No(_)))
            && cell != Some(&BrakeCell::No(WhyNot::NoButton))
    })
}

/// Whether a lever pulls all brakes already and no other has a blade.
fn has_all(situation: &Situation<'_>, lever: ControlId) -> bool {
    let bike = &situation.plan.bike;
    let mut live = situation.live_runs();
    let all = live.any(|run| {
        let mut wheels = bike.brakes.wheels.iter();
        run.lever == lever && wheels.all(|brake| run.wheels.contains(&brake.wheel))
    });
    all && bike.controls.iter().filter(|c| c.has_blade()).count() == 1
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

/// A lever that pulls nothing yet, in the reach of a hand that brakes nothing
/// yet, takes a wheel brake.
pub(super) fn lever_of_its_own(situation: &Situation<'_>, wheel: Wheel) -> Vec<Fix> {
    let busy = situation.braking_hands();
    let pulls_nothing = |lever| !situation.live_runs().any(|run| run.lever == lever);
    candidates(situation)
        .into_iter()
        .filter(|candidate| !busy.contains(&candidate.hand) && pulls_nothing(candidate.lever))
        .filter(|candidate| {
            let mut positions = situation.positions().iter();
            positions.all(|position| in_reach(situation, *candidate, *position))
        })
        .map(|candidate| own_run(situation, candidate.lever, wheel))
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
