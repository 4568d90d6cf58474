//! Changes to the plan as a document.

use super::EditError;
use crate::finding::Acceptance;
use crate::layout::{Layout, LayoutId};
use crate::limits::{MOST_ACCEPTED, MOST_LAYOUTS};
use crate::plan::Plan;
use crate::rider::Side;
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, Text};
use crate::units::free_number;
use crate::vocabulary::Vocabulary;

/// A change to the plan as a document.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanEdit {
    /// What people call it.
    Name(Text),
    /// The shop's job number.
    Job(Text),
    /// The day of the work.
    Date(Option<Date>),
    /// How the derailleurs work together. Buttons keep what they have; what
    /// has no use any more becomes a finding.
    ShiftPlan(ShiftPlanKind),
    /// How the derailleurs work together, and each button's function replaced
    /// by the one that takes its place.
    ShiftPlanAndButtons(ShiftPlanKind),
    /// Notes what each button does now as what was found.
    NoteAsFound,
    /// A finding is accepted with a reason.
    Accept(Acceptance),
    /// A finding is no longer accepted.
    Withdraw(String),
    /// A copy of the layout in hand, which becomes the one in hand.
    DuplicateLayout(Text),
    /// Another name for the layout in hand.
    RenameLayout(Text),
    /// Another layout is taken in hand.
    SelectLayout(LayoutId),
    /// A layout is removed.
    RemoveLayout(LayoutId),
    /// Everything about the hands is removed.
    RemoveHandDetails,
}

impl PlanEdit {
    pub(super) fn label(&self) -> String {
        match self {
            PlanEdit::Name(_) => "rename the plan".into(),
            PlanEdit::Job(_) => "write the job number".into(),
            PlanEdit::Date(_) => "set the date".into(),
            PlanEdit::ShiftPlan(kind) | PlanEdit::ShiftPlanAndButtons(kind) => {
                format!("shift plan: {kind}")
            }
            PlanEdit::NoteAsFound => "note what was found".into(),
            PlanEdit::Accept(_) => "accept a finding".into(),
            PlanEdit::Withdraw(_) => "withdraw an acceptance".into(),
            PlanEdit::DuplicateLayout(_) => "copy the layout".into(),
            PlanEdit::RenameLayout(_) => "rename the layout".into(),
            PlanEdit::SelectLayout(_) => "change to another layout".into(),
            PlanEdit::RemoveLayout(_) => "remove a layout".into(),
            PlanEdit::RemoveHandDetails => "remove hand details".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            PlanEdit::Name(text) => plan.name = text.clone(),
            PlanEdit::Job(text) => plan.job = text.clone(),
            PlanEdit::Date(date) => plan.date = *date,
            PlanEdit::ShiftPlan(kind) => set_shift_plan(plan, *kind)?,
            PlanEdit::ShiftPlanAndButtons(kind) => {
                set_shift_plan(plan, *kind)?;
                replace_functions(plan, *kind);
            }
            PlanEdit::NoteAsFound => {
                let layout = plan.layout();
                plan.as_found = plan
                    .bike
                    .buttons()
                    .iter()
                    .map(|(id, ..)| (*id, layout.tap(&plan.bike, *id)))
                    .collect();
            }
            PlanEdit::Accept(acceptance) => accept(plan, acceptance)?,
            PlanEdit::Withdraw(finding) => plan.accepted.retain(|a| a.finding != *finding),
            PlanEdit::DuplicateLayout(name) => duplicate_layout(plan, name)?,
            PlanEdit::RenameLayout(name) => plan.layout_mut().name = name.clone(),
            PlanEdit::SelectLayout(id) => {
                find_layout(plan, *id)?;
                plan.current = *id;
            }
            PlanEdit::RemoveLayout(id) => remove_layout(plan, *id)?,
            PlanEdit::RemoveHandDetails => *plan = plan.without_hand_details(),
        }
        Ok(())
    }
}

fn accept(plan: &mut Plan, acceptance: &Acceptance) -> Result<(), EditError> {
    plan.accepted.retain(|a| a.finding != acceptance.finding);
    if plan.accepted.len() >= MOST_ACCEPTED {
        return Err(EditError::TooMany {
            what: "accepted findings",
            limit: MOST_ACCEPTED,
        });
    }
    plan.accepted.push(acceptance.clone());
    Ok(())
}

fn set_shift_plan(plan: &mut Plan, kind: ShiftPlanKind) -> Result<(), EditError> {
    let single = kind == ShiftPlanKind::SingleRing;
    if single == plan.bike.has_front_derailleur() {
        return Err(EditError::NotPossible(if single {
            "A bike with a front derailleur cannot follow the single-ring plan. Set its chainrings to one first.".into()
        } else {
            format!(
                "The {kind} plan needs a front derailleur. Set the chainrings to two or three first."
            )
        }));
    }
    plan.shift_plan = kind;
    Ok(())
}

fn replace_functions(plan: &mut Plan, kind: ShiftPlanKind) {
    let bike = plan.bike.clone();
    let layout = plan.layout_mut();
    for (id, function) in layout.taps.clone() {
        let replaced = kind.in_place_of(function);
        match replaced {
            Some(new) if bike.button(id).is_some_and(|(_, b)| b.takes(new)) => {
                layout.taps.insert(id, new);
            }
            _ if kind.has_use_for(function, &bike) => {}
            _ => layout.clear(id),
        }
    }
}

fn find_layout(plan: &Plan, id: LayoutId) -> Result<&Layout, EditError> {
    plan.layouts
        .iter()
        .find(|l| l.id == id)
        .ok_or(EditError::NoSuchLayout)
}

fn duplicate_layout(plan: &mut Plan, name: &Text) -> Result<(), EditError> {
    if plan.layouts.len() >= MOST_LAYOUTS {
        return Err(EditError::TooMany {
            what: "layouts",
            limit: MOST_LAYOUTS,
        });
    }
    let mut copy = plan.layout().clone();
    copy.id = LayoutId(free_number(plan.layouts.iter().map(|l| l.id.0)));
    copy.name = name.clone();
    plan.current = copy.id;
    plan.layouts.push(copy);
    Ok(())
}

fn remove_layout(plan: &mut Plan, id: LayoutId) -> Result<(), EditError> {
    find_layout(plan, id)?;
    if plan.layouts.len() == 1 {
        return Err(EditError::LastLayout);
    }
    plan.layouts.retain(|l| l.id != id);
    if plan.current == id {
        plan.current = plan.layouts[0].id;
    }
    Ok(())
}

impl Plan {
    /// The plan without what it says about the hands: answers, the rider's own
    /// words, reach seen on this rider, and why findings were accepted. Parts
    /// of the file that this version does not know go too, wherever they stand:
    /// nobody can tell what they say. The layout itself still implies hand use.
    pub fn without_hand_details(&self) -> Plan {
        let mut plan = self.clone();
        plan.rider = plan.rider.without_hand_details();
        plan.accepted.clear();
        plan.unknown.clear();
        for control in &mut plan.bike.controls {
            for button in &mut control.buttons {
                button.seen_reach.clear();
            }
        }
        for together in &mut plan.bike.brakes.together {
            together.tried = crate::rider::Answer::NOT_ASKED;
        }
        plan
    }

    /// Whether the plan says anything about the hands, or may say it in parts
    /// that this version does not know.
    pub fn has_hand_details(&self) -> bool {
        self.without_hand_details() != *self
            || Side::ALL
                .iter()
                .any(|side| *self.rider.hands.get(*side) != crate::rider::Hand::default())
    }
}
