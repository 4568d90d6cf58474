//! Bell, assist or other thumb work is reached only by letting go.

use super::{Family, Origin, Rule};
use crate::cockpit::{BarSide, ThumbWork};
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::{Contact, Day, Difficulty, Side};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "thumb-work-only-by-letting-go",
    family: Family::Reach,
    title: "Bell or other thumb work is reached only by letting go",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Bell, assist level, dropper and indicators sit on the side of a hand that works and whose thumb or index finger presses. In the middle they want a hand that may let go while the other steers. How far along the bar they sit is for the fitter to see.",
    why: "The bell is wanted just when the bar must be held. A hand that crosses over for it steers nothing.",
    remedy: "Move it to the other side, beside the hand that works.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let work = situation.plan.bike.thumb_work.iter();
    work.filter(|work| !is_reached(situation, work))
        .map(|work| {
            let side = match work.side {
                BarSide::Centre => "in the middle".into(),
                side => format!("on the {side}"),
            };
            Finding {
                rule: RULE.id,
                severity: Severity::Check,
                acceptable: Acceptable::ByClinician,
                places: vec![Place::ThumbWork(work.kind)],
                message: format!(
                    "The {} {side} is reached only when a hand lets go for it.",
                    work.kind
                ),
                fixes: moves(situation, work),
            }
        })
        .collect()
}

fn is_reached(situation: &Situation<'_>, work: &ThumbWork) -> bool {
    match work.side.hand() {
        Some(side) => presses(situation, side),
        None => Side::ALL
            .iter()
            .any(|side| presses(situation, *side) && situation.may_let_go(*side)),
    }
}

fn presses(situation: &Situation<'_>, side: Side) -> bool {
    let hand = situation.hand(side);
    let usable = |contact| hand.contact_step(contact, Day::Usual) != Some(Difficulty::Complete);
    hand.works() && (usable(Contact::Thumb) || usable(Contact::Index))
}

fn moves(situation: &Situation<'_>, work: &ThumbWork) -> Vec<Fix> {
    let sides = Side::ALL.iter().copied();
    sides
        .filter(|side| presses(situation, *side))
        .map(|side| Fix {
            label: format!("Move the {} to the {side}", work.kind),
            edit: Edit::Bike(BikeEdit::PutThumbWork(work.kind, side.into())),
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::{FlatSingle, Tricycle};
    use crate::cockpit::{BarSide, ThumbWorkKind};
    use crate::edit::{BikeEdit, Edit};
    use crate::rider::{Contact, Difficulty, HandPlace, Side};
    use crate::rules::testing::{Setup, bike, check_fixes, fired, fixes_of};

    fn assist_in_the_middle(setup: Setup) -> Setup {
        setup.edit(&Edit::Bike(BikeEdit::PutThumbWork(
            ThumbWorkKind::AssistLevel,
            BarSide::Centre,
        )))
    }

    #[test]
    fn fires_for_a_bell_beside_a_hand_that_does_not_work() {
        let plan = bike(FlatSingle)
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The bell on the left is reached only when a hand lets go for it."
        );
        assert_eq!(fixes_of(&plan, &RULE), ["Move the bell to the right"]);
        check_fixes(&plan, &RULE);
        let moved = plan
            .apply(&fired(&plan, &RULE)[0].fixes[0].edit)
            .expect("a fix is possible");
        assert!(moved.bike.thumb_work[0].at.x > 0.0);
    }

    #[test]
    fn fires_for_the_middle_where_no_other_hand_steers() {
        let plan = assist_in_the_middle(bike(FlatSingle))
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
        check_fixes(&plan, &RULE);
        let tricycle = assist_in_the_middle(bike(Tricycle))
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert_eq!(fired(&tricycle, &RULE).len(), 1);
    }

    #[test]
    fn is_silent_beside_a_hand_that_presses() {
        let plan = assist_in_the_middle(bike(FlatSingle))
            .contact(Side::Left, Contact::Thumb, Difficulty::Complete)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
