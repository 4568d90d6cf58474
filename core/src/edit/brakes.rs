//! Changes to the brakes.

use super::EditError;
use crate::cockpit::{BrakeRun, Control, ControlId, Joint, Medium, PulledTogether, Wheel};
use crate::plan::Plan;
use crate::rider::{Answer, YesNo};

/// A change to the brakes.
#[derive(Debug, Clone, PartialEq)]
pub enum BrakeEdit {
    /// Every wheel brake is pulled by this lever; other levers pull nothing.
    /// The joint is made to suit: a dual-pull lever for cables, a splitter for
    /// hoses.
    AllOnLever(ControlId),
    /// What a lever pulls is set; wheels it takes are taken from no other.
    SetRun(BrakeRun),
    /// A lever pulls nothing any more.
    RemoveRun(ControlId),
    /// The throw of a lever was tested with its joint, or not.
    ThrowTested(ControlId, Answer<YesNo>),
    /// Two levers are pulled together by one hand.
    Together(PulledTogether),
    /// Two levers are no longer pulled together.
    NotTogether(ControlId, ControlId),
    /// Two wheels on one axle were seen to brake alike, or not.
    Balanced(Wheel, Answer<YesNo>),
}

impl BrakeEdit {
    pub(super) fn label(&self, plan: &Plan) -> String {
        let place = |id: &ControlId| {
            plan.bike
                .control(*id)
                .map_or_else(|| format!("control {id}"), Control::place)
        };
        match self {
            BrakeEdit::AllOnLever(id) => format!("all brakes on the {}", place(id)),
            BrakeEdit::SetRun(run) => format!("brakes of the {}", place(&run.lever)),
            BrakeEdit::RemoveRun(id) => format!("no brake on the {}", place(id)),
            BrakeEdit::ThrowTested(id, _) => format!("throw test of the {}", place(id)),
            BrakeEdit::Together(_) | BrakeEdit::NotTogether(..) => "levers pulled together".into(),
            BrakeEdit::Balanced(..) => "balance of the axle".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            BrakeEdit::AllOnLever(id) => all_on_lever(plan, *id)?,
            BrakeEdit::SetRun(run) => {
                lever(plan, run.lever)?;
                set_run(plan, run.clone());
            }
            BrakeEdit::RemoveRun(id) => plan.bike.brakes.runs.retain(|r| r.lever != *id),
            BrakeEdit::ThrowTested(id, answer) => {
                let place = lever(plan, *id)?.place();
                let run = plan.bike.brakes.runs.iter_mut().find(|r| r.lever == *id);
                run.ok_or_else(|| {
                    EditError::NotPossible(format!(
                        "The {place} pulls no brake. Choose a lever that does."
                    ))
                })?
                .throw_tested = *answer;
            }
            BrakeEdit::Together(together) => {
                lever(plan, together.first)?;
                lever(plan, together.second)?;
                let list = &mut plan.bike.brakes.together;
                list.retain(|t| !same_pair(t, together.first, together.second));
                list.push(*together);
            }
            BrakeEdit::NotTogether(a, b) => {
                plan.bike.brakes.together.retain(|t| !same_pair(t, *a, *b))
            }
            BrakeEdit::Balanced(wheel, answer) => {
                for brake in &mut plan.bike.brakes.wheels {
                    if brake.wheel == *wheel || Some(brake.wheel) == wheel.beside() {
                        brake.balanced = *answer;
                    }
                }
            }
        }
        Ok(())
    }
}

fn same_pair(together: &PulledTogether, a: ControlId, b: ControlId) -> bool {
    (together.first, together.second) == (a, b) || (together.first, together.second) == (b, a)
}

fn lever(plan: &Plan, id: ControlId) -> Result<&Control, EditError> {
    let control = plan.bike.control(id).ok_or(EditError::NoSuchControl(id))?;
    if control.blade.is_none() {
        return Err(EditError::NoBlade {
            place: control.place(),
        });
    }
    Ok(control)
}

