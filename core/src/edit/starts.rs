//! Acts that start or turn a whole layout.

use super::EditError;
use crate::cockpit::{BarSide, Bike, ButtonId, Control, Freedom, HandPosition};
use crate::coverage;
use crate::function::Function;
use crate::layout::{Chord, Layout};
use crate::ordered::SmallMap;
use crate::plan::Plan;
use crate::rider::{Day, HandPlace, Side};
use crate::suggest_button::{self, Suited};
use crate::vocabulary::Vocabulary;

/// Puts all needed shifting on one side: the buttons that the hand reaches from
/// most of the positions it uses, the easiest first, take the functions in the
/// order of their weight. A position that a button misses gets the function on a
/// second one. Where buttons run out, one front toggle serves for both front
/// functions, then two buttons pressed together.
pub(super) fn all_shifting_on(plan: &mut Plan, side: Side) -> Result<(), EditError> {
    let buttons = suggest_button::reached_by(plan, side);
    let pair = match &buttons[..] {
        [] => return Err(nothing_to_press(plan, side)),
        [_] => None,
        [first, second, ..] => Some((first.button, second.button)),
    };
    let (front, other): (Vec<Function>, Vec<Function>) =
        plan.needed_functions().iter().partition(|f| f.is_front());
    let mut placing = Placing {
        bike: &plan.bike,
        free: buttons,
        taps: SmallMap::new(),
    };
    let placed: Vec<_> = other
        .iter()
        .map(|f| (*f, placing.put(*f, |_| true)))
        .collect();
    for (function, first) in placed {
        placing.put_for(first.map_or_else(Vec::new, |first| first.missed), function);
    }
    if placing.free.len() >= front.len() {
        // In the order of their weight: the smaller ring takes the button that
        // most positions reach.
        for function in &front {
            placing.put(*function, |_| true);
        }
    }
    let lacks_front = !front.is_empty() && !placing.taps.values().any(|f| f.is_front());
    if lacks_front {
        placing.put(Function::FrontToggle, |_| true);
    }
    let taps = placing.taps;
    let chord = pair.map(|(first, second)| Chord {
        first,
        second,
        function: Function::FrontToggle,
    });
    let needs_chord = lacks_front && !taps.values().any(|f| f.is_front());
    let chord = chord.filter(|chord| needs_chord && chord.is_buildable(&plan.bike));
    let layout = plan.layout_mut();
    let old = layout.clone();
    *layout = Layout::blank(old.id, old.name.as_str());
    layout.taps = taps;
    layout.chords.extend(chord);
    keep_the_rest(layout, &old);
    change_places(plan, side);
    Ok(())
}

/// Lets buttons of a side change places as long as less is missing then, and
/// nothing else instead: a fixed button may give from some position what another
/// need not give there.
fn change_places(plan: &mut Plan, side: Side) {
    let mut gaps = missing(plan, plan.layout());
    // Each round misses less than the one before; a limit keeps it short.
    for _ in 0..4 {
        let better = swaps(plan, side).into_iter().find_map(|layout| {
            let left = missing(plan, &layout);
            let fewer = left.len() < gaps.len() && left.iter().all(|gap| gaps.contains(gap));
            fewer.then_some((layout, left))
        });
        let Some((layout, left)) = better else {
            break;
        };
        gaps = left;
        *plan.layout_mut() = layout;
    }
}

/// The layouts with two shifting buttons of a side swapped.
fn swaps(plan: &Plan, side: Side) -> Vec<Layout> {
    let (bike, layout) = (&plan.bike, plan.layout());
    let there = |id: &ButtonId| {
        let control = bike.control(id.control);
        control.is_some_and(|c| c.side.hand() == Some(side))
    };
    let taps: Vec<(ButtonId, Function)> = (layout.taps.iter())
        .filter(|(id, function)| there(id) && function.shifts())
        .map(|(id, function)| (*id, *function))
        .collect();
    let mut swaps = Vec::new();
    for (nth, (a, does_a)) in taps.iter().enumerate() {
        for (b, does_b) in &taps[nth + 1..] {
            if does_a != does_b && bike.can_do(*a, *does_b) && bike.can_do(*b, *does_a) {
                let mut swapped = layout.clone();
                swapped.taps.insert(*a, *does_b);
                swapped.taps.insert(*b, *does_a);
                swaps.push(swapped);
            }
        }
    }
    swaps
}

