//! The rules: each in its own file, listed here once.

use crate::finding::{Acceptable, Finding, Severity};
use crate::ordered;
use crate::plan::Plan;
use crate::situation::Situation;

vocabulary! {
    /// What a rule watches over.
    pub enum Family as "family" {
        /// Functions and the buttons they are on.
        Function = "function", "functions";
        /// What hands reach.
        Reach = "reach", "reach";
        /// What lies under resting hands.
        Rest = "rest", "resting hands";
        /// Keeping buttons pressed.
        Hold = "hold", "holds";
        /// Things that get in each other's way.
        Clash = "clash", "clashes";
        /// Brakes.
        Brake = "brake", "brakes";
        /// Gears and derailleurs.
        Gears = "gears", "gears";
        /// What a ride asks of the hands.
        Load = "load", "load on a ride";
    }
}

/// Where a rule comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Origin {
    /// Usual among fitters.
    CommonPractice,
    /// Our own judgement.
    OurJudgement,
    /// A published text: title and clause.
    Published(&'static str),
}

/// A rule: what people read about it, and how it looks at a situation.
#[derive(Debug)]
pub struct Rule {
    /// Its stable name, which states the problem.
    pub id: &'static str,
    /// What it watches over.
    pub family: Family,
    /// The problem in a few words.
    pub title: &'static str,
    /// The heaviest it can weigh.
    pub severity: Severity,
    /// Who may accept it where it weighs that much; some of its findings may be
    /// accepted more freely.
    pub acceptable: Acceptable,
    /// What it looks at.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// What to do.
    pub remedy: &'static str,
    /// Where it comes from.
    pub origin: Origin,
    /// Looks at a situation; one finding for each place.
    pub check: fn(&Situation<'_>) -> Vec<Finding>,
}

mod fixes;
mod noted;
#[cfg(test)]
mod shifting_cases;
#[cfg(test)]
mod testing;
mod trial;

mod button_not_on_bike;
mod copying_button_reassigned;
mod fixed_button_reassigned;
mod function_lost_on_bad_day;
mod function_without_use;
mod hand_does_not_stay_on;
mod hold_may_run_on;
mod holding_not_possible;
mod limited_button_outside_its_set;
mod live_button_under_resting_hand;
mod more_moves_than_needed;
mod needed_function_missing;
mod needed_function_missing_from_position;
mod not_asked_yet;
mod one_direction_only;
mod open_port;
mod position_change_by_only_steering_hand;
mod press_lets_go_of_steering;
mod press_takes_great_effort;
mod required_lever_absent;
mod riding_hurts;
mod system_cannot_program;
mod system_profile_guessed;
mod tap_lost;
mod thumb_work_only_by_letting_go;

mod fingers_press_together;
mod opposites_too_close;
mod press_together_not_possible;
mod same_place_opposite_meaning;

mod axle_balance_not_seen;
mod axle_wheels_braked_apart;
mod blade_beyond_reach;
mod blade_far_from_bar;
mod blade_near_bar_at_full_pull;
mod brake_finger_takes_great_effort;
mod brake_grip_takes_effort;
mod brake_not_let_go;
mod brake_out_of_reach;
mod brake_throw_untested;
mod brakes_not_pulled_together;
mod device_release_untested;
mod front_and_rear_on_one_lever;
mod front_brake_side_changed;
mod mounting_brake_not_held;
mod one_joint_for_front_and_rear;
mod one_sided_braking_loads_other_arm;
mod only_brake_hand_signals;
mod parking_latch_untried;
mod same_contact_brakes_and_shifts;
mod unused_lever_has_blade;
mod wheel_brake_without_lever;

mod brake_wanted_while_hand_away;
mod crossover_jumps;
mod crossovers_too_close;
mod derailleur_exceeded;
mod gears_not_entered;
mod hold_crosses_over;
mod ladder;
mod ladder_broken;
mod more_presses_than_fine;
mod no_chain_catcher;
mod one_contact_takes_most_presses;
mod presses_come_in_bursts;
mod shifts_while_same_hand_brakes;

mod braking;
#[cfg(test)]
mod braking_cases;
mod ride_load;

pub(crate) use noted::noted;

/// All rules, in the order of their families.
pub const ALL: &[&Rule] = &[
    &needed_function_missing::RULE,
    &needed_function_missing_from_position::RULE,
    &one_direction_only::RULE,
    &function_without_use::RULE,
    &fixed_button_reassigned::RULE,
    &copying_button_reassigned::RULE,
    &limited_button_outside_its_set::RULE,
    &button_not_on_bike::RULE,
    &system_cannot_program::RULE,
    &system_profile_guessed::RULE,
    &tap_lost::RULE,
    &required_lever_absent::RULE,
    &open_port::RULE,
    &press_lets_go_of_steering::RULE,
    &position_change_by_only_steering_hand::RULE,
    &press_takes_great_effort::RULE,
    &riding_hurts::RULE,
    &more_moves_than_needed::RULE,
    &thumb_work_only_by_letting_go::RULE,
    &not_asked_yet::RULE,
    &function_lost_on_bad_day::RULE,
    &live_button_under_resting_hand::RULE,
    &hand_does_not_stay_on::RULE,
    &hold_may_run_on::RULE,
    &holding_not_possible::RULE,
    &press_together_not_possible::RULE,
    &opposites_too_close::RULE,
    &fingers_press_together::RULE,
    &same_place_opposite_meaning::RULE,
    &wheel_brake_without_lever::RULE,
    &brake_out_of_reach::RULE,
    &brakes_not_pulled_together::RULE,
    &brake_throw_untested::RULE,
    &blade_near_bar_at_full_pull::RULE,
    &blade_beyond_reach::RULE,
    &blade_far_from_bar::RULE,
    &unused_lever_has_blade::RULE,
    &brake_not_let_go::RULE,
    &brake_grip_takes_effort::RULE,
    &brake_finger_takes_great_effort::RULE,
    &front_and_rear_on_one_lever::RULE,
    &one_joint_for_front_and_rear::RULE,
    &device_release_untested::RULE,
    &parking_latch_untried::RULE,
    &axle_wheels_braked_apart::RULE,
    &axle_balance_not_seen::RULE,
    &front_brake_side_changed::RULE,
    &same_contact_brakes_and_shifts::RULE,
    &one_sided_braking_loads_other_arm::RULE,
    &mounting_brake_not_held::RULE,
    &only_brake_hand_signals::RULE,
    &gears_not_entered::RULE,
    &ladder_broken::RULE,
    &crossover_jumps::RULE,
    &crossovers_too_close::RULE,
    &hold_crosses_over::RULE,
    &derailleur_exceeded::RULE,
    &no_chain_catcher::RULE,
    &one_contact_takes_most_presses::RULE,
    &more_presses_than_fine::RULE,
    &presses_come_in_bursts::RULE,
    &shifts_while_same_hand_brakes::RULE,
    &brake_wanted_while_hand_away::RULE,
];

/// Rules that ask for something to be tried by hand and noted. A fix may build
/// things; whether they work only people can say, so a fix that builds may leave
/// one of these behind.
pub const TRIED_BY_HAND: &[&str] = &[
    brake_throw_untested::RULE.id,
    parking_latch_untried::RULE.id,
];

/// The rule with this name.
pub fn rule(id: &str) -> Option<&'static Rule> {
    ALL.iter().copied().find(|rule| rule.id == id)
}

