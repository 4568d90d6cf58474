//! The room there is for the drawing.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::drawing::{Margin, SLOT_GAP, Sheet};

use crate::number::number;
use crate::observe::observe;
use crate::settings::Lists;

/// Width of a list beside the drawing at the usual text size, CSS pixels; the
/// style sheet gives it as much.
const LIST_WIDTH: f64 = 288.0;

/// Greatest width of the drawing beside a list, likewise.
const DRAWING_WIDTH: f64 = 720.0;

/// Least height of a slot that shows its three lines, and the height at which
/// they stand at ease, likewise.
const SLOT_HEIGHT: (f64, f64) = (54.0, 66.0);

/// What stands above and below the drawing in a window, likewise: the heading
/// of the page, the tray, the line of the last act.
const TAKEN: f64 = 236.0;

/// Windows lower than this are telephones on their side, likewise; the style
/// sheet has the same.
const LOW: f64 = 480.0;

/// The room for the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Width, CSS pixels.
    width: f64,
    /// Height of the window, CSS pixels.
    window: f64,
    /// Height of the page's text, as a multiple of the usual 16 pixels.
    text: f64,
}

impl Room {
    /// Not measured yet.
    pub const UNKNOWN: Room = Room {
        width: 0.0,
        window: 0.0,
        text: 1.0,
    };

    /// Whether all slots stand in one list beside the drawing: where there is
    /// room for both, and that is asked for or the window is low.
    pub fn has_list_beside(self, lists: Lists) -> bool {
        if self.is_low() {
            self.width >= 26.0 * 16.0 * self.text
        } else {
            lists != Lists::BothSides && self.width >= Sheet::SLOTS_FROM * self.text
        }
    }

    /// Whether the window is a telephone's on its side.
    fn is_low(self) -> bool {
        self.window < LOW * self.text
    }

    /// The sheet for this room, with so many slots in a column: they stand in
    /// the margins where they and their words fit beside the drawing. `None`
    /// until the room was measured.
    pub fn sheet(self, lists: Lists, rows: usize) -> Option<Sheet> {
        if self.width <= 0.0 {
            return None;
        }
        if self.has_list_beside(lists) {
            return Some(Sheet {
                width: (self.width - LIST_WIDTH * self.text).min(DRAWING_WIDTH * self.text),
                margin: Margin::Balloons,
            });
        }
        let margin = if self.width >= Sheet::SLOTS_FROM * self.text {
            // The drawing keeps most of the room, the words of a slot what they need.
            let width = match self.width / self.text {
                ..800.0 => 176.0,
                ..960.0 => 184.0,
                _ => 196.0,
            };
            // The whole column is in view where the window allows it.
            let share = (self.window / self.text - TAKEN) / rows.max(1) as f64 - SLOT_GAP;
            let height = share.clamp(SLOT_HEIGHT.0, SLOT_HEIGHT.1);
            Margin::Slots {
                width: width * self.text,
                height: height * self.text,
            }
        } else {
            Margin::Balloons
        };
        Some(Sheet {
            width: self.width,
            margin,
        })
    }
}

/// Keeps `room` at the size of an element.
pub fn follow_size(element: NodeRef<html::Div>, room: RwSignal<Room>) {
    let measure = move || {
        if let Some(element) = element.get_untracked() {
            room.set(Room {
                // Whole pixels: a scroll bar's fraction is no reason to draw anew.
                width: element.get_bounding_client_rect().width().floor(),
                window: window_height(),
                text: text_size() / 16.0,
            });
        }
    };
    observe(element, measure);
}

fn window_height() -> f64 {
    let height = window().inner_height().ok();
    height
        .and_then(|height| height.as_f64())
        .unwrap_or_default()
}

/// The text size of the page, CSS pixels.
fn text_size() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.and_then(|size| number(size.trim_end_matches("px")))
        .unwrap_or(16.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn room(width: f64, window: f64) -> Room {
        Room {
            width,
            window,
            text: 1.0,
        }
    }

    #[test]
    fn a_column_of_six_slots_fits_a_window_of_a_small_laptop() {
        let sheet = room(900.0, 657.0).sheet(Lists::BothSides, 6);
        let Some(Margin::Slots { height, .. }) = sheet.map(|sheet| sheet.margin) else {
            panic!("there is room for slots");
        };
        assert!(6.0 * (height + SLOT_GAP) <= 657.0 - TAKEN, "{height}");
    }

    #[test]
    fn on_a_low_window_the_list_stands_beside_the_drawing() {
        assert!(room(700.0, 390.0).has_list_beside(Lists::BothSides));
        assert!(!room(700.0, 800.0).has_list_beside(Lists::BothSides));
        assert!(!room(358.0, 664.0).has_list_beside(Lists::Left));
    }
}
