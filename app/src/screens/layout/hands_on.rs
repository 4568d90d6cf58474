//! Pointer and keys on the bench: what the browser reports becomes gestures.

use std::time::Duration;

use leptos::ev::{FocusEvent, KeyboardEvent, MouseEvent, PointerEvent, TouchEvent};
use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use wasm_bindgen::JsCast;
use web_sys::{Element, EventTarget, HtmlElement};

use super::bench::Bench;
use super::walk::{Step, Stop, in_order, walk};
use crate::gesture::{At, HOLD, Load, Spot, Tapped};

/// A pointer goes down on what can be carried. A mouse drags it at once; a
/// finger or a pen holds it first, so that a swipe scrolls.
pub fn pointer_down(bench: Bench, event: &PointerEvent) {
    let is_main = event.button() == 0 && event.is_primary();
    let start = is_main.then(|| carried_at(event.target())).flatten();
    let start = start.filter(|(_, load)| bench.can_drag(*load));
    let Some((element, load)) = start else {
        return bench.pointer_down(None);
    };
    // Fails only for a pointer that is up again.
    let _ = element.set_pointer_capture(event.pointer_id());
    let pointer = event.pointer_id();
    if event.pointer_type() == "mouse" {
        return bench.pointer_down(Some((pointer, load, at(event))));
    }
    bench.finger_down(pointer, load, at(event));
    let ripe = move || {
        if !bench.is_gone() && bench.finger_held(pointer) {
            scroll_while_dragging(bench, pointer, Kept::AtStart);
        }
    };
    set_timeout(ripe, Duration::from_millis(HOLD));
}

/// A finger that carries does not scroll.
pub fn touch_move(bench: Bench, event: &TouchEvent) {
    if bench.is_dragging() {
        event.prevent_default();
    }
}

/// A pointer moves. While it drags near the window's edge, the page scrolls.
pub fn pointer_move(bench: Bench, event: &PointerEvent) {
    if bench.is_pressed() {
        let at = at(event);
        let was_dragging = bench.is_dragging();
        bench.pointer_move(event.pointer_id(), at, spot_at(at));
        if !was_dragging && bench.is_dragging() {
            scroll_while_dragging(bench, event.pointer_id(), Kept::AtStart);
        }
    }
}

/// A pointer goes up.
pub fn pointer_up(bench: Bench, event: &PointerEvent) {
    if bench.is_pressed() {
        bench.pointer_up(event.pointer_id());
    }
}

/// Something is clicked: by pointer, key, voice or switch.
pub fn click(bench: Bench, event: &MouseEvent) {
    let Some((element, load)) = carried_at(event.target()) else {
        return;
    };
    let by_pointer = event.detail() > 0;
    let tapped = bench.tap(load, by_pointer);
    // Without a pointer the way to the buttons is long: go there at once.
    if let (Tapped::PickedUp(load), false, Some(_)) = (tapped, by_pointer, in_tray(&element))
        && let Some(id) = bench.stop.get_untracked()
    {
        focus_slot(id);
        bench.say_answer(id, Some(load));
    }
}

/// A key goes down on a slot or on the tray.
pub fn key_down(bench: Bench, event: &KeyboardEvent) {
    let Some((element, load)) = carried_at(event.target()) else {
        return;
    };
    // A key kept pressed would pick up and put down for as long as it is.
    if event.repeat() && matches!(event.key().as_str(), "Enter" | " ") {
        return event.prevent_default();
    }
    if event.ctrl_key() || event.alt_key() || event.meta_key() {
        return;
    }
    let done = match load {
        Load::Button(id) => key_on_button(bench, id, &event.key()),
        Load::Function(_) | Load::Blank => key_in_tray(&element, &event.key()),
    };
    if done {
        event.prevent_default();
    }
}

