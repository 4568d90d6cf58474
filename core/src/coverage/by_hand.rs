//! What one hand meets from one position, whatever the buttons do.

use super::{Cell, WhyNot, easiest, presses};
use crate::cockpit::{ButtonId, HandPosition};
use crate::plan::Plan;
use crate::rider::{Day, Side};

/// How one hand best presses a button from a position on a day, or why it does
/// not.
pub fn press_by(
    plan: &Plan,
    hand: Side,
    button: ButtonId,
    position: HandPosition,
    day: Day,
) -> Cell {
    if !plan.rider.hands.get(hand).works() {
        return Cell::No(WhyNot::UnderIdleHand(hand));
    }
    let mut all = presses(plan, button, position, day);
    all.retain(|way| way.hand == hand);
    easiest(plan, &all).unwrap_or(Cell::No(if all.is_empty() {
        WhyNot::OutOfReach
    } else {
        WhyNot::HandCannot(hand)
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{ButtonPart, ControlKind, Ease};
    use crate::edit::{Edit, RiderEdit};
    use crate::rider::{Contact, HandPlace};

    fn button(plan: &Plan, kind: ControlKind, side: Side, part: ButtonPart) -> ButtonId {
        let controls = plan.bike.controls.iter();
        let mut fits = controls.filter(|c| c.kind == kind && c.side.hand() == Some(side));
        fits.next()
            .expect("the bike has the control")
            .button_id(part)
    }

    #[test]
    fn a_hand_reaches_its_own_side_and_crosses_over_for_the_other() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let lever = ControlKind::BrakeShiftLever;
        let hood = button(&plan, lever, Side::Left, ButtonPart::HoodButton);
        let ways = |hand, from| press_by(&plan, hand, hood, from, Day::Usual);

        let own = ways(Side::Left, HandPosition::Hoods);
        let way = own.reached().expect("the thumb lies on it");
        assert_eq!((way.contact, way.ease), (Contact::Thumb, Ease::Natural));

        let from_drops = ways(Side::Left, HandPosition::Drops);
        assert!(matches!(from_drops, Cell::ByLettingGo(way) if way.ease == Ease::Move));

        let across = ways(Side::Right, HandPosition::Hoods);
        assert!(matches!(across, Cell::ByLettingGo(way) if way.ease == Ease::CrossOver));
    }

    #[test]
    fn a_resting_hand_reaches_nothing() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        let plan = plan.apply(&Edit::Rider(rests)).expect("a hand can rest");
        let lever = ControlKind::BrakeShiftLever;
        let paddle = button(&plan, lever, Side::Right, ButtonPart::OuterPaddle);
        let cell = press_by(&plan, Side::Right, paddle, HandPosition::Hoods, Day::Usual);
        assert_eq!(cell, Cell::No(WhyNot::UnderIdleHand(Side::Right)));
    }
}
