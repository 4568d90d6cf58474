//! The only hand that steers changes its position while riding.

use super::{Family, Origin, Rule};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;
use crate::text::list;

pub(super) static RULE: Rule = Rule {
    id: "position-change-by-only-steering-hand",
    family: Family::Reach,
    title: "The only steering hand changes its position",
    severity: Severity::Check,
    acceptable: Acceptable::ByClinician,
    what: "Where just one hand steers, the rider uses one hand position, or was seen to change between them.",
    why: "While the hand goes from one position to the other nothing holds the bar, however short the way.",
    remedy: "See the rider do it, bike still, then at walking pace on a closed flat road. Agree where it is done: not downhill, not in traffic. Or keep to one position.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let positions = situation.positions();
    let (Some(side), true) = (situation.only_steering_hand(), positions.len() > 1) else {
        return Vec::new();
    };
    let mut places = vec![Place::Hand(side)];
    places.extend(positions.iter().copied().map(Place::Position));
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByClinician,
        places,
        message: format!(
            "The {side} hand is the only one that steers, and it lets go to change between the {}.",
            list(positions, "and")
        ),
        fixes: Vec::new(),
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::FlatSingle;
    use crate::cockpit::HandPosition::Hoods;
    use crate::rider::{HandPlace, Side, Use};
    use crate::rules::testing::{bike, drop_bar, fired};

    #[test]
    fn fires_for_one_hand_on_hoods_and_drops() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "The left hand is the only one that steers, and it lets go to change between the hoods and drops."
        );
    }

    #[test]
    fn is_silent_with_two_hands_or_one_position() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        let hoods = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .rides(Hoods, Use::Mostly)
            .plan();
        assert!(fired(&hoods, &RULE).is_empty());
        let flat = bike(FlatSingle)
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        assert!(fired(&flat, &RULE).is_empty());
    }
}
