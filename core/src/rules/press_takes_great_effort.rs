//! A needed press is made by a contact for which it takes great effort.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::Press;
use crate::coverage::Way;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::{Ability, Day, Difficulty, Standing};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "press-takes-great-effort",
    family: Family::Reach,
    title: "A needed press takes great effort",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "The easiest way to a function that the shift plan needs is not with a contact at step 3, and not by swinging a long paddle at step 3.",
    why: "Shifts come by the hundred in a ride. What takes great effort once is put off, goes wrong or hurts later, and the rider stays in the wrong gear.",
    remedy: "Move the function to a button that another contact presses more easily, or let rider or clinician decide after a trial.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings: Vec<Finding> = Vec::new();
    for row in situation.coverage.rows.iter().filter(|row| row.needed) {
        for position in situation.positions() {
            let cell = situation.coverage.cell(row.function, *position, Day::Usual);
            let Some(way) = cell.and_then(|cell| cell.way()) else {
                continue;
            };
            let Some(effort) = great_effort(situation, way) else {
                continue;
            };
            let mut places = vec![Place::Function(row.function)];
            places.extend(way.via.buttons().into_iter().map(Place::Button));
            places.push(Place::Hand(way.hand));
            // The same press from several positions is one problem.
            if findings.iter().any(|finding| finding.places == places) {
                continue;
            }
            findings.push(Finding {
                rule: RULE.id,
                severity: Severity::Check,
                acceptable: Acceptable::ByClinician,
                places,
                message: format!("“{}” {effort}.", row.function),
                fixes: situation.propose(|| {
                    fixes::move_from(situation, way, row.function, |suited| {
                        !suited.worst.0 && !suited.missed.contains(position)
                    })
                }),
            });
        }
    }
    findings
}

/// What takes great effort about a press, in words; `None` where nothing does.
/// Keeping pressed and moving the hand are other rules' business.
fn great_effort(situation: &Situation<'_>, way: &Way) -> Option<String> {
    let hand = situation.hand(way.hand);
    let severe = |step: Option<Difficulty>| {
        step.is_some_and(|step| step.standing() == Standing::OnlyAfterCheck)
    };
    if severe(hand.contact_step(way.contact, Day::Usual)) {
        return Some(format!(
            "is pressed with the {} {}, for which that takes great effort",
            way.hand, way.contact
        ));
    }
    let swings = way.via.buttons().into_iter().any(|id| {
        let button = situation.plan.bike.button(id);
        button.is_some_and(|(_, button)| button.press == Press::Sweep)
    });
    let swing = hand.step(Ability::SwingsPaddle, Day::Usual);
    (swings && severe(swing)).then(|| {
        format!(
            "is on a long paddle, and swinging it takes the {} hand great effort",
            way.hand
        )
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::{FlatSingle, RoadOnePaddle};
    use crate::function::Function::{FrontToggle, RearEasier};
    use crate::rider::{Ability, Contact, Difficulty, Side};
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, fixes_of, gravel};

    #[test]
    fn fires_for_a_thumb_at_step_3_and_moves_the_function() {
        let plan = gravel()
            .contact(Side::Right, Contact::Thumb, Difficulty::Severe)
            .tap("right outer paddle", None)
            .tap("right hood button", Some(RearEasier))
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "“rear easier” is pressed with the right thumb, for which that takes great effort."
        );
        assert_eq!(
            fixes_of(&plan, &RULE)[0],
            "Move it from the right hood button to the right outer paddle"
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_long_paddle_at_step_3() {
        let plan = bike(RoadOnePaddle)
            .ability(Side::Left, Ability::SwingsPaddle, Difficulty::Severe)
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(
            found[0].message,
            "“rear easier” is on a long paddle, and swinging it takes the left hand great effort."
        );
        // The front goes by both paddles together.
        assert_eq!(found.len(), 3);
    }

    #[test]
    fn is_silent_while_an_abler_contact_presses_the_same_button() {
        let plan = drop_bar()
            .contact(Side::Right, Contact::Index, Difficulty::Severe)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        let plan = bike(FlatSingle)
            .contact(Side::Right, Contact::Thumb, Difficulty::Moderate)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }

    #[test]
    fn is_silent_for_what_is_not_needed() {
        let plan = gravel()
            .contact(Side::Left, Contact::Thumb, Difficulty::Severe)
            .tap("left hood button", Some(FrontToggle))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
