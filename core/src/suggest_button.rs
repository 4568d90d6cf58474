//! Which button suits a function best: the one search that starts and fixes
//! share.

use crate::cockpit::{Button, ButtonId, ButtonPart, Control, Ease, HandPosition};
use crate::coverage::presses;
use crate::function::Function;
use crate::ordered;
use crate::plan::Plan;
use crate::rider::{Day, Difficulty, Side};
use crate::situation::Situation;

/// A button and how it is reached without letting go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Suited {
    /// The button.
    pub(crate) button: ButtonId,
    /// Positions in use from which no hand reaches it so; never all of them.
    pub(crate) missed: Vec<HandPosition>,
    /// The worst of its best presses: beyond "able", step, ease.
    pub(crate) worst: (bool, Difficulty, Ease),
    part: ButtonPart,
}

impl Suited {
    /// How well it suits, lower is better: reached from most positions, by the
    /// ablest contact, most naturally, then in the order of a lever's parts.
    fn rank(&self) -> (usize, (bool, Difficulty, Ease), ButtonPart, ButtonId) {
        (self.missed.len(), self.worst, self.part, self.button)
    }
}

/// The buttons of a side that can be remapped and that its hand presses without
/// letting go, best first.
pub(crate) fn reached_by(plan: &Plan, side: Side) -> Vec<Suited> {
    let mut suited: Vec<Suited> = remappable(plan)
        .filter(|(control, _)| control.side.hand() == Some(side))
        .filter_map(|(control, button)| suit(plan, control, button, Day::Usual))
        .collect();
    ordered::sort_by_key(&mut suited, Suited::rank);
    suited
}

/// The free buttons that can be given a function and that a working hand
/// presses without letting go on a day, best first; those on the control of the
/// function's opposite before others as good.
pub(crate) fn free_buttons(situation: &Situation<'_>, function: Function, day: Day) -> Vec<Suited> {
    let plan = situation.plan;
    let all = situation.suited(day).iter();
    let mut suited: Vec<Suited> = all
        .filter(|suited| {
            is_free(situation, suited.button)
                && plan.bike.can_do(suited.button, function)
                && !lies_under_unsteady_hand(plan, suited.button)
        })
        .cloned()
        .collect();
    let opposite = |suited: &Suited| {
        let taps = situation.layout.taps.iter();
        let mut beside = taps.filter(|(id, _)| id.control == suited.button.control);
        beside.any(|(_, f)| Some(*f) == function.opposite())
    };
    ordered::sort_by_key(&mut suited, |s| {
        (s.missed.len(), s.worst, !opposite(s), s.rank())
    });
    suited
}

/// The buttons that can be remapped and that a hand presses on a day without letting go.
pub(crate) fn suited(plan: &Plan, day: Day) -> Vec<Suited> {
    remappable(plan)
        .filter_map(|(control, button)| suit(plan, control, button, day))
        .collect()
}

fn remappable(plan: &Plan) -> impl Iterator<Item = (&Control, &Button)> {
    plan.bike
        .controls
        .iter()
        .filter(|control| control.connected)
        .flat_map(|control| control.buttons.iter().map(move |button| (control, button)))
        .filter(|(_, button)| button.is_remappable())
}

/// Whether nothing of use is on a button.
fn is_free(situation: &Situation<'_>, id: ButtonId) -> bool {
    let (plan, layout) = (situation.plan, situation.layout);
    let has_use = |f: &Function| plan.shift_plan.has_use_for(*f, &plan.bike);
    !layout.taps.get(&id).is_some_and(has_use)
        && !layout.holds.contains_key(&id)
        && !layout.chords.iter().any(|chord| chord.includes(id))
}

fn lies_under_unsteady_hand(plan: &Plan, id: ButtonId) -> bool {
    let hand = plan.bike.control(id.control).and_then(|c| c.side.hand());
    hand.is_some_and(|side| plan.rider.hands.get(side).may_press_unawares())
}

