//! A blade farther from the bar than the hand reaches.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::{BrakeRun, ControlId, Wheel};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Side;
use crate::situation::Situation;
use crate::vocabulary::Vocabulary;

pub(super) static RULE: Rule = Rule {
    id: "blade-beyond-reach",
    family: Family::Brake,
    title: "A blade is farther than the hand reaches",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "A blade, as measured at rest, lies within the reach of its hand, as measured in that position, less 5 mm. Must fix where it is the only way to brake a wheel, else check.",
    why: "Fingers that only touch the blade cannot pull it, and gloves and the cold take a little more.",
    remedy: "Turn the reach screw in, shim the lever or fit one for small hands, then measure blade and throw again.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let pairs = situation
        .live_runs()
        .flat_map(|run| Side::ALL.iter().map(move |side| (run, *side)));
    pairs
        .filter_map(|(run, side)| look(situation, run, side))
        .collect()
}

fn look(situation: &Situation<'_>, run: &BrakeRun, side: Side) -> Option<Finding> {
    let positions = braking::too_far_from(situation, run.lever, side);
    if positions.is_empty() {
        return None;
    }
    let mut wheels = run.wheels.iter();
    let only = wheels.any(|wheel| !braked_otherwise(situation, *wheel, run.lever));
    let control = situation.plan.bike.control(run.lever)?;
    Some(Finding {
        rule: RULE.id,
        severity: if only {
            Severity::MustFix
        } else {
            Severity::Check
        },
        acceptable: Acceptable::ByShop,
        places: vec![Place::Control(run.lever), Place::Hand(side)],
        message: format!(
            "The blade of the {} lies {} from the bar, too far for the {side} hand from the {}.",
            control.place(),
            control.blade?.reach?,
            braking::listed(positions.iter().map(ToString::to_string)),
        ),
        fixes: Vec::new(),
    })
}

/// Whether another lever brakes the wheel, within the reach of some hand from
/// every position that it pulls it from.
fn braked_otherwise(situation: &Situation<'_>, wheel: Wheel, lever: ControlId) -> bool {
    let others = situation.live_runs().filter(|run| run.lever != lever);
    let mut others = others.filter(|run| run.wheels.contains(&wheel));
    others.any(|run| {
        Side::ALL.iter().any(|side| {
            situation.brakes_with(*side, run.lever)
                && braking::too_far_from(situation, run.lever, *side).is_empty()
        })
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::{BrakeRun, ControlKind, HandPosition, Joint, Medium, Wheel, Zone};
    use crate::edit::{BikeEdit, BrakeEdit, RiderEdit};
    use crate::finding::{Finding, Severity};
    use crate::rider::{Answer, Side};
    use crate::rules::testing::{Setup, bike, drop_bar, fired, lever};
    use crate::units::Mm;

    /// The left blade at 70 mm, for a hand that reaches so far from the hoods.
    fn reaching(mm: f64) -> Setup {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        let reach = Answer::of(Mm(mm));
        setup
            .bike_edit(BikeEdit::BladeReach(left, Some(Mm(70.0))))
            .rider_edit(RiderEdit::BladeReach(
                Side::Left,
                HandPosition::Hoods,
                reach,
            ))
    }

    #[test]
    fn five_millimetres_are_kept_in_hand() {
        let severity = |mm| {
            fired(&reaching(mm).plan(), &RULE)
                .first()
                .map(|f| f.severity)
        };
        assert_eq!(severity(74.0), Some(Severity::MustFix));
        assert_eq!(severity(75.0), None);
    }

    #[test]
    fn is_a_check_where_another_lever_brakes_the_wheel() {
        let setup = reaching(60.0).rides(HandPosition::Hoods, crate::rider::Use::Mostly);
        let right = lever(&setup, Side::Right);
        let both = BrakeRun {
            lever: right,
            medium: Medium::Hose,
            joint: Joint::HoseSplitter,
            throw_tested: Answer::NOT_ASKED,
            wheels: vec![Wheel::Front, Wheel::Rear],
        };
        let found = fired(&setup.brake_edit(BrakeEdit::SetRun(both)).plan(), &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].severity, Severity::Check);
    }

    #[test]
    fn names_the_positions_it_is_too_far_from() {
        let setup = reaching(60.0);
        let reach = Answer::of(Mm(90.0));
        let in_drops = RiderEdit::BladeReach(Side::Left, HandPosition::Drops, reach);
        let found = fired(&setup.rider_edit(in_drops).plan(), &RULE);
        assert!(found[0].message.ends_with("from the hoods."));
    }

    #[test]
    fn is_silent_while_either_was_not_measured() {
        let setup = bike(TemplateId::FlatSingle).bike_edit(BikeEdit::Add(
            ControlKind::BrakeLever,
            Side::Left,
            Zone::Grip,
        ));
        let left = lever(&setup, Side::Left);
        let plan = setup
            .bike_edit(BikeEdit::BladeReach(left, Some(Mm(190.0))))
            .plan();
        assert_eq!(fired(&plan, &RULE), Vec::<Finding>::new());
    }
}
