//! A live button lies under a hand that may press it unawares.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::{ButtonId, ControlKind};
use crate::edit::{BikeEdit, Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::function::Function;
use crate::rider::{Ability, Day, Difficulty, Hand, Side};
use crate::situation::Situation;
use crate::suggest_button::free_buttons;
use crate::text::list;

pub(super) static RULE: Rule = Rule {
    id: "live-button-under-resting-hand",
    family: Family::Rest,
    title: "A live button lies under a hand that may press it unawares",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByClinician,
    what: "No button that does something lies on the side of a hand for which letting go or keeping steady takes great effort, or whose arm moves by itself, while that hand is on the bar.",
    why: "A hand that tightens or moves by itself presses what lies under it: the gear changes at the wrong moment, or a hold runs on.",
    remedy: "Leave the button blank. Where its function is fixed, unplug it or refit it on the other side.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let mut findings = Vec::new();
    for (id, control, _) in bike.buttons() {
        let Some(side) = control.side.hand() else {
            continue;
        };
        if !situation.hand(side).may_press_unawares() || !situation.layout.is_live(bike, id) {
            continue;
        }
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByClinician,
            places: vec![Place::Button(id), Place::Hand(side)],
            message: format!(
                "The {} is live under the {side} hand, which may press it unawares{}.",
                control.place_of(id.part),
                because(situation.hand(side))
            ),
            fixes: situation.propose(|| proposals(situation, id, side)),
        });
    }
    findings
}

/// What makes the hand press, where it was said; else it rests, and nobody asked.
fn because(hand: &Hand) -> String {
    let takes = |ability, what: &str| {
        let step = hand.step(ability, Day::Usual)?;
        (step >= Difficulty::Severe).then(|| format!("{what} {step}"))
    };
    let moves = hand.moves_by_itself.is_yes();
    let causes = [
        takes(Ability::LetsGo, "letting go"),
        takes(Ability::Steady, "keeping steady"),
        moves.then(|| "its arm tightens or moves by itself".to_owned()),
    ];
    let causes: Vec<String> = causes.into_iter().flatten().collect();
    match causes.is_empty() {
        true => String::new(),
        false => format!(": {}", list(&causes, "and")),
    }
}

/// A sprint button is unplugged or refitted, if need be once shifting no longer
/// rests on it. Any other goes blank, or its
/// function goes to the other side with it.
fn proposals(situation: &Situation<'_>, id: ButtonId, side: Side) -> Vec<Fix> {
    let silence = fixes::silence(situation, id);
    let bike = &situation.plan.bike;
    if let Some(control) = bike.control(id.control)
        && control.kind == ControlKind::SprintButton
    {
        let refit = Fix {
            label: format!("Refit the {} on the {}", control.place(), side.other()),
            edit: Edit::Bike(BikeEdit::Mirror(control.id)),
        };
        let mut proposals = vec![silence.clone(), refit];
        let all_shifting = fixes::beside_all_shifting(situation, Vec::new());
        proposals.extend(all_shifting.into_iter().map(|all| both(all, &silence)));
        return proposals;
    }
    let mut single = vec![silence.clone()];
    let function = situation.layout.tap(bike, id);
    single.extend(function.and_then(|function| elsewhere(situation, silence, function)));
    fixes::beside_all_shifting(situation, single)
}

/// One fix after the other as one act.
fn both(first: Fix, then: &Fix) -> Fix {
    let label = format!("{}; {}", first.label, then.label.to_ascii_lowercase());
    Fix {
        edit: Edit::Several {
            label: label.to_ascii_lowercase(),
            edits: vec![first.edit, then.edit.clone()],
        },
        label,
    }
}

/// Makes the button do nothing and puts its function on the best free one.
fn elsewhere(situation: &Situation<'_>, silence: Fix, function: Function) -> Option<Fix> {
    let free = free_buttons(situation, function, Day::Usual);
    let to = free.first()?.button;
    let place = situation.plan.bike.place_of(to);
    Some(Fix {
        label: format!("Move “{function}” to the {place}"),
        edit: Edit::Several {
            label: format!("move {function} to the {place}"),
            edits: vec![
                silence.edit,
                Edit::Layout(LayoutEdit::Tap(to, Some(function))),
            ],
        },
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::RoadPods;
    use crate::edit::{Edit, LayoutEdit, RiderEdit};
    use crate::function::Function::Lights;
    use crate::rider::{Ability, Answer, Difficulty, HandPlace, Side, YesNo};
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, fixes_of, gravel};

    #[test]
    fn fires_for_each_live_button_and_moves_shifting_off_it() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
        assert_eq!(fixes_of(&plan, &RULE)[0], "Put all shifting on the left");
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn what_nobody_needs_there_goes_blank() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .edit(&Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)))
            .tap("right hood button", Some(Lights))
            .plan();
        assert_eq!(
            fixes_of(&plan, &RULE),
            ["Leave the right hood button blank"]
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn a_sprint_button_is_unplugged_or_refitted() {
        let rests = bike(RoadPods)
            .blank()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        // Shifting still rests on it.
        assert_eq!(
            fixes_of(&rests, &RULE)[0],
            "Put all shifting on the left; unplug the right sprint button"
        );
        check_fixes(&rests, &RULE);
        let moved = LayoutEdit::AllShiftingOn(Side::Left);
        let moved = rests.apply(&Edit::Layout(moved)).expect("buttons are free");
        assert_eq!(
            fixes_of(&moved, &RULE)[..2],
            [
                "Unplug the right sprint button",
                "Refit the right sprint button on the left"
            ]
        );
        check_fixes(&moved, &RULE);
    }

    #[test]
    fn the_function_of_a_hand_that_works_goes_to_the_other_side() {
        let plan = gravel()
            .edit(&Edit::Rider(RiderEdit::MovesByItself(
                Side::Right,
                Answer::of(YesNo::Yes),
            )))
            .plan();
        assert_eq!(
            fixes_of(&plan, &RULE)[0],
            "Move “rear easier” to the left outer paddle"
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn says_what_makes_a_working_hand_press() {
        let plan = gravel()
            .ability(Side::Right, Ability::LetsGo, Difficulty::Severe)
            .edit(&Edit::Rider(RiderEdit::MovesByItself(
                Side::Right,
                Answer::of(YesNo::Yes),
            )))
            .plan();
        let message = &fired(&plan, &RULE)[0].message;
        assert!(
            message.ends_with(
                "unawares: letting go takes great effort and its arm tightens or moves by itself."
            ),
            "{message}"
        );
    }

    #[test]
    fn is_silent_for_a_hand_off_the_bar() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
