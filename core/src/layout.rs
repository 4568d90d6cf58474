//! One assignment of functions to buttons.

use std::fmt;

use crate::cockpit::{Bike, ButtonId, HoldRun};
use crate::finding::Role;
use crate::function::Function;
use crate::ordered::{SmallMap, SmallSet};
use crate::text::{Date, Text};

/// The identity of a layout within its plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct LayoutId(pub u16);

/// What keeping a button pressed does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hold {
    /// Repeats the tap function.
    Repeats(HoldRun),
    /// Does something else.
    Does(Function),
}

impl Hold {
    /// Whether a button of this bike can be given the hold: by what the button
    /// takes and what the system programs.
    pub fn is_buildable(&self, bike: &Bike, button: ButtonId) -> bool {
        let remappable = bike.button(button).is_some_and(|(_, b)| b.is_remappable());
        remappable
            && match (self, bike.system.holds) {
                (_, None) => false,
                (Hold::Repeats(run), Some(longest)) => *run <= longest,
                (Hold::Does(function), Some(_)) => bike.can_do(button, *function),
            }
    }
}

impl fmt::Display for Hold {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Hold::Repeats(run) => write!(f, "repeats, {run}"),
            Hold::Does(function) => function.fmt(f),
        }
    }
}

/// Two buttons pressed together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Chord {
    /// One button.
    pub first: ButtonId,
    /// The other.
    pub second: ButtonId,
    /// What they do together.
    pub function: Function,
}

impl Chord {
    /// Whether a button takes part.
    pub fn includes(&self, button: ButtonId) -> bool {
        self.first == button || self.second == button
    }

    /// Whether both buttons are plugged in.
    pub fn is_connected(&self, bike: &Bike) -> bool {
        [self.first, self.second]
            .iter()
            .all(|id| bike.control(id.control).is_some_and(|c| c.connected))
    }

    /// Whether two buttons of this bike can be given the chord: by what each
    /// takes and what the system programs.
    pub fn is_buildable(&self, bike: &Bike) -> bool {
        let takes = |id: ButtonId| {
            bike.button(id).is_some_and(|(_, b)| b.is_remappable())
                && bike.can_do(id, self.function)
        };
        bike.system.chords && self.first != self.second && takes(self.first) && takes(self.second)
    }

    /// Whether it is pressed with the same two buttons.
    pub fn same_buttons(&self, other: &Chord) -> bool {
        self.includes(other.first) && self.includes(other.second)
    }
}

/// The layout chosen for the sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chosen {
    /// The layout.
    pub layout: LayoutId,
    /// Why this one.
    pub reason: Text,
    /// Who chose it; a typed name is not a signature.
    pub by: Text,
    /// In what role.
    pub role: Role,
    /// When.
    pub date: Option<Date>,
}

/// One assignment of functions to buttons. A button that is absent is left
/// blank; fixed and copying buttons are never listed.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// Its identity.
    pub id: LayoutId,
    /// What people call it.
    pub name: Text,
    /// What a tap does.
    pub taps: SmallMap<ButtonId, Function>,
    /// What a hold does.
    pub holds: SmallMap<ButtonId, Hold>,
    /// What two buttons together do.
    pub chords: Vec<Chord>,
}

impl Layout {
    /// A layout with every button blank.
    pub fn blank(id: LayoutId, name: &str) -> Layout {
        Layout {
            id,
            name: Text::new(name),
            taps: SmallMap::new(),
            holds: SmallMap::new(),
            chords: Vec::new(),
        }
    }

    /// What a tap on a button does on this bike: fixed and copying buttons
    /// included, unplugged ones do nothing.
    pub fn tap(&self, bike: &Bike, button: ButtonId) -> Option<Function> {
        bike.tap_function(button, |id| self.taps.get(&id).copied())
    }

    /// Whether pressing a button does anything at all.
    pub fn is_live(&self, bike: &Bike, button: ButtonId) -> bool {
        let connected = bike
            .button(button)
            .is_some_and(|(control, _)| control.connected);
        connected
            && (self.tap(bike, button).is_some()
                || self.holds.contains_key(&button)
                || self.chords.iter().any(|c| c.includes(button)))
    }

    /// Every button that the layout gives something, on the bike or not.
    pub fn buttons_named(&self) -> SmallSet<ButtonId> {
        let chords = self.chords.iter().flat_map(|c| [c.first, c.second]);
        let taps = self.taps.keys().copied();
        taps.chain(self.holds.keys().copied())
            .chain(chords)
            .collect()
    }

    /// Whether the layout gives a button nothing.
    pub fn is_blank(&self, button: ButtonId) -> bool {
        !self.taps.contains_key(&button)
            && !self.holds.contains_key(&button)
            && !self.chords.iter().any(|c| c.includes(button))
    }

    /// Everything that a button was given is taken away.
    pub fn clear(&mut self, button: ButtonId) {
        self.taps.remove(&button);
        self.holds.remove(&button);
        self.chords.retain(|c| !c.includes(button));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::Freedom;
    use crate::function::Function::{FrontToggle, Lights, RearEasier};
    use crate::testing::button;

    fn bike_with(place: &str, freedom: Freedom) -> (Bike, ButtonId) {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let id = button(&plan, place);
        let mut bike = plan.bike;
        let control = bike.control_mut(id.control);
        let found = control.and_then(|c| c.buttons.iter_mut().find(|b| b.part == id.part));
        found.expect("the button is there").freedom = freedom;
        (bike, id)
    }

    #[test]
    fn a_button_can_do_what_it_takes_and_the_system_programs() {
        let (mut bike, id) = bike_with("left hood button", Freedom::Limited(vec![Lights]));
        assert!(bike.can_do(id, Lights) && !bike.can_do(id, RearEasier));
        bike.system.functions.remove(&Lights);
        assert!(!bike.can_do(id, Lights));
        // What is fixed works by how it is fitted.
        let (mut bike, id) = bike_with("left hood button", Freedom::Fixed(Lights));
        bike.system.functions.clear();
        assert!(bike.can_do(id, Lights));
    }

    #[test]
    fn a_copy_can_do_what_its_original_can_and_a_copy_of_a_copy_nothing() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let (original, copy) = (
            button(&plan, "left hood button"),
            button(&plan, "right hood button"),
        );
        let (bike, _) = bike_with("right hood button", Freedom::Copies(original));
        assert!(bike.can_do(copy, Lights));
        let (bike, _) = bike_with("right hood button", Freedom::Copies(copy));
        assert!(!bike.can_do(copy, Lights));
    }

    #[test]
    fn holds_and_chords_are_buildable_within_the_system() {
        let (mut bike, id) = bike_with("left hood button", Freedom::Free);
        let other = ButtonId {
            part: crate::cockpit::ButtonPart::OuterPaddle,
            ..id
        };
        let chord = |second| Chord {
            first: id,
            second,
            function: FrontToggle,
        };
        bike.system.holds = Some(HoldRun::Cogs(3));
        assert!(Hold::Repeats(HoldRun::Cogs(3)).is_buildable(&bike, id));
        assert!(!Hold::Repeats(HoldRun::ToEnd).is_buildable(&bike, id));
        assert!(Hold::Does(Lights).is_buildable(&bike, id));
        assert!(chord(other).is_buildable(&bike) && !chord(id).is_buildable(&bike));
        bike.system.holds = None;
        bike.system.chords = false;
        assert!(!Hold::Does(Lights).is_buildable(&bike, id));
        assert!(!chord(other).is_buildable(&bike));
    }
}
