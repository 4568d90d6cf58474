//! Fixes that several rules propose. A proposal is tried before it is offered,
//! so each of these may be put forward wherever it could help.

use crate::cockpit::{ButtonId, Freedom, HandPosition};
use crate::coverage::{Via, Way};
use crate::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit};
use crate::finding::Fix;
use crate::function::Function;
use crate::rider::{Day, Side};
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;
use crate::suggest_button::{Suited, free_buttons};
use crate::vocabulary::Vocabulary;

/// Places proposed for one function.
const MOST_PLACES: usize = 2;

/// Puts a function on the best free buttons that serve.
pub(super) fn put(
    situation: &Situation<'_>,
    function: Function,
    day: Day,
    serves: impl Fn(&Suited) -> bool,
) -> Vec<Fix> {
    best(situation, function, day, serves)
        .map(|to| Fix {
            label: format!(
                "Put “{function}” on the {}",
                situation.plan.bike.place_of(to)
            ),
            edit: Edit::Layout(LayoutEdit::Tap(to, Some(function))),
        })
        .collect()
}

/// Puts a function on the best free buttons from which a position misses
/// nothing.
pub(super) fn put_within_reach_of(
    situation: &Situation<'_>,
    function: Function,
    position: HandPosition,
) -> Vec<Fix> {
    put(situation, function, Day::Usual, |suited| {
        !suited.missed.contains(&position)
    })
}

/// Moves what calls up a function to the best free buttons that serve. Where
/// its button cannot be emptied, the function is put there as well.
pub(super) fn move_from(
    situation: &Situation<'_>,
    way: &Way,
    function: Function,
    serves: impl Fn(&Suited) -> bool,
) -> Vec<Fix> {
    let from = match way.via {
        Via::Tap(id) if is_remappable(situation, id) => id,
        _ => return put(situation, function, Day::Usual, serves),
    };
    let given = situation.layout.taps.get(&from).copied();
    best(situation, given.unwrap_or(function), Day::Usual, serves)
        .map(|to| Fix {
            label: format!(
                "Move it from the {} to the {}",
                situation.plan.bike.place_of(from),
                situation.plan.bike.place_of(to)
            ),
            edit: Edit::Layout(LayoutEdit::Swap(from, to)),
        })
        .collect()
}

fn best(
    situation: &Situation<'_>,
    function: Function,
    day: Day,
    serves: impl Fn(&Suited) -> bool,
) -> impl Iterator<Item = ButtonId> {
    free_buttons(situation, function, day)
        .into_iter()
        .filter(serves)
        .map(|suited| suited.button)
        .take(MOST_PLACES)
}

/// Puts all shifting on the side of the only hand that works, also by a ladder,
/// which needs half the buttons.
pub(super) fn all_shifting_on_working_side(situation: &Situation<'_>) -> Vec<Fix> {
    let plan = situation.plan;
    let mut working = Side::ALL
        .iter()
        .copied()
        .filter(|side| situation.hand(*side).works());
    let (Some(side), None) = (working.next(), working.next()) else {
        return Vec::new();
    };
    let move_all = Edit::Layout(LayoutEdit::AllShiftingOn(side));
    let mut fixes = vec![Fix {
        label: format!("Put all shifting on the {side}"),
        edit: move_all.clone(),
    }];
    let ladder = ShiftPlanKind::Ladder;
    if plan.shift_plan.needed().len() > ladder.needed().len()
        && plan.bike.system.shift_plans.contains(&ladder)
    {
        fixes.push(Fix {
            label: format!("Change to the ladder, all shifting on the {side}"),
            edit: Edit::Several {
                label: format!("shift plan: {ladder}, all shifting on the {side}"),
                edits: vec![Edit::Plan(PlanEdit::ShiftPlan(ladder)), move_all],
            },
        });
    }
    fixes
}

/// Makes a button do nothing: leaves it blank, or unplugs its control where it
/// cannot be blanked.
pub(super) fn silence(situation: &Situation<'_>, id: ButtonId) -> Fix {
    let bike = &situation.plan.bike;
    if is_remappable(situation, id) {
        return Fix {
            label: format!("Leave the {} blank", bike.place_of(id)),
            edit: Edit::Layout(LayoutEdit::ClearButton(id)),
        };
    }
    let place = bike
        .control(id.control)
        .map_or_else(|| bike.place_of(id), |control| control.place());
    Fix {
        label: format!("Unplug the {place}"),
        edit: Edit::Bike(BikeEdit::Connect(id.control, false)),
    }
}

/// Takes everything off a button that it cannot have.
pub(super) fn take_off(situation: &Situation<'_>, id: ButtonId) -> Fix {
    Fix {
        label: match situation.plan.bike.button(id) {
            Some(_) => format!("Take it off the {}", situation.plan.bike.place_of(id)),
            None => "Take it out of the layout".into(),
        },
        edit: Edit::Layout(LayoutEdit::ClearButton(id)),
    }
}

/// Takes one hold away.
pub(super) fn no_hold(situation: &Situation<'_>, id: ButtonId) -> Fix {
    Fix {
        label: format!("No hold on the {}", situation.plan.bike.place_of(id)),
        edit: Edit::Layout(LayoutEdit::Hold(id, None)),
    }
}

/// Whether a button's function may be changed at all.
fn is_remappable(situation: &Situation<'_>, id: ButtonId) -> bool {
    situation
        .plan
        .bike
        .button(id)
        .is_some_and(|(_, button)| matches!(button.freedom, Freedom::Free | Freedom::Limited(_)))
}
