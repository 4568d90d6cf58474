//! The whole document: rider, bike, layouts.

use std::sync::Arc;

use crate::cockpit::{Bike, ButtonId};
use crate::finding::{Acceptance, Finding};
use crate::function::Function;
use crate::gears::ShiftSettings;
use crate::layout::{Chosen, Layout, LayoutId};
use crate::ordered::SmallMap;
use crate::record::Record;
use crate::ride::kept::Rides;
use crate::rider::Rider;
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, Text};

/// The whole document that shop, rider and therapist hand to each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// What people call the plan.
    pub name: Text,
    /// The shop's job number.
    pub job: Text,
    /// Counts the changes: raised by each one that a
    /// [`History`](crate::history::History) takes.
    pub revision: u32,
    /// The day of the work, as somebody enters it.
    pub date: Option<Date>,
    /// The rider.
    pub rider: Rider,
    /// The bike.
    pub bike: Bike,
    /// How the derailleurs work together.
    pub shift_plan: ShiftPlanKind,
    /// How the shift plans are tuned.
    pub shift_settings: ShiftSettings,
    /// The layouts, at least one.
    pub layouts: Vec<Layout>,
    /// The layout in hand.
    pub current: LayoutId,
    /// What each button did when the bike came in: the *was* of was / now.
    /// Empty until it was noted.
    pub as_found: SmallMap<ButtonId, Option<Function>>,
    /// The road, how the rider rides, and what came of rides.
    pub rides: Rides,
    /// Findings accepted with a reason.
    pub accepted: Vec<Acceptance>,
    /// The layout chosen for the sheet, where somebody chose.
    pub chosen: Option<Chosen>,
    /// What is kept beside what the plan says: changes, reviews, checks.
    pub record: Record,
    /// Parts of the file that this version does not know, kept as they came.
    pub unknown: Vec<UnknownPart>,
}

/// A part of a file that this version does not know.
#[derive(Debug, Clone, PartialEq)]
pub struct UnknownPart {
    /// Where it stood, outermost name first. An item of a list is named by its
    /// own `id` where it has one, else by its place in the list.
    pub path: Vec<String>,
    /// What stood there; shared, because undo keeps many copies of a plan.
    pub value: Arc<serde_json::Value>,
}

impl UnknownPart {
    /// Whether it stood under this path or a deeper one.
    pub fn is_under(&self, path: &[&str]) -> bool {
        self.path.len() > path.len() && self.path.iter().zip(path).all(|(a, b)| a == b)
    }
}

impl Plan {
    /// A plan for a bike and a rider, with one blank layout.
    pub fn new(name: &str, bike: Bike, rider: Rider) -> Plan {
        let layout = Layout::blank(LayoutId(1), "Layout 1");
        Plan {
            name: Text::new(name),
            job: Text::default(),
            revision: 1,
            date: None,
            rider,
            shift_plan: ShiftPlanKind::usual(&bike),
            shift_settings: ShiftSettings::default(),
            bike,
            current: layout.id,
            layouts: vec![layout],
            as_found: SmallMap::new(),
            rides: Rides::default(),
            accepted: Vec::new(),
            chosen: None,
            record: Record::default(),
            unknown: Vec::new(),
        }
    }

    /// The layout in hand.
    ///
    /// `current` always names one of `layouts`: edits and documents keep that.
    pub fn layout(&self) -> &Layout {
        self.layouts
            .iter()
            .find(|l| l.id == self.current)
            .unwrap_or(&self.layouts[0])
    }

    /// The layout that was chosen for the sheet, if it is another one than this.
    pub fn not_the_chosen(&self, layout: LayoutId) -> Option<&Layout> {
        let chosen = self.chosen.as_ref()?.layout;
        let mut layouts = self.layouts.iter();
        layouts.find(|other| other.id == chosen && chosen != layout)
    }

    /// The layout in hand, to change.
    pub(crate) fn layout_mut(&mut self) -> &mut Layout {
        let at = self
            .layouts
            .iter()
            .position(|l| l.id == self.current)
            .unwrap_or(0);
        &mut self.layouts[at]
    }

    /// The functions that the shift plan needs on this bike.
    pub fn needed_functions(&self) -> &'static [Function] {
        self.shift_plan.needed()
    }

    /// The acceptance under which a finding may stand: by somebody named who may
    /// accept it, with a reason, as long as what it rests on is as it was. What
    /// can never be accepted has none, whatever a document says.
    pub fn acceptance_of(&self, finding: &Finding) -> Option<&Acceptance> {
        self.acceptance(finding).filter(|a| !a.lapsed)
    }

    /// The acceptance that a finding had until what it rests on changed.
    pub fn lapsed_acceptance_of(&self, finding: &Finding) -> Option<&Acceptance> {
        self.acceptance(finding).filter(|a| a.lapsed)
    }

    /// How many acceptances hold no longer, because what they rested on has changed.
    pub fn lapsed_acceptances(&self) -> usize {
        self.accepted.iter().filter(|a| a.lapsed).count()
    }

    fn acceptance(&self, finding: &Finding) -> Option<&Acceptance> {
        if self.accepted.is_empty() {
            return None;
        }
        let key = finding.key();
        self.accepted.iter().find(|acceptance| {
            acceptance.finding == key
                && finding.acceptable.by(acceptance.role)
                && !acceptance.reason.is_empty()
                && !acceptance.by.is_empty()
        })
    }
}
