//! A wheel's brake that no hand reaches from a position in use.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::{BarKind, HandPosition, Wheel};
use crate::coverage::{BrakeCell, BrakePull, WhyNot};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Day;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "brake-out-of-reach",
    family: Family::Brake,
    title: "A wheel’s brake is out of reach",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "From every position used while moving, a hand pulls each wheel’s brake from where it is: moving along the bar or crossing over is out of reach. On a bad day it is a check as long as another wheel’s brake is still pulled from there; where none is, it must be fixed, or accepted by the shop with a reason. On the extensions of an aero bar it is a check.",
    why: "A brake is wanted at once. The way to it costs metres, and the hand that lets go was steering. A bad day is foreseen: the rider said what becomes of the hand after an hour or in the cold. With one brake left on such a day the rider still slows down, and that may be accepted where it is agreed how the rider does without: another position, shorter rides, stopping before the hand tires. With none the bike cannot be stopped from there, so that weighs like any brake out of reach.",
    remedy: "Put the brakes on a lever that an able hand reaches from there, add a lever there, or do not ride in that position and say so under Rider.",
    origin: Origin::Published(
        "TBIS 15194:2019 cl. 4.3.5.1: no hand leaves the bar to brake; 16 CFR 1512.5(b)(2): readily accessible in the normal riding position",
    ),
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let wheels = situation.coverage.brakes.iter().map(|row| row.wheel);
    wheels
        .flat_map(|wheel| situation.positions().iter().map(move |p| (wheel, *p)))
        .filter_map(|(wheel, position)| look(situation, wheel, position))
        .collect()
}

fn look(situation: &Situation<'_>, wheel: Wheel, position: HandPosition) -> Option<Finding> {
    let cell = |day| situation.coverage.brake_cell(wheel, position, day);
    match cell(Day::Usual)? {
        BrakeCell::Reached(pull) => cell(Day::Bad)?
            .reached()
            .is_none()
            .then(|| on_a_bad_day(situation, wheel, position, pull)),
        // A wheel without a lever is another rule's finding.
        BrakeCell::No(WhyNot::NoButton) => None,
        _ if is_extension_of_aero_bar(situation, position)
            && braking::braked_by_moving(situation, wheel, position) =>
        {
            Some(on_extensions(wheel, position))
        }
        cell => Some(Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::Never,
            places: vec![Place::Wheel(wheel), Place::Position(position)],
            message: format!(
                "From the {position} the {wheel}’s brake is out of reach: {}.{}",
                cell.why_out_of_reach().unwrap_or_default(),
                or_not_ridden(situation, position)
            ),
            fixes: situation.propose(|| {
                [
                    braking::all_on_one_lever(situation),
                    braking::levers_for(situation, position),
                ]
                .concat()
            }),
        }),
    }
}

fn is_extension_of_aero_bar(situation: &Situation<'_>, position: HandPosition) -> bool {
    situation.plan.bike.bar.kind == BarKind::Aero && position == HandPosition::Extensions
}

/// A position can be given up only where another is left to ride in.
fn or_not_ridden(situation: &Situation<'_>, position: HandPosition) -> String {
    if situation.positions().len() < 2 {
        return String::new();
    }
    format!(" If the {position} are never used while moving, say so under Rider.")
}

/// The rider still slows down where another brake is left, and does not where
/// none is (our judgement).
fn on_a_bad_day(
    situation: &Situation<'_>,
    wheel: Wheel,
    position: HandPosition,
    pull: &BrakePull,
) -> Finding {
    let wheels = situation.coverage.brakes.iter().map(|row| row.wheel);
    let mut cells =
        wheels.filter_map(|wheel| situation.coverage.brake_cell(wheel, position, Day::Bad));
    let one_is_left = cells.any(|cell| cell.reached().is_some());
    let none_left = if one_is_left {
        ""
    } else {
        " Then no brake is left from there."
    };
    Finding {
        rule: RULE.id,
        severity: if one_is_left {
            Severity::Check
        } else {
            Severity::MustFix
        },
        acceptable: Acceptable::ByShop,
        places: vec![
            Place::Wheel(wheel),
            Place::Position(position),
            Place::Hand(pull.hand),
        ],
        message: format!(
            "From the {position} the {wheel}’s brake counts on the {} hand, which does not pull it on a bad day.{none_left}",
            pull.hand
        ),
        fixes: if one_is_left {
            Vec::new()
        } else {
            situation.propose(|| braking::all_on_one_lever(situation))
        },
    }
}