/// Which needed functions are not reached from which positions in use.
fn missing(plan: &Plan, layout: &Layout) -> Vec<(Function, HandPosition)> {
    let reached = coverage::needed_from(plan, layout, Day::Usual);
    let missing = reached.filter(|(_, _, cell)| cell.reached().is_none());
    missing
        .map(|(function, position, _)| (function, position))
        .collect()
}

/// Buttons of a side that are handed out, best first.
struct Placing<'a> {
    bike: &'a Bike,
    free: Vec<Suited>,
    taps: SmallMap<ButtonId, Function>,
}

impl Placing<'_> {
    /// Puts a function on the best free button that serves, if there is one.
    fn put(&mut self, function: Function, serves: impl Fn(&Suited) -> bool) -> Option<Suited> {
        let at = self
            .free
            .iter()
            .position(|free| self.bike.can_do(free.button, function) && serves(free))?;
        let taken = self.free.remove(at);
        self.taps.insert(taken.button, function);
        Some(taken)
    }

    /// Puts a function on further buttons for the positions from which its first
    /// one is not reached.
    fn put_for(&mut self, mut missed: Vec<HandPosition>, function: Function) {
        while !missed.is_empty() {
            let helps = |free: &Suited| missed.iter().any(|p| !free.missed.contains(p));
            let Some(taken) = self.put(function, helps) else {
                break;
            };
            missed.retain(|position| taken.missed.contains(position));
        }
    }
}

/// Why nothing can go on a side.
fn nothing_to_press(plan: &Plan, side: Side) -> EditError {
    let there = |c: &Control| c.connected && c.side == BarSide::from(side);
    let any = plan.bike.controls.iter().filter(|c| there(c));
    EditError::NotPossible(if any.flat_map(|c| &c.buttons).any(|b| b.is_remappable()) {
        format!(
            "The {side} hand presses no button there that can be given a function. Choose the other side, or add a pod that it reaches."
        )
    } else {
        format!(
            "There is no button on the {side} that can be given a function. Add a pod there first."
        )
    })
}

/// What does not shift stays where it was, if its button is still blank.
fn keep_the_rest(layout: &mut Layout, old: &Layout) {
    for (id, function) in &old.taps {
        if !function.shifts() && !layout.taps.contains_key(id) {
            layout.taps.insert(*id, *function);
        }
    }
}

/// Exchanges left and right: each button takes what its counterpart on the
/// other side had. What has no counterpart, or a counterpart that cannot take
/// it, is refused rather than dropped.
pub(super) fn mirror_layout(plan: &mut Plan) -> Result<(), EditError> {
    let bike = &plan.bike;
    let across = |id: ButtonId| -> Result<ButtonId, EditError> {
        let (control, _) = bike.button(id).ok_or_else(|| EditError::NoSuchButton {
            place: id.part.to_string(),
        })?;
        if control.side == BarSide::Centre {
            return Ok(id);
        }
        counterpart(&bike.controls, control, id).ok_or_else(|| {
            EditError::NotPossible(format!(
                "The {} has no counterpart on the other side. Clear it first, or add the control there.",
                control.place_of(id.part)
            ))
        })
    };
    let old = plan.layout().clone();
    let mut mirrored = Layout::blank(old.id, old.name.as_str());
    for (id, function) in &old.taps {
        let to = across(*id)?;
        super::layout::may_take(bike, to, *function)?;
        mirrored.taps.insert(to, *function);
    }
    for (id, hold) in &old.holds {
        let to = across(*id)?;
        super::layout::may_hold(bike, to, *hold)?;
        mirrored.holds.insert(to, *hold);
    }
    for chord in &old.chords {
        let chord = Chord {
            first: across(chord.first)?,
            second: across(chord.second)?,
            function: chord.function,
        };
        super::layout::may_chord(bike, &chord)?;
        mirrored.chords.push(chord);
    }
    *plan.layout_mut() = mirrored;
    Ok(())
}

