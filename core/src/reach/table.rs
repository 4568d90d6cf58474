//! The reach table.

use super::Target;
use crate::cockpit::{Ease, HandPosition};
use crate::rider::Contact;

/// One row: these contacts meet a target from a position this well.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ReachRow {
    /// What is reached for.
    pub target: Target,
    /// From where.
    pub from: HandPosition,
    /// How well.
    pub ease: Ease,
    /// With what, most usual first.
    pub contacts: &'static [Contact],
    /// Why.
    pub reason: &'static str,
}

const fn row(
    target: Target,
    from: HandPosition,
    ease: Ease,
    contacts: &'static [Contact],
    reason: &'static str,
) -> ReachRow {
    ReachRow {
        target,
        from,
        ease,
        contacts,
        reason,
    }
}

use Contact::{DeviceTip, HandSide, Heel, Index, Knuckle, Middle, ResidualLimb, Ring, Thumb};
use Ease::{Move, Natural, Stretch};
use HandPosition::{BaseBar, Drops, Extensions, Grip, Hoods, SideGrip, Tops};

/// Contacts that push without wrapping: what a pushed button asks for when
/// digits are not used.
const BLUNT: &[Contact] = &[Knuckle, Heel, HandSide, ResidualLimb, DeviceTip];
/// Contacts besides digits that can hook or sweep a paddle.
const HOOKS: &[Contact] = &[DeviceTip];
const ANY_DIGIT: &[Contact] = &[Thumb, Index];

