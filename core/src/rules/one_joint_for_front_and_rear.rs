//! One joint whose loss loses the brakes at both ends.

use super::{Family, Origin, Rule, braking};
use crate::cockpit::{BrakeRun, Joint, Medium};
use crate::edit::{BrakeEdit, Edit};
use crate::finding::{Acceptable, Finding, Fix, Place, Severity};
use crate::rider::Answer;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "one-joint-for-front-and-rear",
    family: Family::Brake,
    title: "One joint carries front and rear brakes",
    severity: Severity::Check,
    acceptable: Acceptable::ByShop,
    what: "Whether one hydraulic circuit or one cable doubler carries the brakes at both ends of the bike. A dual-pull lever with a cable to each brake does not count.",
    why: "A leak, a frayed cable or a loose clamp at the one place loses both brakes at once.",
    remedy: "Use a dual-pull lever with two cables where the brakes take cables, or two levers. If it stays, look at the joint before each ride and renew it early.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let runs = situation.live_runs();
    runs.filter(|run| run.joint != Joint::DualPull && braking::brakes_both_ends(run))
        .map(|run| Finding {
            rule: RULE.id,
            severity: Severity::Check,
            acceptable: Acceptable::ByShop,
            places: vec![Place::Control(run.lever)],
            message: format!(
                "Front and rear brakes of the {} hang on {}: if it gives out, both are gone.",
                situation.lever_name(run.lever),
                joint(run)
            ),
            fixes: two_cables(situation, run).into_iter().collect(),
        })
        .collect()
}

/// A cable to each brake in place of a doubler; a hose has no such lever.
fn two_cables(situation: &Situation<'_>, run: &BrakeRun) -> Option<Fix> {
    (run.medium == Medium::Cable).then(|| {
        let lever = situation.lever_name(run.lever);
        Fix {
            label: format!("Make the {lever} a dual-pull lever; then test its throw"),
            edit: Edit::Brakes(BrakeEdit::SetRun(BrakeRun {
                joint: Joint::DualPull,
                throw_tested: Answer::NOT_ASKED,
                ..run.clone()
            })),
        }
    })
}

fn joint(run: &BrakeRun) -> &'static str {
    match run.joint {
        Joint::HoseSplitter => "one hydraulic circuit",
        Joint::CableDoubler => "one cable doubler",
        Joint::Direct | Joint::DualPull => "one line",
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::rider::Side;
    use crate::rules::testing::{bike, drop_bar, fired, lever};

    #[test]
    fn fires_for_a_splitter_and_is_silent_for_two_cables() {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        let hoses = setup.all_brakes_on(left).plan();
        assert_eq!(fired(&hoses, &RULE).len(), 1);

        let setup = bike(TemplateId::FlatSingle);
        let left = lever(&setup, Side::Left);
        let cables = setup.all_brakes_on(left).plan();
        assert!(fired(&cables, &RULE).is_empty());
    }

    #[test]
    fn is_silent_for_a_doubler_on_one_axle() {
        assert!(fired(&bike(TemplateId::Tricycle).plan(), &RULE).is_empty());
    }
}