fn counterpart(controls: &[Control], control: &Control, id: ButtonId) -> Option<ButtonId> {
    controls
        .iter()
        .find(|c| {
            c.side == control.side.mirrored()
                && (c.kind, c.zone) == (control.kind, control.zone)
                && c.button(id.part).is_some()
        })
        .map(|c| c.button_id(id.part))
}

/// Leaves blank what lies under a hand that does not work; what is fixed there
/// is unplugged where its control has nothing else.
pub(super) fn blank_under_resting_hands(plan: &mut Plan) {
    let idle: Vec<BarSide> = Side::ALL
        .iter()
        .filter(|side| {
            matches!(
                plan.rider.hands.get(**side).place.value,
                Some(HandPlace::Rests)
            )
        })
        .map(|side| BarSide::from(*side))
        .collect();
    let mut blanked = Vec::new();
    for control in &mut plan.bike.controls {
        if !idle.contains(&control.side) {
            continue;
        }
        blanked.extend(control.buttons.iter().map(|b| control.button_id(b.part)));
        let fixed = |freedom: &Freedom| !matches!(freedom, Freedom::Free | Freedom::Limited(_));
        if !control.buttons.is_empty() && control.buttons.iter().all(|b| fixed(&b.freedom)) {
            control.connected = false;
        }
    }
    let layout = plan.layout_mut();
    for id in blanked {
        layout.clear(id);
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{ControlKind, Zone};
    use crate::coverage::Coverage;
    use crate::edit::{BikeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
    use crate::function::Function::{
        FrontLarger, FrontSmaller, FrontToggle, Lights, RearEasier, RearHarder, RungDown, RungUp,
    };
    use crate::rider::{Answer, Contact, Difficulty, Use};
    use crate::shift_plan::ShiftPlanKind;
    use crate::testing::{button, plan};

    fn after(plan: &Plan, edits: &[Edit]) -> Plan {
        edits
            .iter()
            .try_fold(plan.clone(), |plan, edit| plan.apply(edit))
            .expect("the edits are possible")
    }

    fn all_on(side: Side) -> Edit {
        Edit::Layout(LayoutEdit::AllShiftingOn(side))
    }

    fn uses(position: HandPosition) -> Edit {
        Edit::Rider(RiderEdit::Position(position, Answer::of(Use::Mostly)))
    }

    /// What taps do, by place.
    fn taps(plan: &Plan) -> SmallMap<String, Function> {
        let taps = plan.layout().taps.iter();
        taps.map(|(id, f)| (plan.bike.place_of(*id), *f)).collect()
    }

    #[track_caller]
    fn check_taps(plan: &Plan, expected: &[(&str, Function)]) {
        let expected = expected.iter().map(|(place, f)| (place.to_string(), *f));
        assert_eq!(taps(plan), expected.collect());
    }

    #[test]
    fn one_lever_takes_the_rear_on_its_paddles_and_a_toggle_on_the_hood() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        check_taps(
            &after(&plan, &[all_on(Side::Left)]),
            &[
                ("left outer paddle", RearEasier),
                ("left inner paddle", RearHarder),
                ("left hood button", FrontToggle),
            ],
        );
    }

    #[test]
    fn a_ladder_takes_two_paddles() {
        let road = template(TemplateId::RoadPods).plan("Test");
        let ladder = Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder));
        check_taps(
            &after(&road, &[ladder, all_on(Side::Left)]),
            &[
                ("left outer paddle", RungDown),
                ("left inner paddle", RungUp),
            ],
        );
    }

    #[test]
    fn a_position_that_the_paddles_miss_gets_the_rear_once_more() {
        let road = template(TemplateId::RoadPods).plan("Test");
        let tops = [uses(HandPosition::Tops), uses(HandPosition::Hoods)];
        check_taps(
            &after(&after(&road, &tops), &[all_on(Side::Right)]),
            &[
                ("right outer paddle", RearEasier),
                ("right inner paddle", RearHarder),
                ("right tops pod, near button", RearEasier),
                ("right tops pod, far button", RearHarder),
                ("right hood button", FrontToggle),
            ],
        );
        let aero = template(TemplateId::AeroTwoButton).plan("Test");
        let ladder = Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder));
        check_taps(
            &after(&aero, &[ladder, all_on(Side::Left)]),
            &[
                ("left extension-tip pod, near button", RungDown),
                ("left extension-tip pod, far button", RungUp),
                ("left base-bar lever, upper button", RungDown),
                ("left base-bar lever, lower button", RungUp),
            ],
        );
    }

    /// The left sprint button gives the easier gear in the drops, so that the
    /// paddle is free for what nothing else gives there.
    #[test]
    fn what_a_fixed_button_gives_frees_a_better_one() {
        let road = template(TemplateId::RoadPods).plan("Test");
        let edits = [
            uses(HandPosition::Hoods),
            uses(HandPosition::Drops),
            all_on(Side::Left),
        ];
        let plan = after(&road, &edits);
        let given = taps(&plan);
        assert_eq!(given.get("left hood button"), Some(&RearEasier));
        assert_eq!(given.get("left outer paddle"), Some(&FrontToggle));
        let drops = |function| {
            let coverage = Coverage::of(&plan, plan.layout());
            let cell = coverage.cell(function, HandPosition::Drops, Day::Usual);
            cell.is_some_and(|cell| cell.reached().is_some())
        };
        assert!(drops(RearEasier) && drops(RearHarder) && drops(FrontSmaller));
    }

    #[test]
    fn two_free_buttons_take_the_front_apart() {
        let plan = template(TemplateId::FlatDouble).plan("Test");
        let pod = BikeEdit::Add(ControlKind::Pod, Side::Left, Zone::Grip);
        let plan = after(&plan, &[Edit::Bike(pod), all_on(Side::Left)]);
        let given: Vec<Function> = plan.layout().taps.values().copied().collect();
        assert_eq!(given.len(), 4);
        assert!(given.contains(&FrontSmaller) && given.contains(&FrontLarger));
    }

    #[test]
    fn two_buttons_together_shift_the_front_where_buttons_run_out() {
        let plan = template(TemplateId::FlatDouble).plan("Test");
        let plan = after(&plan, &[all_on(Side::Right)]);
        check_taps(
            &plan,
            &[
                ("right thumb pod, near button", RearEasier),
                ("right thumb pod, far button", RearHarder),
            ],
        );
        assert_eq!(plan.layout().chords[0].function, FrontToggle);
    }

    #[test]
    fn what_the_system_cannot_program_is_left_out() {
        let plan = template(TemplateId::FlatDouble).plan("Test");
        let mut system = plan.bike.system.clone();
        system.chords = false;
        let plan = after(
            &plan,
            &[Edit::Bike(BikeEdit::System(system)), all_on(Side::Right)],
        );
        assert!(plan.layout().chords.is_empty());
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let mut system = plan.bike.system.clone();
        system.functions.remove(&FrontToggle);
        let plan = after(
            &plan,
            &[Edit::Bike(BikeEdit::System(system)), all_on(Side::Left)],
        );
        assert_eq!(taps(&plan).len(), 2);
    }

    #[test]
    fn what_does_not_shift_stays_on_a_blank_button() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let give = |place| Edit::Layout(LayoutEdit::Tap(button(&plan, place), Some(Lights)));
        let (hood, paddle) = (give("right hood button"), give("left outer paddle"));
        let plan = after(&plan, &[hood, paddle, all_on(Side::Left)]);
        assert_eq!(taps(&plan).get("right hood button"), Some(&Lights));
        assert_eq!(taps(&plan).get("left outer paddle"), Some(&RearEasier));
    }

    #[test]
    fn the_ablest_contact_comes_first() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let fingers = [Contact::Index, Contact::Middle, Contact::Ring].map(|contact| {
            Edit::Rider(RiderEdit::Contact(
                Side::Left,
                contact,
                Answer::of(Difficulty::Severe),
            ))
        });
        let ladder = Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder));
        let plan = after(&plan, &fingers);
        let plan = after(
            &plan,
            &[ladder, uses(HandPosition::Hoods), all_on(Side::Left)],
        );
        assert_eq!(taps(&plan).get("left hood button"), Some(&RungDown));
    }

    #[test]
    fn says_why_nothing_can_go_there() {
        let refusal = |plan: &Plan, side| {
            let refused = plan.apply(&all_on(side));
            refused.expect_err("the act is refused").to_string()
        };
        let plan = template(TemplateId::SingleSidedLeft).plan("Test");
        assert_eq!(
            refusal(&plan, Side::Right),
            "There is no button on the right that can be given a function. Add a pod there first."
        );
        let rests = RiderEdit::HandDoesNothing(Side::Left, HandPlace::Rests, None);
        let plan = after(&plan, &[Edit::Rider(rests)]);
        assert_eq!(
            refusal(&plan, Side::Left),
            "The left hand presses no button there that can be given a function. Choose the other side, or add a pod that it reaches."
        );
    }

    #[test]
    fn mirroring_a_layout_twice_gives_it_back() {
        for id in [
            TemplateId::RoadPlain,
            TemplateId::RoadPods,
            TemplateId::AeroTwoButton,
        ] {
            let plan = template(id).plan("Test");
            let mirror = Edit::Layout(LayoutEdit::Mirror);
            let once = after(&plan, std::slice::from_ref(&mirror));
            assert_ne!(once, plan, "{id}");
            assert_eq!(after(&once, &[mirror]), plan, "{id}");
        }
    }

    #[test]
    fn a_layout_without_counterpart_is_not_mirrored() {
        let plan = template(TemplateId::FlatSingle).plan("Test");
        let refused = plan.apply(&Edit::Layout(LayoutEdit::Mirror));
        assert_eq!(
            refused.map_err(|error| error.to_string()),
            Err("The right thumb pod, near button has no counterpart on the other side. Clear it first, or add the control there.".into())
        );
    }

    #[test]
    fn nothing_under_a_resting_hand_stays_live() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let rests = RiderEdit::HandDoesNothing(Side::Right, HandPlace::Rests, None);
        let blank = Edit::Layout(LayoutEdit::BlankUnderRestingHands);
        let plan = after(&plan, &[Edit::Rider(rests), blank]);
        for (id, control, _) in plan.bike.buttons() {
            let live = plan.layout().is_live(&plan.bike, id);
            let shifts_left = taps(&plan).contains_key(&plan.bike.place_of(id))
                || control.kind == ControlKind::SprintButton;
            assert_eq!(live, control.side == BarSide::Left && shifts_left, "{id}");
        }
    }

    proptest! {
        #[test]
        fn all_shifting_on_a_side_is_buildable_and_only_there(
            plan in plan(),
            left in prop::bool::ANY
        ) {
            let side = if left { Side::Left } else { Side::Right };
            if let Ok(plan) = plan.apply(&all_on(side)) {
                let layout = plan.layout();
                for (id, function) in layout.taps.iter().filter(|(_, f)| f.shifts()) {
                    let control = plan.bike.control(id.control).expect("a control of the bike");
                    prop_assert_eq!(control.side, BarSide::from(side));
                    prop_assert!(plan.bike.can_do(*id, *function));
                }
                prop_assert!(layout.chords.iter().all(|chord| chord.is_buildable(&plan.bike)));
                prop_assert_eq!(plan.apply(&all_on(side)), Ok(plan));
            }
        }
    }
}