/// How a button is reached from the positions in use without letting go; `None`
/// where it is not.
fn suit(plan: &Plan, control: &Control, button: &Button, day: Day) -> Option<Suited> {
    let id = control.button_id(button.part);
    let mut missed = Vec::new();
    let mut worst = None;
    for position in plan.positions_used() {
        let best = presses(plan, id, position, day)
            .into_iter()
            .filter(|way| way.keeps_hold() && way.is_usable())
            .map(|way| way.difficulty())
            .min();
        match best {
            Some(best) => worst = worst.max(Some(best)),
            None => missed.push(position),
        }
    }
    Some(Suited {
        button: id,
        missed,
        worst: worst?,
        part: button.part,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{Edit, LayoutEdit, RiderEdit};
    use crate::function::Function::{Lights, RearEasier, RearHarder, RungUp};
    use crate::rider::{Answer, Contact, HandPlace, YesNo};
    use crate::testing::button;

    fn after(plan: &Plan, edits: &[Edit]) -> Plan {
        edits
            .iter()
            .try_fold(plan.clone(), |plan, edit| plan.apply(edit))
            .expect("the edits are possible")
    }

    fn gravel() -> Plan {
        template(TemplateId::Gravel).plan("Test")
    }

    /// The free buttons in words, best first.
    fn free(plan: &Plan, function: Function) -> Vec<String> {
        let found = free_buttons(&Situation::of(plan), function, Day::Usual);
        let found = found.iter().map(|suited| suited.button);
        found.map(|id| plan.bike.place_of(id)).collect()
    }

    #[test]
    fn what_most_positions_reach_comes_first() {
        assert_eq!(
            free(&gravel(), Lights),
            [
                "left outer paddle",
                "left inner paddle",
                "left hood button",
                "right hood button"
            ]
        );
    }

    #[test]
    fn the_lever_of_the_opposite_comes_before_another_as_good() {
        let outer = button(&gravel(), "right outer paddle");
        let plan = after(&gravel(), &[Edit::Layout(LayoutEdit::Tap(outer, None))]);
        assert_eq!(free(&plan, RearEasier)[0], "right outer paddle");
        assert_eq!(free(&plan, Lights)[0], "left outer paddle");
    }

    #[test]
    fn able_contacts_come_before_those_at_step_3_and_unable_ones_not_at_all() {
        let thumb = |step| {
            let both = [Side::Left, Side::Right].map(|side| {
                Edit::Rider(RiderEdit::Contact(side, Contact::Thumb, Answer::of(step)))
            });
            free(&after(&gravel(), &both), Lights).len()
        };
        assert_eq!(thumb(Difficulty::Severe), 4);
        assert_eq!(thumb(Difficulty::Complete), 2);
    }

    #[test]
    fn nothing_is_put_under_a_hand_that_may_press_unawares_or_does_not_work() {
        let moves = RiderEdit::MovesByItself(Side::Left, Answer::of(YesNo::Yes));
        let unsteady = after(&gravel(), &[Edit::Rider(moves)]);
        assert_eq!(free(&unsteady, Lights), ["right hood button"]);
        let off = RiderEdit::HandDoesNothing(Side::Left, HandPlace::OffBar, None);
        let off = after(&gravel(), &[Edit::Rider(off)]);
        assert_eq!(free(&off, Lights), ["right hood button"]);
    }

    #[test]
    fn a_button_without_use_counts_as_free_and_one_with_use_does_not() {
        let give = |place, function| {
            Edit::Layout(LayoutEdit::Tap(button(&gravel(), place), Some(function)))
        };
        let plan = after(
            &gravel(),
            &[
                give("left outer paddle", RungUp),
                give("left inner paddle", RearHarder),
            ],
        );
        let found = free(&plan, Lights);
        assert_eq!(found[0], "left outer paddle");
        assert!(!found.contains(&"left inner paddle".to_string()));
    }

    #[test]
    fn only_the_side_asked_for_is_reached() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let found = reached_by(&plan, Side::Right);
        let found: Vec<String> = found.iter().map(|s| plan.bike.place_of(s.button)).collect();
        // Neither the fixed sprint button nor the pod, which no used position
        // reaches.
        assert_eq!(
            found,
            [
                "right outer paddle",
                "right inner paddle",
                "right hood button"
            ]
        );
    }
}
