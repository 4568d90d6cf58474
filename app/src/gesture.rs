//! How functions are carried to buttons, without a page: by dragging, and by
//! picking up and putting down.
//!
//! One press at a time: a second finger is ignored. Everything acts on release,
//! and what was not put on a place changes nothing.

use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::edit::{Edit, LayoutEdit};
use leverwright_core::function::Function;

/// What is carried.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Load {
    /// A function from the tray.
    Function(Function),
    /// Nothing, to leave a button blank.
    Blank,
    /// Everything on a button.
    Button(ButtonId),
}

impl Load {
    /// The name by which the page marks what can be carried.
    pub fn key(self) -> String {
        match self {
            Load::Function(function) => format!("function:{}", function.code()),
            Load::Blank => "blank".into(),
            Load::Button(id) => format!("button:{id}"),
        }
    }

    /// What the page marked so.
    pub fn from_key(key: &str) -> Option<Load> {
        match key.split_once(':') {
            None => (key == "blank").then_some(Load::Blank),
            Some(("function", code)) => Function::from_code(code).map(Load::Function),
            Some(("button", id)) => ButtonId::parse(id).map(Load::Button),
            Some(_) => None,
        }
    }
}

/// Where a load can be put down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// On a button, its slot or its balloon.
    Button(ButtonId),
    /// Back in the tray.
    Tray,
    /// Beside the drawing and the tray.
    Away,
}

impl Spot {
    /// The place that the page marks so, buttons apart.
    pub fn from_key(key: &str) -> Option<Spot> {
        match key {
            "tray" => Some(Spot::Tray),
            "away" => Some(Spot::Away),
            _ => None,
        }
    }
}

/// The change that putting a load down means; `None` where it means nothing.
pub fn put(load: Load, spot: Spot) -> Option<Edit> {
    let edit = match (load, spot) {
        (Load::Function(function), Spot::Button(to)) => LayoutEdit::Tap(to, Some(function)),
        (Load::Button(from), Spot::Button(to)) if from != to => LayoutEdit::Swap(from, to),
        (Load::Button(from), Spot::Tray | Spot::Away) => LayoutEdit::ClearButton(from),
        (Load::Blank, Spot::Button(to)) => LayoutEdit::ClearButton(to),
        (Load::Button(_), Spot::Button(_))
        | (Load::Function(_) | Load::Blank, Spot::Tray | Spot::Away) => return None,
    };
    Some(Edit::Layout(edit))
}

/// A place in the window, CSS pixels from its top left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct At {
    /// To the right.
    pub x: f64,
    /// Down.
    pub y: f64,
}

/// How far a pressed pointer moves before it drags, in CSS pixels: more than
/// an unsteady press (our judgement).
pub const SLACK: f64 = 8.0;

/// How long a finger is held before it carries, in milliseconds: longer than a
/// tap or the start of a swipe, shorter than the browser's own long press (our
/// judgement).
pub const HOLD: u64 = 350;

/// A pointer that is down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drag {
    pointer: i32,
    load: Load,
    from: At,
    /// Where it is now.
    pub at: At,
    /// The place under it; `None` between places.
    pub over: Option<Spot>,
    /// Whether it is still to be held before it carries; moving on before that
    /// scrolls.
    waits: bool,
    /// Whether it went far enough, or was held long enough, to carry.
    pub carries: bool,
}

/// What the pointer and the keys are in the middle of.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Gesture {
    held: Option<Load>,
    drag: Option<Drag>,
    /// A drag has just ended; the click that browsers send after it is not a
    /// tap.
    ended: bool,
}

/// What a tap came to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tapped {
    /// Nothing was picked up, let go or put down.
    Nothing,
    /// The load is picked up.
    PickedUp(Load),
    /// The load is let go.
    LetGo(Load),
    /// The load is put down.
    PutDown(Load, Spot),
}

impl Gesture {
    /// What is carried, dragged or picked up.
    pub fn load(&self) -> Option<Load> {
        self.dragged().map(|drag| drag.load).or(self.held)
    }

