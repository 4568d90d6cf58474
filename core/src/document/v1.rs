//! Format 1, frozen: what a file of this format says, and how it becomes a
//! plan and back.
//!
//! When the model changes, these structs stay and their conversions follow.
//! When what is written must change, a format 2 is added and a migration leads
//! to it. New fields that may be absent need no new format: older versions keep
//! them as unknown parts.

mod bike;
mod layout;
mod rider;

pub(super) use bike::{
    BrakeRun, Button, Control, PulledTogether, SeenReach, ThumbWork, WheelBrake,
};
pub(super) use layout::{Chord, Layout};

use serde::{Deserialize, Serialize};

use super::code::Code;
use super::key::{ButtonKey, Day};
use super::list::{Item, List, Table};
use super::number::Whole;
#[cfg(feature = "schema")]
use super::reader::LONGEST_FINDING;
use super::reader::Reader;
use crate::finding::Role;
use crate::function::Function;
use crate::layout::LayoutId;
use crate::limits::{MOST_ACCEPTED, MOST_LAYOUTS};
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;

vocabulary! {
    /// What kind of document a file is.
    pub enum Kind as "kind of document" {
        /// A plan.
        Plan = "plan", "plan";
    }
}

/// A number that names something in the plan.
pub(super) type Id = Whole<0, { u16::MAX as u32 }>;

/// A plan of Leverwright: rider, bike and layouts.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(title = "Leverwright plan, format 1"))]
#[serde(expecting = "a plan")]
pub(super) struct Document {
    /// Marks the file as a plan of Leverwright.
    leverwright: Code<Kind>,
    /// The number of the file's format.
    format: Whole<1, 1>,
    /// What people call the plan.
    name: String,
    /// The shop's job number.
    job: String,
    /// Counts the changes.
    revision: Whole<0, { u32::MAX }>,
    /// The day of the last change.
    date: Option<Day>,
    rider: rider::Rider,
    bike: bike::Bike,
    /// How the derailleurs work together.
    shift_plan: Code<ShiftPlanKind>,
    /// The layouts, at least one.
    #[cfg_attr(feature = "schema", schemars(extend("minItems" = 1)))]
    layouts: List<Layout, MOST_LAYOUTS>,
    /// The id of the layout in hand.
    current: Id,
    /// What each button did when the bike came in; null is blank.
    as_found: Table<ButtonKey, Option<Code<Function>>>,
    /// Findings accepted with a reason.
    accepted: List<Acceptance, MOST_ACCEPTED>,
}

/// A finding accepted with a reason.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(expecting = "an accepted finding")]
pub(super) struct Acceptance {
    /// The finding: its rule, then the places it is about.
    #[cfg_attr(feature = "schema", schemars(extend("maxLength" = LONGEST_FINDING)))]
    finding: String,
    reason: String,
    /// Who says so; a typed name is not a signature.
    by: String,
    role: Code<Role>,
    date: Option<Day>,
}

impl Item for Acceptance {
    const LIST: &'static str = "accepted";
    const NAMED_BY: &'static [&'static str] = &["finding"];

    fn name(&self) -> String {
        self.finding.clone()
    }
}

impl From<&Plan> for Document {
    fn from(plan: &Plan) -> Self {
        Document {
            leverwright: Code(Kind::Plan),
            format: Whole(1),
            name: plan.name.to_string(),
            job: plan.job.to_string(),
            revision: Whole(plan.revision),
            date: plan.date.map(Day),
            rider: (&plan.rider).into(),
            bike: (&plan.bike).into(),
            shift_plan: Code(plan.shift_plan),
            layouts: List(plan.layouts.iter().map(Layout::from).collect()),
            current: plan.current.0.into(),
            as_found: plan
                .as_found
                .iter()
                .map(|(id, function)| (ButtonKey(*id), function.map(Code)))
                .collect(),
            accepted: List(plan.accepted.iter().map(Acceptance::from).collect()),
        }
    }
}

impl Document {
    /// The plan, with what was mended on the way told to the reader. What it
    /// names is not looked up yet.
    pub(super) fn plan(self, reader: &mut Reader) -> Plan {
        Plan {
            name: reader.text("name", &self.name),
            job: reader.text("job", &self.job),
            revision: self.revision.0,
            date: self.date.map(|day| day.0),
            rider: self.rider.rider(reader),
            bike: self.bike.bike(reader),
            shift_plan: self.shift_plan.0,
            layouts: (self.layouts.0.into_iter().enumerate())
                .map(|(at, layout)| layout.layout(at, reader))
                .collect(),
            current: LayoutId(self.current.into()),
            as_found: (self.as_found.0.into_iter())
                .map(|(key, function)| (key.0, function.map(|code| code.0)))
                .collect(),
            accepted: (self.accepted.0.into_iter().enumerate())
                .map(|(at, acceptance)| acceptance.acceptance(at, reader))
                .collect(),
            unknown: Vec::new(),
        }
    }
}

impl From<&crate::finding::Acceptance> for Acceptance {
    fn from(acceptance: &crate::finding::Acceptance) -> Self {
        Acceptance {
            finding: acceptance.finding.clone(),
            reason: acceptance.reason.to_string(),
            by: acceptance.by.to_string(),
            role: Code(acceptance.role),
            date: acceptance.date.map(Day),
        }
    }
}

impl Acceptance {
    fn acceptance(self, at: usize, reader: &mut Reader) -> crate::finding::Acceptance {
        crate::finding::Acceptance {
            reason: reader.text(&format!("accepted[{at}].reason"), &self.reason),
            by: reader.text(&format!("accepted[{at}].by"), &self.by),
            finding: self.finding,
            role: self.role.0,
            date: self.date.map(|day| day.0),
        }
    }
}
