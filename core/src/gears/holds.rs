//! How many cogs a hold moves, for all buttons of a layout together.

use crate::cockpit::{ButtonId, HoldRun};
use crate::edit::{Edit, LayoutEdit};
use crate::layout::Hold;
use crate::plan::Plan;

/// The holds that repeat a shift, on the layout in hand.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HoldRuns {
    /// The buttons whose tap may be repeated by a hold.
    pub buttons: Vec<ButtonId>,
    /// What may be given to all of them; `None` is no hold.
    pub offered: Vec<Option<HoldRun>>,
    /// What all of them have; `None` where they differ.
    pub all: Option<Option<HoldRun>>,
}

impl HoldRuns {
    /// The holds of the layout in hand.
    pub fn of(plan: &Plan) -> HoldRuns {
        let layout = plan.layout();
        let (mut buttons, mut runs) = (Vec::new(), Vec::new());
        let mut offered: Vec<Option<HoldRun>> = vec![None];
        for (id, ..) in plan.bike.buttons() {
            for hold in plan.offered_holds(id) {
                let Hold::Repeats(run) = hold else { continue };
                if !buttons.contains(&id) {
                    buttons.push(id);
                    runs.push(match layout.holds.get(&id) {
                        Some(Hold::Repeats(run)) => Some(*run),
                        _ => None,
                    });
                }
                if !offered.contains(&Some(run)) {
                    offered.push(Some(run));
                }
            }
        }
        let same = runs.windows(2).all(|pair| pair[0] == pair[1]);
        HoldRuns {
            all: runs.first().copied().filter(|_| same),
            buttons,
            offered,
        }
    }

    /// Gives all of them one hold, as one change.
    pub fn set(&self, run: Option<HoldRun>) -> Edit {
        let mut edits = Vec::new();
        for button in &self.buttons {
            let hold = run.map(Hold::Repeats);
            edits.push(Edit::Layout(LayoutEdit::Hold(*button, hold)));
        }
        Edit::Several {
            label: match run {
                Some(run) => format!("a hold shifts {run}"),
                None => "no holds that shift".into(),
            },
            edits,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};

    #[test]
    fn one_choice_gives_every_shifting_button_its_hold() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let runs = HoldRuns::of(&plan);
        assert_eq!(runs.all, Some(None));
        assert!(runs.buttons.len() >= 2);
        let three = Some(HoldRun::Cogs(3));
        assert!(runs.offered.contains(&three));
        let held = plan.apply(&runs.set(three)).expect("it can be programmed");
        assert_eq!(HoldRuns::of(&held).all, Some(three));
        let one = Edit::Layout(LayoutEdit::Hold(runs.buttons[0], None));
        let mixed = held.apply(&one).expect("a hold can go");
        assert_eq!(HoldRuns::of(&mixed).all, None);
    }
}
