//! Fingers that move all together meet two opposite buttons.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::ButtonId;
use crate::coverage::Via;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::{Contact, Pressing, Side};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary as _;

pub(super) static RULE: Rule = Rule {
    id: "fingers-press-together",
    family: Family::Clash,
    title: "Fingers that move together meet opposite buttons",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Where the fingers of a hand move all together, no two buttons of one control that do opposite things are both pressed with fingers. A thumb counts as apart.",
    why: "One press meets both buttons: which of the two the system obeys is chance.",
    remedy: "Put one of the two where the thumb or the other hand presses it, or leave one of them blank.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for function in Function::ALL {
        let Some(opposite) = function.opposite().filter(|other| function < other) else {
            continue;
        };
        let met = situation.positions().iter().find_map(|position| {
            let by_finger = |function| {
                let way = situation.reached(function, *position)?;
                let Via::Tap(button) = way.via else {
                    return None;
                };
                is_finger(way.contact).then_some((button, way.hand))
            };
            let ((a, hand), (b, other)) = (by_finger(*function)?, by_finger(opposite)?);
            let together = situation.hand(hand).pressing.value == Some(Pressing::AllTogether);
            (hand == other && a.control == b.control && together).then_some((a, b, hand))
        });
        findings.extend(met.map(|(a, b, hand)| finding(situation, a, b, hand)));
    }
    findings
}

fn is_finger(contact: Contact) -> bool {
    contact.is_digit() && contact != Contact::Thumb
}

fn finding(situation: &Situation<'_>, a: ButtonId, b: ButtonId, hand: Side) -> Finding {
    let bike = &situation.plan.bike;
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Button(a), Place::Button(b), Place::Hand(hand)],
        message: format!(
            "The fingers of the {hand} hand move all together: a press of the {} may meet the {}, too, which does the opposite.",
            bike.place_of(a),
            bike.place_of(b)
        ),
        fixes: situation.propose(|| fixes::apart(situation, a, b)),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::rider::{Answer, Pressing, Side};
    use crate::rules::testing::{Setup, check_fixes, drop_bar, fired, gravel};

    fn together(setup: Setup, pressing: Pressing) -> Setup {
        setup.rider_edit(RiderEdit::Pressing(Side::Right, Answer::of(pressing)))
    }

    #[test]
    fn fires_for_two_paddles_that_do_opposite_things() {
        let plan = together(gravel(), Pressing::AllTogether).plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert!(
            found[0].message.starts_with(
                "The fingers of the right hand move all together: a press of the right "
            ),
            "{}",
            found[0].message
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_where_one_presses_alone_or_only_one_paddle_does_anything() {
        let plan = together(drop_bar(), Pressing::OneAlone).plan();
        assert!(fired(&plan, &RULE).is_empty());
        let plan = together(gravel(), Pressing::AllTogether).blank().plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
