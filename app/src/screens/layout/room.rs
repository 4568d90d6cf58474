//! The room there is for the drawing.

use leptos::html;
use leptos::prelude::*;
use leverwright_core::drawing::{Margin, Sheet};
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::ResizeObserver;

use crate::number::number;
use crate::settings::Lists;

/// Width of a list beside the drawing at the usual text size, CSS pixels; the
/// style sheet gives it as much.
const LIST_WIDTH: f64 = 288.0;

/// Greatest width of the drawing beside a list, likewise.
const DRAWING_WIDTH: f64 = 720.0;

/// The room for the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Room {
    /// Width, CSS pixels.
    width: f64,
    /// Height of the page's text, as a multiple of the usual 16 pixels.
    text: f64,
}

impl Room {
    /// Not measured yet.
    pub const UNKNOWN: Room = Room {
        width: 0.0,
        text: 1.0,
    };

    /// Whether all slots stand in one list beside the drawing: where that is
    /// asked for and there is room for both.
    pub fn has_list_beside(self, lists: Lists) -> bool {
        lists != Lists::BothSides && self.width >= Sheet::SLOTS_FROM * self.text
    }

    /// The sheet for this room: slots stand in the margins where they and their
    /// words fit beside the drawing. `None` until the room was measured.
    pub fn sheet(self, lists: Lists) -> Option<Sheet> {
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
            let usual = match self.width / self.text {
                ..800.0 => 168.0,
                ..960.0 => 200.0,
                _ => 212.0,
            };
            Margin::Slots {
                width: usual * self.text,
                height: 66.0 * self.text,
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
                text: text_size() / 16.0,
            });
        }
    };
    element.on_load(move |element| {
        measure();
        let measured = Closure::<dyn Fn()>::new(measure);
        let Ok(observer) = ResizeObserver::new(measured.as_ref().unchecked_ref()) else {
            return;
        };
        observer.observe(&element);
        // Both last as long as the view: they are no threads' business.
        let kept = StoredValue::new_local((observer, measured));
        on_cleanup(move || {
            kept.with_value(|(observer, _)| observer.disconnect());
        });
    });
}

/// The text size of the page, CSS pixels.
fn text_size() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.and_then(|size| number(size.trim_end_matches("px")))
        .unwrap_or(16.0)
}
