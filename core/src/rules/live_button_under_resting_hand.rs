//! A live button lies under a hand that may press it unawares.

use super::{Family, Origin, Rule};
use crate::edit::{BikeEdit, Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::{Ability, Difficulty, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "live-button-under-resting-hand",
    family: Family::Rest,
    title: "A live button lies under a resting hand",
    severity: Severity::MustFix,
    what: "No button that does something lies on the side of a hand for which letting go or keeping steady takes great effort, or whose arm moves by itself, while that hand is on the bar.",
    why: "A hand that tightens or moves by itself presses what lies under it: the gear changes at the wrong moment, or a hold runs on.",
    remedy: "Leave the button blank. Where its function is fixed, unplug it or refit it on the other side.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    let bike = &situation.plan.bike;
    for (id, control, button) in bike.buttons() {
        let Some(side) = control.side.hand() else {
            continue;
        };
        if !may_press_unawares(situation, side) || !situation.layout.is_live(bike, id) {
            continue;
        }
        let fix = if button.is_remappable() {
            Fix {
                label: format!("Leave the {} blank", control.place_of(id.part)),
                edit: Edit::Layout(LayoutEdit::ClearButton(id)),
            }
        } else {
            Fix {
                label: format!("Unplug the {}", control.place()),
                edit: Edit::Bike(BikeEdit::Connect(control.id, false)),
            }
        };
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Button(id), Place::Hand(side)],
            message: format!(
                "The {} is live under the {side} hand, which may press it unawares.",
                control.place_of(id.part)
            ),
            fixes: vec![fix],
        });
    }
    findings
}

fn may_press_unawares(situation: &Situation<'_>, side: Side) -> bool {
    let hand = situation.hand(side);
    hand.on_bar()
        && (hand.at_least(Ability::LetsGo, Difficulty::Severe)
            || hand.at_least(Ability::Steady, Difficulty::Severe)
            || hand.moves_by_itself.is_yes())
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::rider::{HandPlace, Side};
    use crate::rules::testing::{check_fixes, drop_bar, fired};

    #[test]
    fn fires_for_each_live_button_and_its_fixes_work() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        assert!(!fired(&plan, &RULE).is_empty());
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_a_hand_off_the_bar() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
