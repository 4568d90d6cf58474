//! What a plan offers to be done next: functions for the tray, holds and
//! partners for a button, and the acts that start or turn a whole layout.

use crate::cockpit::{Bike, ButtonId, ControlId, HoldRun};
use crate::edit::{BrakeEdit, Edit, LayoutEdit};
use crate::function::Function;
use crate::layout::Hold;
use crate::ordered;
use crate::plan::Plan;
use crate::rider::Side;
use crate::shift_plan::ShiftPlanKind;
use crate::vocabulary::Vocabulary;

/// An act on the whole layout, ready to be made.
#[derive(Debug, Clone, PartialEq)]
pub struct Act {
    /// What it is called on a button: "All shifting left".
    pub label: String,
    /// The change.
    pub edit: Edit,
}

impl Plan {
    /// The functions worth giving to a button: those the shift plan has use for
    /// and the shift system can program; what the shift plan needs comes first.
    pub fn offered_functions(&self) -> Vec<Function> {
        let needed = self.needed_functions();
        let rest = Function::ALL.iter().filter(|f| !needed.contains(f));
        needed
            .iter()
            .chain(rest)
            .copied()
            .filter(|function| self.has_use_for(*function))
            .collect()
    }

    fn has_use_for(&self, function: Function) -> bool {
        self.shift_plan.has_use_for(function, &self.bike)
            && self.bike.system.functions.contains(&function)
    }

    /// The holds worth giving to a button: repeats of what its tap does, as far
    /// as the shift system lets one hold run, then other functions. Empty where
    /// the system programs no holds or the button takes none.
    pub fn offered_holds(&self, button: ButtonId) -> Vec<Hold> {
        let Some(longest) = self.bike.system.holds else {
            return Vec::new();
        };
        let Some((_, found)) = self.bike.button(button) else {
            return Vec::new();
        };
        if !found.is_remappable() {
            return Vec::new();
        }
        let tap = self.layout().tap(&self.bike, button);
        let mut holds: Vec<Hold> = Vec::new();
        if tap.is_some_and(Function::repeats) {
            holds.extend(runs_up_to(longest).map(Hold::Repeats));
        }
        let others = self.offered_functions().into_iter();
        holds.extend(
            others
                .filter(|f| Some(*f) != tap && found.takes(*f))
                .map(Hold::Does),
        );
        holds
    }

    /// The buttons that can be pressed together with this one, in balloon
    /// order. Empty where the shift system programs no two buttons together.
    pub fn offered_partners(&self, button: ButtonId) -> Vec<ButtonId> {
        let remappable = |id: ButtonId| {
            self.bike
                .button(id)
                .is_some_and(|(control, b)| control.connected && b.is_remappable())
        };
        if !self.bike.system.chords || !remappable(button) {
            return Vec::new();
        }
        let all = self.bike.buttons().into_iter().map(|(id, ..)| id);
        all.filter(|id| *id != button && remappable(*id)).collect()
    }

    /// The shift plans that fit the bike and that the shift system offers; the
    /// one in use is always among them.
    pub fn offered_shift_plans(&self) -> Vec<ShiftPlanKind> {
        let front = self.bike.has_front_derailleur();
        let fits = |kind: ShiftPlanKind| front == (kind != ShiftPlanKind::SingleRing);
        let offered = |kind: ShiftPlanKind| self.bike.system.shift_plans.contains(&kind);
        let kinds = ShiftPlanKind::ALL.iter().copied();
        kinds
            .filter(|kind| *kind == self.shift_plan || fits(*kind) && offered(*kind))
            .collect()
    }

    /// The acts that start or turn a whole layout, in the order in which a shop
    /// comes to want them. One that does not apply is refused with its reason
    /// when it is made.
    pub fn acts(&self) -> Vec<Act> {
        let shifting = Side::ALL.iter().map(|side| Act {
            label: format!("All shifting {side}"),
            edit: Edit::Layout(LayoutEdit::AllShiftingOn(*side)),
        });
        let braking = Side::ALL.iter().filter_map(|side| {
            Some(Act {
                label: format!("All brakes on {side} lever"),
                edit: Edit::Brakes(BrakeEdit::AllOnLever(main_lever(&self.bike, *side)?)),
            })
        });
        let rest = [
            (
                "Blank what lies under a resting hand",
                LayoutEdit::BlankUnderRestingHands,
            ),
            ("Mirror", LayoutEdit::Mirror),
            ("Clear all buttons", LayoutEdit::Clear),
        ];
        let rest = rest.into_iter().map(|(label, edit)| Act {
            label: label.into(),
            edit: Edit::Layout(edit),
        });
        shifting.chain(braking).chain(rest).collect()
    }
}

fn runs_up_to(longest: HoldRun) -> impl Iterator<Item = HoldRun> {
    let mut runs = vec![
        HoldRun::Cogs(2),
        HoldRun::Cogs(3),
        HoldRun::Cogs(5),
        longest,
    ];
    runs.retain(|run| *run <= longest);
    ordered::sort(&mut runs);
    runs.dedup();
    runs.into_iter()
}

