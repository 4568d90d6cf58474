//! Changes to the layout in hand.

use super::{EditError, starts};
use crate::cockpit::{Bike, Button, ButtonId, Control, Freedom, HoldRun};
use crate::function::Function;
use crate::layout::{Chord, Hold, Layout};
use crate::limits::{MOST_CHORDS, MOST_COGS};
use crate::plan::Plan;
use crate::rider::Side;

/// A change to the layout in hand.
#[derive(Debug, Clone, PartialEq)]
pub enum LayoutEdit {
    /// Gives a button a tap function, or leaves it blank.
    Tap(ButtonId, Option<Function>),
    /// Exchanges what two buttons do: tap, hold and chords.
    Swap(ButtonId, ButtonId),
    /// Gives a button a hold, or none.
    Hold(ButtonId, Option<Hold>),
    /// Gives two buttons pressed together a function.
    AddChord(Chord),
    /// Takes a chord away.
    RemoveChord(Chord),
    /// Takes everything off one button.
    ClearButton(ButtonId),
    /// Puts all shifting on one side.
    AllShiftingOn(Side),
    /// Exchanges left and right.
    Mirror,
    /// Leaves every button blank.
    Clear,
    /// Leaves blank, or unplugs, what lies under a hand that rests.
    BlankUnderRestingHands,
}

