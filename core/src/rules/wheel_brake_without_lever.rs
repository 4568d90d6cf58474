//! A wheel brake that no lever pulls, or a bike without a brake at one end.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::Wheel;
use crate::coverage::{BrakeCell, WhyNot};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "wheel-brake-without-lever",
    family: Family::Brake,
    title: "A wheel’s brake has no lever",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "Every wheel brake is pulled by a lever with a blade, and a bicycle has a brake at the front and one at the rear. A tricycle without a brake at one end is a check.",
    why: "One brake alone stops late, or throws the rider or locks the wheel; if it gives out there is no other.",
    remedy: "Let a lever within reach pull it.",
    origin: Origin::Published(
        "ISO 4210-2 cl. 4.6.1: two independent braking systems, front and rear",
    ),
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let without = situation.coverage.brakes.iter().filter(|row| {
        let no_lever = |cell: &BrakeCell| *cell == BrakeCell::No(WhyNot::NoButton);
        row.cells.iter().all(no_lever)
    });
    without
        .map(|row| without_lever(situation, row.wheel))
        .chain(ends_without_brake(situation))
        .collect()
}

fn without_lever(situation: &Situation<'_>, wheel: Wheel) -> Finding {
    let mut fixes = braking::lever_of_its_own(situation, wheel);
    fixes.extend(braking::all_on_one_lever(situation));
    Finding {
        rule: RULE.id,
        severity: Severity::MustFix,
        acceptable: Acceptable::Never,
        places: vec![Place::Wheel(wheel)],
        message: format!("No lever with a blade pulls the {wheel}’s brake."),
        fixes,
    }
}

fn ends_without_brake(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let braked = |front| {
        let mut brakes = bike.brakes.wheels.iter();
        brakes.any(|brake| brake.wheel.is_front() == front)
    };
    let end = |front| {
        let wheels = bike.frame.wheels().iter().copied();
        let wheels: Vec<Wheel> = wheels.filter(|wheel| wheel.is_front() == front).collect();
        let (severity, acceptable) = if bike.frame.is_tricycle() {
            (Severity::Check, Acceptable::ByShop)
        } else {
            (Severity::MustFix, Acceptable::Never)
        };
        Finding {
            rule: RULE.id,
            severity,
            acceptable,
            places: wheels.iter().copied().map(Place::Wheel).collect(),
            message: format!(
                "There is no brake at the {}. Braking law differs by place: ask.",
                if front { "front" } else { "rear" }
            ),
            fixes: Vec::new(),
        }
    };
    let ends = [true, false].into_iter();
    ends.filter(|front| !braked(*front)).map(end).collect()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::cockpit::Wheel;
    use crate::edit::{BikeEdit, BrakeEdit};
    use crate::finding::{Acceptable, Place, Severity};
    use crate::rider::{HandPlace, Side};
    use crate::rules::testing::{bike, check_fixes, drop_bar, fired, lever};
    use crate::vocabulary::Vocabulary;

    #[test]
    fn fires_when_a_blade_comes_off_and_gives_the_lever_back() {
        let setup = drop_bar();
        let right = lever(&setup, Side::Right);
        let plan = setup.bike_edit(BikeEdit::BladeFitted(right, false)).plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].places, [Place::Wheel(Wheel::Rear)]);
        assert_eq!(found[0].acceptable, Acceptable::Never);
        assert_eq!(
            found[0].fixes.len(),
            3,
            "its own lever, all left, all right"
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn offers_only_the_able_hand() {
        let setup = drop_bar().hand_does_nothing(Side::Right, HandPlace::Rests);
        let right = lever(&setup, Side::Right);
        let plan = setup.brake_edit(BrakeEdit::RemoveRun(right)).plan();
        assert_eq!(fired(&plan, &RULE)[0].fixes.len(), 1);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn a_bicycle_needs_a_brake_at_both_ends_and_a_tricycle_is_asked_about() {
        let mut plan = drop_bar().plan();
        plan.bike
            .brakes
            .wheels
            .retain(|brake| brake.wheel.is_front());
        assert_eq!(fired(&plan, &RULE)[0].severity, Severity::MustFix);
        let mut plan = bike(TemplateId::Tricycle).plan();
        plan.bike
            .brakes
            .wheels
            .retain(|brake| !brake.wheel.is_front());
        assert_eq!(fired(&plan, &RULE)[0].severity, Severity::Check);
    }

    #[test]
    fn is_silent_for_every_template() {
        for id in TemplateId::ALL {
            assert!(fired(&bike(*id).plan(), &RULE).is_empty(), "{id}");
        }
    }
}
