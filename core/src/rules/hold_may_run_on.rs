//! A hold may run on because the hand lets go late.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::{ButtonId, HoldRun};
use crate::edit::{Edit, LayoutEdit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::layout::Hold;
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "hold-may-run-on",
    family: Family::Hold,
    title: "A hold may run on",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByClinician,
    what: "A hold that moves more than one cog is on a button whose hand lets go at once. Letting go at step 2: a check; at step 3 or 4: it must be so.",
    why: "A button let go late moves the chain over cog after cog. The rider ends in a gear far from the one wanted, in the worst case standing on pedals that suddenly give way.",
    remedy: "Let one hold move one cog only, or take the hold off.",
    origin: Origin::OurJudgement,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (id, hold) in &situation.layout.holds {
        let Hold::Repeats(run) = hold else {
            continue;
        };
        if *run <= HoldRun::Cogs(1) || !situation.layout.is_live(&situation.plan.bike, *id) {
            continue;
        }
        for side in situation.hands_on(*id) {
            findings
                .extend(weight(situation, side).map(|w| finding(situation, *id, side, *run, w)));
        }
    }
    findings
}

fn weight(situation: &Situation<'_>, side: Side) -> Option<Severity> {
    match situation.hand(side).step(Ability::LetsGo, Day::Usual)? {
        Difficulty::None | Difficulty::Mild => None,
        Difficulty::Moderate => Some(Severity::Check),
        Difficulty::Severe | Difficulty::Complete => Some(Severity::MustFix),
    }
}

fn finding(
    situation: &Situation<'_>,
    id: ButtonId,
    side: Side,
    run: HoldRun,
    severity: Severity,
) -> Finding {
    let effort = match severity {
        Severity::MustFix => "great effort",
        _ => "effort",
    };
    Finding {
        rule: RULE.id,
        severity,
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Button(id), Place::Hand(side)],
        message: format!(
            "Keeping the {} pressed shifts on: {run}. Letting go at once takes the {side} hand {effort}.",
            situation.plan.bike.place_of(id)
        ),
        fixes: vec![
            Fix {
                label: "Let one hold move one cog".into(),
                edit: Edit::Layout(LayoutEdit::Hold(id, Some(Hold::Repeats(HoldRun::Cogs(1))))),
            },
            fixes::no_hold(situation, id),
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::cockpit::HoldRun;
    use crate::finding::Severity;
    use crate::function::Function::Lights;
    use crate::layout::Hold;
    use crate::rider::{Ability, Difficulty, Side};
    use crate::rules::testing::{check_fixes, drop_bar, fired, fixes_of};

    fn held(run: HoldRun, lets_go: Difficulty) -> crate::plan::Plan {
        drop_bar()
            .hold("right outer paddle", Hold::Repeats(run))
            .ability(Side::Right, Ability::LetsGo, lets_go)
            .plan()
    }

    #[test]
    fn weighs_by_how_hard_letting_go_is() {
        for (step, severity) in [
            (Difficulty::None, None),
            (Difficulty::Mild, None),
            (Difficulty::Moderate, Some(Severity::Check)),
            (Difficulty::Severe, Some(Severity::MustFix)),
            (Difficulty::Complete, Some(Severity::MustFix)),
        ] {
            let found = fired(&held(HoldRun::Cogs(2), step), &RULE);
            assert_eq!(found.first().map(|f| f.severity), severity, "{step}");
        }
    }

    #[test]
    fn shortening_to_one_cog_is_the_first_fix() {
        let plan = held(HoldRun::ToEnd, Difficulty::Moderate);
        assert_eq!(
            fired(&plan, &RULE)[0].message,
            "Keeping the right outer paddle pressed shifts on: to the end of the cassette. Letting go at once takes the right hand effort."
        );
        assert_eq!(
            fixes_of(&plan, &RULE),
            [
                "Let one hold move one cog",
                "No hold on the right outer paddle"
            ]
        );
        check_fixes(&plan, &RULE);
    }

    #[test]
    fn is_silent_for_one_cog_and_for_holds_that_do_something_else() {
        assert!(fired(&held(HoldRun::Cogs(1), Difficulty::Severe), &RULE).is_empty());
        let plan = drop_bar()
            .hold("right outer paddle", Hold::Does(Lights))
            .ability(Side::Right, Ability::LetsGo, Difficulty::Severe)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
    }
}
