//! Fixes that several rules propose. A proposal is tried before it is offered,
//! so each of these may be put forward wherever it could help.

use crate::catalogue::parts;
use crate::cockpit::{ButtonId, ControlKind, Freedom, HandPosition};
use crate::coverage::{Via, Way, press_of};
use crate::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit};
use crate::finding::Fix;
use crate::function::Function;
use crate::rider::{Day, Side};
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;
use crate::suggest_button::{Suited, free_buttons, reached_by};
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

/// Lets the button of a function change places with one that is reached from a
/// position, and whose function may be missing there or is called up otherwise,
/// such as by a fixed button.
pub(super) fn swap_within_reach_of(
    situation: &Situation<'_>,
    function: Function,
    position: HandPosition,
    may_be_missing: impl Fn(Function) -> bool,
) -> Vec<Fix> {
    let (plan, layout) = (situation.plan, situation.layout);
    let bike = &plan.bike;
    let taps = || {
        layout
            .taps
            .iter()
            .filter(|(id, _)| is_remappable(situation, **id))
    };
    let reached = |id: ButtonId| {
        let cell = press_of(plan, id, position, Day::Usual);
        cell.reached().is_some()
    };
    let from = taps().filter(|(id, given)| given.serves(function) && !reached(**id));
    from.flat_map(|(from, given)| {
        taps()
            .filter(|(to, other)| {
                reached(**to)
                    && bike.can_do(**to, *given)
                    && bike.can_do(*from, **other)
                    && (may_be_missing(**other) || stays_reached(situation, **other, (*from, **to)))
            })
            .map(|(to, _)| Fix {
                label: format!(
                    "Let the {} and the {} change places",
                    bike.place_of(*from),
                    bike.place_of(*to)
                ),
                edit: Edit::Layout(LayoutEdit::Swap(*from, *to)),
            })
    })
    .take(MOST_PLACES)
    .collect()
}

/// Whether a function is reached from wherever it is now, once two buttons
/// change places.
fn stays_reached(
    situation: &Situation<'_>,
    function: Function,
    (a, b): (ButtonId, ButtonId),
) -> bool {
    let swap = Edit::Layout(LayoutEdit::Swap(a, b));
    let Ok(after) = situation.plan.apply(&swap) else {
        return false;
    };
    let coverage = situation.after(&after).coverage;
    situation.positions().iter().all(|position| {
        let cell = coverage.cell(function, *position, Day::Usual);
        situation.reached(function, *position).is_none()
            || cell.is_some_and(|c| c.reached().is_some())
    })
}

/// Moves one of two buttons' functions to the best free button elsewhere.
pub(super) fn apart(situation: &Situation<'_>, a: ButtonId, b: ButtonId) -> Vec<Fix> {
    let bike = &situation.plan.bike;
    let away = |from: ButtonId| {
        let function = situation.layout.taps.get(&from).copied()?;
        let remappable = is_remappable(situation, from);
        let to = best(situation, function, Day::Usual, |_| remappable).next()?;
        Some(Fix {
            label: format!(
                "Move “{function}” from the {} to the {}",
                bike.place_of(from),
                bike.place_of(to)
            ),
            edit: Edit::Layout(LayoutEdit::Swap(from, to)),
        })
    };
    [a, b].into_iter().filter_map(away).collect()
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

/// Fixes for one function, and beside them those that put all shifting on the
/// side of the only hand that works. These come first as long as nothing shifts
/// there yet, so that there is nothing to lose.
pub(super) fn beside_all_shifting(situation: &Situation<'_>, single: Vec<Fix>) -> Vec<Fix> {
    let Some(side) = only_working_hand(situation) else {
        return single;
    };
    let bike = &situation.plan.bike;
    let shifts_there = situation.layout.taps.iter().any(|(id, function)| {
        let control = bike.control(id.control);
        function.shifts() && control.is_some_and(|c| c.side.hand() == Some(side))
    });
    let all = all_shifting_on(situation, side);
    if shifts_there {
        [single, all].concat()
    } else {
        [all, single].concat()
    }
}

fn only_working_hand(situation: &Situation<'_>) -> Option<Side> {
    let sides = Side::ALL.iter().copied();
    let mut working = sides.filter(|side| situation.hand(*side).works());
    working.next().filter(|_| working.next().is_none())
}

/// Puts all shifting on a side: by the plan as it is, by a ladder, which needs
/// half the buttons, or with a pod more where there are too few for both
/// directions.
fn all_shifting_on(situation: &Situation<'_>, side: Side) -> Vec<Fix> {
    let plan = situation.plan;
    let put_all = Edit::Layout(LayoutEdit::AllShiftingOn(side));
    let with = |label: String, first: Edit| Fix {
        edit: Edit::Several {
            label: label.to_ascii_lowercase(),
            edits: vec![first, put_all.clone()],
        },
        label,
    };
    // Where all of it is there already, it is only put in another order.
    let elsewhere = situation.layout.taps.iter().any(|(id, function)| {
        let control = plan.bike.control(id.control);
        function.shifts() && control.is_some_and(|c| c.side.hand() != Some(side))
    });
    let anything = situation.layout.taps.values().any(|f| f.shifts());
    let mut fixes = vec![Fix {
        label: if elsewhere || !anything {
            format!("Put all shifting on the {side}")
        } else {
            format!("Arrange the shifting on the {side} anew")
        },
        edit: put_all.clone(),
    }];
    let ladder = ShiftPlanKind::Ladder;
    if plan.shift_plan.needed().len() > ladder.needed().len()
        && plan.bike.system.shift_plans.contains(&ladder)
    {
        fixes.push(with(
            format!("Change to the ladder, all shifting on the {side}"),
            Edit::Plan(PlanEdit::ShiftPlan(ladder)),
        ));
    }
    if reached_by(plan, side).len() < 2 {
        let zones = parts::zones_for(plan.bike.bar.kind, ControlKind::Pod);
        fixes.extend(zones.iter().map(|zone| {
            with(
                format!("Add a pod on the {side} ({zone}) for all shifting"),
                Edit::Bike(BikeEdit::Add(ControlKind::Pod, side, *zone)),
            )
        }));
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
