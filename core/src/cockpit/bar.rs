//! Bars, frames and hand positions.

use super::Wheel;
use crate::units::Mm;

vocabulary! {
    /// Two wheels or three.
    pub enum Frame as "frame" {
        /// A bicycle.
        Bicycle = "bicycle", "bicycle";
        /// A tricycle with one wheel in front.
        TricycleTwoRear = "tricycle-two-rear", "tricycle, two wheels behind";
        /// A tricycle with two wheels in front.
        TricycleTwoFront = "tricycle-two-front", "tricycle, two wheels in front";
    }
}

impl Frame {
    /// Whether it stands by itself.
    pub const fn is_tricycle(self) -> bool {
        !matches!(self, Frame::Bicycle)
    }

    /// The wheels, front to back and left to right.
    pub const fn wheels(self) -> &'static [Wheel] {
        match self {
            Frame::Bicycle => &[Wheel::Front, Wheel::Rear],
            Frame::TricycleTwoRear => &[Wheel::Front, Wheel::RearLeft, Wheel::RearRight],
            Frame::TricycleTwoFront => &[Wheel::FrontLeft, Wheel::FrontRight, Wheel::Rear],
        }
    }
}

vocabulary! {
    /// The kind of bar.
    pub enum BarKind as "bar" {
        /// Road drop bar.
        Drop = "drop", "drop bar";
        /// Gravel drop bar: flared drops.
        FlaredDrop = "flared-drop", "flared drop bar";
        /// Base bar with extensions.
        Aero = "aero", "aero bar";
        /// Flat bar.
        Flat = "flat", "flat bar";
        /// Side grips beside a recumbent's seat.
        SideGrip = "side-grip", "side grips";
    }
}

vocabulary! {
    /// Where hands ride.
    pub enum HandPosition as "hand position" {
        /// On the straight top of a drop bar.
        Tops = "tops", "tops";
        /// On the hoods of the brake-shift levers.
        Hoods = "hoods", "hoods";
        /// In the drops.
        Drops = "drops", "drops";
        /// On the ends of the base bar.
        BaseBar = "base-bar", "base bar";
        /// On the extensions.
        Extensions = "extensions", "extensions";
        /// On a flat bar's grips.
        Grip = "grip", "grip";
        /// On the side grips.
        SideGrip = "side-grip", "side grip";
    }
}

impl BarKind {
    /// The hand positions it offers.
    pub const fn positions(self) -> &'static [HandPosition] {
        match self {
            BarKind::Drop | BarKind::FlaredDrop => {
                &[HandPosition::Tops, HandPosition::Hoods, HandPosition::Drops]
            }
            BarKind::Aero => &[HandPosition::BaseBar, HandPosition::Extensions],
            BarKind::Flat => &[HandPosition::Grip],
            BarKind::SideGrip => &[HandPosition::SideGrip],
        }
    }

    /// The positions taken as used while the rider has not been asked
    /// (common practice): those from which a bar is meant to be braked and
    /// shifted.
    pub const fn usual_positions(self) -> &'static [HandPosition] {
        match self {
            BarKind::Drop | BarKind::FlaredDrop => &[HandPosition::Hoods, HandPosition::Drops],
            _ => self.positions(),
        }
    }
}

/// A bar with its main measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    /// The kind.
    pub kind: BarKind,
    /// Width: centre to centre at the hoods of a drop bar, end to end else.
    pub width: Mm,
    /// How far a drop bar or extension reaches forward; zero for others.
    pub reach: Mm,
    /// How far a drop bar drops; zero for others.
    pub drop: Mm,
}

impl Bar {
    /// A bar with the measures of a plausible cockpit (common practice).
    pub fn usual(kind: BarKind) -> Bar {
        let (width, reach, drop) = match kind {
            BarKind::Drop => (420.0, 80.0, 125.0),
            BarKind::FlaredDrop => (440.0, 75.0, 120.0),
            BarKind::Aero => (400.0, 300.0, 30.0),
            BarKind::Flat => (740.0, 0.0, 0.0),
            BarKind::SideGrip => (600.0, 0.0, 0.0),
        };
        Bar {
            kind,
            width: Mm(width),
            reach: Mm(reach),
            drop: Mm(drop),
        }
    }
}
