//! A function the bike needs is reached from some positions but not from all.

use super::{Family, Origin, Rule, fixes};
use crate::coverage::Cell;
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::Day;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "needed-function-missing-from-position",
    family: Family::Function,
    title: "A needed function is out of reach from a position",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByShop,
    what: "Each function that the shift plan needs is reached without letting go from every position in use, if it is reached so from one. An easier gear must be; the harder gear, the smaller ring and the rung up should be; the larger ring is good to have.",
    why: "Where the road rises the rider needs the easier gear at once, whatever the position; going to another position first costs the hold on the bar and time.",
    remedy: "Put the function on a second button that is reached from there, let it change places with one that weighs less, choose a shift plan that needs fewer functions, or agree with the rider not to use the position.",
    origin: Origin::OurJudgement,
    check,
};

/// How much it weighs that a function is missing from a position (our
/// judgement): being stuck in a hard gear is worse than in an easy one.
const fn weight(function: Function) -> Severity {
    match function {
        Function::RearEasier | Function::RungDown => Severity::MustFix,
        Function::RearHarder | Function::FrontSmaller | Function::RungUp => Severity::Check,
        _ => Severity::GoodToKnow,
    }
}

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for row in situation.coverage.rows.iter().filter(|row| row.needed) {
        let function = row.function;
        // What is reached from nowhere without letting go is another problem.
        if !matches!(situation.best_cell(function), Some(Cell::Reached(_))) {
            continue;
        }
        for position in situation.positions() {
            let message = match situation.coverage.cell(function, *position, Day::Usual) {
                None | Some(Cell::Reached(_)) => continue,
                Some(Cell::ByLettingGo(way)) => format!(
                    "From the {position}, the {} hand must leave its place for “{function}”.",
                    way.hand
                ),
                Some(Cell::No(why)) => {
                    format!("From the {position}, “{function}” cannot be called up: {why}.")
                }
            };
            let proposals = situation.propose(|| {
                let mut single = fixes::put_within_reach_of(situation, function, *position);
                let lighter = |other| weight(other) > weight(function);
                single.extend(fixes::swap_within_reach_of(
                    situation, function, *position, lighter,
                ));
                fixes::beside_all_shifting(situation, single)
            });
            findings.push(Finding {
                rule: RULE.id,
                severity: weight(function),
                acceptable: Acceptable::ByShop,
                places: vec![Place::Function(function), Place::Position(*position)],
                message,
                fixes: proposals,
            });
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HandPosition::{Drops, Hoods, Tops};
    use crate::finding::{Place, Severity};
    use crate::function::Function::{
        FrontLarger, FrontSmaller, FrontToggle, RearEasier, RearHarder,
    };
    use crate::rider::{HandPlace, Side, Use};
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of, gravel};

    #[test]
    fn is_silent_where_everything_is_reached_from_hoods_and_drops() {
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }

    #[test]
    fn weighs_an_easier_gear_more_than_a_harder_one() {
        let plan = drop_bar()
            .rides(Tops, Use::Sometimes)
            .rides(Hoods, Use::Mostly)
            .plan();
        let weights: Vec<_> = fired(&plan, &RULE)
            .into_iter()
            .map(|finding| (finding.severity, finding.places[0]))
            .collect();
        assert_eq!(
            weights,
            [
                (Severity::Check, Place::Function(RearHarder)),
                (Severity::MustFix, Place::Function(RearEasier)),
                (Severity::GoodToKnow, Place::Function(FrontLarger)),
                (Severity::Check, Place::Function(FrontSmaller)),
            ]
        );
    }

    #[test]
    fn an_easier_gear_on_the_hood_only_is_missing_in_the_drops() {
        let plan = gravel()
            .tap("right outer paddle", None)
            .tap("right hood button", Some(RearEasier))
            .plan();
        let found = fired(&plan, &RULE);
        assert_eq!(found.len(), 1, "{found:?}");
        assert_eq!(
            found[0].message,
            "From the drops, the right hand must leave its place for “rear easier”."
        );
        assert_eq!(
            fixes_of(&plan, &RULE),
            [
                "Put “rear easier” on the right outer paddle",
                "Put “rear easier” on the left outer paddle",
                "Let the right hood button and the right inner paddle change places",
            ]
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn the_smaller_ring_changes_places_with_the_larger_one() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .blank()
            .tap("left outer paddle", Some(FrontLarger))
            .tap("left hood button", Some(FrontSmaller))
            .rides(Hoods, Use::Mostly)
            .rides(Drops, Use::Sometimes)
            .plan();
        let found = crate::rules::findings(&plan);
        let missing = [Place::Function(FrontSmaller), Place::Position(Drops)];
        let finding = found
            .iter()
            .find(|f| f.rule == RULE.id && f.places == missing);
        let labels = finding.map(|f| f.fixes.iter().map(|fix| fix.label.as_str()));
        assert!(labels.is_some_and(|mut labels| labels.any(
            |label| label == "Let the left hood button and the left outer paddle change places"
        )));
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn one_hand_finds_a_ladder_where_separate_buttons_run_out() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::Rests)
            .blank()
            .tap("left outer paddle", Some(RearEasier))
            .tap("left inner paddle", Some(RearHarder))
            .tap("left hood button", Some(FrontToggle))
            .rides(Hoods, Use::Mostly)
            .rides(Drops, Use::Sometimes)
            .plan();
        assert_eq!(
            fixes_of(&plan, &RULE),
            ["Change to the ladder, all shifting on the left"; 2]
        );
        check_fixes(&plan, &RULE);
    }
}
