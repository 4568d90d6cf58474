//! For a function the bike needs, the only hand that steers lets go.

use super::{Family, Origin, Rule, fixes};
use crate::coverage::Cell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "press-lets-go-of-steering",
    family: Family::Reach,
    title: "A needed press lets go of the steering",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "A function that the shift plan needs and that no position in use reaches without letting go is called up by a hand while the other steers. Two wheels: it must be so. A tricycle, which stands by itself: a check.",
    why: "A hand that goes to another place on the bar or crosses over leaves the bike unsteered where no other hand holds it. A bump in that moment brings a two-wheeler down.",
    remedy: "Move the function to a button that the hand presses from where it holds on.",
    // The clauses are about brakes: TBIS 15194:2019 cl. 4.3.5.1 wants them
    // worked without taking a hand off the bar. Shifting follows by judgement.
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let (severity, acceptable) = if situation.is_two_wheeler() {
        (Severity::MustFix, Acceptable::Never)
    } else {
        (Severity::Check, Acceptable::ByClinician)
    };
    let mut findings = Vec::new();
    for row in situation.coverage.rows.iter().filter(|row| row.needed) {
        let Some(Cell::ByLettingGo(way)) = situation.best_cell(row.function) else {
            continue;
        };
        if situation.plan.rider.hands.steer_without(way.hand) {
            continue;
        }
        let proposals = situation.propose(|| {
            let single = fixes::move_from(situation, way, row.function, |_| true);
            fixes::beside_all_shifting(situation, single)
        });
        findings.push(Finding {
            rule: RULE.id,
            severity,
            acceptable,
            places: vec![Place::Function(row.function), Place::Hand(way.hand)],
            message: format!(
                "For “{}” the {} hand must let go of its place, and no other hand steers meanwhile.",
                row.function, way.hand
            ),
            fixes: proposals,
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::{FlatSingle, RoadPods, Tricycle};
    use crate::cockpit::{ControlKind, HandPosition, Zone};
    use crate::edit::{BikeEdit, Edit};
    use crate::finding::{Acceptable, Severity};
    use crate::function::Function::{RearEasier, RearHarder};
    use crate::rider::{Ability, Difficulty, HandPlace, Side, Use};
    use crate::rules::testing::{Setup, bike, check_fixes, fired, fixes_of};

    /// Easier on a stem pod, to which the right hand goes; the left one rests.
    fn stem(setup: Setup) -> Setup {
        setup
            .edit(&Edit::Bike(BikeEdit::Add(
                ControlKind::SinglePod,
                Side::Right,
                Zone::Stem,
            )))
            .hand_does_nothing(Side::Left, HandPlace::Rests)
            .tap("right thumb pod, near button", None)
            .tap("stem one-button pod", Some(RearEasier))
    }

    #[test]
    fn can_never_be_accepted_on_two_wheels() {
        let plan = stem(bike(FlatSingle)).plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1);
        assert_eq!(
            (found[0].severity, found[0].acceptable),
            (Severity::MustFix, Acceptable::Never)
        );
        assert_eq!(
            found[0].message,
            "For “rear easier” the right hand must let go of its place, and no other hand steers meanwhile."
        );
        assert_eq!(
            fixes_of(&plan, &RULE)[0],
            "Move it from the stem one-button pod to the right thumb pod, near button"
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_a_check_on_a_tricycle() {
        let plan = stem(bike(Tricycle)).plan();
        assert_eq!(fired(&plan, &RULE)[0].severity, Severity::Check);
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn fires_for_a_hand_that_crosses_over() {
        let plan = bike(FlatSingle)
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert_eq!(fired(&plan, &RULE).len(), 2);
    }

    #[test]
    fn is_silent_where_another_hand_steers() {
        let one_sided = |step| {
            bike(FlatSingle)
                .edit(&Edit::Bike(BikeEdit::Add(
                    ControlKind::Pod,
                    Side::Right,
                    Zone::Stem,
                )))
                .blank()
                .tap("stem pod, near button", Some(RearEasier))
                .tap("stem pod, far button", Some(RearHarder))
                .ability(Side::Right, Ability::SteersAlone, step)
                .plan()
        };
        assert!(fired(&one_sided(Difficulty::None), &RULE).is_empty());
        // Then the right hand goes to the stem while the left one steers.
        assert!(fired(&one_sided(Difficulty::Severe), &RULE).is_empty());
    }

    #[test]
    fn is_silent_where_one_position_reaches_it() {
        let plan = bike(RoadPods)
            .hand_does_nothing(Side::Left, HandPlace::Rests)
            .rides(HandPosition::Tops, Use::Mostly)
            .rides(HandPosition::Drops, Use::Sometimes)
            .plan();
        let rear = fired(&plan, &RULE)
            .iter()
            .filter(|f| f.message.contains("rear"))
            .count();
        assert_eq!(rear, 0);
    }
}
