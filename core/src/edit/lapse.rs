//! Acceptances that no longer hold, because what they rest on has changed.

use crate::cockpit::{Control, ControlId};
use crate::finding::{Acceptable, Acceptance, Place};
use crate::plan::Plan;
use crate::rider::Side;
use crate::rules;
use crate::vocabulary::Vocabulary;

/// Marks the acceptances of the plan before a change whose hands, controls or
/// positions are not what they were. What changes in the layout alone makes
/// another finding, or none.
pub(super) fn mark(before: &Plan, after: &mut Plan) {
    let changes = Changes::between(before, after);
    if changes.nothing() {
        return;
    }
    let stood = |acceptance: &Acceptance| before.accepted.contains(acceptance);
    let (accepted, bike) = (&mut after.accepted, &before.bike);
    for acceptance in accepted.iter_mut().filter(|acceptance| stood(acceptance)) {
        let of_hand = |side: &Side| rests_on_hand(acceptance, *side, &bike.controls);
        let is_named = |place: &Place| acceptance.finding.split('|').any(|p| p == place.key());
        acceptance.lapsed |= changes.hands.iter().any(of_hand)
            || changes.controls.iter().any(|id| acceptance.is_about(*id))
            || changes.positions.iter().any(is_named);
    }
}

/// What is not as it was.
struct Changes {
    hands: Vec<Side>,
    controls: Vec<ControlId>,
    positions: Vec<Place>,
}

impl Changes {
    fn between(before: &Plan, after: &Plan) -> Changes {
        let hands = |side: &Side| {
            let (old, new) = (before.rider.hands.get(*side), after.rider.hands.get(*side));
            !old.same_answers(new)
        };
        let positions = before.bike.bar.kind.positions().iter().copied();
        let used = |plan: &Plan, position| plan.rider.positions.value(position);
        Changes {
            hands: Side::ALL.iter().copied().filter(hands).collect(),
            controls: (before.bike.controls.iter())
                .map(|control| control.id)
                .filter(|id| !same_control(before, after, *id))
                .collect(),
            positions: positions
                .filter(|position| used(before, *position) != used(after, *position))
                .map(Place::Position)
                .collect(),
        }
    }

    fn nothing(&self) -> bool {
        self.hands.is_empty() && self.controls.is_empty() && self.positions.is_empty()
    }
}

/// Whether a control is where it was, and its lever pulls what it pulled. What
/// was only measured or tested on it is not held against an acceptance.
fn same_control(before: &Plan, after: &Plan, id: ControlId) -> bool {
    let fitted = |plan: &Plan| {
        plan.bike
            .control(id)
            .map(|c: &Control| (c.kind, c.side, c.zone, c.connected, c.has_blade()))
    };
    let pulls = |plan: &Plan| {
        let run = plan.bike.brakes.run(id);
        run.map(|run| (run.medium, run.joint, run.wheels.clone()))
    };
    fitted(before) == fitted(after) && pulls(before) == pulls(after)
}

/// Whether an acceptance rests on a hand: its finding names the hand; or it is
/// about the use of hands and names a control on its side, or no hand at all.
fn rests_on_hand(acceptance: &Acceptance, side: Side, controls: &[Control]) -> bool {
    let names_hand = |side: Side| {
        let hand = Place::Hand(side).key();
        acceptance.finding.split('|').any(|place| place == hand)
    };
    let named = |side: Side| {
        names_hand(side)
            || controls
                .iter()
                .any(|c| c.side.hand() == Some(side) && acceptance.is_about(c.id))
    };
    let rule = acceptance.finding.split('|').next().and_then(rules::rule);
    let about_hands = rule.is_some_and(|rule| rule.acceptable == Acceptable::ByClinician);
    names_hand(side) || about_hands && (named(side) || !named(side.other()))
}