/// The reach table (*common practice*).
pub const REACH: &[ReachRow] = &[
    // Brake blade of a drop bar.
    row(
        Target::DropBlade,
        Hoods,
        Natural,
        &[Index, Middle],
        "the blade hangs before the fingers, with less force than from the drops; the hand slides off without a thumb wrapped",
    ),
    row(
        Target::DropBlade,
        Hoods,
        Stretch,
        &[Ring],
        "the ring finger lies low on the blade",
    ),
    row(
        Target::DropBlade,
        Drops,
        Natural,
        &[Index, Middle],
        "the fingers meet the blade near its end, with the best leverage",
    ),
    row(
        Target::DropBlade,
        Hoods,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
    row(
        Target::DropBlade,
        Drops,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
    row(
        Target::DropBlade,
        Tops,
        Move,
        &[Index, Middle],
        "the hand must go to the hood first",
    ),
    row(
        Target::TopsBlade,
        Tops,
        Natural,
        &[Index, Middle],
        "the blade lies before the fingers on the tops",
    ),
    row(
        Target::TopsBlade,
        Tops,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
    row(
        Target::TopsBlade,
        Hoods,
        Move,
        &[Index, Middle],
        "the hand must come in to the tops",
    ),
    // Outer paddle, short press.
    row(
        Target::OuterPaddle,
        Hoods,
        Natural,
        &[Index, Middle],
        "it lies just behind the blade under the fingers",
    ),
    row(
        Target::OuterPaddle,
        Hoods,
        Stretch,
        HOOKS,
        "a device tip finds the paddle's edge",
    ),
    row(
        Target::OuterPaddle,
        Drops,
        Natural,
        &[Index, Middle],
        "its lower end hangs before the fingers",
    ),
    row(
        Target::OuterPaddle,
        Drops,
        Stretch,
        HOOKS,
        "a device tip finds the paddle's edge",
    ),
    row(
        Target::OuterPaddle,
        Tops,
        Move,
        &[Index, Middle],
        "the hand must go to the hood first",
    ),
    // Inner paddle, short press.
    row(
        Target::InnerPaddle,
        Hoods,
        Natural,
        &[Middle, Index],
        "it lies inside the outer paddle, nearer to the middle finger",
    ),
    row(
        Target::InnerPaddle,
        Hoods,
        Stretch,
        &[Ring],
        "the ring finger must curl in",
    ),
    row(
        Target::InnerPaddle,
        Drops,
        Natural,
        &[Middle, Index],
        "the fingers curl in behind the blade",
    ),
    row(
        Target::InnerPaddle,
        Tops,
        Move,
        &[Middle, Index],
        "the hand must go to the hood first",
    ),
    // Single long paddle, sweep inward.
    row(
        Target::LongPaddle,
        Hoods,
        Natural,
        &[Index, Middle],
        "the fingers sweep it inward",
    ),
    row(
        Target::LongPaddle,
        Hoods,
        Stretch,
        HOOKS,
        "a device tip hooks it and draws it inward",
    ),
    row(
        Target::LongPaddle,
        Drops,
        Natural,
        &[Index, Middle],
        "the fingers sweep it inward at its lower end",
    ),
    row(
        Target::LongPaddle,
        Tops,
        Move,
        &[Index, Middle],
        "the hand must go to the hood first",
    ),
    // Hood button, push.
    row(
        Target::HoodButton,
        Hoods,
        Natural,
        &[Thumb],
        "it lies under the thumb; a small hand stretches",
    ),
    row(
        Target::HoodButton,
        Hoods,
        Stretch,
        BLUNT,
        "it is pushed from above without a grip",
    ),
    row(
        Target::HoodButton,
        Drops,
        Move,
        &[Thumb],
        "the hand must come up to the hood",
    ),
    row(
        Target::HoodButton,
        Tops,
        Move,
        &[Thumb],
        "the hand must go out to the hood",
    ),
    // Tops pod, push.
    row(
        Target::TopsButton,
        Tops,
        Natural,
        &[Thumb],
        "it sits beside the thumb",
    ),
    row(
        Target::TopsButton,
        Tops,
        Stretch,
        &[Index],
        "the index finger must come back over the bar",
    ),
    row(
        Target::TopsButton,
        Tops,
        Stretch,
        BLUNT,
        "it is pushed from above without a grip",
    ),
    row(
        Target::TopsButton,
        Hoods,
        Move,
        ANY_DIGIT,
        "the hand must come in to the tops",
    ),
    // Stem pod, push: either hand, to the middle.
    row(
        Target::StemButton,
        Hoods,
        Move,
        ANY_DIGIT,
        "the hand must come in to the middle",
    ),
    row(
        Target::StemButton,
        Tops,
        Move,
        ANY_DIGIT,
        "the hand must come in to the middle",
    ),
    row(
        Target::StemButton,
        Grip,
        Move,
        ANY_DIGIT,
        "the hand must come in to the middle",
    ),
    row(
        Target::StemButton,
        BaseBar,
        Move,
        ANY_DIGIT,
        "the hand must come in to the middle",
    ),
    // Sprint button or pod in the drops, push.
    row(
        Target::DropsButton,
        Drops,
        Natural,
        &[Thumb],
        "it lies under the thumb in the drops",
    ),
    row(
        Target::DropsButton,
        Drops,
        Stretch,
        BLUNT,
        "it is pushed from inside without a grip",
    ),
    // Extension tip.
    row(
        Target::TipButton,
        Extensions,
        Natural,
        &[Thumb, Index],
        "it ends the extension in the hand",
    ),
    row(
        Target::TipButton,
        Extensions,
        Stretch,
        BLUNT,
        "it is pushed from above without a grip",
    ),
    row(
        Target::TipButton,
        BaseBar,
        Move,
        &[Thumb, Index],
        "the hand must go forward to the extension",
    ),
    // Base-bar lever.
    row(
        Target::BaseBarButton,
        BaseBar,
        Natural,
        &[Thumb],
        "it lies beside the thumb on the base bar",
    ),
    row(
        Target::BaseBarButton,
        BaseBar,
        Stretch,
        BLUNT,
        "it is pushed from inside without a grip",
    ),
    row(
        Target::BaseBarButton,
        Extensions,
        Move,
        &[Thumb],
        "the hand must come back to the base bar",
    ),
    row(
        Target::BaseBarBlade,
        BaseBar,
        Natural,
        &[Index, Middle],
        "the blade lies before the fingers",
    ),
    row(
        Target::BaseBarBlade,
        BaseBar,
        Stretch,
        &[Ring],
        "the ring finger lies near the pivot",
    ),
    row(
        Target::BaseBarBlade,
        BaseBar,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
    row(
        Target::BaseBarBlade,
        Extensions,
        Move,
        &[Index, Middle],
        "the hand must come back to the base bar",
    ),
    // Flat bar and side grips.
    row(
        Target::GripNear,
        Grip,
        Natural,
        &[Thumb],
        "it lies beside the thumb",
    ),
    row(
        Target::GripNear,
        Grip,
        Stretch,
        &[Index],
        "the index finger meets it where it faces forward",
    ),
    row(
        Target::GripNear,
        Grip,
        Stretch,
        BLUNT,
        "it is pushed from behind without a grip",
    ),
    row(
        Target::GripFar,
        Grip,
        Natural,
        &[Thumb],
        "the thumb goes on a little; a small hand stretches",
    ),
    row(
        Target::GripFar,
        Grip,
        Stretch,
        BLUNT,
        "it is pushed from behind without a grip",
    ),
    row(
        Target::GripBlade,
        Grip,
        Natural,
        &[Index, Middle],
        "the blade lies before the fingers",
    ),
    row(
        Target::GripBlade,
        Grip,
        Stretch,
        &[Ring],
        "the ring finger lies near the pivot",
    ),
    row(
        Target::GripBlade,
        Grip,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
    row(
        Target::SideGripNear,
        SideGrip,
        Natural,
        &[Thumb],
        "it tops the grip under the thumb",
    ),
    row(
        Target::SideGripNear,
        SideGrip,
        Stretch,
        BLUNT,
        "it is pushed from above without a grip",
    ),
    row(
        Target::SideGripFar,
        SideGrip,
        Natural,
        &[Thumb],
        "the thumb goes on a little; a small hand stretches",
    ),
    row(
        Target::SideGripFar,
        SideGrip,
        Stretch,
        BLUNT,
        "it is pushed from above without a grip",
    ),
    row(
        Target::GripBlade,
        SideGrip,
        Natural,
        &[Index, Middle],
        "the blade lies before the fingers",
    ),
    row(
        Target::GripBlade,
        SideGrip,
        Stretch,
        &[Ring],
        "the ring finger lies near the pivot",
    ),
    row(
        Target::GripBlade,
        SideGrip,
        Stretch,
        HOOKS,
        "a device hooks the blade",
    ),
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::reach;
    use crate::vocabulary::Vocabulary;

    #[test]
    fn every_row_has_contacts_and_a_reason_of_its_own() {
        for row in REACH {
            let named = format!("{} from the {}", row.target, row.from);
            assert!(
                row.reason.split(' ').count() >= 4,
                "{named}: {}",
                row.reason
            );
            assert!(!row.contacts.is_empty(), "{named}");
            assert!(
                row.ease != Ease::CrossOver,
                "{named}: a hand reaches on its own side"
            );
        }
    }

    #[test]
    fn no_contact_meets_a_target_from_a_position_in_two_ways() {
        let mut seen = BTreeSet::new();
        for row in REACH {
            for contact in row.contacts {
                let entry = (row.target, row.from, *contact);
                assert!(seen.insert(entry), "{entry:?}");
            }
        }
    }

    #[test]
    fn every_button_of_every_template_is_reached_from_some_position_of_its_bar() {
        for id in TemplateId::ALL {
            let bike = template(*id).bike;
            for (button_id, control, button) in bike.buttons() {
                let positions = bike.bar.kind.positions().iter();
                let mut eases = positions
                    .flat_map(|position| reach::of_button(control, button, *position))
                    .map(|reach| reach.ease);
                let natural = eases.any(|ease| ease == Ease::Natural);
                assert!(natural, "{id}: {}", bike.place_of(button_id));
            }
        }
    }

    #[test]
    fn every_blade_of_every_template_is_reached_from_some_position_of_its_bar() {
        for id in TemplateId::ALL {
            let bike = template(*id).bike;
            for control in bike.controls.iter().filter(|c| c.has_blade()) {
                let positions = bike.bar.kind.positions().iter();
                let mut reaches = positions.flat_map(|p| reach::of_blade(control, *p));
                let natural = reaches.any(|reach| reach.ease == Ease::Natural);
                assert!(natural, "{id}: {}", control.place());
            }
        }
    }

    /// What fitters take for granted of a hand of middling size (*common
    /// practice*): `None` is "not from there".
    #[test]
    fn says_what_fitters_take_for_granted() {
        let expected = [
            (Target::DropBlade, Hoods, Index, Some(Natural)),
            (Target::DropBlade, Hoods, Ring, Some(Stretch)),
            (Target::DropBlade, Drops, Middle, Some(Natural)),
            (Target::DropBlade, Tops, Index, Some(Move)),
            (Target::OuterPaddle, Hoods, Index, Some(Natural)),
            (Target::OuterPaddle, Drops, Middle, Some(Natural)),
            (Target::OuterPaddle, Tops, Index, Some(Move)),
            (Target::InnerPaddle, Hoods, Middle, Some(Natural)),
            (Target::InnerPaddle, Hoods, Ring, Some(Stretch)),
            (Target::InnerPaddle, Drops, Index, Some(Natural)),
            (Target::LongPaddle, Drops, Index, Some(Natural)),
            (Target::LongPaddle, Tops, Index, Some(Move)),
            (Target::HoodButton, Hoods, Thumb, Some(Natural)),
            (Target::HoodButton, Drops, Thumb, Some(Move)),
            (Target::HoodButton, Hoods, Index, None),
            (Target::TopsButton, Tops, Thumb, Some(Natural)),
            (Target::TopsButton, Tops, Index, Some(Stretch)),
            (Target::TopsButton, Hoods, Thumb, Some(Move)),
            (Target::TopsButton, Drops, Thumb, None),
            (Target::StemButton, Tops, Thumb, Some(Move)),
            (Target::StemButton, Drops, Thumb, None),
            (Target::DropsButton, Drops, Thumb, Some(Natural)),
            (Target::DropsButton, Hoods, Thumb, None),
            (Target::DropsButton, Tops, Thumb, None),
            (Target::TipButton, Extensions, Index, Some(Natural)),
            (Target::TipButton, BaseBar, Thumb, Some(Move)),
            (Target::BaseBarButton, BaseBar, Thumb, Some(Natural)),
            (Target::BaseBarButton, Extensions, Thumb, Some(Move)),
            (Target::GripNear, Grip, Thumb, Some(Natural)),
            (Target::GripFar, Grip, Thumb, Some(Natural)),
            (Target::GripBlade, Grip, Middle, Some(Natural)),
        ];
        for (target, from, contact, ease) in expected {
            let found = reach::of_target(target, from).find(|reach| reach.contact == contact);
            let found = found.map(|reach| reach.ease);
            assert_eq!(found, ease, "{target} from the {from} with the {contact}");
        }
    }
}
