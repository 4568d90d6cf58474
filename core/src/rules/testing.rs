//! What the tests of rules share.

use std::collections::BTreeSet;

use super::trial::must_fix_keys;
use super::{Rule, findings, findings_in};
use crate::catalogue::{TemplateId, template};
use crate::cockpit::{ButtonId, ControlId, Freedom, HandPosition, SystemProfile};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, RiderEdit};
use crate::finding::Finding;
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::plan::Plan;
use crate::rider::{
    Ability, Answer, Contact, Difficulty, Hand, HandPlace, Hands, Rider, Side, Use, YesNo,
};
use crate::situation::Situation;

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
            left: Hand::does_all(None),
            right: Hand::does_all(None),
        },
        ..Rider::default()
    };
    Setup(plan)
}

impl Setup {
    pub(super) fn of(plan: Plan) -> Setup {
        Setup(plan)
    }

    pub(super) fn plan(self) -> Plan {
        self.0
    }

    /// The button at a place in words: "left outer paddle".
    #[track_caller]
    pub(super) fn button(&self, place: &str) -> ButtonId {
        button_at(&self.0, place)
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
        let id = self.button(place);
        self.edit(&Edit::Layout(LayoutEdit::Tap(id, function)))
    }

    #[track_caller]
    pub(super) fn hold(self, place: &str, hold: Hold) -> Self {
        let id = self.button(place);
        self.edit(&Edit::Layout(LayoutEdit::Hold(id, Some(hold))))
    }

    #[track_caller]
    pub(super) fn chord(self, first: &str, second: &str, function: Function) -> Self {
        let chord = Chord {
            first: self.button(first),
            second: self.button(second),
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
        let freedom = freedom(&|place| button_at(&self.0, place));
        let id = self.button(place);
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
        change(&mut plan, &|place| button_at(&self.0, place));
        Setup(plan)
    }

    pub(super) fn ability(self, side: Side, ability: Ability, step: Difficulty) -> Self {
        let answer = Answer::of(step);
        self.edit(&Edit::Rider(RiderEdit::Ability(side, ability, answer)))
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

    pub(super) fn brake_edit(self, edit: BrakeEdit) -> Self {
        self.edit(&Edit::Brakes(edit))
    }

    pub(super) fn rider_edit(self, edit: RiderEdit) -> Self {
        self.edit(&Edit::Rider(edit))
    }

    pub(super) fn hand_does_nothing(self, side: Side, place: HandPlace) -> Self {
        self.edit(&Edit::Rider(RiderEdit::HandDoesNothing(side, place, None)))
    }

    pub(super) fn contact(self, side: Side, contact: Contact, step: Difficulty) -> Self {
        let answer = Answer::of(step);
        self.edit(&Edit::Rider(RiderEdit::Contact(side, contact, answer)))
    }

    pub(super) fn uses(self, position: HandPosition, used: Use) -> Self {
        let answer = Answer::of(used);
        self.edit(&Edit::Rider(RiderEdit::Position(position, answer)))
    }
}

/// The button at a place: "left outer paddle".
#[track_caller]
pub(super) fn button(setup: &Setup, place: &str) -> ButtonId {
    button_at(&setup.0, place)
}

/// The first brake lever on a side, its blade fitted or removed.
#[track_caller]
pub(super) fn lever(setup: &Setup, side: Side) -> ControlId {
    let controls = setup.0.bike.controls.iter();
    let mut levers = controls.filter(|c| c.blade.is_some() && c.side.hand() == Some(side));
    levers.next().expect("there is such a lever").id
}

#[track_caller]
fn button_at(plan: &Plan, place: &str) -> ButtonId {
    plan.bike
        .buttons()
        .into_iter()
        .map(|(id, ..)| id)
        .find(|id| plan.bike.place_of(*id) == place)
        .unwrap_or_else(|| panic!("there is no {place}"))
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

/// A rule fires, each of its findings has a fix, and each fix works.
#[track_caller]
pub(super) fn check_fixes(plan: &Plan, rule: &Rule) {
    let found = offered(plan, rule);
    assert!(!found.is_empty(), "{} does not fire", rule.id);
    for finding in found {
        assert!(!finding.fixes.is_empty(), "no fix for {}", finding.message);
        check_fixes_of(plan, &finding);
    }
}

/// Each fix of a finding removes that finding and adds no must-fix one.
#[track_caller]
pub(super) fn check_fixes_of(plan: &Plan, finding: &Finding) {
    let before = must_fixes(plan);
    for fix in &finding.fixes {
        let after = plan.apply(&fix.edit).expect("a fix is possible");
        let stands = findings_in(&Situation::of(&after))
            .iter()
            .any(|f| f.key() == finding.key());
        assert!(!stands, "“{}” does not remove {}", fix.label, finding.key());
        for key in must_fixes(&after) {
            assert!(before.contains(&key), "“{}” adds {key}", fix.label);
        }
    }
}

fn must_fixes(plan: &Plan) -> BTreeSet<String> {
    must_fix_keys(&findings_in(&Situation::of(plan)))
}