impl LayoutEdit {
    pub(super) fn label(&self, plan: &Plan) -> String {
        let place = |id: &ButtonId| plan.bike.place_of(*id);
        match self {
            LayoutEdit::Tap(id, Some(function)) => format!("{function} on the {}", place(id)),
            LayoutEdit::Tap(id, None) | LayoutEdit::ClearButton(id) => {
                format!("leave the {} blank", place(id))
            }
            LayoutEdit::Swap(a, b) => format!("swap the {} and the {}", place(a), place(b)),
            LayoutEdit::Hold(id, _) => format!("hold on the {}", place(id)),
            LayoutEdit::AddChord(chord) => format!("{} by two buttons together", chord.function),
            LayoutEdit::RemoveChord(_) => "take two buttons together away".into(),
            LayoutEdit::AllShiftingOn(side) => format!("all shifting on the {side}"),
            LayoutEdit::Mirror => "mirror the layout".into(),
            LayoutEdit::Clear => "clear the layout".into(),
            LayoutEdit::BlankUnderRestingHands => "blank what lies under a resting hand".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        match self {
            LayoutEdit::Tap(id, function) => set_tap(plan, *id, *function)?,
            LayoutEdit::Swap(a, b) => swap(plan, *a, *b)?,
            LayoutEdit::Hold(id, hold) => set_hold(plan, *id, *hold)?,
            LayoutEdit::AddChord(chord) => add_chord(plan, *chord)?,
            LayoutEdit::RemoveChord(chord) => {
                plan.layout_mut().chords.retain(|c| !c.same_buttons(chord));
            }
            LayoutEdit::ClearButton(id) => {
                // What a button cannot have, or a button that is not there, may
                // come in with a document; clearing is the way out.
                if plan.layout().is_blank(*id) {
                    remappable(&plan.bike, *id)?;
                }
                plan.layout_mut().clear(*id);
            }
            LayoutEdit::AllShiftingOn(side) => starts::all_shifting_on(plan, *side)?,
            LayoutEdit::Mirror => starts::mirror_layout(plan)?,
            LayoutEdit::Clear => {
                let layout = plan.layout_mut();
                *layout = Layout::blank(layout.id, layout.name.as_str());
            }
            LayoutEdit::BlankUnderRestingHands => starts::blank_under_resting_hands(plan),
        }
        Ok(())
    }
}

/// The button, if its function may be changed at all.
fn remappable(bike: &Bike, id: ButtonId) -> Result<(&Control, &Button), EditError> {
    let (control, button) = bike.button(id).ok_or_else(|| EditError::NoSuchButton {
        place: id.part.to_string(),
    })?;
    match &button.freedom {
        Freedom::Fixed(function) => Err(EditError::FixedButton {
            place: control.place_of(id.part),
            function: *function,
        }),
        Freedom::Copies(original) => Err(EditError::CopyingButton {
            place: control.place_of(id.part),
            original: bike.place_of(*original),
        }),
        Freedom::Free | Freedom::Limited(_) => Ok((control, button)),
    }
}

/// Whether a button takes a function.
///
/// # Errors
/// Why not: it is not on the bike, its function is fixed or copied, or the
/// function is outside its set.
pub fn may_take(bike: &Bike, id: ButtonId, function: Function) -> Result<(), EditError> {
    let (control, button) = remappable(bike, id)?;
    match &button.freedom {
        Freedom::Limited(set) if !set.contains(&function) => Err(EditError::OutsideItsSet {
            place: control.place_of(id.part),
            function,
            allowed: listed(set),
        }),
        _ => Ok(()),
    }
}

/// Refuses a hold that the button cannot take.
pub(super) fn may_hold(bike: &Bike, id: ButtonId, hold: Hold) -> Result<(), EditError> {
    match hold {
        Hold::Does(function) => may_take(bike, id, function),
        Hold::Repeats(run) => {
            remappable(bike, id)?;
            countable(run)
        }
    }
}

/// Refuses a chord of one button, or one that its buttons cannot take.
pub(super) fn may_chord(bike: &Bike, chord: &Chord) -> Result<(), EditError> {
    if chord.first == chord.second {
        return Err(EditError::ChordOfOne);
    }
    may_take(bike, chord.first, chord.function)?;
    may_take(bike, chord.second, chord.function)
}

fn listed(functions: &[Function]) -> String {
    if functions.is_empty() {
        return "nothing".into();
    }
    let quoted: Vec<String> = functions.iter().map(|f| format!("“{f}”")).collect();
    quoted.join(", ")
}

fn set_tap(plan: &mut Plan, id: ButtonId, function: Option<Function>) -> Result<(), EditError> {
    match function {
        Some(function) => {
            may_take(&plan.bike, id, function)?;
            plan.layout_mut().taps.insert(id, function);
        }
        None => {
            remappable(&plan.bike, id)?;
            let layout = plan.layout_mut();
            layout.taps.remove(&id);
            // A hold that repeats the tap has nothing left to repeat.
            if matches!(layout.holds.get(&id), Some(Hold::Repeats(_))) {
                layout.holds.remove(&id);
            }
        }
    }
    Ok(())
}

fn set_hold(plan: &mut Plan, id: ButtonId, hold: Option<Hold>) -> Result<(), EditError> {
    match hold {
        Some(hold) => {
            may_hold(&plan.bike, id, hold)?;
            plan.layout_mut().holds.insert(id, hold);
        }
        None => {
            plan.layout_mut().holds.remove(&id);
        }
    }
    Ok(())
}

/// Refuses a hold run of no cogs or of more than a cassette has.
pub(super) fn countable(run: HoldRun) -> Result<(), EditError> {
    match run {
        HoldRun::Cogs(n) if !(1..=MOST_COGS).contains(&n) => Err(EditError::OutOfRange {
            what: "The number of cogs in one hold",
            value: n.to_string(),
            from: "1".into(),
            to: MOST_COGS.to_string(),
        }),
        HoldRun::Cogs(_) | HoldRun::ToEnd => Ok(()),
    }
}

fn swap(plan: &mut Plan, a: ButtonId, b: ButtonId) -> Result<(), EditError> {
    let bike = &plan.bike;
    remappable(bike, a)?;
    remappable(bike, b)?;
    let other = |id: ButtonId| match id {
        id if id == a => b,
        id if id == b => a,
        id => id,
    };
    let mut layout = plan.layout().clone();
    swap_in(&mut layout.taps, a, b);
    swap_in(&mut layout.holds, a, b);
    for chord in &mut layout.chords {
        (chord.first, chord.second) = (other(chord.first), other(chord.second));
    }
    for id in [a, b] {
        if let Some(function) = layout.taps.get(&id) {
            may_take(bike, id, *function)?;
        }
        if let Some(hold) = layout.holds.get(&id) {
            may_hold(bike, id, *hold)?;
        }
        for chord in layout.chords.iter().filter(|chord| chord.includes(id)) {
            may_chord(bike, chord)?;
        }
    }
    *plan.layout_mut() = layout;
    Ok(())
}

fn swap_in<T>(map: &mut crate::ordered::SmallMap<ButtonId, T>, a: ButtonId, b: ButtonId) {
    let (from_a, from_b) = (map.remove(&a), map.remove(&b));
    map.extend(from_a.map(|value| (b, value)));
    map.extend(from_b.map(|value| (a, value)));
}

fn add_chord(plan: &mut Plan, chord: Chord) -> Result<(), EditError> {
    may_chord(&plan.bike, &chord)?;
    let layout = plan.layout_mut();
    layout.chords.retain(|c| !c.same_buttons(&chord));
    if layout.chords.len() >= MOST_CHORDS {
        return Err(EditError::TooMany {
            what: "chords",
            limit: MOST_CHORDS,
        });
    }
    layout.chords.push(chord);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::edit::{BikeEdit, Edit};
    use crate::function::Function::{FrontToggle, Lights, NextScreen, RearEasier, RearHarder};
    use crate::testing::button;

    fn road() -> Plan {
        template(TemplateId::RoadPods).plan("Test")
    }

    fn after(plan: &Plan, edit: LayoutEdit) -> Plan {
        plan.apply(&Edit::Layout(edit))
            .expect("the edit is possible")
    }

    fn refusal(plan: &Plan, edit: LayoutEdit) -> String {
        let refused = plan.apply(&Edit::Layout(edit));
        refused.expect_err("the edit is refused").to_string()
    }

    fn limited(plan: &Plan, place: &str, to: Freedom) -> Plan {
        let edit = BikeEdit::Freedom(button(plan, place), to);
        plan.apply(&Edit::Bike(edit))
            .expect("a button is described")
    }

    #[test]
    fn a_fixed_button_refuses_with_the_remedies() {
        let plan = road();
        let sprint = button(&plan, "right sprint button");
        let reason = "The right sprint button is fixed to “rear harder” by how it is fitted. Refit it on the other side, or unplug it.";
        let hood = button(&plan, "left hood button");
        let chord = Chord {
            first: hood,
            second: sprint,
            function: Lights,
        };
        for edit in [
            LayoutEdit::Tap(sprint, Some(Lights)),
            LayoutEdit::Tap(sprint, None),
            LayoutEdit::Hold(sprint, Some(Hold::Does(Lights))),
            LayoutEdit::Hold(sprint, Some(Hold::Repeats(HoldRun::ToEnd))),
            LayoutEdit::Swap(hood, sprint),
            LayoutEdit::AddChord(chord),
            LayoutEdit::ClearButton(sprint),
        ] {
            assert_eq!(refusal(&plan, edit), reason);
        }
    }

    #[test]
    fn a_copying_button_names_its_original_and_a_limited_one_what_it_takes() {
        let plan = road();
        let original = button(&plan, "left hood button");
        let plan = limited(&plan, "right hood button", Freedom::Copies(original));
        let copy = button(&plan, "right hood button");
        assert_eq!(
            refusal(&plan, LayoutEdit::Tap(copy, Some(Lights))),
            "The right hood button copies the left hood button. Change the left hood button instead."
        );
        let plan = limited(
            &plan,
            "left hood button",
            Freedom::Limited(vec![NextScreen]),
        );
        assert_eq!(
            refusal(&plan, LayoutEdit::Tap(original, Some(Lights))),
            "The left hood button takes only “next screen”. Put “lights” on another button."
        );
        let plan = after(&plan, LayoutEdit::Tap(original, Some(NextScreen)));
        assert_eq!(plan.layout().tap(&plan.bike, copy), Some(NextScreen));
    }

    #[test]
    fn a_swap_takes_tap_hold_and_chords_along() {
        let plan = road();
        let outer = button(&plan, "right outer paddle");
        let hood = button(&plan, "left hood button");
        let inner = button(&plan, "right inner paddle");
        let chord = Chord {
            first: outer,
            second: inner,
            function: FrontToggle,
        };
        let hold = Hold::Repeats(HoldRun::Cogs(2));
        let plan = after(&plan, LayoutEdit::Hold(outer, Some(hold)));
        let plan = after(&plan, LayoutEdit::AddChord(chord));
        let swapped = after(&plan, LayoutEdit::Swap(outer, hood));
        let layout = swapped.layout();
        assert_eq!(layout.taps.get(&hood), Some(&RearEasier));
        assert_eq!(layout.holds.get(&hood), Some(&hold));
        assert_eq!(
            layout.chords,
            [Chord {
                first: hood,
                ..chord
            }]
        );
        assert!(layout.is_blank(outer));
        assert_eq!(after(&swapped, LayoutEdit::Swap(outer, hood)), plan);

        let narrow = limited(
            &plan,
            "left hood button",
            Freedom::Limited(vec![RearEasier]),
        );
        assert!(refusal(&narrow, LayoutEdit::Swap(outer, hood)).contains("front toggle"));
    }

    #[test]
    fn a_blank_tap_has_nothing_to_repeat() {
        let plan = road();
        let outer = button(&plan, "right outer paddle");
        for (hold, stays) in [
            (Hold::Repeats(HoldRun::Cogs(2)), false),
            (Hold::Does(Lights), true),
        ] {
            let held = after(&plan, LayoutEdit::Hold(outer, Some(hold)));
            let blank = after(&held, LayoutEdit::Tap(outer, None));
            assert_eq!(blank.layout().holds.contains_key(&outer), stays);
        }
    }

    #[test]
    fn a_chord_needs_two_buttons_and_replaces_the_same_pair() {
        let plan = road();
        let (a, b) = (
            button(&plan, "left hood button"),
            button(&plan, "right hood button"),
        );
        let chord = |first, second, function| Chord {
            first,
            second,
            function,
        };
        assert_eq!(
            refusal(&plan, LayoutEdit::AddChord(chord(a, a, Lights))),
            "Pressing together needs two different buttons. Choose a second one."
        );
        let plan = after(&plan, LayoutEdit::AddChord(chord(a, b, Lights)));
        let plan = after(&plan, LayoutEdit::AddChord(chord(b, a, NextScreen)));
        assert_eq!(plan.layout().chords, [chord(b, a, NextScreen)]);
        let plan = after(&plan, LayoutEdit::RemoveChord(chord(a, b, Lights)));
        assert!(plan.layout().chords.is_empty());
    }

    #[test]
    fn clearing_a_button_takes_everything_off_it_and_nothing_else() {
        let plan = road();
        let outer = button(&plan, "right outer paddle");
        let inner = button(&plan, "right inner paddle");
        let chord = Chord {
            first: outer,
            second: inner,
            function: FrontToggle,
        };
        let plan = after(&plan, LayoutEdit::AddChord(chord));
        let plan = after(&plan, LayoutEdit::ClearButton(outer));
        assert!(plan.layout().is_blank(outer) && plan.layout().chords.is_empty());
        assert_eq!(plan.layout().taps.get(&inner), Some(&RearHarder));
        let blank = after(&plan, LayoutEdit::Clear);
        assert!(blank.layout().buttons_named().is_empty());
    }
}
