//! What the tests of rules share.

use super::trial::must_fix_keys;
use super::{Rule, findings, findings_in};
use crate::catalogue::{TemplateId, template};
use crate::cockpit::{ButtonId, ControlId, Freedom, HandPosition, SystemProfile};
use crate::edit::{BikeEdit, BrakeEdit, Edit, GearEdit, LayoutEdit, RiderEdit};
use crate::finding::Finding;
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::plan::Plan;
use crate::ride::kept::Remembered;
use crate::rider::{
    Ability, Answer, Contact, Difficulty, HandPlace, Hands, Rider, Side, Use, YesNo,
};
use crate::situation::Situation;
use crate::testing::able_hand;

/// A plan in the making.
pub(super) struct Setup(Plan);

/// The road drop bar with two able hands and its usual layout.
pub(super) fn drop_bar() -> Setup {
    bike(TemplateId::RoadPlain)
}

/// The gravel drop bar, whose left lever is blank, with two able hands.
pub(super) fn gravel() -> Setup {
    bike(TemplateId::Gravel)
}

/// A template with two able hands and its usual layout.
pub(super) fn bike(id: TemplateId) -> Setup {
    let mut plan = template(id).plan("Test");
    plan.rider = Rider {
        hands: Hands {
            left: able_hand(),
            right: able_hand(),
        },
        ..Rider::default()
    };
    Setup(plan)
}

impl Setup {
    pub(super) fn of(plan: Plan) -> Setup {
        Setup(plan)
    }

    pub(super) fn plan_so_far(&self) -> &Plan {
        &self.0
    }

    pub(super) fn plan(self) -> Plan {
        self.0
    }

    /// Every button blank.
    pub(super) fn blank(self) -> Self {
        self.edit(&Edit::Layout(LayoutEdit::Clear))
    }

    #[track_caller]
    pub(super) fn edit(self, edit: &Edit) -> Self {
        match self.0.apply(edit) {
            Ok(plan) => Setup(plan),
            Err(error) => panic!("{edit:?}: {error}"),
        }
    }

    #[track_caller]
    pub(super) fn tap(self, place: &str, function: Option<Function>) -> Self {
        let id = button(&self, place);
        self.edit(&Edit::Layout(LayoutEdit::Tap(id, function)))
    }

    #[track_caller]
    pub(super) fn hold(self, place: &str, hold: Hold) -> Self {
        let id = button(&self, place);
        self.edit(&Edit::Layout(LayoutEdit::Hold(id, Some(hold))))
    }

    #[track_caller]
    pub(super) fn chord(self, first: &str, second: &str, function: Function) -> Self {
        let chord = Chord {
            first: button(&self, first),
            second: button(&self, second),
            function,
        };
        self.edit(&Edit::Layout(LayoutEdit::AddChord(chord)))
    }

    #[track_caller]
    pub(super) fn freedom_of(
        self,
        place: &str,
        freedom: impl Fn(&dyn Fn(&str) -> ButtonId) -> Freedom,
    ) -> Self {
        let freedom = freedom(&|place| button(&self, place));
        let id = button(&self, place);
        self.edit(&Edit::Bike(BikeEdit::Freedom(id, freedom)))
    }

    pub(super) fn system(self, change: impl Fn(&mut SystemProfile)) -> Self {
        let mut profile = self.0.bike.system.clone();
        change(&mut profile);
        self.edit(&Edit::Bike(BikeEdit::System(profile)))
    }

    /// What no edit allows but a document may bring.
    pub(super) fn document(self, change: impl Fn(&mut Plan, &dyn Fn(&str) -> ButtonId)) -> Self {
        let mut plan = self.0.clone();
        change(&mut plan, &|place| button(&self, place));
        Setup(plan)
    }

    /// A ride of the layout in hand is remembered, with what it asked.
    pub(super) fn with_ride(self, asks: impl Fn(&mut Remembered)) -> Self {
        let mut plan = self.0;
        let mut ride = Remembered::blank(&plan);
        asks(&mut ride);
        plan.rides.remembered = vec![ride];
        Setup(plan)
    }

    pub(super) fn ability(self, side: Side, ability: Ability, step: Difficulty) -> Self {
        let answer = Answer::of(step);
        self.edit(&Edit::Rider(RiderEdit::Ability(side, ability, answer)))
    }

    pub(super) fn contact(self, side: Side, contact: Contact, step: Difficulty) -> Self {
        let answer = Answer::of(step);
        self.edit(&Edit::Rider(RiderEdit::Contact(side, contact, answer)))
    }

    pub(super) fn rides(self, position: HandPosition, used: Use) -> Self {
        let answer = Answer::of(used);
        self.edit(&Edit::Rider(RiderEdit::Position(position, answer)))
    }

