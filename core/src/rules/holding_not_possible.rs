//! A hold is asked of a hand that does not keep a button pressed.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::ButtonId;
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::Hold;
use crate::rider::{Ability, Day, Difficulty};
use crate::situation::Situation;
use crate::suggest_button::free_buttons;

pub(super) static RULE: Rule = Rule {
    id: "holding-not-possible",
    family: Family::Hold,
    title: "A hold where holding is not possible",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByClinician,
    what: "Any hold is on a button whose hand keeps a button pressed for three seconds. At step 3: a check; at step 4: it must be so. A hold counts whatever it does, because a press that ends early does what a tap does instead.",
    why: "Where the hand slips off early, the tap acts instead of the hold, and the rider gets a shift that was not asked for.",
    remedy: "Take the hold off, or give what it does a button of its own.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let mut findings = Vec::new();
    for (id, hold) in &situation.layout.holds {
        if !situation.layout.is_live(bike, *id) {
            continue;
        }
        for side in situation.hands_on(*id) {
            let (severity, effort) =
                match situation.hand(side).step(Ability::KeepsPressed, Day::Usual) {
                    Some(Difficulty::Severe) => (Severity::Check, "takes it great effort"),
                    Some(Difficulty::Complete) => (Severity::MustFix, "is not something it does"),
                    _ => continue,
                };
            findings.push(Finding {
                rule: RULE.id,
                severity,
                acceptable: Acceptable::ByClinician,
                places: vec![Place::Button(*id), Place::Hand(side)],
                message: format!(
                    "There is a hold on the {} for the {side} hand; keeping a button pressed {effort}.",
                    bike.place_of(*id)
                ),
                fixes: situation.propose(|| proposals(situation, *id, *hold)),
            });
        }
    }
    findings
}

/// What the hold does gets a tap of its own where a button is free; else the
/// hold goes.
fn proposals(situation: &Situation<'_>, id: ButtonId, hold: Hold) -> Vec<Fix> {
    let no_hold = fixes::no_hold(situation, id);
    let mut proposals = Vec::new();
    if let Hold::Does(function) = hold {
        let free = free_buttons(situation, function, Day::Usual);
        proposals.extend(free.first().map(|suited| {
            let label = format!(
                "Make “{function}” a tap on the {}",
                situation.plan.bike.place_of(suited.button)
            );
            Fix {
                edit: Edit::Several {
                    label: format!("{function} by a tap"),
                    edits: vec![
                        no_hold.edit.clone(),
                        Edit::Layout(LayoutEdit::Tap(suited.button, Some(function))),
                    ],
                },
                label,
            }
        }));
    }
    proposals.push(no_hold);
    proposals
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HoldRun;
    use crate::finding::Severity;
    use crate::function::Function::Lights;
    use crate::layout::Hold;
    use crate::rider::{Ability, Difficulty, HandPlace, Side};
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of};

    #[test]
    fn is_a_check_at_step_3_and_must_fix_at_step_4() {
        let with = |step| {
            drop_bar()
                .hold("right outer paddle", Hold::Repeats(HoldRun::Cogs(2)))
                .ability(Side::Right, Ability::KeepsPressed, step)
                .plan()
        };
        assert!(fired(&with(Difficulty::Moderate), &RULE).is_empty());
        let severity = |step| fired(&with(step), &RULE)[0].severity;
        assert_eq!(severity(Difficulty::Severe), Severity::Check);
        assert_eq!(severity(Difficulty::Complete), Severity::MustFix);
        assert_eq!(
            fired(&with(Difficulty::Complete), &RULE)[0].message,
            "There is a hold on the right outer paddle for the right hand; keeping a button pressed is not something it does."
        );
        check_fixes(&with(Difficulty::Complete), &RULE);
    }

    #[test]
    fn what_the_hold_did_gets_a_button_of_its_own() {
        let plan = drop_bar()
            .hold("right outer paddle", Hold::Does(Lights))
            .ability(Side::Right, Ability::KeepsPressed, Difficulty::Severe)
            .plan();
        assert_eq!(
            fixes_of(&plan, &RULE),
            [
                "Make “lights” a tap on the left hood button",
                "No hold on the right outer paddle"
            ]
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn asks_the_hand_that_works_the_button() {
        let plan = drop_bar()
            .hold("right outer paddle", Hold::Does(Lights))
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
