//! Other work for a thumb on the bar.

use super::BarSide;
use crate::units::Point;

vocabulary! {
    /// What else a thumb does.
    pub enum ThumbWorkKind as "thumb work" {
        /// Rings the bell.
        Bell = "bell", "bell";
        /// Changes the assist level.
        AssistLevel = "assist-level", "assist level";
        /// Drops the saddle.
        Dropper = "dropper", "dropper";
        /// Works the indicators.
        Indicators = "indicators", "indicators";
    }
}

/// Something else on the bar for a thumb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ThumbWork {
    /// What it is.
    pub kind: ThumbWorkKind,
    /// The side of the bar.
    pub side: BarSide,
    /// Where it sits.
    pub at: Point,
}
