//! The front brake is not on the side that the rider expects.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::{BrakeRun, Joint, Wheel};
use crate::edit::{BrakeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::{Answer, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "front-brake-side-changed",
    family: Family::Brake,
    title: "The front brake is not where the rider expects it",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "The lever that pulls the front brake is on the side that the rider expects by habit or by the custom of the place. Not asked is a check too.",
    why: "In a fright the hand pulls by habit, and the wrong wheel locks. A helper or a borrower expects the custom of the place.",
    remedy: "Label the lever, practise on a closed road, or exchange the two.",
    origin: Origin::Published(
        "ISO 4210-2 cl. 4.6.2.1: lever side by law or custom of the country of sale",
    ),
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let fronts: Vec<&BrakeRun> = situation
        .live_runs()
        .filter(|run| run.wheels.iter().any(|wheel| wheel.is_front()))
        .collect();
    let side = |run: &BrakeRun| situation.plan.bike.control(run.lever)?.side.hand();
    let habit = situation.plan.rider.front_brake_habit.value;
    let expected = habit.is_some_and(|habit| fronts.iter().any(|run| side(run) == Some(habit)));
    if fronts.is_empty() || expected {
        return Vec::new();
    }
    let levers = fronts.iter().map(|run| situation.lever_name(run.lever));
    let levers = braking::listed(levers.map(|lever| format!("the {lever}")));
    let pulls = if fronts.len() == 1 { "pulls" } else { "pull" };
    let front = match fronts[..] {
        [run] if braking::brakes_both_ends(run) => "the front brake too",
        _ => "the front brake",
    };
    vec![Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: fronts.iter().map(|run| Place::Control(run.lever)).collect(),
        message: match habit {
            Some(habit) => format!(
                "The rider expects the front brake on the {habit}; here {levers} {pulls} {front}. Label the lever."
            ),
            None => format!(
                "On which side the rider expects the front brake was not asked yet; here {levers} {pulls} {front}. Ask, and label the lever where it differs."
            ),
        },
        fixes: habit
            .and_then(|habit| exchange(situation, habit))
            .into_iter()
            .collect(),
    }]
}

/// Exchanges what two levers pull, where each pulls one wheel.
fn exchange(situation: &Situation<'_>, habit: Side) -> Option<Fix> {
    let runs: Vec<&BrakeRun> = situation.live_runs().collect();
    let [a, b] = runs[..] else {
        return None;
    };
    let single = |run: &BrakeRun| run.joint == Joint::Direct && run.wheels.len() == 1;
    let front_to = [a, b].into_iter().find(|run| {
        situation
            .plan
            .bike
            .control(run.lever)
            .and_then(|c| c.side.hand())
            == Some(habit)
    })?;
    if !single(a) || !single(b) || a.medium != b.medium {
        return None;
    }
    let with = |run: &BrakeRun, wheels: &[Wheel]| {
        Edit::Brakes(BrakeEdit::SetRun(BrakeRun {
            wheels: wheels.to_vec(),
            throw_tested: Answer::NOT_ASKED,
            ..run.clone()
        }))
    };
    Some(Fix {
        label: format!(
            "Let the {} pull the front brake",
            situation.lever_name(front_to.lever)
        ),
        edit: Edit::Several {
            label: "exchange front and rear brake".into(),
            edits: vec![with(a, &b.wheels), with(b, &a.wheels)],
        },
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::edit::RiderEdit;
    use crate::rider::{Answer, Side};
    use crate::rules::testing::{Setup, check_fixes, drop_bar, fired, lever};

    fn expecting(side: Side) -> Setup {
        drop_bar().rider_edit(RiderEdit::FrontBrakeHabit(Answer::of(side)))
    }

    #[test]
    fn fires_against_the_habit_and_offers_to_exchange() {
        let plan = expecting(Side::Right).plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.contains("Label the lever"));
        assert_eq!(found[0].fixes.len(), 1);
        check_fixes(&plan, &RULE);
        assert!(fired(&expecting(Side::Left).plan(), &RULE).is_empty());
    }

    #[test]
    fn fires_where_it_was_not_asked() {
        let found = fired(&drop_bar().plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert!(found[0].message.contains("not asked yet"));
        assert!(found[0].fixes.is_empty());
    }

    #[test]
    fn one_lever_for_both_is_looked_at_too() {
        let setup = expecting(Side::Right);
        let left = lever(&setup, Side::Left);
        let found = fired(&setup.all_brakes_on(left).plan(), &RULE);
        assert!(found[0].message.contains("pulls the front brake too"));
        assert!(found[0].fixes.is_empty(), "nothing to exchange");
    }
}