    /// The drag, once it carries.
    pub fn dragged(&self) -> Option<&Drag> {
        self.drag.as_ref().filter(|drag| drag.carries)
    }

    /// Whether a pointer is down on something that can be carried.
    pub fn is_pressed(&self) -> bool {
        self.drag.is_some()
    }

    /// A pointer goes down somewhere: the click after the last drag is past.
    pub fn settle(&mut self) {
        self.ended = false;
    }

    /// Whether a pointer's click is the one that browsers send after a drag,
    /// and so no tap.
    pub fn ends_with_click(&mut self) -> bool {
        std::mem::take(&mut self.ended)
    }

    /// A pointer goes down on something that can be carried.
    pub fn press(&mut self, pointer: i32, load: Load, at: At) {
        self.settle();
        if self.drag.is_none() {
            self.drag = Some(Drag {
                pointer,
                load,
                from: at,
                at,
                over: None,
                waits: false,
                carries: false,
            });
        }
    }

    /// A finger goes down on something that can be carried: it carries once it
    /// was [held](HOLD), so that a swipe scrolls.
    pub fn press_to_hold(&mut self, pointer: i32, load: Load, at: At) {
        self.press(pointer, load, at);
        if let Some(drag) = self.drag.as_mut().filter(|d| d.pointer == pointer) {
            drag.waits = true;
        }
    }

    /// A finger was held for [`HOLD`]; whether it carries from now on.
    pub fn held(&mut self, pointer: i32) -> bool {
        let waiting = |drag: &&mut Drag| drag.pointer == pointer && drag.waits;
        let Some(drag) = self.drag.as_mut().filter(waiting) else {
            return false;
        };
        drag.waits = false;
        drag.carries = true;
        self.held = None;
        true
    }

    /// A pointer that is down moves; whether it carries from now on.
    pub fn move_to(&mut self, pointer: i32, at: At, over: Option<Spot>) -> bool {
        let Some(drag) = self.drag.as_mut().filter(|d| d.pointer == pointer) else {
            return false;
        };
        drag.at = at;
        drag.over = over;
        let far = (at.x - drag.from.x).hypot(at.y - drag.from.y) > SLACK;
        if drag.waits {
            if far {
                self.drag = None;
            }
            return false;
        }
        let lifted = far && !drag.carries;
        if lifted {
            drag.carries = true;
            self.held = None;
        }
        lifted
    }

    /// A pointer goes up. What was carried and the place it is put on; `None`
    /// where nothing was carried, and a click will tell the rest.
    pub fn release(&mut self, pointer: i32) -> Option<(Load, Option<Spot>)> {
        let drag = self.drag.take_if(|drag| drag.pointer == pointer)?;
        self.ended = drag.carries;
        drag.carries.then_some((drag.load, drag.over))
    }

    /// Everything is let go: by Escape, or when the browser takes the pointer
    /// away. What was carried, if anything.
    pub fn let_go(&mut self) -> Option<Load> {
        let load = self.load();
        self.ended = self.dragged().is_some();
        self.drag = None;
        self.held = None;
        load
    }

    /// The browser takes a pointer away; what it was dragging is let go.
    pub fn lose(&mut self, pointer: i32) {
        self.drag.take_if(|drag| drag.pointer == pointer);
    }