fn key_on_button(bench: Bench, id: ButtonId, key: &str) -> bool {
    match key {
        "Delete" | "Backspace" => bench.clear(id),
        "m" | "M" => bench.menu.set(Some(id)),
        key => match Step::of_key(key) {
            Some(step) => {
                if let Some(to) = walk(&stops(bench), id, step) {
                    focus_slot(to);
                }
            }
            None => return false,
        },
    }
    true
}

fn key_in_tray(element: &Element, key: &str) -> bool {
    let Some(step) = Step::of_key(key) else {
        return false;
    };
    let Some(tray) = in_tray(element) else {
        return false;
    };
    let Ok(items) = tray.query_selector_all("[data-load]") else {
        return false;
    };
    let count = items.length();
    let at = (0..count).find(|at| {
        items
            .item(*at)
            .is_some_and(|i| i.is_same_node(Some(element)))
    });
    let at = at.unwrap_or(0);
    let to = match step {
        Step::First => 0,
        Step::Last => count - 1,
        Step::Left | Step::Up => (at + count - 1) % count,
        Step::Right | Step::Down => (at + 1) % count,
    };
    if let Some(item) = items
        .item(to)
        .and_then(|i| i.dyn_into::<HtmlElement>().ok())
    {
        let _ = item.focus();
    }
    true
}

/// Escape lets go, wherever the focus is; what came from the tray by key leads
/// the focus back there.
pub fn escape(bench: Bench) {
    let on_slot = focused_slot().is_some();
    if let (Some(load @ (Load::Function(_) | Load::Blank)), true) = (bench.let_go(), on_slot)
        && let Some(item) = by_id(&item_id(load))
    {
        let _ = item.focus();
    }
}

/// The focus comes to a slot or to an item of the tray.
pub fn focus_in(bench: Bench, event: &FocusEvent) {
    match carried_at(event.target()) {
        Some((_, Load::Button(id))) => {
            bench.current.set(Some(id));
            bench.say_answer(id, None);
        }
        Some((_, load)) => bench.current_item.set(Some(load)),
        None => {}
    }
}

/// The second mouse button, or the menu key: the button's own menu.
pub fn context_menu(bench: Bench, event: &MouseEvent) {
    if bench.is_pressed() {
        event.prevent_default();
    } else if let Some((_, Load::Button(id))) = carried_at(event.target()) {
        event.prevent_default();
        bench.menu.set(Some(id));
    }
}

/// The name of a slot's element.
pub fn slot_id(id: ButtonId) -> String {
    format!("slot-{id}")
}

/// The name of a tray item's element.
pub fn item_id(load: Load) -> String {
    format!("tray-{}", load.key())
}

/// Moves the focus to a button's slot.
pub fn focus_slot(id: ButtonId) {
    if let Some(slot) = by_id(&slot_id(id)) {
        let _ = slot.focus();
    }
}

/// The buttons as the arrow keys walk them: by the slots' places in the
/// margins, or in the order of the list under the drawing.
fn stops(bench: Bench) -> Vec<Stop> {
    let picture = bench.picture.get_untracked().filter(|p| p.has_slots);
    bench.slots.with_untracked(|slots| {
        let stops = slots.iter().map(|slot| {
            let mark = picture.as_ref().and_then(|p| p.button(slot.button));
            Stop {
                button: slot.button,
                side: slot.side,
                down: mark.map_or(slot.number as f64, |mark| mark.slot.center().y),
            }
        });
        in_order(stops.collect())
    })
}

fn at(event: &PointerEvent) -> At {
    At {
        x: f64::from(event.client_x()),
        y: f64::from(event.client_y()),
    }
}

/// The place under a point of the window. Capture sends a drag's events to
/// where it began, so the place is looked up by geometry.
fn spot_at(at: At) -> Option<Spot> {
    let element = document().element_from_point(at.x as f32, at.y as f32)?;
    let marked = element
        .closest("[data-button], [data-spot]")
        .ok()
        .flatten()?;
    match marked.get_attribute("data-button") {
        Some(id) => ButtonId::parse(&id).map(Spot::Button),
        None => Spot::from_key(&marked.get_attribute("data-spot")?),
    }
}

