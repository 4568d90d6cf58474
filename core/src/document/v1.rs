//! Format 1, frozen: what a file of this format says, and how it becomes a
//! plan and back.
//!
//! When the model changes, these structs stay and their conversions follow.
//! When what is written must change, a format 2 is added and a migration leads
//! to it. New fields that may be absent need no new format: older versions keep
//! them as unknown parts.

mod bike;
mod gears;
mod layout;
mod record;
mod ride;
mod rider;

pub(super) use bike::{
    BrakeRun, Button, Control, PulledTogether, SeenReach, ThumbWork, WheelBrake,
};
pub(super) use gears::{Crossovers, Gear};
pub(super) use layout::{Chord, Layout};
pub(super) use record::{Change, Entry, MixUp, Observed, PartStep, Pressed, Revision, Stamp, Was};
pub(super) use ride::Remembered;

use super::code::Code;
use super::key::{ButtonKey, Day};
use super::list::{Item, List, Table};
use super::number::Whole;
use super::part::Given;
#[cfg(feature = "schema")]
use super::reader::LONGEST_FINDING;
use super::reader::Reader;
use crate::finding::Role;
use crate::function::Function;
use crate::layout::LayoutId;
use crate::limits::{MOST_ACCEPTED, MOST_LAYOUTS};
use crate::ordered::SmallMap;
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;
use crate::text::Text;

vocabulary! {
    /// What kind of document a file is.
    pub enum Kind as "kind of document" {
        /// A plan.
        Plan = "plan", "plan";
    }
}

/// A number that names something in the plan.
pub(super) type Id = Whole<0, { u16::MAX as u32 }>;

part! {
    /// A plan of Leverwright: rider, bike and layouts.
    #[cfg_attr(feature = "schema", schemars(title = "Leverwright plan, format 1"))]
    pub(super) struct Document as "a plan" {
        /// Marks the file as a plan of Leverwright.
        leverwright: Code<Kind>,
        /// The number of the file's format.
        format: Whole<1, 1>,
        /// What people call the plan.
        name: Text,
        /// The shop's job number.
        job: Text,
        /// Counts the changes.
        revision: Whole<0, { u32::MAX }>,
        /// The day of the last change.
        date (default): Option<Day>,
        rider: rider::Rider,
        bike: bike::Bike,
        /// How the derailleurs work together.
        shift_plan: Code<ShiftPlanKind>,
        /// How the shift plans are tuned; left out where nothing is.
        shift_settings (default): Given<gears::Settings>,
        /// The layouts, at least one.
        #[cfg_attr(feature = "schema", schemars(extend("minItems" = 1)))]
        layouts: List<Layout, MOST_LAYOUTS>,
        /// The id of the layout in hand.
        current: Id,
        /// What each button did when the bike came in; null is blank.
        as_found: Table<ButtonKey, Option<Code<Function>>>,
        /// The road, how the rider rides, and what came of rides.
        rides (default): Given<ride::Rides>,
        /// Findings accepted with a reason.
        accepted: List<Acceptance, MOST_ACCEPTED>,
        /// The layout chosen for the sheet.
        chosen (default): Given<Chosen>,
        /// Who changed what when, what people wrote, and what merging needs.
        record (default): Given<record::Record>,
    }
}

part! {
    /// A finding accepted with a reason.
    pub(super) struct Acceptance as "an accepted finding" {
        /// The finding: its rule, then the places it is about.
        #[cfg_attr(feature = "schema", schemars(extend("maxLength" = LONGEST_FINDING)))]
        finding: String,
        reason: Text,
        /// Who says so; a typed name is not a signature.
        by: Text,
        role: Code<Role>,
        date (default): Option<Day>,
        /// Whether what it rests on has changed since; absent if not.
        lapsed (default): Given<bool>,
    }
}

