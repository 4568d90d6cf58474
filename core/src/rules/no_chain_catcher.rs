//! A front derailleur, one hand, and nothing that catches a dropped chain.

use super::{Family, Origin, Rule};
use crate::edit::{BikeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::{Answer, Side, YesNo};
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "no-chain-catcher",
    family: Family::Gears,
    title: "No chain catcher for one hand",
    severity: Severity::GoodToKnow,
    acceptable: Acceptable::ByShop,
    what: "A bike with a front derailleur has a chain catcher where one hand alone works.",
    why: "A chain that drops inside the rings is put back with two hands, or with one hand and much patience, at the side of the road.",
    remedy: "Fit a chain catcher, or ride one ring.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let mut idle = Side::ALL
        .iter()
        .filter(|side| !situation.hand(**side).works());
    let (Some(side), None) = (idle.next(), idle.next()) else {
        return Vec::new();
    };
    let message = match bike.chain_catcher.value {
        _ if !bike.has_front_derailleur() => return Vec::new(),
        Some(YesNo::Yes) => return Vec::new(),
        Some(YesNo::No) => {
            "There is a front derailleur and no chain catcher: a dropped chain is put back with one hand."
        }
        None => "There is a front derailleur. Whether a chain catcher is fitted was not asked yet.",
    };
    vec![Finding {
        rule: RULE.id,
        severity: Severity::GoodToKnow,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Hand(side.other())],
        message: message.into(),
        fixes: vec![Fix {
            label: "Fit a chain catcher".into(),
            edit: Edit::Bike(BikeEdit::ChainCatcher(Answer::of(YesNo::Yes))),
        }],
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::BikeEdit;
    use crate::rider::{Answer, HandPlace, Side, YesNo};
    use crate::rules::testing::{Setup, check_fixes, drop_bar, fired, gravel};

    fn one_hand(setup: Setup) -> Setup {
        setup.hand_does_nothing(Side::Right, HandPlace::Rests)
    }

    #[test]
    fn fires_for_one_hand_on_a_bike_with_a_front_derailleur() {
        let with = |answer| {
            one_hand(drop_bar())
                .bike_edit(BikeEdit::ChainCatcher(answer))
                .plan()
        };
        for answer in [Answer::NOT_ASKED, Answer::of(YesNo::No)] {
            assert_eq!(fired(&with(answer), &RULE).len(), 1);
            check_fixes(&with(answer), &RULE);
        }
        assert!(fired(&with(Answer::of(YesNo::Yes)), &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        assert!(fired(&one_hand(gravel()).plan(), &RULE).is_empty());
    }
}
