//! A hand that works hurts while riding, or next morning.

use super::{Family, Origin, Rule, braking};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::{Ability, Contact, Day, Difficulty, Side, YesNo};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "riding-hurts",
    family: Family::Reach,
    title: "A hand that works hurts",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "No hand that works on the bar hurts more than a little while riding, or next morning. Where the rider says which part hurts, the finding names what it presses.",
    why: "A hand that hurts is spared, often without a thought, and then a press or a pull comes late. What hurts next morning was too much the day before, though nothing showed on the ride. Where only one hand works there is no other to take over.",
    remedy: "Ask what hurts and after what. Give the part less to do: another contact, a shorter press, the other hand, a rest for the palm, shorter rides. Let a clinician look before the hand is loaded more.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let sides = Side::ALL.iter();
    sides.filter_map(|side| look(situation, *side)).collect()
}

fn look(situation: &Situation<'_>, side: Side) -> Option<Finding> {
    let hand = situation.hand(side);
    let step = hand.step(Ability::Comfort, Day::Usual)?;
    if !hand.works() || step < Difficulty::Moderate {
        return None;
    }
    let how = match step {
        Difficulty::Complete => "hurts too much to ride".to_owned(),
        step => format!(
            "hurts {} while riding, or next morning",
            Ability::Comfort.brief(step)
        ),
    };
    let alone = if situation.hand(side.other()).works() {
        ""
    } else {
        " It is the only hand that works: all shifting, braking and steering rest on it."
    };
    Some(Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Hand(side)],
        message: format!("The {side} hand {how}.{alone}{}", of_parts(situation, side)),
        fixes: Vec::new(),
    })
}

/// The parts that hurt, and what the layout has them press.
fn of_parts(situation: &Situation<'_>, side: Side) -> String {
    let hurts = situation.hand(side).hurts.iter();
    let parts = hurts.filter(|(_, answer)| answer.value == Some(YesNo::Yes));
    parts
        .map(|(part, _)| {
            let presses = pressed_by(situation, side, part);
            match presses.is_empty() {
                true => format!(" Its {part} hurts."),
                false => {
                    let named = presses.iter().map(|function| format!("“{function}”"));
                    format!(" Its {part} hurts, and presses {}.", braking::listed(named))
                }
            }
        })
        .collect()
}

fn pressed_by(situation: &Situation<'_>, side: Side, part: Contact) -> Vec<Function> {
    let mut functions: Vec<Function> = situation
        .coverage
        .usual_ways()
        .filter(|(_, _, way)| (way.hand, way.contact) == (side, part))
        .map(|(function, ..)| function)
        .collect();
    functions.sort();
    functions.dedup();
    functions
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::FlatSingle;
    use crate::edit::RiderEdit;
    use crate::finding::{Acceptable, Severity};
    use crate::rider::{Ability, Answer, Contact, Difficulty, HandPlace, Side, YesNo};
    use crate::rules::testing::{Setup, bike, fired};

    fn hurts(step: Difficulty) -> Setup {
        bike(FlatSingle).ability(Side::Right, Ability::Comfort, step)
    }

    #[test]
    fn fires_from_clearly_on() {
        for step in [Difficulty::None, Difficulty::Mild] {
            assert!(fired(&hurts(step).plan(), &RULE).is_empty(), "{step}");
        }
        let found = fired(&hurts(Difficulty::Moderate).plan(), &RULE);
        assert_eq!(
            found[0].message,
            "The right hand hurts clearly while riding, or next morning."
        );
        assert_eq!(
            (found[0].severity, found[0].acceptable),
            (Severity::Check, Acceptable::ByClinician)
        );
    }

    #[test]
    fn names_the_only_hand_and_what_the_part_presses() {
        let thumb = RiderEdit::Hurts(Side::Right, Contact::Thumb, Answer::of(YesNo::Yes));
        let plan = hurts(Difficulty::Complete)
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .rider_edit(thumb)
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The right hand hurts too much to ride. It is the only hand that works: all shifting, braking and steering rest on it. Its thumb hurts, and presses “rear harder” and “rear easier”."
        );
    }

    #[test]
    fn a_hand_that_does_no_work_and_one_not_asked_are_left_alone() {
        let plan = hurts(Difficulty::Severe)
            .rider_edit(RiderEdit::Place(Side::Right, Answer::of(HandPlace::Rests)))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        let unasked = RiderEdit::Ability(Side::Right, Ability::Comfort, Answer::NOT_ASKED);
        let plan = bike(FlatSingle).rider_edit(unasked).plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