part! {
    /// The layout chosen for the sheet, with the reason.
    pub(super) struct Chosen as "a chosen layout" {
        layout: Id,
        reason: Text,
        by: Text,
        role: Code<Role>,
        date (default): Option<Day>,
    }
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
            name: plan.name.clone(),
            job: plan.job.clone(),
            revision: Whole(plan.revision),
            date: plan.date.map(Day),
            rider: (&plan.rider).into(),
            bike: (&plan.bike).into(),
            shift_plan: Code(plan.shift_plan),
            shift_settings: Given(gears::Settings::of(&plan.shift_settings)),
            layouts: List(plan.layouts.iter().map(Layout::from).collect()),
            current: plan.current.0.into(),
            as_found: plan
                .as_found
                .iter()
                .map(|(id, function)| (ButtonKey(*id), function.map(Code)))
                .collect(),
            rides: ride::given(&plan.rides),
            accepted: List(plan.accepted.iter().map(Acceptance::from).collect()),
            chosen: Given(plan.chosen.as_ref().map(Chosen::from)),
            record: record::Record::written(&plan.record),
        }
    }
}

impl Document {
    /// Refuses what one field at a time cannot tell.
    pub(super) fn look_through(&self, reader: &mut Reader) {
        self.bike.look_through(reader);
        if let Some(settings) = &self.shift_settings.0 {
            settings.look_through(reader);
        }
    }
}

/// The plan. What it names is not looked up yet.
impl From<Document> for Plan {
    fn from(document: Document) -> Self {
        Plan {
            name: document.name,
            job: document.job,
            revision: document.revision.0,
            date: document.date.map(|day| day.0),
            rider: document.rider.into(),
            bike: document.bike.into(),
            shift_plan: document.shift_plan.0,
            shift_settings: document.shift_settings.0.unwrap_or_default().into(),
            layouts: (document.layouts.0.into_iter())
                .map(crate::layout::Layout::from)
                .collect(),
            current: LayoutId(document.current.into()),
            as_found: map(document.as_found.0, |key, function| {
                (key.0, function.map(|code| code.0))
            }),
            rides: document.rides.0.map_or_else(Default::default, Into::into),
            accepted: (document.accepted.0.into_iter())
                .map(crate::finding::Acceptance::from)
                .collect(),
            chosen: document.chosen.0.map(crate::layout::Chosen::from),
            record: (document.record.0)
                .map(record::Record::record)
                .unwrap_or_default(),
            unknown: Vec::new(),
        }
    }
}

impl From<&crate::layout::Chosen> for Chosen {
    fn from(chosen: &crate::layout::Chosen) -> Self {
        Chosen {
            layout: chosen.layout.0.into(),
            reason: chosen.reason.clone(),
            by: chosen.by.clone(),
            role: Code(chosen.role),
            date: chosen.date.map(Day),
        }
    }
}

impl From<Chosen> for crate::layout::Chosen {
    fn from(chosen: Chosen) -> Self {
        crate::layout::Chosen {
            layout: LayoutId(chosen.layout.into()),
            reason: chosen.reason,
            by: chosen.by,
            role: chosen.role.0,
            date: chosen.date.map(|day| day.0),
        }
    }
}

/// Entries as a map. One by one, because collecting into a map brings a whole
/// sort along for each type.
fn map<K, V, A: Ord, B>(entries: Vec<(K, V)>, read: impl Fn(K, V) -> (A, B)) -> SmallMap<A, B> {
    let mut map = SmallMap::new();
    for (key, value) in entries {
        let (key, value) = read(key, value);
        map.insert(key, value);
    }
    map
}

impl From<&crate::finding::Acceptance> for Acceptance {
    fn from(acceptance: &crate::finding::Acceptance) -> Self {
        Acceptance {
            finding: acceptance.finding.clone(),
            reason: acceptance.reason.clone(),
            by: acceptance.by.clone(),
            role: Code(acceptance.role),
            date: acceptance.date.map(Day),
            lapsed: Given(acceptance.lapsed.then_some(true)),
        }
    }
}

impl From<Acceptance> for crate::finding::Acceptance {
    fn from(acceptance: Acceptance) -> Self {
        crate::finding::Acceptance {
            finding: acceptance.finding,
            reason: acceptance.reason,
            by: acceptance.by,
            role: acceptance.role.0,
            date: acceptance.date.map(|day| day.0),
            lapsed: acceptance.lapsed.0.unwrap_or(false),
        }
    }
}
