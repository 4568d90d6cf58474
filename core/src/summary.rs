//! A layout in a few words: what each hand has to do.

use std::fmt;

use crate::cockpit::{BarSide, ButtonId, ControlKind, Wheel};
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::rider::{HandPlace, Side};
use crate::situation::Situation;

/// What each hand has to do, a sentence for each.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Summary {
    /// "Left hand: outer paddle easier, inner paddle harder; brakes both
    /// wheels."
    pub left: String,
    /// "Right hand: rests; its buttons do nothing."
    pub right: String,
    /// What sits in the middle, and what takes both sides at once.
    pub centre: Option<String>,
}

impl fmt::Display for Summary {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.left, self.right)?;
        match &self.centre {
            Some(centre) => write!(f, " {centre}"),
            None => Ok(()),
        }
    }
}

/// The layout of a situation in a few words.
pub fn of(situation: &Situation<'_>) -> Summary {
    Summary {
        left: hand(situation, Side::Left),
        right: hand(situation, Side::Right),
        centre: centre(situation),
    }
}

fn hand(situation: &Situation<'_>, side: Side) -> String {
    let live = live_on(situation, BarSide::from(side)).join(", ");
    let braked = braked_on(situation, side);
    let place = situation.hand(side).place.value;
    let mut said = match (place, live.is_empty()) {
        (Some(HandPlace::Rests), true) => "rests; its buttons do nothing".into(),
        (Some(HandPlace::Rests), false) => format!("rests; live under it: {live}"),
        (Some(HandPlace::OffBar), true) => "off the bar; its buttons do nothing".into(),
        (Some(HandPlace::OffBar), false) => format!("off the bar; live on its side: {live}"),
        (Some(HandPlace::Works) | None, true) => "nothing to press".into(),
        (Some(HandPlace::Works) | None, false) => live,
    };
    if let Some(wheels) = braked {
        said.push_str(match place {
            Some(HandPlace::Works) | None => "; brakes ",
            Some(_) => "; its lever brakes ",
        });
        said.push_str(&wheels);
    }
    match side {
        Side::Left => format!("Left hand: {said}."),
        Side::Right => format!("Right hand: {said}."),
    }
}

fn centre(situation: &Situation<'_>) -> Option<String> {
    let middle = live_on(situation, BarSide::Centre);
    let across: Vec<String> = chords(situation)
        .filter(|chord| side_of(situation, chord.first) != side_of(situation, chord.second))
        .map(|chord| {
            let place = |id| situation.plan.bike.place_of(id);
            let (first, second) = (place(chord.first), place(chord.second));
            format!("{first} with {second} {}", plain(chord.function))
        })
        .collect();
    let groups: Vec<String> = [("Middle", middle), ("Both sides at once", across)]
        .into_iter()
        .filter(|(_, said)| !said.is_empty())
        .map(|(name, said)| format!("{name}: {}.", said.join(", ")))
        .collect();
    (!groups.is_empty()).then(|| groups.join(" "))
}

/// What the live buttons of one side do, in balloon order, then what two of
/// them do together.
fn live_on(situation: &Situation<'_>, side: BarSide) -> Vec<String> {
    let bike = &situation.plan.bike;
    let on_side = |id: ButtonId| side_of(situation, id) == Some(side);
    let buttons = bike.buttons().into_iter().map(|(id, ..)| id);
    let pressed = buttons.filter(|id| on_side(*id)).filter_map(|id| {
        let tap = situation.layout.tap(bike, id).map(plain);
        let connected = bike.control(id.control)?.connected;
        let hold = situation.layout.holds.get(&id).filter(|_| connected);
        let does = match (tap, hold) {
            (None, None) => return None,
            (Some(tap), None) => tap.to_owned(),
            (Some(tap), Some(Hold::Repeats(_))) => format!("{tap} (held: goes on)"),
            (Some(tap), Some(Hold::Does(other))) => format!("{tap} (held: {})", plain(*other)),
            (None, Some(Hold::Repeats(_))) => return None,
            (None, Some(Hold::Does(other))) => format!("(held: {})", plain(*other)),
        };
        Some(format!("{} {does}", name(situation, id)))
    });
    let together = chords(situation)
        .filter(|chord| on_side(chord.first) && on_side(chord.second))
        .map(|chord| {
            let (first, second) = (name(situation, chord.first), name(situation, chord.second));
            format!("{first} with {second} {}", plain(chord.function))
        });
    pressed.chain(together).collect()
}

