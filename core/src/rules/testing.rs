//! What the tests of rules share.

use super::{Rule, TRIED_BY_HAND, findings};
use crate::catalogue::{TemplateId, template};
use crate::cockpit::{ButtonId, ControlId, HandPosition};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, RiderEdit};
use crate::finding::{Finding, Severity};
use crate::plan::Plan;
use crate::rider::{Ability, Answer, Difficulty, Hand, HandPlace, Hands, Rider, Side, Use, YesNo};
use crate::situation::Situation;

/// A plan in the making.
pub(super) struct Setup(Plan);

/// The road drop bar with two able hands and its usual layout.
pub(super) fn drop_bar() -> Setup {
    bike(TemplateId::RoadPlain)
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
        Setup(self.0.apply(edit).expect("the edit is possible"))
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
}

/// The button at a place: "left outer paddle".
#[track_caller]
pub(super) fn button(setup: &Setup, place: &str) -> ButtonId {
    let buttons = setup.0.bike.buttons();
    let found = buttons
        .iter()
        .find(|(id, ..)| setup.0.bike.place_of(*id) == place);
    found.expect("there is such a button").0
}

/// The first brake lever on a side, its blade fitted or removed.
#[track_caller]
pub(super) fn lever(setup: &Setup, side: Side) -> ControlId {
    let controls = setup.0.bike.controls.iter();
    let mut levers = controls.filter(|c| c.blade.is_some() && c.side.hand() == Some(side));
    levers.next().expect("there is such a lever").id
}

/// What one rule says about the layout in hand.
pub(super) fn fired(plan: &Plan, rule: &Rule) -> Vec<Finding> {
    (rule.check)(&Situation::of(plan))
}

/// Each fix of each finding of a rule removes that finding and adds no must-fix
/// finding but, where it builds something, that it is still to be tried.
#[track_caller]
pub(super) fn check_fixes(plan: &Plan, rule: &Rule) {
    assert!(!fired(plan, rule).is_empty(), "{} does not fire", rule.id);
    if let Err(fault) = fixes_hold(plan, rule) {
        panic!("{fault}");
    }
}

/// The first fix of a rule that does not keep its word, if any.
pub(super) fn fixes_hold(plan: &Plan, rule: &Rule) -> Result<(), String> {
    let must = |plan: &Plan| -> Vec<String> {
        findings(plan)
            .iter()
            .filter(|f| f.severity == Severity::MustFix && !TRIED_BY_HAND.contains(&f.rule))
            .map(Finding::key)
            .collect()
    };
    let before = must(plan);
    for finding in fired(plan, rule) {
        let key = finding.key();
        for fix in &finding.fixes {
            let label = &fix.label;
            let after = plan
                .apply(&fix.edit)
                .map_err(|error| format!("“{label}” for {key}: {error}"))?;
            if fired(&after, rule).iter().any(|f| f.key() == key) {
                return Err(format!("“{label}” does not remove {key}"));
            }
            if let Some(added) = must(&after).iter().find(|key| !before.contains(key)) {
                return Err(format!("“{label}” for {key} adds {added}"));
            }
        }
    }
    Ok(())
}
