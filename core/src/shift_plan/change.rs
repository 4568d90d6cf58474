//! What another shift plan does to the layout in hand.

use super::ShiftPlanKind;
use crate::cockpit::ButtonId;
use crate::coverage::{Cell, Coverage, WhyNot};
use crate::edit::{Edit, EditError, LayoutEdit, PlanEdit};
use crate::function::Function;
use crate::layout::{Hold, Layout, LayoutId};
use crate::plan::Plan;
use crate::rider::Day;
use crate::situation::Situation;
use crate::suggest_button::free_buttons;
use crate::text::list;

/// What another shift plan does to the layout in hand, and the change of the
/// layout that matches it.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanChange {
    /// The other shift plan.
    pub to: ShiftPlanKind,
    /// Functions on buttons that lose their use, in balloon order; a button
    /// stands there once for each.
    pub unmapped: Vec<(ButtonId, Function)>,
    /// Functions that it needs and no button has.
    pub missing: Vec<Function>,
    /// Functions that it needs and no button has after the matching change, for
    /// want of buttons.
    pub still_missing: Vec<Function>,
    /// What the matching change puts in place of what, button by button, in
    /// balloon order; nothing is blank.
    pub replaced: Vec<(ButtonId, Option<Function>, Option<Function>)>,
    /// The other layouts that lack functions then, with which; the shift plan is the bike's, so it
    /// changes for all of them, and either change leaves their buttons alone.
    pub elsewhere: Vec<(LayoutId, Vec<Function>)>,
    /// The shift plan alone; the buttons keep what they have.
    pub alone: Edit,
    /// The shift plan with the layout that matches: functions that take each
    /// other's place change on their buttons, what is missing goes on free ones.
    pub matching: Edit,
}

impl PlanChange {
    /// What it means to change to a shift plan.
    ///
    /// # Errors
    /// When the bike cannot follow the shift plan.
    pub fn to(plan: &Plan, kind: ShiftPlanKind) -> Result<PlanChange, EditError> {
        let alone = Edit::Plan(PlanEdit::ShiftPlan(kind));
        let bare = plan.apply(&alone)?;
        let mut edits = vec![Edit::Plan(PlanEdit::ShiftPlanAndButtons(kind))];
        let mut matched = plan.apply(&edits[0])?;
        for function in missing(&matched) {
            // A toggle put down for one front function serves for the other.
            if !missing(&matched).contains(&function) {
                continue;
            }
            if let Some((next, edit)) = put(&matched, function) {
                matched = next;
                edits.push(edit);
            }
        }
        Ok(PlanChange {
            to: kind,
            unmapped: unmapped(plan, &bare),
            missing: missing(&bare),
            still_missing: missing(&matched),
            replaced: replaced(plan, &matched),
            elsewhere: elsewhere(plan, &bare),
            alone,
            matching: Edit::Several {
                label: format!("shift plan: {kind}, with its buttons"),
                edits,
            },
        })
    }

    /// What the matching change makes of the buttons, and what becomes of them
    /// without it, in a sentence each.
    pub fn words(&self, plan: &Plan) -> String {
        let said = |function: Option<Function>| match function {
            Some(function) => format!("“{function}”"),
            None => "blank".to_owned(),
        };
        let mut with = Vec::new();
        for (button, old, new) in &self.replaced {
            let place = plan.bike.place_of(*button);
            with.push(format!("{place} from {} to {}", said(*old), said(*new)));
        }
        let with = match with.is_empty() {
            true => String::from("With its buttons: none changes."),
            false => format!("With its buttons: {}.", with.join(", ")),
        };
        let mut alone = Vec::new();
        if !self.unmapped.is_empty() {
            let list: Vec<String> = self
                .unmapped
                .iter()
                .map(|(button, function)| {
                    format!("“{function}” on the {}", plan.bike.place_of(*button))
                })
                .collect();
            alone.push(format!("without use: {}", list.join(", ")));
        }
        if !self.missing.is_empty() {
            let list: Vec<String> = self.missing.iter().map(|f| format!("“{f}”")).collect();
            alone.push(format!("on no button: {}", list.join(", ")));
        }
        let alone = match alone.is_empty() {
            true => String::from("every button keeps its use"),
            false => alone.join("; "),
        };
        let elsewhere = self.elsewhere.iter().filter_map(|(id, lacks)| {
            let layout = plan.layouts.iter().find(|layout| layout.id == *id)?;
            let lacks: Vec<String> = lacks.iter().map(|f| format!("“{f}”")).collect();
            Some(format!(
                " The shift plan is one for all layouts: “{}” then has no button for {}.",
                layout.name,
                list(&lacks, "and")
            ))
        });
        let elsewhere: String = elsewhere.collect();
        format!("{with} The plan alone: {alone}.{elsewhere}")
    }