    /// Both brakes on one lever and nothing left to try: the throw tested, the
    /// other blades removed.
    pub(super) fn all_brakes_on(self, lever: ControlId) -> Self {
        let others: Vec<ControlId> = self
            .0
            .bike
            .controls
            .iter()
            .filter(|c| c.has_blade() && c.id != lever)
            .map(|c| c.id)
            .collect();
        let bare = others.iter().fold(self, |setup, other| {
            setup.edit(&Edit::Bike(BikeEdit::BladeFitted(*other, false)))
        });
        bare.edit(&Edit::Brakes(BrakeEdit::AllOnLever(lever)))
            .throw_tested(lever)
    }

    pub(super) fn throw_tested(self, lever: ControlId) -> Self {
        let yes = Answer::of(YesNo::Yes);
        self.edit(&Edit::Brakes(BrakeEdit::ThrowTested(lever, yes)))
    }

    pub(super) fn bike_edit(self, edit: BikeEdit) -> Self {
        self.edit(&Edit::Bike(edit))
    }

    pub(super) fn gear_edit(self, edit: GearEdit) -> Self {
        self.edit(&Edit::Gears(edit))
    }

    pub(super) fn brake_edit(self, edit: BrakeEdit) -> Self {
        self.edit(&Edit::Brakes(edit))
    }

    pub(super) fn rider_edit(self, edit: RiderEdit) -> Self {
        self.edit(&Edit::Rider(edit))
    }

    pub(super) fn hand_does_nothing(self, side: Side, place: HandPlace) -> Self {
        self.edit(&Edit::Rider(RiderEdit::HandDoesNothing(side, place, None)))
    }
}

/// The button at a place: "left outer paddle".
#[track_caller]
pub(super) fn button(setup: &Setup, place: &str) -> ButtonId {
    crate::testing::button(&setup.0, place)
}

/// The first brake lever on a side, its blade fitted or removed.
#[track_caller]
pub(super) fn lever(setup: &Setup, side: Side) -> ControlId {
    let controls = setup.0.bike.controls.iter();
    let mut levers = controls.filter(|c| c.blade.is_some() && c.side.hand() == Some(side));
    levers.next().expect("there is such a lever").id
}

/// What one rule says about the layout in hand, its fixes as proposed.
pub(super) fn fired(plan: &Plan, rule: &Rule) -> Vec<Finding> {
    (rule.check)(&Situation::of(plan))
}

/// The labels of the fixes that are offered for one rule's findings.
pub(super) fn fixes_of(plan: &Plan, rule: &Rule) -> Vec<String> {
    offered(plan, rule)
        .into_iter()
        .flat_map(|finding| finding.fixes)
        .map(|fix| fix.label)
        .collect()
}

fn offered(plan: &Plan, rule: &Rule) -> Vec<Finding> {
    let mut found = findings(plan);
    found.retain(|finding| finding.rule == rule.id);
    found
}

/// A rule fires, each of its findings is offered a fix, and each fix keeps its
/// word.
#[track_caller]
pub(super) fn check_fixes(plan: &Plan, rule: &Rule) {
    let found = offered(plan, rule);
    assert!(!found.is_empty(), "{} does not fire", rule.id);
    for finding in &found {
        assert!(!finding.fixes.is_empty(), "no fix for: {}", finding.message);
    }
    if let Err(fault) = fixes_hold(plan, rule) {
        panic!("{fault}");
    }
}

/// The first offered fix of a rule that does not keep its word.
pub(super) fn fixes_hold(plan: &Plan, rule: &Rule) -> Result<(), String> {
    fixes_of_findings_hold(plan, &offered(plan, rule))
}

/// The first offered fix that does not remove its finding, or adds a must-fix
/// finding that is not one still to be tried by hand.
pub(super) fn fixes_of_findings_hold(plan: &Plan, found: &[Finding]) -> Result<(), String> {
    let before = must_fix_keys(&findings_in(&Situation::of_layout(plan, plan.layout())));
    for finding in found {
        let key = finding.key();
        for fix in &finding.fixes {
            let label = &fix.label;
            let after = plan
                .apply(&fix.edit)
                .map_err(|error| format!("“{label}” for {key}: {error}"))?;
            let left = findings_in(&Situation::of_layout(&after, after.layout()));
            if left.iter().any(|finding| finding.key() == key) {
                return Err(format!("“{label}” does not remove {key}"));
            }
            let must = must_fix_keys(&left);
            if let Some(added) = must.iter().find(|key| !before.contains(*key)) {
                return Err(format!("“{label}” for {key} adds {added}"));
            }
        }
    }
    Ok(())
}
