//! Where what a rule speaks of is noted or mended.

use super::*;
use crate::finding::{Finding, Place};
use crate::gears::Sprockets;
use crate::plan::Plan;
use crate::rider::{QUESTIONS, QuestionId, Subject};
use crate::spot::Spot;

/// The spots that belong to a finding, most telling first. What is not named
/// here is mended with the buttons.
pub(crate) fn noted(finding: &Finding, plan: &Plan) -> Vec<Spot> {
    let hand = |question| finding.hand().map(|side| Spot::Hand(side, question));
    let control = |spot: fn(_) -> Spot| finding.control().map(spot);
    let used = finding.places.iter().filter_map(|place| match place {
        Place::Position(position) => Some(Spot::Position(*position)),
        _ => None,
    });
    let spots: Vec<Option<Spot>> = match finding.rule {
        rule if rule == not_asked_yet::RULE.id => return open_questions(finding, plan),
        rule if rule == position_change_by_only_steering_hand::RULE.id => return used.collect(),
        rule if rule == needed_function_missing_from_position::RULE.id => {
            return std::iter::once(Spot::Buttons).chain(used).collect();
        }
        rule if rule == brake_out_of_reach::RULE.id => {
            return std::iter::once(Spot::Brakes).chain(used).collect();
        }
        rule if [
            system_cannot_program::RULE.id,
            system_profile_guessed::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::System)]
        }
        rule if rule == required_lever_absent::RULE.id => {
            vec![Some(Spot::Controls), Some(Spot::System)]
        }
        rule if [
            fixed_button_reassigned::RULE.id,
            copying_button_reassigned::RULE.id,
            limited_button_outside_its_set::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::Buttons), control(Spot::Control)]
        }
        rule if [open_port::RULE.id, unused_lever_has_blade::RULE.id].contains(&rule) => {
            vec![control(Spot::Control)]
        }
        rule if [
            blade_near_bar_at_full_pull::RULE.id,
            blade_beyond_reach::RULE.id,
            blade_far_from_bar::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![control(Spot::Blade)]
        }
        rule if [
            brake_throw_untested::RULE.id,
            front_and_rear_on_one_lever::RULE.id,
            one_joint_for_front_and_rear::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![control(Spot::Throw)]
        }
        rule if rule == parking_latch_untried::RULE.id => vec![control(Spot::Latch)],
        rule if [
            wheel_brake_without_lever::RULE.id,
            brakes_not_pulled_together::RULE.id,
            axle_wheels_braked_apart::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::Brakes)]
        }
        rule if rule == axle_balance_not_seen::RULE.id => vec![axle(finding)],
        rule if rule == front_brake_side_changed::RULE.id => {
            vec![Some(Spot::FrontBrakeHabit), Some(Spot::Brakes)]
        }
        rule if rule == mounting_brake_not_held::RULE.id => vec![Some(Spot::MountingBrake)],
        rule if rule == device_release_untested::RULE.id => {
            vec![finding.hand().map(Spot::Device)]
        }
        rule if [
            thumb_work_only_by_letting_go::RULE.id,
            only_brake_hand_signals::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::ThumbWork)]
        }
        rule if rule == riding_hurts::RULE.id => vec![hand(QuestionId::Comfort)],
        rule if [
            brake_not_let_go::RULE.id,
            brake_grip_takes_effort::RULE.id,
            brake_finger_takes_great_effort::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![hand(QuestionId::Braking)]
        }
        rule if [
            one_sided_braking_loads_other_arm::RULE.id,
            press_lets_go_of_steering::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![hand(QuestionId::Steering), Some(Spot::Buttons)]
        }
        rule if [
            press_takes_great_effort::RULE.id,
            fingers_press_together::RULE.id,
            press_together_not_possible::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::Buttons), hand(QuestionId::Pressing)]
        }
        rule if [
            live_button_under_resting_hand::RULE.id,
            hold_may_run_on::RULE.id,
            holding_not_possible::RULE.id,
        ]
        .contains(&rule) =>
        {
            vec![Some(Spot::Buttons), hand(QuestionId::HoldAndLetGo)]
        }
        rule if rule == hand_does_not_stay_on::RULE.id => vec![hand(QuestionId::Holding)],
        rule if rule == opposites_too_close::RULE.id => {
            vec![Some(Spot::Buttons), hand(QuestionId::Feeling)]
        }
        rule if rule == function_lost_on_bad_day::RULE.id => {
            vec![hand(QuestionId::OnItsOwn), Some(Spot::Buttons)]
        }
        rule if rule == gears_not_entered::RULE.id => {
            let lacks = |sprockets: &Sprockets| sprockets.teeth().is_none();
            let drivetrain = &plan.bike.drivetrain;
            vec![
                lacks(&drivetrain.rings).then_some(Spot::Rings),
                lacks(&drivetrain.cogs).then_some(Spot::Cogs),
            ]
        }
        rule if rule == derailleur_exceeded::RULE.id => {
            vec![Some(Spot::Derailleurs), Some(Spot::Cogs)]
        }
        rule if [crossover_jumps::RULE.id, crossovers_too_close::RULE.id].contains(&rule) => {
            vec![Some(Spot::Crossovers)]
        }
        rule if rule == ladder_broken::RULE.id => {
            vec![Some(Spot::Crossovers), Some(Spot::ShiftPlan)]
        }
        rule if rule == hold_crosses_over::RULE.id => {
            vec![Some(Spot::HoldsCross), Some(Spot::Buttons)]
        }
        rule if rule == no_chain_catcher::RULE.id => vec![Some(Spot::ChainCatcher)],
        _ => vec![Some(Spot::Buttons)],
    };
    spots.into_iter().flatten().collect()
}

fn open_questions(finding: &Finding, plan: &Plan) -> Vec<Spot> {
    let side = finding.hand();
    let about = |subject| match side {
        Some(_) => subject == Subject::EachHand,
        None => subject == Subject::Once,
    };
    let open = QUESTIONS.iter().filter(|q| about(q.subject));
    open.flat_map(|question| question.open_spots(plan))
        .filter(|spot| match spot {
            Spot::Hand(hand, question) => {
                Some(*hand) == side && not_asked_yet::is_asked(plan, *question)
            }
            _ => true,
        })
        .collect()
}

fn axle(finding: &Finding) -> Option<Spot> {
    finding.places.iter().find_map(|place| match place {
        Place::Wheel(wheel) => Some(Spot::Axle(*wheel)),
        _ => None,
    })
}