    /// Whether nothing loses its use and nothing is missing, in any layout.
    pub fn is_harmless(&self) -> bool {
        self.unmapped.is_empty() && self.missing.is_empty() && self.elsewhere.is_empty()
    }
}

/// What stands on each button before and after, where that differs.
fn replaced(before: &Plan, after: &Plan) -> Vec<(ButtonId, Option<Function>, Option<Function>)> {
    let tap = |plan: &Plan, id| plan.layout().tap(&plan.bike, id);
    let mut replaced = Vec::new();
    for (id, ..) in before.bike.buttons() {
        let (old, new) = (tap(before, id), tap(after, id));
        if old != new {
            replaced.push((id, old, new));
        }
    }
    replaced
}

/// What of the layout has a use under one shift plan and none under another.
fn unmapped(before: &Plan, after: &Plan) -> Vec<(ButtonId, Function)> {
    let has_use = |plan: &Plan, function| plan.shift_plan.has_use_for(function, &plan.bike);
    let layout = before.layout();
    let mut found = Vec::new();
    for (id, ..) in before.bike.buttons() {
        let mut given: Vec<Function> = layout.tap(&before.bike, id).into_iter().collect();
        if let Some(Hold::Does(function)) = layout.holds.get(&id) {
            given.push(*function);
        }
        for chord in layout.chords.iter().filter(|chord| chord.first == id) {
            given.push(chord.function);
        }
        for function in given {
            if has_use(before, function) && !has_use(after, function) {
                found.push((id, function));
            }
        }
    }
    found
}

/// Needed functions that nothing on the layout calls up, whatever hands reach,
/// most important first.
fn missing(plan: &Plan) -> Vec<Function> {
    missing_on(plan, plan.layout())
}

/// What the layouts that are not in hand lack after the change and did not before it.
fn elsewhere(before: &Plan, after: &Plan) -> Vec<(LayoutId, Vec<Function>)> {
    let others = before.layouts.iter().zip(&after.layouts);
    let others = others.filter(|(layout, _)| layout.id != before.current);
    let lacks = others.map(|(was, is)| {
        let had = missing_on(before, was);
        let mut lacks = missing_on(after, is);
        lacks.retain(|function| !had.contains(function));
        (is.id, lacks)
    });
    lacks.filter(|(_, lacks)| !lacks.is_empty()).collect()
}

fn missing_on(plan: &Plan, layout: &Layout) -> Vec<Function> {
    let coverage = Coverage::of(plan, layout);
    let mut missing = Vec::new();
    for function in plan.needed_functions() {
        let Some(row) = coverage.rows.iter().find(|row| row.function == *function) else {
            continue;
        };
        let on_no_button =
            |cell: &Cell| matches!(cell, Cell::No(WhyNot::NoButton | WhyNot::NotProgrammable));
        if row.cells.iter().all(on_no_button) {
            missing.push(row.function);
        }
    }
    missing
}

