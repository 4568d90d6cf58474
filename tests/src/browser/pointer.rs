//! Mouse and finger, as input to the browser itself: the page gets the events of a real one.
//!
//! Both go by the browser's own protocol. The driver's input commands forget a finger that is
//! down from one command to the next, so that nothing could be looked at during a drag.

use super::{Browser, Element};
use serde_json::{Value, json};
use std::cell::Cell;

/// A place in the viewport, in CSS pixels from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

impl Point {
    /// The place this far away from here.
    pub fn offset(self, right: f64, down: f64) -> Self {
        Self {
            x: self.x + right,
            y: self.y + down,
        }
    }

    /// The place at this share of the way from here to there.
    fn towards(self, end: Self, share: f64) -> Self {
        self.offset((end.x - self.x) * share, (end.y - self.y) * share)
    }
}

/// A mouse or a finger.
pub struct Pointer<'a> {
    browser: &'a Browser,
    kind: Kind,
    place: Cell<Point>,
    is_down: Cell<bool>,
}

#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Mouse,
    Finger,
}

/// How many moves make up a way: enough to cross what lies between.
const MOVES: u32 = 8;

impl Browser {
    /// The mouse, its button up.
    pub fn mouse(&self) -> Pointer<'_> {
        Pointer::new(self, Kind::Mouse)
    }

    /// One finger over a touch screen.
    pub fn finger(&self) -> Pointer<'_> {
        Pointer::new(self, Kind::Finger)
    }
}

impl<'a> Pointer<'a> {
    fn new(browser: &'a Browser, kind: Kind) -> Self {
        Self {
            browser,
            kind,
            place: Cell::default(),
            is_down: Cell::new(false),
        }
    }

    /// Presses and releases in the middle of an element.
    #[track_caller]
    pub fn tap(&self, element: &Element) {
        element.scroll_into_view();
        self.tap_at(element.centre());
    }

    /// Presses and releases.
    #[track_caller]
    pub fn tap_at(&self, place: Point) {
        self.press(place);
        self.release();
    }

    /// Moves over the middle of an element without pressing.
    #[track_caller]
    pub fn hover(&self, element: &Element) {
        element.scroll_into_view();
        self.move_to(element.centre());
    }

    /// Drags from the middle of one element to the middle of another. Both have to fit into the
    /// viewport together.
    #[track_caller]
    pub fn drag(&self, from: &Element, to: &Element) {
        to.scroll_into_view();
        from.scroll_into_view();
        self.drag_between(from.centre(), to.centre());
    }

    /// Drags from one place to another, in steps.
    #[track_caller]
    pub fn drag_between(&self, from: Point, to: Point) {
        self.press(from);
        self.move_to(to);
        self.release();
    }

    /// Puts it down, and leaves it there.
    #[track_caller]
    pub fn press(&self, place: Point) {
        if self.kind == Kind::Mouse {
            self.mouse_event("mouseMoved", place);
        }
        self.place.set(place);
        self.is_down.set(true);
        match self.kind {
            Kind::Mouse => self.mouse_event("mousePressed", place),
            Kind::Finger => self.touch_event("touchStart", json!([place_of(place)])),
        }
    }

    /// Moves there in steps, down or not. A finger that is up only changes its place.
    #[track_caller]
    pub fn move_to(&self, place: Point) {
        let start = self.place.replace(place);
        for step in 1..=MOVES {
            let at = start.towards(place, f64::from(step) / f64::from(MOVES));
            match self.kind {
                Kind::Mouse => self.mouse_event("mouseMoved", at),
                Kind::Finger if self.is_down.get() => {
                    self.touch_event("touchMove", json!([place_of(at)]))
                }
                Kind::Finger => {}
            }
        }
    }

    /// Lifts it.
    #[track_caller]
    pub fn release(&self) {
        match self.kind {
            Kind::Mouse => self.mouse_event("mouseReleased", self.place.get()),
            Kind::Finger => self.touch_event("touchEnd", json!([])),
        }
        self.is_down.set(false);
    }

    /// What the system does when something takes the touch away: a call, a notice.
    #[track_caller]
    pub fn interrupt(&self) {
        assert!(self.kind == Kind::Finger, "only a touch can be taken away");
        self.touch_event("touchCancel", json!([]));
        self.is_down.set(false);
    }

    #[track_caller]
    fn mouse_event(&self, kind: &str, place: Point) {
        let down = self.is_down.get();
        let event = json!({
            "type": kind,
            "x": place.x,
            "y": place.y,
            "button": if kind == "mouseMoved" && !down { "none" } else { "left" },
            "buttons": u8::from(down && kind != "mouseReleased"),
            "clickCount": u8::from(kind != "mouseMoved"),
        });
        self.browser.cdp("Input.dispatchMouseEvent", event);
    }

    #[track_caller]
    fn touch_event(&self, kind: &str, touches: Value) {
        let event = json!({ "type": kind, "touchPoints": touches });
        self.browser.cdp("Input.dispatchTouchEvent", event);
    }
}

fn place_of(place: Point) -> Value {
    json!({ "x": place.x, "y": place.y })
}