/// Sets what a lever pulls. What was measured at the blade and seen at the
/// wheels goes with the plumbing it was measured on.
fn set_run(plan: &mut Plan, run: BrakeRun) {
    let brakes = &mut plan.bike.brakes;
    let same_plumbing = brakes.run(run.lever).is_some_and(|old| {
        (old.medium, old.joint) == (run.medium, run.joint) && old.wheels == run.wheels
    });
    brakes.runs.retain(|r| r.lever != run.lever);
    if !same_plumbing {
        for brake in &mut brakes.wheels {
            if run.wheels.contains(&brake.wheel) {
                brake.balanced = Answer::NOT_ASKED;
            }
        }
        let control = plan.bike.control_mut(run.lever);
        if let Some(blade) = control.and_then(|control| control.blade.as_mut()) {
            blade.gap_at_full_pull = None;
        }
    }
    plan.bike.brakes.runs.push(run);
}

fn all_on_lever(plan: &mut Plan, id: ControlId) -> Result<(), EditError> {
    lever(plan, id)?;
    let brakes = &mut plan.bike.brakes;
    let medium = brakes
        .run(id)
        .or(brakes.runs.first())
        .map_or(Medium::Cable, |run| run.medium);
    let wheels: Vec<Wheel> = brakes.wheels.iter().map(|b| b.wheel).collect();
    let joint = match (wheels.len(), medium) {
        (0 | 1, _) => Joint::Direct,
        (_, Medium::Cable) => Joint::DualPull,
        (_, Medium::Hose) => Joint::HoseSplitter,
    };
    // What already pulls them all stays as it is, with what was tested on it.
    let pulls_all = |run: &BrakeRun| {
        run.joint != Joint::Direct && wheels.iter().all(|w| run.wheels.contains(w))
    };
    let as_it_is = brakes.run(id).filter(|run| pulls_all(run)).cloned();
    brakes.runs.retain(|run| run.lever == id);
    brakes.together.clear();
    if as_it_is.is_none() {
        set_run(
            plan,
            BrakeRun {
                lever: id,
                medium,
                joint,
                throw_tested: Answer::NOT_ASKED,
                wheels,
            },
        );
    }
    if let Some(blade) = plan
        .bike
        .control_mut(id)
        .and_then(|control| control.blade.as_mut())
    {
        blade.set_fitted(true);
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, Edit};
    use crate::rider::Side;
    use crate::units::Mm;

    fn lever_on(plan: &Plan, side: Side) -> ControlId {
        let controls = plan.bike.controls.iter();
        let mut levers = controls.filter(|c| c.blade.is_some() && c.side.hand() == Some(side));
        levers.next().expect("there is a lever").id
    }

    fn after(plan: &Plan, edit: BrakeEdit) -> Plan {
        plan.apply(&Edit::Brakes(edit))
            .expect("the edit is possible")
    }

    #[test]
    fn both_brakes_on_one_lever_create_the_parts() {
        for (id, joint) in [
            (TemplateId::RoadPlain, Joint::HoseSplitter),
            (TemplateId::FlatSingle, Joint::DualPull),
        ] {
            let plan = template(id).plan("Test");
            let left = lever_on(&plan, Side::Left);
            let bare = Edit::Bike(BikeEdit::BladeFitted(left, false));
            let plan = plan.apply(&bare).expect("a blade comes off");
            let plan = after(&plan, BrakeEdit::AllOnLever(left));
            let [run] = &plan.bike.brakes.runs[..] else {
                panic!("{id}: one run");
            };
            assert_eq!((run.lever, run.joint), (left, joint));
            assert_eq!(run.wheels, [Wheel::Front, Wheel::Rear]);
            assert!(!run.throw_tested.is_known());
            assert!(plan.bike.control(left).is_some_and(|c| c.has_blade()));
        }
    }

    #[test]
    fn all_brakes_once_more_keeps_what_was_tested() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let left = lever_on(&plan, Side::Left);
        let once = after(&plan, BrakeEdit::AllOnLever(left));
        let tested = after(&once, BrakeEdit::ThrowTested(left, Answer::of(YesNo::Yes)));
        let gap = Edit::Bike(BikeEdit::BladeGap(left, Some(Mm(30.0))));
        let tested = tested.apply(&gap).expect("a blade is measured");
        assert_eq!(after(&tested, BrakeEdit::AllOnLever(left)), tested);
    }

    #[test]
    fn three_wheels_on_one_lever_take_a_joint_more_for_the_axle() {
        let plan = template(TemplateId::Tricycle).plan("Test");
        let left = lever_on(&plan, Side::Left);
        let plan = after(&plan, BrakeEdit::AllOnLever(left));
        let run = &plan.bike.brakes.runs[0];
        assert_eq!(run.joints(), [Joint::DualPull, Joint::CableDoubler]);
        assert_eq!(
            run.joints_in_words().as_deref(),
            Some(
                "dual-pull lever, two cables, then a cable doubler to the left rear wheel and the right rear wheel"
            )
        );
        let mut hoses = run.clone();
        (hoses.medium, hoses.joint) = (crate::cockpit::Medium::Hose, Joint::HoseSplitter);
        assert_eq!(hoses.joints(), [Joint::HoseSplitter; 2]);
        hoses.wheels.truncate(2);
        assert_eq!(hoses.joints(), [Joint::HoseSplitter]);
    }

    #[test]
    fn a_throw_test_lapses_with_other_plumbing() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let left = lever_on(&plan, Side::Left);
        let plan = after(&plan, BrakeEdit::AllOnLever(left));
        let plan = after(&plan, BrakeEdit::ThrowTested(left, Answer::of(YesNo::Yes)));
        let gap = Edit::Bike(BikeEdit::BladeGap(left, Some(Mm(30.0))));
        let plan = plan.apply(&gap).expect("a blade is measured");
        let mut run = plan.bike.brakes.runs[0].clone();
        run.wheels.pop();
        let plan = after(&plan, BrakeEdit::SetRun(run));
        let blade = plan.bike.control(left).and_then(|c| c.blade);
        assert_eq!(blade.and_then(|blade| blade.gap_at_full_pull), None);
    }

    #[test]
    fn levers_that_are_not_there_or_do_not_brake_are_refused() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let pod = plan.bike.controls.iter().find(|c| c.blade.is_none());
        let pod = pod.expect("there is a pod").id;
        let refusal = |edit| {
            let refused = plan.apply(&Edit::Brakes(edit));
            refused.expect_err("the edit is refused").to_string()
        };
        assert_eq!(
            refusal(BrakeEdit::AllOnLever(pod)),
            "The left tops pod has no brake blade. Choose a lever that brakes."
        );
        assert_eq!(
            refusal(BrakeEdit::AllOnLever(ControlId(99))),
            "Control 99 is not on this bike. Choose one from the list of controls."
        );
        let left = lever_on(&plan, Side::Left);
        let idle = after(&plan, BrakeEdit::RemoveRun(left));
        let test = Edit::Brakes(BrakeEdit::ThrowTested(left, Answer::of(YesNo::Yes)));
        let refused = idle.apply(&test).expect_err("it pulls nothing").to_string();
        assert_eq!(
            refused,
            "The left brake-shift lever pulls no brake. Choose a lever that does."
        );
    }

    #[test]
    fn a_pair_of_levers_is_kept_once_whichever_is_named_first() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let (left, right) = (lever_on(&plan, Side::Left), lever_on(&plan, Side::Right));
        let pair = |first, second| {
            BrakeEdit::Together(PulledTogether {
                hand: Side::Left,
                first,
                second,
                tried: Answer::NOT_ASKED,
            })
        };
        let plan = after(&after(&plan, pair(left, right)), pair(right, left));
        assert_eq!(plan.bike.brakes.together.len(), 1);
        let plan = after(&plan, BrakeEdit::NotTogether(left, right));
        assert!(plan.bike.brakes.together.is_empty());
    }

    #[test]
    fn the_wheels_of_an_axle_are_balanced_together() {
        let plan = template(TemplateId::Tricycle).plan("Test");
        let seen = Answer::of(YesNo::Yes);
        let plan = after(&plan, BrakeEdit::Balanced(Wheel::RearLeft, seen));
        let balanced = |wheel| {
            let mut wheels = plan.bike.brakes.wheels.iter();
            wheels.find(|b| b.wheel == wheel).map(|b| b.balanced)
        };
        assert_eq!(balanced(Wheel::RearRight), Some(seen));
        assert_eq!(balanced(Wheel::Front), Some(Answer::NOT_ASKED));
    }
}
