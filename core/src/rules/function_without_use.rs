//! A button does something that means nothing on this bike.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::{ButtonId, Freedom};
use crate::edit::{Edit, LayoutEdit, PlanEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::function::Function;
use crate::layout::Hold;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;

/// A check, not must fix: a press that does nothing confuses, but it moves
/// nothing either (our judgement).
pub(super) static RULE: Rule = Rule {
    id: "function-without-use",
    family: Family::Function,
    title: "A button does something the bike has no use for",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Whatever a tap, a hold or two buttons together do has a meaning under the shift plan and on this bike.",
    why: "The button looks taken, does nothing when it is pressed, and the rider takes the system for broken.",
    remedy: "Give the button what takes its place under this shift plan, or leave it blank.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let mut findings = Vec::new();
    for (id, control, button) in bike.buttons() {
        // A copying button is spoken of with its original, as long as that is
        // plugged in.
        let is_copy = matches!(button.freedom, Freedom::Copies(original)
            if bike.control(original.control).is_some_and(|c| c.connected));
        if control.connected && !is_copy {
            findings.extend(of_tap(situation, id));
            findings.extend(of_hold(situation, id));
        }
    }
    for chord in situation
        .layout
        .chords
        .iter()
        .filter(|c| c.is_connected(bike))
    {
        if has_no_use(situation, chord.function) {
            let (first, second) = (bike.place_of(chord.first), bike.place_of(chord.second));
            findings.push(finding(
                situation,
                vec![Place::Button(chord.first), Place::Button(chord.second)],
                format!("The {first} and the {second} together do"),
                chord.function,
                vec![Fix {
                    label: "Take the two together away".into(),
                    edit: Edit::Layout(LayoutEdit::RemoveChord(*chord)),
                }],
            ));
        }
    }
    findings
}

fn has_no_use(situation: &Situation<'_>, function: Function) -> bool {
    let plan = situation.plan;
    !plan.shift_plan.has_use_for(function, &plan.bike)
}

fn of_tap(situation: &Situation<'_>, id: ButtonId) -> Option<Finding> {
    let plan = situation.plan;
    let function = situation.layout.tap(&plan.bike, id)?;
    if !has_no_use(situation, function) {
        return None;
    }
    let mut proposals = Vec::new();
    let instead = plan.shift_plan.in_place_of(function);
    if let Some(instead) = instead.filter(|f| plan.bike.can_do(id, *f)) {
        proposals.push(Fix {
            label: format!("Make it “{instead}”"),
            edit: Edit::Layout(LayoutEdit::Tap(id, Some(instead))),
        });
    }
    if function.is_rung()
        && plan
            .bike
            .system
            .shift_plans
            .contains(&ShiftPlanKind::Ladder)
    {
        proposals.push(Fix {
            label: "Change to the ladder".into(),
            edit: Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)),
        });
    }
    proposals.push(fixes::silence(situation, id));
    let place = plan.bike.place_of(id);
    Some(finding(
        situation,
        vec![Place::Button(id)],
        format!("The {place} does"),
        function,
        proposals,
    ))
}

fn of_hold(situation: &Situation<'_>, id: ButtonId) -> Option<Finding> {
    let Hold::Does(function) = *situation.layout.holds.get(&id)? else {
        return None;
    };
    // The same function by tap and hold is one problem.
    let told = situation.layout.tap(&situation.plan.bike, id) == Some(function);
    if told || !has_no_use(situation, function) {
        return None;
    }
    let place = situation.plan.bike.place_of(id);
    Some(finding(
        situation,
        vec![Place::Button(id)],
        format!("Keeping the {place} pressed does"),
        function,
        vec![fixes::no_hold(situation, id)],
    ))
}

fn finding(
    situation: &Situation<'_>,
    mut places: Vec<Place>,
    does: String,
    function: Function,
    fixes: Vec<Fix>,
) -> Finding {
    places.push(Place::Function(function));
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places,
        message: format!(
            "{does} “{function}”, which means nothing on this bike under the {} plan.",
            situation.plan.shift_plan
        ),
        fixes,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::function::Function::{FrontLarger, FrontToggle, RungDown};
    use crate::layout::Hold;
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of, gravel};

    #[test]
    fn fires_for_a_rung_without_a_ladder() {
        let plan = drop_bar().tap("right outer paddle", Some(RungDown)).plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The right outer paddle does “rung down”, which means nothing on this bike under the separate plan."
        );
        assert_eq!(fixes_of(&plan, &RULE)[0], "Make it “rear easier”");
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_front_functions_on_one_ring_by_tap_hold_and_chord() {
        let plan = gravel()
            .tap("left outer paddle", Some(FrontLarger))
            .hold("right hood button", Hold::Does(FrontToggle))
            .chord("right outer paddle", "right inner paddle", FrontToggle)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 3);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_what_has_a_use() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        assert!(fired(&gravel().plan(), &RULE).is_empty());
    }
}