/// What all rules say about the layout in hand, heaviest first, in the order of
/// the rules, with fixes that were tried.
pub fn findings(plan: &Plan) -> Vec<Finding> {
    findings_in(&Situation::of(plan))
}

/// What all rules say about a situation, heaviest first. Every fix was tried: it
/// removes its finding and adds no must-fix one but of [`TRIED_BY_HAND`]. A
/// situation of [`Situation::of_layout`] gets no fixes.
pub fn findings_in(situation: &Situation<'_>) -> Vec<Finding> {
    let mut findings: Vec<Finding> = ALL
        .iter()
        .flat_map(|rule| (rule.check)(situation))
        .collect();
    // What can never be accepted comes first among what weighs the same.
    ordered::sort_by_key(&mut findings, |finding| {
        (finding.severity, finding.acceptable != Acceptable::Never)
    });
    if situation.proposes_fixes() {
        trial::keep_fixes_that_work(situation, &mut findings);
    } else {
        for finding in &mut findings {
            finding.fixes.clear();
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use proptest::prelude::*;
    use proptest::strategy::ValueTree;
    use proptest::test_runner::TestRunner;

    use super::testing::fixes_of_findings_hold;
    use super::*;
    use crate::Vocabulary;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BrakeEdit, Edit, RiderEdit};
    use crate::finding::{Acceptable, Role, Severity};
    use crate::rider::{HandPlace, Side};
    use crate::testing::{plan, plan_from_document};

    #[test]
    fn rules_have_names_of_their_own_and_stand_in_the_order_of_their_families() {
        let ids: BTreeSet<&str> = ALL.iter().map(|rule| rule.id).collect();
        assert_eq!(ids.len(), ALL.len());
        assert!(ALL.is_sorted_by_key(|rule| rule.family));
        for rule in ALL {
            assert_eq!(super::rule(rule.id).map(|found| found.id), Some(rule.id));
        }
    }

    /// The properties below say something: on random plans most rules fire, and
    /// most of the rules that know a fix offer one.
    #[test]
    fn random_plans_are_worth_looking_at() {
        let mut runner = TestRunner::deterministic();
        let (mut fired, mut fixed) = (BTreeSet::new(), BTreeSet::new());
        for _ in 0..256 {
            let tree = plan_from_document().new_tree(&mut runner);
            for finding in findings(&tree.expect("plans can be made").current()) {
                fired.insert(finding.rule);
                if !finding.fixes.is_empty() {
                    fixed.insert(finding.rule);
                }
            }
        }
        assert!(fired.len() * 10 > ALL.len() * 8, "only {fired:?}");
        assert!(fixed.len() * 10 > ALL.len() * 4, "only {fixed:?}");
    }

    proptest! {
        #[test]
        fn offered_fixes_remove_their_finding_and_add_no_must_fix_one(
            plan in plan_from_document()
        ) {
            prop_assert_eq!(fixes_of_findings_hold(&plan, &findings(&plan)), Ok(()));
        }

        #[test]
        fn findings_have_keys_of_their_own(plan in plan_from_document()) {
            let keys: Vec<String> = findings(&plan).iter().map(Finding::key).collect();
            let unique: BTreeSet<&String> = keys.iter().collect();
            prop_assert_eq!(unique.len(), keys.len(), "{:?}", keys);
        }

        #[test]
        fn no_finding_is_stricter_than_its_rule_says_on_any_plan(plan in plan_from_document()) {
            for finding in findings(&plan) {
                let rule = rule(finding.rule).expect("the rule is listed");
                prop_assert!(finding.severity >= rule.severity, "{:?}", finding);
                if finding.acceptable == Acceptable::Never {
                    prop_assert_eq!(rule.acceptable, Acceptable::Never);
                    prop_assert_eq!(finding.severity, Severity::MustFix);
                }
            }
        }

        /// Whether a brake is there, is reached, holds and lets go is the shop's.
        #[test]
        fn no_clinician_accepts_that_a_brake_must_be_fixed(plan in plan_from_document()) {
            for finding in findings(&plan) {
                let rule = rule(finding.rule).expect("the rule is listed");
                if rule.family == Family::Brake && finding.severity == Severity::MustFix {
                    prop_assert!(!finding.acceptable.by(Role::Clinician), "{:?}", finding);
                }
            }
        }

        /// What no edit would make is found only in documents.
        #[test]
        fn edits_never_give_a_button_what_it_cannot_have(plan in plan()) {
            let situation = Situation::of(&plan);
            for rule in [
                &fixed_button_reassigned::RULE,
                &copying_button_reassigned::RULE,
                &limited_button_outside_its_set::RULE,
                &button_not_on_bike::RULE,
            ] {
                prop_assert_eq!((rule.check)(&situation), Vec::new());
            }
        }
    }

    #[test]
    fn no_finding_is_stricter_than_its_rule_says() {
        let mut never = 0;
        for id in TemplateId::ALL {
            for side in Side::ALL {
                let idle = RiderEdit::HandDoesNothing(*side, HandPlace::Rests, None);
                let plan = template(*id).plan("Test");
                let plan = plan.apply(&Edit::Rider(idle)).expect("it can be said");
                let lever = plan.bike.brakes.runs[0].lever;
                let joined = Edit::Brakes(BrakeEdit::AllOnLever(lever));
                for plan in [plan.apply(&joined).expect("a lever brakes"), plan] {
                    for finding in findings(&plan) {
                        let rule = rule(finding.rule).expect("a finding has its rule");
                        assert!(finding.severity >= rule.severity, "{id}: {finding:?}");
                        if finding.acceptable == Acceptable::Never {
                            never += 1;
                            assert_eq!(rule.acceptable, Acceptable::Never, "{}", rule.id);
                            assert_eq!(finding.severity, Severity::MustFix, "{}", rule.id);
                        }
                    }
                }
            }
        }
        assert!(never > 0);
    }
}
