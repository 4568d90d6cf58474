//! Icons: own, on a 24 by 24 grid, drawn with 2-unit strokes and round joins.
//!
//! Each is always shown beside a word.

use crate::finding::Severity;
use crate::function::Function;

/// What an SVG element's `viewBox` says for every icon.
pub const VIEW_BOX: &str = "0 0 24 24";

macro_rules! icons {
    ($( $(#[$meta:meta])* $icon:ident: $strokes:literal $(, $solid:literal)?; )+) => {
        /// An icon.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
        pub enum Icon { $( $(#[$meta])* $icon, )+ }

        impl Icon {
            /// Every icon.
            pub const ALL: &'static [Icon] = &[$( Icon::$icon, )+];

            /// SVG path data to stroke with 2 units, round caps and joins, no fill.
            pub const fn strokes(self) -> &'static str {
                match self { $( Icon::$icon => $strokes, )+ }
            }

            /// SVG path data to fill without a stroke; often empty.
            pub const fn solid(self) -> &'static str {
                match self { $( Icon::$icon => concat!($( $solid )?), )+ }
            }
        }
    };
}

icons! {
    /// Rear derailleur: a toothed disc.
    Rear: "M10.6 4.2L11.3 1.6L12.7 1.6L13.4 4.2L14.7 4.6L16.6 2.7L17.8 3.4L17.1 6L18 6.9L20.6 6.2L21.3 7.4L19.4 9.3L19.8 10.6L22.4 11.3L22.4 12.7L19.8 13.4L19.4 14.7L21.3 16.6L20.6 17.8L18 17.1L17.1 18L17.8 20.6L16.6 21.3L14.7 19.4L13.4 19.8L12.7 22.4L11.3 22.4L10.6 19.8L9.3 19.4L7.4 21.3L6.2 20.6L6.9 18L6 17.1L3.4 17.8L2.7 16.6L4.6 14.7L4.2 13.4L1.6 12.7L1.6 11.3L4.2 10.6L4.6 9.3L2.7 7.4L3.4 6.2L6 6.9L6.9 6L6.2 3.4L7.4 2.7L9.3 4.6ZM15.6 12a3.6 3.6 0 1 0-7.2 0a3.6 3.6 0 1 0 7.2 0Z";
    /// Front derailleur: a ring with its crank.
    Front: "M18 10.2a7.8 7.8 0 1 0-15.6 0a7.8 7.8 0 1 0 15.6 0ZM10.2 10.2L19.4 19.4M17 21.8L21.8 17", "M12.6 10.2a2.4 2.4 0 1 0-4.8 0a2.4 2.4 0 1 0 4.8 0Z";
    /// Ladder: two rails with rungs.
    Ladder: "M7 2.5V21.5M17 2.5V21.5M7 7H17M7 12H17M7 17H17";
    /// Head unit with its pages.
    Screen: "M7 3H17a2 2 0 0 1 2 2V19a2 2 0 0 1-2 2H7a2 2 0 0 1-2-2V5a2 2 0 0 1 2-2ZM8.5 7.5H15.5M8.5 11.5H12.5", "M10.1 17.3a1.1 1.1 0 1 0-2.2 0a1.1 1.1 0 1 0 2.2 0ZM13.1 17.3a1.1 1.1 0 1 0-2.2 0a1.1 1.1 0 1 0 2.2 0ZM16.1 17.3a1.1 1.1 0 1 0-2.2 0a1.1 1.1 0 1 0 2.2 0Z";
    /// Front light with its beam.
    Light: "M11 5.5C6.5 5.5 3 8 3 12S6.5 18.5 11 18.5ZM15 12H21.5M15 7.6L20.5 5M15 16.4L20.5 19";
    /// Harder, larger, up a rung: a chevron away from the rider.
    Harder: "M5 15L12 8L19 15";
    /// Easier, smaller, down a rung: a chevron towards the rider.
    Easier: "M5 9L12 16L19 9";
    /// Toggle: there and back.
    Toggle: "M5.5 9L12 2.8L18.5 9M5.5 15L12 21.2L18.5 15";
    /// A button left blank.
    Blank: "M20.5 12a8.5 8.5 0 1 0-17 0a8.5 8.5 0 1 0 17 0Z";
    /// A function that cannot be changed.
    Fixed: "M6 11H18a1.5 1.5 0 0 1 1.5 1.5V19.5a1.5 1.5 0 0 1-1.5 1.5H6a1.5 1.5 0 0 1-1.5-1.5V12.5A1.5 1.5 0 0 1 6 11ZM8 11V7.5a4 4 0 0 1 8 0V11";
    /// Copies another button.
    Copies: "M9 9H20V20H9ZM15 9V4H4V15H9";
    /// Finding: must fix. An octagon with a bar to stop at.
    MustFix: "M8 2H16L22 8V16L16 22H8L2 16V8ZM7 12H17";
    /// Finding: check. A triangle with a stroke and a dot.
    Check: "M12 2.5L22.5 21H1.5ZM12 9V15M12 17.5V18.2";
    /// Finding: good to know. A circle with an i.
    GoodToKnow: "M22 12a10 10 0 1 0-20 0a10 10 0 1 0 20 0ZM12 6.5V7.5M12 10.5V17.5";
    /// Undo.
    Undo: "M8.5 4L3.5 9L8.5 14M4 9H14.5a5.5 5.5 0 0 1 0 11H9";
    /// Redo.
    Redo: "M15.5 4L20.5 9L15.5 14M20 9H9.5a5.5 5.5 0 0 0 0 11H15";
    /// Print.
    Print: "M7 8V3H17V8M7 17H4.5A1.5 1.5 0 0 1 3 15.5V9.5A1.5 1.5 0 0 1 4.5 8H19.5A1.5 1.5 0 0 1 21 9.5V15.5A1.5 1.5 0 0 1 19.5 17H17M7 14H17V21H7Z";
    /// Add.
    Plus: "M12 4V20M4 12H20";
    /// Less.
    Minus: "M4 12H20";
    /// A hand.
    Hand: "M8 13V5.5a1.6 1.6 0 0 1 3.2 0V11M11.2 10.5V3.8a1.6 1.6 0 0 1 3.2 0V11M14.4 11V5.2a1.6 1.6 0 0 1 3.2 0V12M17.6 9.5a1.5 1.5 0 0 1 3 0V14.5C20.6 19 18 22 14 22C10.5 22 9 20.3 7.4 17.8L3.6 12.6A1.7 1.7 0 0 1 6.4 10.8L8 13";
    /// A bell.
    Bell: "M3.5 17.5C3.5 11 7 7.5 12 7.5S20.5 11 20.5 17.5ZM12 7.5V4.5M9.5 4.5H14.5M17 17.5L20 21.5";
    /// A brake: a flat-bar lever with its blade.
    Brake: "M2.5 7.5H11M4.5 7.5V3.5H9V7.5M6.8 7.5C7 11.5 10 12.5 13.5 13.5S20 16.2 21.5 19.5";
    /// A plug on its wire.
    Plug: "M8 3V8M16 3V8M5.5 8H18.5V11.5a6.5 6.5 0 0 1-13 0ZM12 18V22";
    /// A plug pulled out.
    Unplug: "M8 3V8M16 3V8M5.5 8H18.5V11.5a6.5 6.5 0 0 1-13 0ZM12 18V22M3 21L21 3";
    /// Edit a name or note.
    Pencil: "M4 20L5 15.5L16.2 4.3a2 2 0 0 1 2.8 0L19.7 5a2 2 0 0 1 0 2.8L8.5 19ZM14 6.5L17.5 10";
    /// Delete.
    Trash: "M4 6.5H20M9 6.5V3.5H15V6.5M6 6.5L7 20.5H17L18 6.5M10 10.5V16.5M14 10.5V16.5";
    /// Save as a file.
    Download: "M12 3V15M6.5 10L12 15.5L17.5 10M4 20.5H20";
    /// Open a file.
    Upload: "M12 15.5V3.5M6.5 8.5L12 3L17.5 8.5M4 20.5H20";
    /// Done, yes.
    Tick: "M4 12.5L9.5 18L20 6.5";
    /// Close, no.
    Cross: "M5 5L19 19M19 5L5 19";
    /// Exchange two.
    Swap: "M4 8H19M15 4L19 8L15 12M20 16H5M9 12L5 16L9 20";
    /// To the other side.
    Mirror: "M12 2.5V5M12 8V11M12 14V17M12 20V21.5M8.5 6V18L2.5 18ZM15.5 6V18L21.5 18Z";
    /// A copy of something.
    Duplicate: "M9 9H20V20H9ZM5.5 15H4V4H15V5.5";
    /// A page of paper.
    Page: "M6 2.5H14L19 7.5V21.5H6ZM14 2.5V7.5H19M9 12.5H16M9 16.5H16";
}

impl Icon {
    /// The mark of a severity; the three differ in shape, not only in colour.
    pub const fn of_severity(severity: Severity) -> Icon {
        match severity {
            Severity::MustFix => Icon::MustFix,
            Severity::Check => Icon::Check,
            Severity::GoodToKnow => Icon::GoodToKnow,
        }
    }

    /// What a function works on, and which way.
    pub const fn of_function(function: Function) -> (Icon, Option<Icon>) {
        match function {
            Function::RearHarder => (Icon::Rear, Some(Icon::Harder)),
            Function::RearEasier => (Icon::Rear, Some(Icon::Easier)),
            Function::FrontLarger => (Icon::Front, Some(Icon::Harder)),
            Function::FrontSmaller => (Icon::Front, Some(Icon::Easier)),
            Function::FrontToggle => (Icon::Front, Some(Icon::Toggle)),
            Function::RungUp => (Icon::Ladder, Some(Icon::Harder)),
            Function::RungDown => (Icon::Ladder, Some(Icon::Easier)),
            Function::NextScreen => (Icon::Screen, None),
            Function::Lights => (Icon::Light, None),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Vocabulary;
    use kurbo::{BezPath, Shape};

    fn path(d: &str) -> BezPath {
        BezPath::from_svg(d).expect("path data is SVG")
    }

    #[test]
    fn every_icon_fits_its_grid_with_its_stroke() {
        for icon in Icon::ALL {
            let lines = path(icon.strokes()).bounding_box().inflate(1.0, 1.0);
            let ink = match icon.solid() {
                "" => lines,
                solid => lines.union(path(solid).bounding_box()),
            };
            // A mitre or two may touch the edge.
            assert!(ink.x0 >= -0.5 && ink.y0 >= -0.5, "{icon:?}: {ink}");
            assert!(ink.x1 <= 24.5 && ink.y1 <= 24.5, "{icon:?}: {ink}");
            assert!(ink.width().max(ink.height()) >= 14.0, "{icon:?}: {ink}");
        }
    }

    #[test]
    fn no_two_icons_are_alike() {
        for (i, a) in Icon::ALL.iter().enumerate() {
            for b in &Icon::ALL[i + 1..] {
                let same = (a.strokes(), a.solid()) == (b.strokes(), b.solid());
                assert!(!same, "{a:?} {b:?}");
            }
        }
    }

    #[test]
    fn every_function_has_icons_of_its_own() {
        let mut seen = Vec::new();
        for function in Function::ALL {
            let icons = Icon::of_function(*function);
            assert!(!seen.contains(&icons), "{function}");
            seen.push(icons);
        }
    }

    #[test]
    fn which_way_is_told_by_strokes_alone() {
        let ways = Function::ALL.iter().filter_map(|f| Icon::of_function(*f).1);
        assert!(ways.clone().count() > 0);
        assert_eq!(ways.map(Icon::solid).collect::<String>(), "");
    }

    #[test]
    fn severities_differ_in_outline() {
        let outlines: Vec<_> = Severity::ALL
            .iter()
            .map(|s| {
                let d = Icon::of_severity(*s).strokes();
                d.split('Z').next().unwrap_or_default().to_owned()
            })
            .collect();
        assert_ne!(outlines[0], outlines[1]);
        assert_ne!(outlines[1], outlines[2]);
        assert_ne!(outlines[0], outlines[2]);
    }
}
