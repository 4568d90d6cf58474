//! What a button's slot says, on screen and on paper.

use crate::cockpit::{BarSide, ButtonId, Freedom};
use crate::drawing::Look;
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::plan::Plan;

/// Everything about one button that a slot shows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Slot {
    /// The button.
    pub button: ButtonId,
    /// Its balloon number.
    pub number: usize,
    /// The side of the bar.
    pub side: BarSide,
    /// Where it is, in full: "left outer paddle".
    pub place: String,
    /// What it does and how it stands, as the drawing tells it.
    pub look: Look,
    /// What a hold does.
    pub hold: Option<Hold>,
    /// What it does together with another button.
    pub chords: Vec<Chord>,
    /// What a tap did when the bike came in, where that was noted and differs
    /// from what it does now.
    pub was: Option<Option<Function>>,
    /// Whether something is on it that could be carried elsewhere.
    pub has_load: bool,
}

impl Slot {
    /// The slots of the layout in hand, in balloon order.
    pub fn all(plan: &Plan) -> Vec<Slot> {
        let layout = plan.layout();
        let buttons = plan.bike.buttons().into_iter().zip(1..);
        let slots = buttons.filter_map(|((id, control, button), number)| {
            let look = Look::of(&plan.bike, layout, id)?;
            let is_open = matches!(button.freedom, Freedom::Free | Freedom::Limited(_));
            let holds = layout.holds.contains_key(&id);
            let chords: Vec<Chord> = layout
                .chords
                .iter()
                .filter(|chord| chord.includes(id))
                .copied()
                .collect();
            let given = layout.taps.contains_key(&id) || holds || !chords.is_empty();
            let found = plan.as_found.get(&id).copied();
            Some(Slot {
                button: id,
                number,
                side: control.side,
                place: control.place_of(id.part),
                was: found.filter(|was| *was != look.function),
                hold: layout.holds.get(&id).copied(),
                has_load: is_open && given,
                chords,
                look,
            })
        });
        slots.collect()
    }

    /// "1 left hood button: front toggle", and what a hold does.
    pub fn words(&self) -> String {
        let hold = match self.hold {
            Some(Hold::Does(function)) => format!("; hold: {function}"),
            Some(Hold::Repeats(_)) => "; hold: repeats".into(),
            None => String::new(),
        };
        format!(
            "{} {}: {}{hold}",
            self.number,
            self.place,
            self.look.words()
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::drawing::Standing;
    use crate::edit::{Edit, LayoutEdit};

    #[test]
    fn was_is_said_only_where_it_differs() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        assert!(Slot::all(&plan).iter().all(|slot| slot.was.is_none()));

        let cleared = plan
            .apply(&Edit::Layout(LayoutEdit::Clear))
            .expect("a layout can be cleared");
        for slot in Slot::all(&cleared) {
            match slot.look.standing {
                Standing::Fixed => assert_eq!(slot.was, None),
                _ => {
                    let noted = plan.as_found.get(&slot.button).expect("it is noted");
                    assert_eq!(slot.was, noted.map(Some));
                }
            }
        }
    }

    #[test]
    fn only_what_was_given_can_be_carried() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        for slot in Slot::all(&plan) {
            let given = plan.layout().taps.contains_key(&slot.button);
            assert_eq!(slot.has_load, given, "{}", slot.place);
        }
        let one_paddle = template(TemplateId::RoadOnePaddle).plan("Test");
        assert!(Slot::all(&one_paddle).iter().all(|slot| slot.has_load));
    }

    #[test]
    fn numbers_are_those_of_the_balloons() {
        let plan = template(TemplateId::AeroTwoButton).plan("Test");
        let slots = Slot::all(&plan);
        assert_eq!(slots.len(), plan.bike.buttons().len());
        for slot in slots {
            assert_eq!(plan.bike.balloon(slot.button), Some(slot.number));
        }
    }
}
