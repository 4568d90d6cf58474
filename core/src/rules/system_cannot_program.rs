//! The layout asks of the shift system what it cannot program.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::{ButtonId, Freedom, HoldRun};
use crate::edit::{Edit, LayoutEdit, PlanEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::{Chord, Hold};
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "system-cannot-program",
    family: Family::Function,
    title: "The shift system cannot program it",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Every function, hold, pair of buttons together and the shift plan itself are among what the system profile says can be programmed.",
    why: "A layout that cannot be programmed cannot be built, however well it suits the hands.",
    remedy: "Change to what the system offers, or correct the system profile from the maker's manual.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let plan = situation.plan;
    let mut findings = Vec::new();
    for (id, control, button) in plan.bike.buttons() {
        let remappable = matches!(button.freedom, Freedom::Free | Freedom::Limited(_));
        if control.connected && remappable {
            findings.extend(of_tap(situation, id));
            findings.extend(of_hold(situation, id));
        }
    }
    let chords = situation.layout.chords.iter();
    let connected = chords.filter(|chord| chord.is_connected(&plan.bike));
    findings.extend(connected.filter_map(|chord| of_chord(situation, chord)));
    if !plan.bike.system.shift_plans.contains(&plan.shift_plan) {
        findings.push(of_shift_plan(situation));
    }
    findings
}

fn of_tap(situation: &Situation<'_>, id: ButtonId) -> Option<Finding> {
    let bike = &situation.plan.bike;
    let function = *situation.layout.taps.get(&id)?;
    if bike.system.functions.contains(&function) {
        return None;
    }
    let place = bike.place_of(id);
    Some(finding(
        vec![Place::Button(id), Place::Function(function)],
        format!("The shift system cannot program “{function}”, which the {place} is given."),
        vec![Fix {
            label: format!("Leave the {place} without it"),
            edit: Edit::Layout(LayoutEdit::Tap(id, None)),
        }],
    ))
}

fn of_hold(situation: &Situation<'_>, id: ButtonId) -> Option<Finding> {
    let bike = &situation.plan.bike;
    let hold = situation.layout.holds.get(&id)?;
    let place = bike.place_of(id);
    let mut proposals = Vec::new();
    let what = match (hold, bike.system.holds) {
        (_, None) => "holds".to_string(),
        (Hold::Repeats(run), Some(longest)) if *run > longest => {
            proposals.push(shorten(id, longest));
            format!("a hold of more than {longest}")
        }
        (Hold::Does(function), _) if !bike.system.functions.contains(function) => {
            format!("“{function}”")
        }
        _ => return None,
    };
    proposals.push(fixes::no_hold(situation, id));
    Some(finding(
        vec![Place::Button(id)],
        format!("The shift system cannot program {what}, which the {place} is given as a hold."),
        proposals,
    ))
}

fn shorten(id: ButtonId, longest: HoldRun) -> Fix {
    Fix {
        label: format!("Shorten the hold: {longest}"),
        edit: Edit::Layout(LayoutEdit::Hold(id, Some(Hold::Repeats(longest)))),
    }
}

fn of_chord(situation: &Situation<'_>, chord: &Chord) -> Option<Finding> {
    let bike = &situation.plan.bike;
    let what = if !bike.system.chords {
        "two buttons together".to_string()
    } else if !bike.system.functions.contains(&chord.function) {
        format!("“{}”", chord.function)
    } else {
        return None;
    };
    let (first, second) = (bike.place_of(chord.first), bike.place_of(chord.second));
    Some(finding(
        vec![
            Place::Button(chord.first),
            Place::Button(chord.second),
            Place::Function(chord.function),
        ],
        format!(
            "The shift system cannot program {what}, which the {first} and the {second} are given together."
        ),
        vec![Fix {
            label: "Take the two together away".into(),
            edit: Edit::Layout(LayoutEdit::RemoveChord(*chord)),
        }],
    ))
}

fn of_shift_plan(situation: &Situation<'_>) -> Finding {
    let plan = situation.plan;
    let system = &plan.bike.system;
    let others = ShiftPlanKind::ALL
        .iter()
        .filter(|kind| system.shift_plans.contains(kind));
    let needed = plan.needed_functions().iter();
    finding(
        needed.map(|f| Place::Function(*f)).collect(),
        format!(
            "The shift system does not offer the {} plan.",
            plan.shift_plan
        ),
        others
            .map(|kind| Fix {
                label: format!("Change to the {kind} plan"),
                edit: Edit::Plan(PlanEdit::ShiftPlanAndButtons(*kind)),
            })
            .collect(),
    )
}

fn finding(places: Vec<Place>, message: String, fixes: Vec<Fix>) -> Finding {
    Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::ByShop,
        places,
        message,
        fixes,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::HoldRun;
    use crate::function::Function::Lights;
    use crate::layout::Hold;
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, fixes_of};
    use crate::shift_plan::ShiftPlanKind;

    #[test]
    fn is_silent_for_a_system_that_can_do_it_all() {
        let plan = drop_bar()
            .hold("right outer paddle", Hold::Repeats(HoldRun::ToEnd))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }

    #[test]
    fn fires_for_a_function_it_does_not_know() {
        let plan = drop_bar()
            .tap("left hood button", Some(Lights))
            .system(|system| {
                system.functions.remove(&Lights);
            })
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The shift system cannot program “lights”, which the left hood button is given."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_hold_longer_than_its_limit_and_offers_the_limit() {
        let plan = drop_bar()
            .hold("right outer paddle", Hold::Repeats(HoldRun::Cogs(5)))
            .system(|system| system.holds = Some(HoldRun::Cogs(3)))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The shift system cannot program a hold of more than 3 cogs, which the right outer paddle is given as a hold."
        );
        assert_eq!(fixes_of(&plan, &RULE)[0], "Shorten the hold: 3 cogs");
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_holds_and_chords_where_there_are_none() {
        let plan = bike(TemplateId::RoadOnePaddle)
            .hold("right long paddle", Hold::Does(Lights))
            .system(|system| {
                system.holds = None;
                system.chords = false;
            })
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
        // Without chords the front functions are missing already, so taking the
        // chord away adds nothing.
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_shift_plan_it_does_not_offer() {
        let plan = drop_bar()
            .system(|system| {
                system.shift_plans = [ShiftPlanKind::Ladder].into();
            })
            .plan();
        assert_eq!(fixes_of(&plan, &RULE), ["Change to the ladder plan"]);
        check_fixes(&plan, &RULE);
    }
}
