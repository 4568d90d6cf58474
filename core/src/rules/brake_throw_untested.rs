//! One lever pulls several brakes and its throw was not tested.

use super::{Family, Origin, Rule};
use crate::cockpit::{BrakeRun, Joint};
use crate::finding::{Acceptable, Finding, Place, Severity};
use crate::rider::YesNo;
use crate::situation::Situation;

pub(super) static RULE: Rule = Rule {
    id: "brake-throw-untested",
    family: Family::Brake,
    title: "The throw of a lever with a joint was not tested",
    severity: Severity::MustFix,
    acceptable: Acceptable::Never,
    what: "A lever that pulls through a splitter, a doubler or two cables was tested: each wheel brake works fully before the blade comes near the bar.",
    why: "Two brakes take more cable or more fluid than one. A blade that meets the bar first leaves a wheel unbraked, and that shows only at full pull.",
    remedy: "Pull it fully on the stand, wheel by wheel, with new and with worn pads in mind, and note the outcome under Bike.",
    origin: Origin::CommonPractice,
    check,
};

fn check(situation: &Situation<'_>) -> Vec<Finding> {
    let runs = situation.live_runs();
    runs.filter(|run| shares(run) && !run.throw_tested.is_yes())
        .map(|run| Finding {
            rule: RULE.id,
            severity: Severity::MustFix,
            acceptable: Acceptable::Never,
            places: vec![Place::Control(run.lever)],
            message: message(&situation.lever_name(run.lever), run),
            fixes: Vec::new(),
        })
        .collect()
}

fn shares(run: &BrakeRun) -> bool {
    run.joint != Joint::Direct || run.wheels.len() > 1
}

fn message(lever: &str, run: &BrakeRun) -> String {
    let through = run
        .joints_in_words()
        .unwrap_or_else(|| run.joint.to_string());
    match run.throw_tested.value {
        Some(YesNo::No) => format!(
            "The {lever} did not work every brake fully before its blade came near the bar ({through})."
        ),
        _ => format!("The throw of the {lever} was not tested with what it pulls ({through})."),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::catalogue::TemplateId;
    use crate::edit::BrakeEdit;
    use crate::finding::Acceptable;
    use crate::rider::{Answer, Side, YesNo};
    use crate::rules::testing::{bike, drop_bar, fired, lever};

    #[test]
    fn both_brakes_on_one_lever_brings_it_and_a_test_takes_it_away() {
        let setup = drop_bar();
        let left = lever(&setup, Side::Left);
        let setup = setup.brake_edit(BrakeEdit::AllOnLever(left));
        let no = Answer::of(YesNo::No);
        let plan = setup.plan();
        assert_eq!(fired(&plan, &RULE)[0].acceptable, Acceptable::Never);
        let tested = |answer| {
            let edit = crate::edit::Edit::Brakes(BrakeEdit::ThrowTested(left, answer));
            fired(&plan.apply(&edit).expect("it pulls"), &RULE).len()
        };
        assert_eq!(tested(no), 1);
        assert_eq!(tested(Answer::of(YesNo::Yes)), 0);
    }

    #[test]
    fn fires_for_the_doubler_of_a_tricycle_and_is_silent_for_single_lines() {
        assert_eq!(fired(&bike(TemplateId::Tricycle).plan(), &RULE).len(), 1);
        assert!(fired(&drop_bar().plan(), &RULE).is_empty());
    }
}