/// The chords whose buttons are there and plugged in.
fn chords<'a>(situation: &'a Situation<'_>) -> impl Iterator<Item = &'a Chord> {
    let bike = &situation.plan.bike;
    situation.layout.chords.iter().filter(|chord| {
        let there = |id| bike.button(id).is_some();
        chord.is_connected(bike) && there(chord.first) && there(chord.second)
    })
}

fn side_of(situation: &Situation<'_>, id: ButtonId) -> Option<BarSide> {
    Some(situation.plan.bike.control(id.control)?.side)
}

/// A button by its name without the side, which the sentence says already.
fn name(situation: &Situation<'_>, id: ButtonId) -> String {
    let place = situation.plan.bike.place_of(id);
    let pod = situation.plan.bike.control(id.control).is_some_and(|c| {
        matches!(c.kind, ControlKind::Pod | ControlKind::BaseBarLever) && c.buttons.len() > 1
    });
    let bare = place
        .strip_prefix("left ")
        .or_else(|| place.strip_prefix("right "))
        .unwrap_or(&place);
    if pod {
        // "tops pod, near button" would end where the next button begins.
        bare.replacen(", ", " ", 1)
    } else {
        bare.to_owned()
    }
}

/// A function as a rider says it.
const fn plain(function: Function) -> &'static str {
    match function {
        Function::RearEasier | Function::RungDown => "easier",
        Function::RearHarder | Function::RungUp => "harder",
        Function::FrontLarger => "larger ring",
        Function::FrontSmaller => "smaller ring",
        Function::FrontToggle => "other ring",
        Function::NextScreen => "next screen",
        Function::Lights => "lights",
    }
}

