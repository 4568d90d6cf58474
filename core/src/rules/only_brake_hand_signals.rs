//! The only hand that brakes is also the only one that can signal.

use super::{Family, Origin, Rule};
use crate::cockpit::ThumbWorkKind;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "only-brake-hand-signals",
    family: Family::Brake,
    title: "The only brake hand must signal",
    severity: Severity::GoodToKnow,
    acceptable: Acceptable::ByClinician,
    what: "A hand that gives signals is not the only one that brakes. Indicators that this hand works count as signals.",
    why: "While the arm is out nothing brakes, and on two wheels perhaps nothing steers.",
    remedy: "Fit indicators within reach, plan routes with few turns across traffic, stop and look before turning, and ask what the law of the place takes as a signal.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let [braking] = situation.braking_hands()[..] else {
        return Vec::new();
    };
    let indicators = situation.plan.bike.thumb_work.iter().any(|work| {
        let reached = work.side.hand().is_none_or(|side| side == braking);
        work.kind == ThumbWorkKind::Indicators && reached
    });
    if situation.hand(braking.other()).works() || indicators {
        return Vec::new();
    }
    vec![Finding {
        rule: RULE.id,
        severity: Severity::GoodToKnow,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Hand(braking)],
        message: format!(
            "The {braking} hand does all the braking and is the only one to signal with: while it signals, nothing brakes."
        ),
        fixes: Vec::new(),
    }]
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::{BarSide, ThumbWorkKind};
    use crate::edit::BikeEdit;
    use crate::rider::{HandPlace, Side};
    use crate::rules::testing::{drop_bar, fired, lever};

    #[test]
    fn fires_for_one_hand_and_is_silent_with_indicators() {
        let setup = || drop_bar().hand_does_nothing(Side::Right, HandPlace::Rests);
        assert_eq!(fired(&setup().plan(), &RULE).len(), 1);
        let with_indicators = |side| {
            let put = BikeEdit::PutThumbWork(ThumbWorkKind::Indicators, side);
            fired(&setup().bike_edit(put).plan(), &RULE).len()
        };
        assert_eq!(with_indicators(BarSide::Left), 0);
        assert_eq!(with_indicators(BarSide::Right), 1, "out of its reach");
    }

    #[test]
    fn is_silent_where_the_other_hand_signals() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        assert!(fired(&setup.all_brakes_on(left).plan(), &RULE).is_empty());
    }
}
