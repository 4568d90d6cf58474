//! What a button's slot says, on screen and on paper.

use crate::cockpit::{BarSide, ButtonId, Freedom};
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::plan::Plan;

/// Why a button's function is not for choosing, if it is not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Binding {
    /// It takes what it is given.
    Open,
    /// It takes one of a few functions.
    Limited,
    /// It does what another button does.
    Copies(ButtonId),
    /// It does one thing, by how it is fitted.
    Fixed,
}

/// Everything about one button that a slot shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slot {
    /// The button.
    pub button: ButtonId,
    /// Its balloon number.
    pub number: usize,
    /// The side of the bar.
    pub side: BarSide,
    /// Where it is, in words: "left outer paddle".
    pub place: String,
    /// What a tap does now.
    pub tap: Option<Function>,
    /// What a hold does now.
    pub hold: Option<Hold>,
    /// What it does together with another button.
    pub chords: Vec<Chord>,
    /// Whether its function is for choosing.
    pub binding: Binding,
    /// Whether its control is plugged in or paired.
    pub connected: bool,
    /// What a tap did when the bike came in, where that was noted and differs
    /// from what it does now.
    pub was: Option<Option<Function>>,
}

impl Slot {
    /// The slots of the layout in hand, in balloon order.
    pub fn all(plan: &Plan) -> Vec<Slot> {
        let layout = plan.layout();
        let buttons = plan.bike.buttons();
        let slots = buttons
            .iter()
            .enumerate()
            .map(|(at, (id, control, button))| {
                let tap = layout.tap(&plan.bike, *id);
                let found = plan.as_found.get(id).copied();
                Slot {
                    button: *id,
                    number: at + 1,
                    side: control.side,
                    place: control.place_of(id.part),
                    tap,
                    hold: layout.holds.get(id).copied(),
                    chords: layout
                        .chords
                        .iter()
                        .filter(|chord| chord.includes(*id))
                        .copied()
                        .collect(),
                    binding: match &button.freedom {
                        Freedom::Free => Binding::Open,
                        Freedom::Limited(_) => Binding::Limited,
                        Freedom::Copies(original) => Binding::Copies(*original),
                        Freedom::Fixed(_) => Binding::Fixed,
                    },
                    connected: control.connected,
                    was: found.filter(|was| *was != tap),
                }
            });
        slots.collect()
    }

    /// Whether anything is on the button that could be carried elsewhere.
    pub fn has_load(&self) -> bool {
        matches!(self.binding, Binding::Open | Binding::Limited)
            && (self.tap.is_some() || self.hold.is_some() || !self.chords.is_empty())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, LayoutEdit};

    #[test]
    fn was_is_said_only_where_it_differs() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        assert!(Slot::all(&plan).iter().all(|slot| slot.was.is_none()));

        let cleared = plan
            .apply(&Edit::Layout(LayoutEdit::Clear))
            .expect("a layout can be cleared");
        for slot in Slot::all(&cleared) {
            match slot.binding {
                Binding::Fixed => assert_eq!(slot.was, None),
                _ => assert_eq!(slot.was, plan.as_found[&slot.button].map(Some)),
            }
            assert!(!slot.has_load());
        }
    }

    #[test]
    fn numbers_are_those_of_the_balloons() {
        let plan = template(TemplateId::AeroTwoButton).plan("Test");
        for slot in Slot::all(&plan) {
            assert_eq!(plan.bike.balloon(slot.button), Some(slot.number));
        }
    }
}