fn on_extensions(wheel: Wheel, position: HandPosition) -> Finding {
    Finding {
        rule: RULE.id,
        severity: Severity::Check,
        acceptable: Acceptable::ByShop,
        places: vec![Place::Wheel(wheel), Place::Position(position)],
        message: format!(
            "From the {position} the hand must move before it pulls the {wheel}’s brake. Whether this position is ridden all the same is for shop and rider to decide, with a reason."
        ),
        fixes: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::{HandPosition, Joint, Medium};
    use crate::edit::RiderEdit;
    use crate::finding::{Acceptable, Severity};
    use crate::rider::{Answer, HandPlace, Later, Side, Use};
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, fixes_of};
    use crate::vocabulary::Vocabulary;

    #[test]
    fn fires_for_each_position_of_a_hand_that_rests() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 2, "the rear brake from hoods and drops");
        for finding in &found {
            assert_eq!(finding.severity, Severity::MustFix);
            assert_eq!(finding.acceptable, Acceptable::Never);
            assert_eq!(finding.fixes.len(), 1, "all on the left");
        }
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn moving_along_the_bar_is_out_of_reach_on_two_wheels_and_on_three() {
        let setup = drop_bar().rides(HandPosition::Tops, Use::Sometimes);
        let mut plan = setup.rides(HandPosition::Hoods, Use::Mostly).plan();
        for frame in crate::cockpit::Frame::ALL {
            plan.bike.frame = *frame;
            let found = fired(&plan, &RULE);
            assert_eq!(found.len(), 2, "both wheels from the tops");
            assert!(found.iter().all(|f| f.acceptable == Acceptable::Never));
            assert!(fixes_of(&plan, &RULE).is_empty(), "no lever there");
        }
    }

    #[test]
    fn extensions_are_a_check_unless_no_hand_pulls_at_all() {
        let setup = bike(TemplateId::AeroTwoButton);
        let found = fired(&setup.plan(), &RULE);
        assert_eq!(found.len(), 2);
        assert!(found.iter().all(|f| f.severity == Severity::Check));
        assert!(found[0].message.contains("must move before it pulls"));
        let plan = bike(TemplateId::AeroTwoButton)
            .hand_does_nothing(Side::Left, HandPlace::OffBar)
            .plan();
        let musts = fired(&plan, &RULE);
        let musts = musts.iter().filter(|f| f.severity == Severity::MustFix);
        assert_eq!(musts.count(), 2, "the front brake from both positions");
        // From the base bar; on the extensions the check stays.
        assert_eq!(fixes_of(&plan, &RULE).len(), 1, "all on the right");
    }

    #[test]
    fn a_bad_day_is_a_check() {
        let later = RiderEdit::Later(Side::Left, Answer::of(Later::DoNotCountOnIt));
        let found = fired(&drop_bar().rider_edit(later).plan(), &RULE);
        assert_eq!(found.len(), 2, "the front brake from hoods and drops");
        assert!(found.iter().all(|f| f.severity == Severity::Check));
        assert!(
            found.iter().all(|f| f.acceptable == Acceptable::ByShop),
            "on no day is a brake a clinician's to do without"
        );
    }

    #[test]
    fn a_bad_day_without_any_brake_must_be_fixed_or_decided() {
        let later = |side| RiderEdit::Later(side, Answer::of(Later::DoNotCountOnIt));
        let setup = drop_bar().rider_edit(later(Side::Left));
        let found = fired(&setup.rider_edit(later(Side::Right)).plan(), &RULE);
        assert_eq!(found.len(), 4, "both wheels from hoods and drops");
        for finding in found {
            assert_eq!(finding.severity, Severity::MustFix);
            assert_eq!(finding.acceptable, Acceptable::ByShop);
            assert!(
                finding
                    .message
                    .ends_with("Then no brake is left from there.")
            );
        }
    }

    #[test]
    fn levers_on_the_tops_are_offered_where_brakes_take_cables() {
        let with = |medium: Option<Medium>| {
            let mut plan = drop_bar()
                .rides(HandPosition::Tops, Use::Sometimes)
                .rides(HandPosition::Hoods, Use::Mostly)
                .plan();
            for run in &mut plan.bike.brakes.runs {
                run.medium = medium.unwrap_or(run.medium);
            }
            plan
        };
        let cables = with(Some(Medium::Cable));
        assert_eq!(
            fixes_of(&cables, &RULE),
            ["Add brake levers for the tops"; 2]
        );
        check_fixes(&cables, &RULE);
        assert!(fixes_of(&with(None), &RULE).is_empty(), "hoses");
        assert!(
            fired(&with(None), &RULE)[0]
                .message
                .ends_with("If the tops are never used while moving, say so under Rider.")
        );
    }

    #[test]
    fn one_hand_gets_a_lever_on_its_own_side() {
        let setup = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .rides(HandPosition::Tops, Use::Sometimes)
            .rides(HandPosition::Hoods, Use::Mostly);
        let left = crate::rules::testing::lever(&setup, Side::Left);
        let mut plan = setup.all_brakes_on(left).plan();
        plan.bike.brakes.runs[0].medium = Medium::Cable;
        plan.bike.brakes.runs[0].joint = Joint::DualPull;
        let label = "Add a brake lever for the tops; then test its throw";
        assert_eq!(fixes_of(&plan, &RULE), [label; 2]);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_two_able_hands_where_the_bar_is_meant_to_be_held() {
        for id in TemplateId::ALL {
            let plan = bike(*id).plan();
            let must = |f: &crate::finding::Finding| f.severity == Severity::MustFix;
            assert!(!fired(&plan, &RULE).iter().any(must), "{id}");
        }
    }
}
