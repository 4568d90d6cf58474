//! Opposite functions on buttons too close for this hand.

use super::{Family, Origin, Rule, fixes};
use crate::cockpit::{ButtonId, Control};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::function::Function;
use crate::rider::{Ability, Day, Difficulty, Side};
use crate::situation::Situation;
use crate::units::{Mm, Point};
use crate::vocabulary::Vocabulary;

/// Centre to centre; closer buttons are met together by a finger that is not
/// steady (our judgement: about the breadth of a fingertip).
const CLOSE: Mm = Mm(15.0);

pub(super) static RULE: Rule = Rule {
    id: "opposites-too-close",
    family: Family::Clash,
    title: "Opposite functions lie too close",
    severity: Severity::MustFix,
    acceptable: Acceptable::ByClinician,
    what: "Two buttons that one hand works and that do opposite things lie at least 15 mm apart, centre to centre, where keeping steady or telling two buttons apart takes effort. Check where it takes effort, must fix where it takes great effort.",
    why: "A press that lands on the neighbour shifts the wrong way, on a hill or in traffic.",
    remedy: "Put the two on buttons farther apart, one on each control, or leave one of the neighbours blank.",
    origin: Origin::OurJudgement,
    check,
};

/// A live button with an opposite.
struct Live<'a> {
    id: ButtonId,
    control: &'a Control,
    at: Point,
    function: Function,
}

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let bike = &situation.plan.bike;
    let live: Vec<Live<'_>> = bike
        .buttons()
        .into_iter()
        .filter_map(|(id, control, button)| {
            let function = situation.layout.tap(bike, id)?;
            Some(Live {
                id,
                control,
                at: button.at,
                function,
            })
        })
        .collect();
    let mut findings = Vec::new();
    for (nth, a) in live.iter().enumerate() {
        for b in &live[nth + 1..] {
            let opposite = a.function.opposite() == Some(b.function);
            if opposite && a.at.distance(b.at).0 < CLOSE.0 {
                findings.extend(worst_hand(situation, a, b).map(|w| Finding {
                    fixes: situation.propose(|| fixes::apart(situation, a.id, b.id)),
                    ..finding(a, b, w)
                }));
            }
        }
    }
    findings
}

/// The hand for which the two are worst, if it works both and they take effort.
fn worst_hand(situation: &Situation<'_>, a: &Live<'_>, b: &Live<'_>) -> Option<(Difficulty, Side)> {
    let works = |side: &Side| {
        let own = |live: &Live<'_>| live.control.side.hand().is_none_or(|s| s == *side);
        situation.hand(*side).works() && own(a) && own(b)
    };
    let step = |side: &Side| {
        let hand = situation.hand(*side);
        let steps = [Ability::Steady, Ability::TellsApart].map(|a| hand.step(a, Day::Usual));
        let worst = steps.into_iter().flatten().max()?;
        (worst >= Difficulty::Moderate).then_some((worst, *side))
    };
    Side::ALL.iter().filter(|s| works(s)).filter_map(step).max()
}

fn finding(a: &Live<'_>, b: &Live<'_>, (step, side): (Difficulty, Side)) -> Finding {
    Finding {
        rule: RULE.id,
        severity: if step >= Difficulty::Severe {
            Severity::MustFix
        } else {
            Severity::Check
        },
        acceptable: Acceptable::ByClinician,
        places: vec![Place::Button(a.id), Place::Button(b.id), Place::Hand(side)],
        message: format!(
            "The {} and the {} do opposite things {} apart, and for the {side} hand keeping steady or telling them apart {}.",
            a.control.place_of(a.id.part),
            b.control.place_of(b.id.part),
            a.at.distance(b.at),
            match step {
                Difficulty::Complete => "cannot be counted on".into(),
                step => step.to_string(),
            }
        ),
        fixes: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::finding::Severity;
    use crate::rider::{Ability, Difficulty, HandPlace, Side};
    use crate::rules::testing::{bike, drop_bar, fired};

    #[test]
    fn grows_with_the_step_of_either_ability() {
        for ability in [Ability::Steady, Ability::TellsApart] {
            let severity = |step| {
                let plan = drop_bar().ability(Side::Right, ability, step).plan();
                let found = fired(&plan, &RULE);
                assert!(found.len() <= 1, "only the right hand's paddles");
                found.first().map(|f| f.severity)
            };
            assert_eq!(severity(Difficulty::Mild), None);
            assert_eq!(severity(Difficulty::Moderate), Some(Severity::Check));
            assert_eq!(severity(Difficulty::Severe), Some(Severity::MustFix));
        }
    }

    #[test]
    fn is_silent_where_nobody_works_the_buttons_or_they_lie_apart() {
        let plan = drop_bar()
            .hand_does_nothing(Side::Right, HandPlace::OffBar)
            .plan();
        assert!(fired(&plan, &RULE).is_empty());
        let plan = bike(TemplateId::FlatSingle)
            .ability(Side::Right, Ability::Steady, Difficulty::Moderate)
            .plan();
        assert!(fired(&plan, &RULE).is_empty(), "a pod's buttons lie apart");
    }
}
