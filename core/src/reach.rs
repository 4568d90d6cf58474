//! Which contact reaches what from where: data with reasons.
//!
//! Every entry is *common practice* among fitters for a hand of middling size;
//! what the fitter saw on this rider ([`crate::cockpit::SeenReach`]) goes
//! before it. A hand reaches so only on its own side of the bar or in the
//! middle; for the far side it must cross over.

mod table;

pub use table::{REACH, ReachRow};

use crate::cockpit::{Button, ButtonPart, Control, ControlKind, Ease, HandPosition, Zone};
use crate::rider::Contact;

vocabulary! {
    /// What is reached for, as far as reach differs.
    pub enum Target as "target" {
        /// A drop-bar brake blade.
        DropBlade = "drop-blade", "brake blade";
        /// An extra brake blade on the tops of a drop bar.
        TopsBlade = "tops-blade", "tops brake blade";
        /// A base bar's brake blade.
        BaseBarBlade = "base-bar-blade", "brake blade";
        /// A flat bar's or side grip's brake blade.
        GripBlade = "grip-blade", "brake blade";
        /// Outer paddle.
        OuterPaddle = "outer-paddle", "outer paddle";
        /// Inner paddle.
        InnerPaddle = "inner-paddle", "inner paddle";
        /// Single long paddle.
        LongPaddle = "long-paddle", "long paddle";
        /// Hood button.
        HoodButton = "hood-button", "hood button";
        /// A button on the tops.
        TopsButton = "tops-button", "tops button";
        /// A button on or beside the stem.
        StemButton = "stem-button", "stem button";
        /// A button in the drops, the sprint button above all.
        DropsButton = "drops-button", "drops button";
        /// An extension-tip button.
        TipButton = "tip-button", "extension-tip button";
        /// A base-bar button.
        BaseBarButton = "base-bar-button", "base-bar button";
        /// A thumb button near a flat bar's grip.
        GripNear = "grip-near", "near thumb button";
        /// The farther thumb button.
        GripFar = "grip-far", "far thumb button";
        /// A button near the hand on a side grip.
        SideGripNear = "side-grip-near", "near side-grip button";
        /// The farther one.
        SideGripFar = "side-grip-far", "far side-grip button";
    }
}

impl Target {
    /// What a button is as a target for reach.
    pub fn of_button(control: &Control, button: &Button) -> Target {
        match button.part {
            ButtonPart::OuterPaddle => Target::OuterPaddle,
            ButtonPart::InnerPaddle => Target::InnerPaddle,
            ButtonPart::LongPaddle => Target::LongPaddle,
            ButtonPart::HoodButton => Target::HoodButton,
            part => match control.zone {
                Zone::Hoods => Target::HoodButton,
                Zone::Tops => Target::TopsButton,
                Zone::Drops => Target::DropsButton,
                Zone::Stem => Target::StemButton,
                Zone::Tip => Target::TipButton,
                Zone::BaseBar => Target::BaseBarButton,
                Zone::Grip if part == ButtonPart::Far => Target::GripFar,
                Zone::Grip => Target::GripNear,
                Zone::SideGrip if part == ButtonPart::Far => Target::SideGripFar,
                Zone::SideGrip => Target::SideGripNear,
            },
        }
    }

    /// What a brake blade is as a target for reach.
    pub fn of_blade(control: &Control) -> Target {
        match (control.kind, control.zone) {
            (ControlKind::BaseBarLever, _) | (_, Zone::BaseBar) => Target::BaseBarBlade,
            (_, Zone::Grip | Zone::SideGrip) => Target::GripBlade,
            (_, Zone::Tops) => Target::TopsBlade,
            _ => Target::DropBlade,
        }
    }
}

/// How a contact meets a target: how well, and why.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reach {
    /// What presses.
    pub contact: Contact,
    /// How well: natural, stretch or move.
    pub ease: Ease,
    /// Why, in words for a fitter.
    pub reason: &'static str,
}

/// How the hand of a button's own side reaches it from a position, with what
/// the fitter saw in place of the table where there is any. Empty: not from
/// there.
pub fn of_button(control: &Control, button: &Button, from: HandPosition) -> Vec<Reach> {
    let mut found: Vec<Reach> = of_target(Target::of_button(control, button), from).collect();
    for seen in button.seen_reach.iter().filter(|s| s.from == from) {
        found.retain(|reach| reach.contact != seen.contact);
        found.extend(seen.ease.map(|ease| Reach {
            contact: seen.contact,
            ease,
            reason: "seen by the fitter",
        }));
    }
    found
}

/// How the hand of a blade's own side reaches it from a position.
pub fn of_blade(control: &Control, from: HandPosition) -> impl Iterator<Item = Reach> + use<> {
    of_target(Target::of_blade(control), from)
}

/// What the table says of a target from a position.
pub fn of_target(target: Target, from: HandPosition) -> impl Iterator<Item = Reach> {
    REACH
        .iter()
        .filter(move |row| row.target == target && row.from == from)
        .flat_map(|row| {
            row.contacts.iter().map(|contact| Reach {
                contact: *contact,
                ease: row.ease,
                reason: row.reason,
            })
        })
}