/// The lever by which one side brakes: the one with a fitted blade that lies
/// farthest from the middle, else one whose blade was removed.
fn main_lever(bike: &Bike, side: Side) -> Option<ControlId> {
    bike.controls
        .iter()
        .filter(|c| c.side.hand() == Some(side) && c.blade.is_some())
        .max_by(|a, b| {
            let out = |at: crate::units::Point| at.x.abs();
            (a.has_blade().cmp(&b.has_blade())).then(out(a.at).total_cmp(&out(b.at)))
        })
        .map(|control| control.id)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{ButtonPart, ControlKind};
    use crate::edit::{BikeEdit, PlanEdit};

    fn plan(id: TemplateId) -> Plan {
        template(id).plan("Test")
    }

    fn part(plan: &Plan, side: Side, part: ButtonPart) -> ButtonId {
        let buttons = plan.bike.buttons();
        let found = buttons
            .iter()
            .find(|(id, control, _)| control.side.hand() == Some(side) && id.part == part);
        found.expect("the bike has such a button").0
    }

    #[test]
    fn the_tray_follows_the_shift_plan() {
        use Function::{
            FrontLarger, FrontSmaller, FrontToggle, Lights, NextScreen, RearEasier, RearHarder,
            RungDown, RungUp,
        };
        let single = plan(TemplateId::FlatSingle);
        assert_eq!(
            single.offered_functions(),
            [RearEasier, RearHarder, NextScreen, Lights]
        );

        let separate = plan(TemplateId::RoadPlain);
        assert_eq!(
            separate.offered_functions(),
            [
                RearEasier,
                RearHarder,
                FrontSmaller,
                FrontLarger,
                FrontToggle,
                NextScreen,
                Lights
            ]
        );

        let ladder = Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder));
        let ladder = separate.apply(&ladder).expect("two rings take a ladder");
        assert_eq!(ladder.offered_functions()[..2], [RungDown, RungUp]);
    }

    #[test]
    fn what_the_system_cannot_program_is_not_offered() {
        let plan = plan(TemplateId::FlatSingle);
        let mut system = plan.bike.system.clone();
        system.functions.remove(&Function::Lights);
        system.holds = None;
        system.chords = false;
        let plan = plan
            .apply(&Edit::Bike(BikeEdit::System(system)))
            .expect("a profile can be entered");
        let near = part(&plan, Side::Right, ButtonPart::Near);
        assert!(!plan.offered_functions().contains(&Function::Lights));
        assert!(plan.offered_holds(near).is_empty());
        assert!(plan.offered_partners(near).is_empty());
    }

    #[test]
    fn every_offered_shift_plan_can_be_followed() {
        for id in TemplateId::ALL {
            let plan = plan(*id);
            let offered = plan.offered_shift_plans();
            assert!(offered.contains(&plan.shift_plan), "{id}");
            for kind in offered {
                let edit = Edit::Plan(PlanEdit::ShiftPlanAndButtons(kind));
                assert!(plan.apply(&edit).is_ok(), "{id}: {kind}");
            }
        }
        assert_eq!(
            plan(TemplateId::Gravel).offered_shift_plans(),
            [ShiftPlanKind::SingleRing]
        );
        assert_eq!(plan(TemplateId::RoadPlain).offered_shift_plans().len(), 3);
    }

    #[test]
    fn holds_stay_within_the_systems_longest_run() {
        let plan = plan(TemplateId::FlatSingle);
        let mut system = plan.bike.system.clone();
        system.holds = Some(HoldRun::Cogs(4));
        let plan = plan
            .apply(&Edit::Bike(BikeEdit::System(system)))
            .expect("a profile can be entered");
        let near = part(&plan, Side::Right, ButtonPart::Near);
        let runs: Vec<Hold> = plan
            .offered_holds(near)
            .into_iter()
            .filter(|hold| matches!(hold, Hold::Repeats(_)))
            .collect();
        assert_eq!(
            runs,
            [2, 3, 4].map(|cogs| Hold::Repeats(HoldRun::Cogs(cogs)))
        );
    }

    #[test]
    fn a_fixed_button_is_offered_nothing() {
        let plan = plan(TemplateId::RoadPods);
        let sprint = plan
            .bike
            .controls
            .iter()
            .find(|c| c.kind == ControlKind::SprintButton)
            .expect("the template has sprint buttons");
        let id = sprint.button_id(ButtonPart::Single);
        assert!(plan.offered_holds(id).is_empty());
        assert!(plan.offered_partners(id).is_empty());
    }

    #[test]
    fn every_act_of_every_template_is_made_or_refused_in_words() {
        for id in TemplateId::ALL {
            let plan = plan(*id);
            for act in plan.acts() {
                if let Err(refusal) = plan.apply(&act.edit) {
                    assert!(refusal.to_string().len() > 20, "{id}: {}", act.label);
                }
            }
        }
    }

    #[test]
    fn brakes_are_offered_on_the_sides_that_have_a_lever() {
        let labels = |id| -> Vec<String> { plan(id).acts().into_iter().map(|a| a.label).collect() };
        assert!(labels(TemplateId::RoadPlain).contains(&"All brakes on right lever".into()));
        let one_sided = labels(TemplateId::SingleSidedLeft);
        assert!(one_sided.contains(&"All brakes on left lever".into()));
        assert!(!one_sided.contains(&"All brakes on right lever".into()));
    }
}