/// The page moves along while something is kept at the upper or lower edge of
/// what is seen of it.
fn scroll_while_dragging(bench: Bench, pointer: i32, kept: Kept) {
    const EDGE: f64 = 48.0;
    const STEP: f64 = 9.0;
    const LEAST: u32 = 12;
    request_animation_frame(move || {
        if bench.is_gone() {
            return;
        }
        let Some(at) = untrack(|| bench.drag_at()) else {
            return;
        };
        let (top, bottom) = seen();
        let edge = EDGE.min((bottom - top) / 4.0);
        let by = match at.y {
            y if (top..top + edge).contains(&y) => -STEP,
            y if y > bottom - edge && !is_over_tray(at) => STEP,
            _ => 0.0,
        };
        let is_amid = (top + edge..=bottom - edge).contains(&at.y);
        let kept = match kept {
            _ if is_amid => Kept::Frames(0),
            Kept::AtStart => Kept::AtStart,
            Kept::Frames(_) if by == 0.0 => Kept::Frames(0),
            Kept::Frames(frames) => Kept::Frames(frames + 1),
        };
        if matches!(kept, Kept::Frames(frames) if frames > LEAST) {
            window().scroll_by_with_x_and_y(0.0, by);
            bench.pointer_move(pointer, at, spot_at(at));
        }
        scroll_while_dragging(bench, pointer, kept);
    });
}

/// How long a drag is kept at an edge.
#[derive(Clone, Copy)]
enum Kept {
    /// It has not been away from the edges yet: picked up at one it rests there, and from the tray it
    /// passes one, and the page is not to run away under it.
    AtStart,
    /// For so many frames: what only passes by moves nothing.
    Frames(u32),
}

/// Where the page is seen between what stays above and below, from the top of
/// the window.
fn seen() -> (f64, f64) {
    let height = window().inner_height().ok().and_then(|h| h.as_f64());
    let height = height.unwrap_or_default();
    let Ok(stay) = document().query_selector_all(".stays") else {
        return (0.0, height);
    };
    let stay = (0..stay.length()).filter_map(|at| stay.item(at)?.dyn_into::<Element>().ok());
    stay.map(|element| element.get_bounding_client_rect())
        .filter(|area| area.height() > 0.0 && area.bottom() > 0.0 && area.top() < height)
        .fold((0.0, height), |(top, bottom), area| {
            match area.top() > height / 2.0 {
                true => (top, area.top().min(bottom)),
                false => (area.bottom().max(top), bottom),
            }
        })
}

fn is_over_tray(at: At) -> bool {
    let under = document().element_from_point(at.x as f32, at.y as f32);
    under.is_some_and(|under| in_tray(&under).is_some())
}

/// The element that can be carried, or tapped, around an event's target: an
/// item of the tray, the face of a slot, or a button of the drawing.
fn carried_at(target: Option<EventTarget>) -> Option<(Element, Load)> {
    let element = closest(target, "[data-load], .drawn [data-button]")?;
    let load = match element.get_attribute("data-button") {
        Some(id) => Load::Button(ButtonId::parse(&id)?),
        None => Load::from_key(&element.get_attribute("data-load")?)?,
    };
    Some((element, load))
}

fn closest(target: Option<EventTarget>, selector: &str) -> Option<Element> {
    let element = target?.dyn_into::<Element>().ok()?;
    element.closest(selector).ok().flatten()
}

fn in_tray(element: &Element) -> Option<Element> {
    element.closest(".tray").ok().flatten()
}

fn focused_slot() -> Option<Element> {
    let focused = document().active_element()?;
    focused.closest(".slot").ok().flatten()
}

fn by_id(id: &str) -> Option<HtmlElement> {
    document().get_element_by_id(id)?.dyn_into().ok()
}
