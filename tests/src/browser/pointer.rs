//! Mouse and finger, as the driver's own input: the page gets the events of a real one.

use super::{Browser, Element};
use serde_json::{Value, json};
use thirtyfour::common::command::{Actions, Command};

/// A place in the viewport, in CSS pixels from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
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
}

/// A mouse or a finger. Its place and whether it is down last from one act to the next.
pub struct Pointer<'a> {
    browser: &'a Browser,
    kind: &'static str,
}

/// How many moves make up a drag: enough to cross what lies between.
const MOVES: u32 = 8;

impl Browser {
    /// The mouse.
    pub fn mouse(&self) -> Pointer<'_> {
        Pointer {
            browser: self,
            kind: "mouse",
        }
    }

    /// One finger on a touch screen.
    pub fn finger(&self) -> Pointer<'_> {
        Pointer {
            browser: self,
            kind: "touch",
        }
    }
}

impl Pointer<'_> {
    /// Presses and releases in the middle of an element.
    #[track_caller]
    pub fn tap(&self, element: &Element) {
        element.scroll_into_view();
        self.tap_at(element.centre());
    }

    /// Presses and releases.
    #[track_caller]
    pub fn tap_at(&self, place: Point) {
        self.perform(vec![moved(place, 0), down(), up()]);
    }

    /// Moves over the middle of an element without pressing.
    #[track_caller]
    pub fn hover(&self, element: &Element) {
        element.scroll_into_view();
        self.perform(vec![moved(element.centre(), 0)]);
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
        self.move_to(from, to);
        self.release();
    }

    /// Puts it down, and leaves it there.
    #[track_caller]
    pub fn press(&self, place: Point) {
        self.perform(vec![moved(place, 0), down()]);
    }

    /// Moves in steps, as it is: down or not.
    #[track_caller]
    pub fn move_to(&self, from: Point, to: Point) {
        let step = |index: u32| {
            let share = f64::from(index) / f64::from(MOVES);
            moved(
                from.offset((to.x - from.x) * share, (to.y - from.y) * share),
                10,
            )
        };
        self.perform((1..=MOVES).map(step).collect());
    }

    /// Lifts it.
    #[track_caller]
    pub fn release(&self) {
        self.perform(vec![up()]);
    }

    #[track_caller]
    fn perform(&self, actions: Vec<Value>) {
        let source = json!([{
            "type": "pointer",
            "id": self.kind,
            "parameters": { "pointerType": self.kind },
            "actions": actions,
        }]);
        let command = Command::PerformActions(Actions::from(source));
        self.browser.run(
            &format!("move the {} pointer", self.kind),
            self.browser.session().cmd(command),
        );
    }
}

fn moved(place: Point, milliseconds: u32) -> Value {
    json!({
        "type": "pointerMove",
        "origin": "viewport",
        "x": place.x.round() as i64,
        "y": place.y.round() as i64,
        "duration": milliseconds,
    })
}

fn down() -> Value {
    json!({ "type": "pointerDown", "button": 0 })
}

fn up() -> Value {
    json!({ "type": "pointerUp", "button": 0 })
}