/// The wheels braked by levers on the side of a hand, in words.
fn braked_on(situation: &Situation<'_>, side: Side) -> Option<String> {
    let bike = &situation.plan.bike;
    let braked: Vec<Wheel> = situation
        .live_runs()
        .filter(|run| bike.control(run.lever).and_then(|c| c.side.hand()) == Some(side))
        .flat_map(|run| run.wheels.iter().copied())
        .collect();
    let all = bike.frame.wheels();
    let names: Vec<String> = (all.iter().filter(|wheel| braked.contains(wheel)))
        .map(|wheel| format!("the {wheel}"))
        .collect();
    match names.len() {
        0 => None,
        n if n == all.len() && n == 2 => Some("both wheels".into()),
        n if n == all.len() => Some("all wheels".into()),
        _ => Some(names.join(" and ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::{HoldRun, Zone};
    use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
    use crate::plan::Plan;
    use crate::shift_plan::ShiftPlanKind;

    #[track_caller]
    fn after(plan: &Plan, edits: &[Edit]) -> Plan {
        edits
            .iter()
            .try_fold(plan.clone(), |plan, edit| plan.apply(edit))
            .expect("the edits are possible")
    }

    #[track_caller]
    fn says(plan: &Plan, words: &str) {
        assert_eq!(of(&Situation::of(plan)).to_string(), words);
    }

    fn button(plan: &Plan, place: &str) -> ButtonId {
        let buttons = plan.bike.buttons();
        let mut found = buttons
            .iter()
            .filter(|(id, ..)| plan.bike.place_of(*id) == place);
        found.next().expect("the button is there").0
    }

    #[test]
    fn one_hand_does_all_and_the_other_rests() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let lever = plan.bike.controls[0].id;
        let other = plan.bike.controls[1].id;
        let one_handed = after(
            &plan,
            &[
                Edit::Rider(RiderEdit::HandDoesNothing(
                    Side::Right,
                    HandPlace::Rests,
                    None,
                )),
                Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)),
                Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
            ],
        );
        says(
            &one_handed,
            "Left hand: outer paddle easier, inner paddle harder; brakes the front wheel. Right hand: rests; its buttons do nothing; its lever brakes the rear wheel.",
        );
        let done = after(
            &one_handed,
            &[
                Edit::Brakes(BrakeEdit::AllOnLever(lever)),
                Edit::Bike(BikeEdit::BladeFitted(other, false)),
            ],
        );
        says(
            &done,
            "Left hand: outer paddle easier, inner paddle harder; brakes both wheels. Right hand: rests; its buttons do nothing.",
        );
    }

    #[test]
    fn what_is_live_under_an_idle_hand_is_said() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let rests = RiderEdit::HandDoesNothing(Side::Left, HandPlace::Rests, None);
        let words = of(&Situation::of(&after(&plan, &[Edit::Rider(rests)]))).left;
        assert_eq!(
            words,
            "Left hand: rests; live under it: outer paddle larger ring, inner paddle smaller ring, sprint button easier; its lever brakes the front wheel."
        );
        let off = RiderEdit::HandDoesNothing(Side::Left, HandPlace::OffBar, None);
        let sprint = button(&plan, "left sprint button");
        let words = of(&Situation::of(&after(
            &plan,
            &[
                Edit::Rider(off),
                Edit::Layout(LayoutEdit::Clear),
                Edit::Bike(BikeEdit::Connect(sprint.control, false)),
            ],
        )))
        .left;
        assert!(
            words.starts_with("Left hand: off the bar; its buttons do nothing;"),
            "{words}"
        );
    }

    #[test]
    fn holds_chords_and_the_middle_are_said() {
        let plan = template(TemplateId::FlatSingle).plan("Test");
        let plan = after(
            &plan,
            &[Edit::Bike(BikeEdit::Add(
                ControlKind::SinglePod,
                Side::Left,
                Zone::Stem,
            ))],
        );
        let near = button(&plan, "right thumb pod, near button");
        let far = button(&plan, "right thumb pod, far button");
        let stem = button(&plan, "stem one-button pod");
        let plan = after(
            &plan,
            &[
                Edit::Layout(LayoutEdit::Hold(
                    near,
                    Some(Hold::Repeats(HoldRun::Cogs(3))),
                )),
                Edit::Layout(LayoutEdit::Hold(
                    far,
                    Some(Hold::Does(Function::NextScreen)),
                )),
                Edit::Layout(LayoutEdit::Tap(stem, Some(Function::Lights))),
                Edit::Layout(LayoutEdit::AddChord(Chord {
                    first: near,
                    second: far,
                    function: Function::Lights,
                })),
            ],
        );
        says(
            &plan,
            "Left hand: nothing to press; brakes the front wheel. Right hand: thumb pod far button harder (held: next screen), thumb pod near button easier (held: goes on), thumb pod near button with thumb pod far button lights; brakes the rear wheel. Middle: stem one-button pod lights.",
        );
    }

    #[test]
    fn what_takes_both_sides_is_said() {
        let plan = template(TemplateId::RoadOnePaddle).plan("Test");
        let centre = of(&Situation::of(&plan)).centre;
        assert_eq!(
            centre.as_deref(),
            Some("Both sides at once: left long paddle with right long paddle other ring.")
        );
        assert_eq!(
            of(&Situation::of(&template(TemplateId::Gravel).plan("x"))).centre,
            None
        );
    }

    #[test]
    fn a_tricycle_has_more_wheels() {
        let plan = template(TemplateId::Tricycle).plan("Test");
        let right = of(&Situation::of(&plan)).right;
        assert!(
            right.ends_with("; brakes the left rear wheel and the right rear wheel."),
            "{right}"
        );
        let lever = plan.bike.brakes.runs[0].lever;
        let plan = after(&plan, &[Edit::Brakes(BrakeEdit::AllOnLever(lever))]);
        let left = of(&Situation::of(&plan)).left;
        assert!(left.ends_with("; brakes all wheels."), "{left}");
    }
}
