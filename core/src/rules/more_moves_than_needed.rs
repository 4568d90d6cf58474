//! A needed function takes a move although a free button would not.

use super::{Family, Origin, Rule, fixes};
use crate::coverage::Cell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::Day;
use crate::situation::Situation;
use crate::suggest_button::free_buttons;

pub(super) static RULE: Rule = Rule {
    id: "more-moves-than-needed",
    family: Family::Reach,
    title: "A needed function takes a move that a free button would spare",
    severity: Severity::GoodToKnow,
    acceptable: Acceptable::ByClinician,
    what: "A function for which a hand always leaves its place, while the other steers, is not on the best button: a free one is reached from every position in use without letting go.",
    why: "Each move costs time and a moment with one hand on the bar.",
    remedy: "Move the function to the free button.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for row in situation.coverage.rows.iter().filter(|row| row.needed) {
        let Some(Cell::ByLettingGo(way)) = situation.best_cell(row.function) else {
            continue;
        };
        // Where no other hand steers it is a graver problem.
        if !situation.plan.rider.hands.steer_without(way.hand) {
            continue;
        }
        let spares_it = free_buttons(situation, row.function, Day::Usual)
            .into_iter()
            .find(|suited| suited.missed.is_empty());
        let Some(free) = spares_it else {
            continue;
        };
        let mut places = vec![Place::Function(row.function)];
        places.extend(way.via.buttons().into_iter().map(Place::Button));
        findings.push(Finding {
            rule: RULE.id,
            severity: Severity::GoodToKnow,
            acceptable: Acceptable::ByClinician,
            places,
            message: format!(
                "For “{}” the {} hand always leaves its place, although the {} is free and within reach.",
                row.function,
                way.hand,
                situation.plan.bike.place_of(free.button)
            ),
            fixes: situation.propose(|| {
                fixes::move_from(situation, way, row.function, |s| s.missed.is_empty())
            }),
        });
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId::RoadPods;
    use crate::cockpit::HandPosition::Hoods;
    use crate::function::Function::FrontToggle;
    use crate::rider::Use;
    use crate::rules::testing::{Setup, bike, check_fixes, drop_bar, fired};

    fn front_on_the_tops() -> Setup {
        bike(RoadPods)
            .rides(Hoods, Use::Mostly)
            .tap("left outer paddle", None)
            .tap("left inner paddle", None)
            .tap("left tops pod, near button", Some(FrontToggle))
    }

    #[test]
    fn fires_where_a_free_paddle_would_spare_the_move() {
        let plan = front_on_the_tops().plan();
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "For “front larger” the left hand always leaves its place, although the left outer paddle is free and within reach."
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_without_a_free_button_or_without_a_move() {
        use crate::function::Function::{Lights, NextScreen};
        let plan = front_on_the_tops()
            .tap("left outer paddle", Some(Lights))
            .tap("left inner paddle", Some(NextScreen))
            .tap("left hood button", Some(Lights))
            .tap("right hood button", Some(NextScreen))
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
