//! Controls: what is clamped to the bar.

use std::fmt;

use super::{Button, ButtonId, ButtonPart};
use crate::rider::{Answer, Side, YesNo};
use crate::units::{Mm, Point};

/// The identity of a control within its plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ControlId(pub u16);

impl fmt::Display for ControlId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.0)
    }
}

vocabulary! {
    /// The side of the bar on which a control sits.
    pub enum BarSide as "side" {
        /// The rider's left.
        Left = "left", "left";
        /// The middle.
        Centre = "centre", "middle";
        /// The rider's right.
        Right = "right", "right";
    }
}

impl BarSide {
    /// The hand whose own side this is; none for the middle.
    pub const fn hand(self) -> Option<Side> {
        match self {
            BarSide::Left => Some(Side::Left),
            BarSide::Centre => None,
            BarSide::Right => Some(Side::Right),
        }
    }

    /// The side seen in a mirror.
    pub const fn mirrored(self) -> BarSide {
        match self {
            BarSide::Left => BarSide::Right,
            BarSide::Centre => BarSide::Centre,
            BarSide::Right => BarSide::Left,
        }
    }
}

impl From<Side> for BarSide {
    fn from(side: Side) -> Self {
        match side {
            Side::Left => BarSide::Left,
            Side::Right => BarSide::Right,
        }
    }
}

vocabulary! {
    /// The kind of control.
    pub enum ControlKind as "control" {
        /// Brakes and shifts: outer paddle, inner paddle, hood button.
        BrakeShiftLever = "brake-shift-lever", "brake-shift lever";
        /// Brakes and shifts with one long paddle.
        OnePaddleLever = "one-paddle-lever", "one-paddle lever";
        /// Brakes only.
        BrakeLever = "brake-lever", "brake lever";
        /// Brakes on a base bar, with buttons.
        BaseBarLever = "base-bar-lever", "base-bar lever";
        /// Two extra buttons.
        Pod = "pod", "pod";
        /// One extra button.
        SinglePod = "single-pod", "one-button pod";
        /// A single button in the drops with a fixed function.
        SprintButton = "sprint-button", "sprint button";
    }
}

vocabulary! {
    /// Where on the bar a control sits.
    pub enum Zone as "zone" {
        /// Where a drop bar carries its levers.
        Hoods = "hoods", "hoods";
        /// On the straight top.
        Tops = "tops", "tops";
        /// In the drops.
        Drops = "drops", "drops";
        /// On or beside the stem.
        Stem = "stem", "stem";
        /// At the end of an extension.
        Tip = "tip", "extension tip";
        /// On the end of a base bar.
        BaseBar = "base-bar", "base bar";
        /// Beside a flat bar's grip.
        Grip = "grip", "grip";
        /// On a side grip.
        SideGrip = "side-grip", "side grip";
    }
}

vocabulary! {
    /// How a control is joined to the rest of the system.
    pub enum Link as "link" {
        /// By wire.
        Wired = "wired", "wired";
        /// Without a wire, to wired derailleurs.
        WirelessToWired = "wireless-to-wired", "wireless lever, wired derailleurs";
        /// Without a wire anywhere, with a coin cell.
        Wireless = "wireless", "wireless, coin cell";
    }
}

vocabulary! {
    /// What is in a port that carries no wire.
    pub enum UnusedPort as "unused port" {
        /// There is no such port.
        None = "none", "no unused port";
        /// A blank closes it.
        Blanked = "blanked", "blanked";
        /// It is open to water.
        Open = "open", "open";
    }
}

/// A latch that keeps a brake on for parking.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Latch {
    /// Whether the hand that must do it was seen to set and release it.
    pub tried: Answer<YesNo>,
}

/// A brake blade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Blade {
    /// Whether it is there; a lever whose blade was removed keeps its body.
    pub fitted: bool,
    /// The middle of the blade.
    pub at: Point,
    /// From the bar to the blade at rest, as measured.
    pub reach: Option<Mm>,
    /// From the bar to the blade at full pull, as measured.
    pub gap_at_full_pull: Option<Mm>,
    /// A parking latch, if any.
    pub latch: Option<Latch>,
}

impl Blade {
    /// What is left between blade and bar at full pull at the least (*common
    /// practice*: room for a gloved finger and for pads that wear).
    pub const LEAST_GAP: Mm = Mm(20.0);

    /// A fitted blade at a place, nothing measured yet.
    pub const fn at(at: Point) -> Blade {
        Blade {
            fitted: true,
            at,
            reach: None,
            gap_at_full_pull: None,
            latch: None,
        }
    }