    /// Something is tapped, clicked or pressed by a key. Tapping a function and
    /// a button, in either order, gives the button the function; tapping two
    /// buttons swaps them; tapping the same thing twice lets it go.
    pub fn tap(&mut self, tapped: Load) -> Tapped {
        match (self.held.take(), tapped) {
            (Some(held), same) if held == same => Tapped::LetGo(held),
            (Some(Load::Button(button)), given @ (Load::Function(_) | Load::Blank)) => {
                Tapped::PutDown(given, Spot::Button(button))
            }
            (Some(held), Load::Button(button)) => Tapped::PutDown(held, Spot::Button(button)),
            (None | Some(Load::Function(_) | Load::Blank), load) => {
                self.held = Some(load);
                Tapped::PickedUp(load)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use leverwright_core::cockpit::{ButtonPart, ControlId};

    const EASIER: Load = Load::Function(Function::RearEasier);
    const HARDER: Load = Load::Function(Function::RearHarder);
    const START: At = At { x: 100.0, y: 100.0 };

    fn id(control: u16) -> ButtonId {
        ButtonId {
            control: ControlId(control),
            part: ButtonPart::OuterPaddle,
        }
    }

    fn button(control: u16) -> Load {
        Load::Button(id(control))
    }

    fn away_from(start: At, by: f64) -> At {
        At {
            x: start.x + by,
            y: start.y,
        }
    }

    #[test]
    fn a_drag_carries_only_beyond_the_slack() {
        let mut gesture = Gesture::default();
        gesture.press(1, EASIER, START);
        assert!(!gesture.move_to(1, away_from(START, SLACK), None));
        assert_eq!(gesture.load(), None);
        assert_eq!(gesture.release(1), None);
        assert_eq!(gesture.tap(EASIER), Tapped::PickedUp(EASIER));

        gesture.press(1, HARDER, START);
        assert!(gesture.move_to(1, away_from(START, SLACK + 0.1), None));
        assert!(!gesture.move_to(1, away_from(START, 90.0), None));
        assert_eq!(gesture.load(), Some(HARDER));
        assert_eq!(gesture.held, None);
    }

    #[test]
    fn a_drop_tells_the_place_and_the_click_after_it_is_no_tap() {
        let mut gesture = Gesture::default();
        gesture.press(1, EASIER, START);
        gesture.move_to(1, away_from(START, 200.0), Some(Spot::Button(id(3))));
        assert_eq!(
            gesture.release(1),
            Some((EASIER, Some(Spot::Button(id(3)))))
        );
        assert!(gesture.ends_with_click());
        assert!(!gesture.ends_with_click());
        assert_eq!(gesture.tap(EASIER), Tapped::PickedUp(EASIER));
    }

    #[test]
    fn a_finger_carries_once_it_was_held_and_a_swipe_carries_nothing() {
        let mut gesture = Gesture::default();
        gesture.press_to_hold(1, EASIER, START);
        assert!(!gesture.move_to(1, away_from(START, 90.0), Some(Spot::Button(id(3)))));
        assert!(!gesture.held(1));
        assert_eq!(gesture.release(1), None);
        assert!(!gesture.is_pressed());

        gesture.press_to_hold(1, EASIER, START);
        assert!(!gesture.move_to(1, away_from(START, SLACK), None));
        assert_eq!(gesture.load(), None);
        assert!(!gesture.held(2));
        assert!(gesture.held(1));
        assert_eq!(gesture.load(), Some(EASIER));
        gesture.move_to(1, away_from(START, 90.0), Some(Spot::Button(id(3))));
        let dropped = Some((EASIER, Some(Spot::Button(id(3)))));
        assert_eq!(gesture.release(1), dropped);
        assert!(gesture.ends_with_click());

        // Let go before that, it was a tap.
        gesture.press_to_hold(1, EASIER, START);
        assert_eq!(gesture.release(1), None);
        assert!(!gesture.held(1));
        assert_eq!(gesture.tap(EASIER), Tapped::PickedUp(EASIER));
    }

    #[test]
    fn escape_lets_a_drag_go_and_its_release_does_nothing() {
        let mut gesture = Gesture::default();
        gesture.press(1, button(2), START);
        gesture.move_to(1, away_from(START, 50.0), Some(Spot::Tray));
        assert_eq!(gesture.let_go(), Some(button(2)));
        assert_eq!(gesture.release(1), None);
        assert!(gesture.ends_with_click());
    }

    #[test]
    fn a_second_finger_is_ignored() {
        let mut gesture = Gesture::default();
        gesture.press(1, EASIER, START);
        gesture.press(2, HARDER, START);
        assert!(!gesture.move_to(2, away_from(START, 90.0), Some(Spot::Tray)));
        assert_eq!(gesture.release(2), None);
        assert!(gesture.move_to(1, away_from(START, 90.0), None));
        assert_eq!(gesture.load(), Some(EASIER));
    }

    #[test]
    fn function_and_button_meet_in_either_order() {
        let put_down = Tapped::PutDown(EASIER, Spot::Button(id(4)));
        for [first, second] in [[EASIER, button(4)], [button(4), EASIER]] {
            let mut gesture = Gesture::default();
            assert_eq!(gesture.tap(first), Tapped::PickedUp(first));
            assert_eq!(gesture.tap(second), put_down);
            assert_eq!(gesture.load(), None);
        }
    }

    #[test]
    fn the_same_thing_twice_lets_go_and_another_function_is_taken_instead() {
        let mut gesture = Gesture::default();
        gesture.tap(EASIER);
        assert_eq!(gesture.tap(EASIER), Tapped::LetGo(EASIER));
        gesture.tap(EASIER);
        assert_eq!(gesture.tap(HARDER), Tapped::PickedUp(HARDER));
        assert_eq!(gesture.load(), Some(HARDER));
    }

    #[test]
    fn a_drag_takes_the_place_of_what_was_held() {
        let mut gesture = Gesture::default();
        gesture.tap(button(1));
        gesture.press(1, EASIER, START);
        gesture.move_to(1, away_from(START, 40.0), None);
        assert_eq!(gesture.load(), Some(EASIER));
        gesture.release(1);
        assert_eq!(gesture.load(), None);
    }

    #[test]
    fn nothing_put_on_a_button_leaves_it_blank() {
        let mut gesture = Gesture::default();
        gesture.tap(button(1));
        let put_down = Tapped::PutDown(Load::Blank, Spot::Button(id(1)));
        assert_eq!(gesture.tap(Load::Blank), put_down);
        let clear = Edit::Layout(LayoutEdit::ClearButton(id(1)));
        assert_eq!(put(Load::Blank, Spot::Button(id(1))), Some(clear));
    }

    #[test]
    fn a_lost_pointer_changes_nothing() {
        let mut gesture = Gesture::default();
        gesture.press(1, EASIER, START);
        gesture.move_to(1, away_from(START, 90.0), Some(Spot::Button(id(2))));
        gesture.lose(2);
        assert!(gesture.is_pressed());
        gesture.lose(1);
        assert_eq!(gesture.release(1), None);
        assert_eq!(gesture.load(), None);
    }

    #[test]
    fn a_press_elsewhere_ends_the_waiting_for_a_click() {
        let mut gesture = Gesture::default();
        gesture.press(1, EASIER, START);
        gesture.move_to(1, away_from(START, 90.0), None);
        gesture.release(1);
        gesture.settle();
        assert!(!gesture.ends_with_click());
    }

    #[test]
    fn each_way_of_putting_down_is_one_change() {
        let layout = |edit| Some(Edit::Layout(edit));
        let on = |control| Spot::Button(id(control));
        let tap = LayoutEdit::Tap(id(1), Some(Function::RearEasier));
        assert_eq!(put(EASIER, on(1)), layout(tap));
        let swap = LayoutEdit::Swap(id(1), id(2));
        assert_eq!(put(button(1), on(2)), layout(swap));
        for spot in [Spot::Tray, Spot::Away] {
            let clear = LayoutEdit::ClearButton(id(1));
            assert_eq!(put(button(1), spot), layout(clear));
            assert_eq!(put(EASIER, spot), None);
        }
        assert_eq!(put(button(1), on(1)), None);
    }

    #[test]
    fn what_is_carried_is_found_by_the_name_the_page_gave_it() {
        assert_eq!(Spot::from_key("tray"), Some(Spot::Tray));
        assert_eq!(Spot::from_key("elsewhere"), None);
        for load in [EASIER, Load::Blank, button(7)] {
            assert_eq!(Load::from_key(&load.key()), Some(load));
        }
        assert_eq!(Load::from_key("function:elsewhere"), None);
    }
}