#[cfg(test)]
mod tests {
    use crate::catalogue::DemoId;
    use crate::catalogue::demo;
    use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, RiderEdit};
    use crate::plan::Plan;
    use crate::rider::{Ability, Answer, Difficulty, Evidence, Side, Source, YesNo};
    use crate::rules;
    use crate::sheet::{Readiness, Sheet, SheetOptions};

    /// A plan with four findings accepted: about positions, the other arm, one
    /// lever and one circuit.
    fn wren() -> Plan {
        demo(DemoId::Wren).plan
    }

    /// What the shop accepted about a brake ends, too, when the hand that pulls
    /// it is not what it was.
    #[test]
    fn a_brake_accepted_by_the_shop_ends_with_the_hand_that_it_names() {
        let mut plan = wren();
        plan.accepted.truncate(1);
        plan.accepted[0].finding = "brake-not-let-go|hand:left".into();
        let lets_go = |step, evidence| {
            let answer = Answer::with(step, evidence);
            Edit::Rider(RiderEdit::Ability(
                Side::Left,
                Ability::ReleasesBrake,
                answer,
            ))
        };
        let moved = plan.apply(&lets_go(Difficulty::Severe, None));
        assert!(moved.expect("it can be said").accepted[0].lapsed);
        // The same, seen by somebody else, is the same.
        let now = plan.rider.hands.left.abilities.get(Ability::ReleasesBrake);
        let seen = Evidence {
            source: Source::SeenByClinician,
            date: None,
            worn: None,
            in_one_tap: false,
        };
        let step = now.value.expect("it was asked");
        let again = plan.apply(&lets_go(step, Some(seen)));
        let again = again.expect("it can be said");
        let kept = again.rider.hands.left.abilities.get(Ability::ReleasesBrake);
        assert!(kept.before.is_some(), "somebody else said it before");
        assert!(!again.accepted[0].lapsed);
    }

    fn lapsed(plan: &Plan) -> Vec<&str> {
        let lapsed = plan.accepted.iter().filter(|acceptance| acceptance.lapsed);
        lapsed
            .filter_map(|acceptance| acceptance.finding.split('|').next())
            .collect()
    }

    fn after(plan: &Plan, edit: Edit) -> Plan {
        plan.apply(&edit).expect("the edit is possible")
    }

    fn steers(step: Difficulty, evidence: Option<Evidence>) -> Edit {
        let answer = Answer::with(step, evidence);
        Edit::Rider(RiderEdit::Ability(Side::Left, Ability::StaysOn, answer))
    }

    #[test]
    fn another_answer_about_a_hand_ends_what_rests_on_it() {
        let plan = after(&wren(), steers(Difficulty::Moderate, None));
        assert_eq!(
            lapsed(&plan),
            [
                "position-change-by-only-steering-hand",
                "one-sided-braking-loads-other-arm"
            ]
        );
        let found = rules::findings(&plan);
        let of = |rule: &str| found.iter().find(|f| f.rule == rule).expect("it stands");
        let position = of("position-change-by-only-steering-hand");
        assert_eq!(plan.acceptance_of(position), None);
        assert!(plan.lapsed_acceptance_of(position).is_some());
        assert!(
            plan.acceptance_of(of("front-and-rear-on-one-lever"))
                .is_some()
        );
        let sheet = Sheet::of(&plan, SheetOptions::default());
        assert_eq!(sheet.verdict.readiness, Readiness::CheckFirst);
    }

    #[test]
    fn the_same_answer_seen_by_somebody_else_ends_nothing() {
        let seen = Evidence {
            source: Source::SeenByClinician,
            date: None,
            worn: None,
            in_one_tap: false,
        };
        let plan = after(&wren(), steers(Difficulty::None, Some(seen)));
        assert_eq!(lapsed(&plan), [""; 0]);
    }

    #[test]
    fn a_lever_that_pulls_something_else_ends_what_is_about_it() {
        let plan = wren();
        let lever = plan.bike.brakes.runs[0].lever;
        let tested = BrakeEdit::ThrowTested(lever, Answer::of(YesNo::No));
        assert_eq!(lapsed(&after(&plan, Edit::Brakes(tested))), [""; 0]);
        let mut run = plan.bike.brakes.runs[0].clone();
        run.wheels.pop();
        let other = after(&plan, Edit::Brakes(BrakeEdit::SetRun(run)));
        assert_eq!(
            lapsed(&other),
            [
                "front-and-rear-on-one-lever",
                "one-joint-for-front-and-rear"
            ]
        );
    }

    #[test]
    fn a_new_decision_counts_and_other_work_ends_nothing() {
        let plan = after(&wren(), steers(Difficulty::Moderate, None));
        let mut again = plan.accepted[0].clone();
        again.lapsed = false;
        let accept = crate::edit::PlanEdit::Accept(again.clone());
        let plan = after(&plan, Edit::Plan(accept));
        assert!(plan.accepted.contains(&again));
        let plan = after(&plan, Edit::Layout(LayoutEdit::Clear));
        let plan = after(&plan, Edit::Bike(BikeEdit::Name("Blue".into())));
        assert!(plan.accepted.contains(&again));
    }
}