    /// Fits or removes the blade. What was measured at full pull goes with it.
    pub(crate) fn set_fitted(&mut self, fitted: bool) {
        if self.fitted != fitted {
            self.gap_at_full_pull = None;
        }
        self.fitted = fitted;
    }
}

/// A control.
#[derive(Debug, Clone, PartialEq)]
pub struct Control {
    /// Its identity.
    pub id: ControlId,
    /// The kind.
    pub kind: ControlKind,
    /// The side of the bar.
    pub side: BarSide,
    /// Where on the bar.
    pub zone: Zone,
    /// Where it clamps.
    pub at: Point,
    /// Its buttons.
    pub buttons: Vec<Button>,
    /// Its brake blade, if it brakes.
    pub blade: Option<Blade>,
    /// How it is joined to the rest.
    pub link: Link,
    /// Whether it is plugged in or paired; unplugged buttons do nothing.
    pub connected: bool,
    /// Its unused port.
    pub unused_port: UnusedPort,
}

impl Control {
    /// The button that is this part.
    pub fn button(&self, part: ButtonPart) -> Option<&Button> {
        self.buttons.iter().find(|b| b.part == part)
    }

    /// The identity of the button that is this part.
    pub const fn button_id(&self, part: ButtonPart) -> ButtonId {
        ButtonId {
            control: self.id,
            part,
        }
    }

    /// In which row of the drawing's margin the slot of a button stands, from the top: so that
    /// numbers count down the margin and no two leader lines cross. On tops and grips the far
    /// button comes first, for its line passes over the near one; on the stem near and far stand
    /// side by side.
    pub(crate) const fn row(&self, part: ButtonPart) -> (u8, u8) {
        let zone = match (part, self.zone) {
            (_, Zone::Tip) => 0,
            (ButtonPart::OuterPaddle | ButtonPart::InnerPaddle | ButtonPart::LongPaddle, _) => 3,
            (_, Zone::Hoods | Zone::BaseBar) => 1,
            (_, Zone::Tops | Zone::Stem | Zone::Grip | Zone::SideGrip) => 2,
            (_, Zone::Drops) => 4,
        };
        let within = match (part, self.zone) {
            (ButtonPart::Near, Zone::Stem) => 0,
            (ButtonPart::Near | ButtonPart::Lower | ButtonPart::InnerPaddle, _) => 2,
            _ => 1,
        };
        (zone, within)
    }

    /// Whether a brake can be pulled here.
    pub fn has_blade(&self) -> bool {
        self.blade.is_some_and(|blade| blade.fitted)
    }

    /// What it is and where: "left tops pod", "right brake-shift lever".
    pub fn place(&self) -> String {
        let side = match self.side {
            BarSide::Left => "left ",
            BarSide::Centre => "",
            BarSide::Right => "right ",
        };
        let zone = match self.kind {
            ControlKind::Pod | ControlKind::SinglePod => match self.zone {
                Zone::Grip => "thumb ",
                Zone::Tip => "extension-tip ",
                Zone::Tops => "tops ",
                Zone::Stem => "stem ",
                Zone::Drops => "drops ",
                Zone::BaseBar => "base-bar ",
                Zone::SideGrip => "side-grip ",
                Zone::Hoods => "hood ",
            },
            _ => "",
        };
        format!("{side}{zone}{}", self.kind)
    }

    /// Where one of its buttons is: "left outer paddle", "left tops pod, near
    /// button".
    pub fn place_of(&self, part: ButtonPart) -> String {
        let side = match self.side {
            BarSide::Left => "left ",
            BarSide::Centre => "",
            BarSide::Right => "right ",
        };
        match self.kind {
            ControlKind::BrakeShiftLever | ControlKind::OnePaddleLever => format!("{side}{part}"),
            ControlKind::SprintButton => format!("{side}sprint button"),
            _ if self.buttons.len() == 1 => self.place(),
            _ => format!("{}, {part}", self.place()),
        }
    }

    /// The same control on the other side, with every place mirrored. Its
    /// identity stays.
    pub fn mirrored(&self) -> Control {
        let mut copy = self.clone();
        copy.side = self.side.mirrored();
        copy.at = self.at.mirrored();
        for button in &mut copy.buttons {
            button.at = button.at.mirrored();
        }
        if let Some(blade) = &mut copy.blade {
            blade.at = blade.at.mirrored();
        }
        copy
    }
}