/// Puts a function on the best free button; of the front, a toggle where only
/// one is left.
fn put(plan: &Plan, function: Function) -> Option<(Plan, Edit)> {
    let situation = Situation::of_layout(plan, plan.layout());
    let free = free_buttons(&situation, function, Day::Usual);
    let lacks_both =
        function.is_front() && missing(plan).iter().filter(|f| f.is_front()).count() > 1;
    let given = if lacks_both && free.len() == 1 && plan.bike.rings() == 2 {
        Function::FrontToggle
    } else {
        function
    };
    let button = free
        .iter()
        .map(|suited| suited.button)
        .find(|id| plan.bike.can_do(*id, given))?;
    let edit = Edit::Layout(LayoutEdit::Tap(button, Some(given)));
    let next = plan.apply(&edit).ok()?;
    Some((next, edit))
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::function::Function::{
        FrontLarger, FrontSmaller, RearEasier, RearHarder, RungDown, RungUp,
    };
    use crate::testing::{button, plan};
    use crate::vocabulary::Vocabulary;

    fn change(plan: &Plan, kind: ShiftPlanKind) -> PlanChange {
        PlanChange::to(plan, kind).expect("the bike follows it")
    }

    fn does(plan: &Plan, place: &str) -> Option<Function> {
        plan.layout().tap(&plan.bike, button(plan, place))
    }

    #[test]
    fn for_a_ladder_rungs_go_where_the_rear_functions_were() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let to_ladder = change(&plan, ShiftPlanKind::Ladder);
        assert_eq!(to_ladder.missing, [RungDown, RungUp]);
        assert!(to_ladder.still_missing.is_empty());
        assert_eq!(
            to_ladder.words(&plan),
            "With its buttons: right outer paddle from “rear easier” to “rung down”, right inner paddle from “rear harder” to “rung up”. The plan alone: on no button: “rung down”, “rung up”."
        );
        let ladder = plan.apply(&to_ladder.matching).expect("it can be made");
        assert_eq!(does(&ladder, "right outer paddle"), Some(RungDown));
        assert_eq!(does(&ladder, "right inner paddle"), Some(RungUp));
    }

    #[test]
    fn back_from_a_ladder_the_front_functions_find_free_buttons() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let ladder = plan
            .apply(&Edit::Layout(LayoutEdit::Clear))
            .and_then(|plan| plan.apply(&Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder))))
            .and_then(|plan| {
                let outer = button(&plan, "right outer paddle");
                plan.apply(&Edit::Layout(LayoutEdit::Tap(outer, Some(RungDown))))
            })
            .and_then(|plan| {
                let inner = button(&plan, "right inner paddle");
                plan.apply(&Edit::Layout(LayoutEdit::Tap(inner, Some(RungUp))))
            })
            .expect("the edits are possible");
        let back = change(&ladder, ShiftPlanKind::Separate);
        let words = back.words(&ladder);
        assert!(
            words.contains("The plan alone: without use: “rung ")
                && words.contains("; on no button: "),
            "{words}"
        );
        assert_eq!(back.unmapped.len(), 2);
        assert_eq!(back.missing.len(), 4);
        assert!(back.still_missing.is_empty());
        let separate = ladder.apply(&back.matching).expect("it can be made");
        assert_eq!(does(&separate, "right outer paddle"), Some(RearEasier));
        assert_eq!(does(&separate, "right inner paddle"), Some(RearHarder));
        for function in [FrontSmaller, FrontLarger] {
            assert!(separate.layout().taps.values().any(|f| *f == function));
        }
    }

    #[test]
    fn what_it_does_to_other_layouts_is_told() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let copy = Edit::Plan(PlanEdit::DuplicateLayout("Copy".into()));
        let plan = plan.apply(&copy).expect("a layout can be copied");
        let first = &plan.layouts[0];
        assert_ne!(first.id, plan.current);
        let to_ladder = change(&plan, ShiftPlanKind::Ladder);
        assert_eq!(to_ladder.elsewhere, [(first.id, vec![RungDown, RungUp])]);
        assert!(!to_ladder.is_harmless());
        let told = format!(
            "The shift plan is one for all layouts: “{}” then has no button for “rung down” and “rung up”.",
            first.name
        );
        let words = to_ladder.words(&plan);
        assert!(words.ends_with(&told), "{words}");
        // It is as it says.
        let after = plan.apply(&to_ladder.matching).expect("it can be made");
        let select = |id| {
            after
                .apply(&Edit::Plan(PlanEdit::SelectLayout(id)))
                .expect("it is there")
        };
        assert_eq!(missing(&select(first.id)), [RungDown, RungUp]);
        assert!(missing(&after).is_empty());
    }

    #[test]
    fn what_the_bike_cannot_follow_is_refused() {
        let plan = template(TemplateId::Gravel).plan("Test");
        assert!(PlanChange::to(&plan, ShiftPlanKind::Ladder).is_err());
    }

    proptest! {
        #[test]
        fn the_matching_change_leaves_nothing_without_use(plan in plan()) {
            for kind in ShiftPlanKind::ALL {
                let Ok(change) = PlanChange::to(&plan, *kind) else { continue };
                let matched = plan.apply(&change.matching).expect("it can be made");
                prop_assert_eq!(matched.shift_plan, *kind);
                prop_assert!(
                    change.still_missing.len() <= change.missing.len(),
                    "{kind}: {:?}, then {:?}, after {:?}",
                    change.missing,
                    change.still_missing,
                    change.replaced
                );
                let layout = matched.layout();
                for function in layout.taps.values() {
                    prop_assert!(kind.has_use_for(*function, &matched.bike));
                }
                for chord in &layout.chords {
                    prop_assert!(kind.has_use_for(chord.function, &matched.bike));
                }
            }
        }
    }
}
