//! Changes to the bike and its controls.

use super::EditError;
use super::gears::{set_cogs, set_rings};
use super::layout::countable;
use super::layout::{may_chord, may_hold, may_take};
use super::rider::within;
use crate::catalogue::parts;
use crate::cockpit::{
    Bar, BarSide, Bike, Button, ButtonId, Control, ControlId, ControlKind, Freedom, Latch, Link,
    SeenReach, SystemProfile, ThumbWorkKind, UnusedPort, Zone,
};
use crate::gears::Sprockets;
use crate::layout::Hold;
use crate::limits;
use crate::plan::Plan;
use crate::rider::{Answer, Side, YesNo};
use crate::text::Text;
use crate::units::Mm;

/// A change to the bike and its controls.
#[derive(Debug, Clone, PartialEq)]
pub enum BikeEdit {
    /// What the shop calls the bike.
    Name(Text),
    /// The bar's measures; its kind stays.
    BarMeasures(Bar),
    /// Number of chainrings, 1 to 3. Another number leaves their teeth to be
    /// entered anew; the shift plan follows where it must.
    Rings(u8),
    /// Number of cogs, 1 to 14. Another number leaves their teeth to be entered
    /// anew.
    Cogs(u8),
    /// Whether a chain catcher is fitted.
    ChainCatcher(Answer<YesNo>),
    /// A control of a kind is added at its usual place.
    Add(ControlKind, Side, Zone),
    /// A control is removed with everything that was on it.
    Remove(ControlId),
    /// A control is moved to another zone, at its usual place there.
    MoveTo(ControlId, Zone),
    /// A control is put on the other side.
    Mirror(ControlId),
    /// All controls, brakes and layouts are exchanged left and right.
    MirrorAll,
    /// A control is plugged in (or paired), or unplugged.
    Connect(ControlId, bool),
    /// How a control is joined to the rest.
    Link(ControlId, Link),
    /// What is in its unused port.
    UnusedPort(ControlId, UnusedPort),
    /// What may be assigned to a button.
    Freedom(ButtonId, Freedom),
    /// How far a button moves until it acts.
    Travel(ButtonId, Mm),
    /// Reach that the fitter saw on this rider; replaces what was seen before
    /// from the same position with the same contact.
    SeenReach(ButtonId, SeenReach),
    /// A blade is fitted or removed.
    BladeFitted(ControlId, bool),
    /// From the bar to the blade at rest.
    BladeReach(ControlId, Option<Mm>),
    /// From the bar to the blade at full pull.
    BladeGap(ControlId, Option<Mm>),
    /// A parking latch.
    Latch(ControlId, Option<Latch>),
    /// Other work for a thumb is put on a side of the bar, at its usual place.
    PutThumbWork(ThumbWorkKind, BarSide),
    /// Other work for a thumb is taken off.
    RemoveThumbWork(ThumbWorkKind),
    /// What the shift system can program.
    System(SystemProfile),
}

impl BikeEdit {
    pub(super) fn label(&self, plan: &Plan) -> String {
        let place = |id: &ControlId| {
            plan.bike
                .control(*id)
                .map_or_else(|| format!("control {id}"), Control::place)
        };
        match self {
            BikeEdit::Name(_) => "name the bike".into(),
            BikeEdit::BarMeasures(_) => "measure the bar".into(),
            BikeEdit::Rings(n) => format!("chainrings: {n}"),
            BikeEdit::Cogs(n) => format!("cogs: {n}"),
            BikeEdit::ChainCatcher(_) => "chain catcher".into(),
            BikeEdit::Add(kind, side, _) => format!("add a {side} {kind}"),
            BikeEdit::Remove(id) => format!("remove the {}", place(id)),
            BikeEdit::MoveTo(id, zone) => format!("move the {} to the {zone}", place(id)),
            BikeEdit::Mirror(id) => format!("put the {} on the other side", place(id)),
            BikeEdit::MirrorAll => "mirror the whole cockpit".into(),
            BikeEdit::Connect(id, true) => format!("plug in the {}", place(id)),
            BikeEdit::Connect(id, false) => format!("unplug the {}", place(id)),
            BikeEdit::Link(id, _) | BikeEdit::UnusedPort(id, _) => {
                format!("wiring of the {}", place(id))
            }
            BikeEdit::Freedom(id, _) | BikeEdit::Travel(id, _) => {
                format!("describe the {}", plan.bike.place_of(*id))
            }
            BikeEdit::SeenReach(id, _) => format!("reach of the {}", plan.bike.place_of(*id)),
            BikeEdit::BladeFitted(id, true) => format!("fit the blade of the {}", place(id)),
            BikeEdit::BladeFitted(id, false) => format!("remove the blade of the {}", place(id)),
            BikeEdit::BladeReach(id, _) | BikeEdit::BladeGap(id, _) => {
                format!("measure the {}", place(id))
            }
            BikeEdit::Latch(id, _) => format!("parking latch of the {}", place(id)),
            BikeEdit::PutThumbWork(kind, side) => format!("{kind} on the {side}"),
            BikeEdit::RemoveThumbWork(kind) => format!("no {kind} on the bar"),
            BikeEdit::System(_) => "describe the shift system".into(),
        }
    }

    pub(super) fn make(&self, plan: &mut Plan) -> Result<(), EditError> {
        let bike = &mut plan.bike;
        match self {
            BikeEdit::Name(text) => bike.name = text.clone(),
            BikeEdit::BarMeasures(bar) => {
                within("The width of the bar", bar.width, limits::BAR_WIDTH)?;
                within("The reach of the bar", bar.reach, limits::BAR_REACH)?;
                within("The drop of the bar", bar.drop, limits::BAR_DROP)?;
                bike.bar = Bar {
                    kind: bike.bar.kind,
                    ..*bar
                };
            }
            BikeEdit::Rings(n) => {
                let n = count("The number of chainrings", *n, limits::MOST_RINGS)?;
                if n != bike.rings() {
                    set_rings(plan, Sprockets::Number(n));
                }
            }
            BikeEdit::Cogs(n) => {
                let n = count("The number of cogs", *n, limits::MOST_COGS)?;
                if n != bike.cogs() {
                    set_cogs(plan, Sprockets::Number(n));
                }
            }
            BikeEdit::ChainCatcher(answer) => bike.chain_catcher = *answer,
            BikeEdit::Add(kind, side, zone) => add(bike, *kind, *side, *zone)?,
            BikeEdit::Remove(id) => remove(plan, *id)?,
            BikeEdit::MoveTo(id, zone) => move_to(bike, *id, *zone)?,
            BikeEdit::Mirror(id) => {
                let mirrored = control(bike, *id)?.mirrored();
                put(bike, refitted(&bike.bar, mirrored));
            }
            BikeEdit::MirrorAll => mirror_all(plan),
            BikeEdit::Connect(id, connected) => control(bike, *id)?.connected = *connected,
            BikeEdit::Link(id, link) => control(bike, *id)?.link = *link,
            BikeEdit::UnusedPort(id, port) => control(bike, *id)?.unused_port = *port,
            BikeEdit::Freedom(id, freedom) => set_freedom(plan, *id, freedom)?,
            BikeEdit::Travel(id, travel) => {
                within("The travel of a button", *travel, limits::TRAVEL)?;
                button(bike, *id)?.travel = *travel;
            }
            BikeEdit::SeenReach(id, seen) => {
                let list = &mut button(bike, *id)?.seen_reach;
                list.retain(|s| (s.from, s.contact) != (seen.from, seen.contact));
                list.push(*seen);
            }
            BikeEdit::BladeFitted(id, fitted) => blade(bike, *id)?.set_fitted(*fitted),
            BikeEdit::BladeReach(id, reach) => {
                if let Some(mm) = reach {
                    within("The reach of a blade", *mm, limits::BLADE_REACH)?;
                }
                let blade = blade(bike, *id)?;
                comes_nearer(*reach, blade.gap_at_full_pull)?;
                blade.reach = *reach;
            }
            BikeEdit::BladeGap(id, gap) => {
                if let Some(mm) = gap {
                    within("The gap at full pull", *mm, limits::BLADE_GAP)?;
                }
                let blade = blade(bike, *id)?;
                comes_nearer(blade.reach, *gap)?;
                blade.gap_at_full_pull = *gap;
            }
            BikeEdit::Latch(id, latch) => blade(bike, *id)?.latch = *latch,
            BikeEdit::PutThumbWork(kind, side) => {
                bike.thumb_work.retain(|w| w.kind != *kind);
                bike.thumb_work
                    .push(parts::thumb_work(&bike.bar, *kind, *side));
            }
            BikeEdit::RemoveThumbWork(kind) => bike.thumb_work.retain(|w| w.kind != *kind),
            BikeEdit::System(profile) => {
                profile.holds.map_or(Ok(()), countable)?;
                bike.system = profile.clone();
            }
        }
        Ok(())
    }
}

/// A blade that is pulled comes nearer to the bar.
fn comes_nearer(reach: Option<Mm>, gap: Option<Mm>) -> Result<(), EditError> {
    match (reach, gap) {
        (Some(reach), Some(gap)) if gap >= reach => Err(EditError::NotPossible(format!(
            "At full pull the blade would be {gap} from the bar, and at rest {reach}. Measure both again: \
             pulled, it is nearer."
        ))),
        _ => Ok(()),
    }
}

fn count(what: &'static str, value: u8, most: u8) -> Result<u8, EditError> {
    if (1..=most).contains(&value) {
        Ok(value)
    } else {
        Err(EditError::OutOfRange {
            what,
            value: value.to_string(),
            from: "1".into(),
            to: most.to_string(),
        })
    }
}

fn control(bike: &mut Bike, id: ControlId) -> Result<&mut Control, EditError> {
    bike.control_mut(id).ok_or(EditError::NoSuchControl(id))
}

fn blade(bike: &mut Bike, id: ControlId) -> Result<&mut crate::cockpit::Blade, EditError> {
    let control = control(bike, id)?;
    let place = control.place();
    control.blade.as_mut().ok_or(EditError::NoBlade { place })
}

fn button(bike: &mut Bike, id: ButtonId) -> Result<&mut Button, EditError> {
    bike.control_mut(id.control)
        .and_then(|c| c.buttons.iter_mut().find(|b| b.part == id.part))
        .ok_or_else(|| EditError::NoSuchButton {
            place: id.part.to_string(),
        })
}

fn add(bike: &mut Bike, kind: ControlKind, side: Side, zone: Zone) -> Result<(), EditError> {
    if bike.controls.len() >= limits::MOST_CONTROLS {
        return Err(EditError::TooMany {
            what: "controls",
            limit: limits::MOST_CONTROLS,
        });
    }
    let id = bike.free_control_id();
    let control = parts::control(&bike.bar, id, kind, side, zone)
        .ok_or(EditError::DoesNotFit { kind, zone })?;
    bike.controls.push(parts::beside(&bike.controls, control));
    Ok(())
}

fn remove(plan: &mut Plan, id: ControlId) -> Result<(), EditError> {
    control(&mut plan.bike, id)?;
    plan.bike.controls.retain(|c| c.id != id);
    for control in &mut plan.bike.controls {
        for button in &mut control.buttons {
            if matches!(button.freedom, Freedom::Copies(original) if original.control == id) {
                button.freedom = Freedom::Free;
            }
        }
    }
    let brakes = &mut plan.bike.brakes;
    brakes.runs.retain(|run| run.lever != id);
    brakes.together.retain(|t| t.first != id && t.second != id);
    for layout in &mut plan.layouts {
        layout.taps.retain(|b, _| b.control != id);
        layout.holds.retain(|b, _| b.control != id);
        layout
            .chords
            .retain(|c| c.first.control != id && c.second.control != id);
    }
    plan.as_found.retain(|b, _| b.control != id);
    plan.accepted.retain(|acceptance| !acceptance.is_about(id));
    Ok(())
}

fn move_to(bike: &mut Bike, id: ControlId, zone: Zone) -> Result<(), EditError> {
    let bar = bike.bar;
    let mut control = control(bike, id)?.clone();
    let side = control.side.hand().unwrap_or(Side::Right);
    let placed =
        parts::control(&bar, id, control.kind, side, zone).ok_or(EditError::DoesNotFit {
            kind: control.kind,
            zone,
        })?;
    control.side = placed.side;
    control.zone = placed.zone;
    control.at = placed.at;
    for button in &mut control.buttons {
        if let Some(there) = placed.button(button.part) {
            button.at = there.at;
        }
        button.seen_reach.clear();
    }
    if let (Some(blade), Some(there)) = (&mut control.blade, placed.blade) {
        blade.at = there.at;
    }
    put(bike, control);
    Ok(())
}

/// Puts a control of the bike where it lies on none of the others.
fn put(bike: &mut Bike, control: Control) {
    let others = bike.controls.iter().filter(|c| c.id != control.id);
    let others: Vec<Control> = others.cloned().collect();
    let control = parts::beside(&others, control);
    if let Some(place) = bike.control_mut(control.id) {
        *place = control;
    }
}

/// A mirrored control as it is fitted there: what a sprint button is fixed to
/// follows the side on which it is fitted.
fn refitted(bar: &Bar, mut control: Control) -> Control {
    let Some(side) = control.side.hand() else {
        return control;
    };
    let (id, kind, zone) = (control.id, control.kind, control.zone);
    let usual = |side| parts::control(bar, id, kind, side, zone);
    if let (Some(here), Some(there)) = (usual(side), usual(side.other())) {
        for button in &mut control.buttons {
            let freedom = |of: &Control| of.button(button.part).map(|b| b.freedom.clone());
            if freedom(&there).as_ref() == Some(&button.freedom) {
                button.freedom = freedom(&here).unwrap_or(Freedom::Free);
            }
        }
    }
    control
}

fn set_freedom(plan: &mut Plan, id: ButtonId, freedom: &Freedom) -> Result<(), EditError> {
    if matches!(freedom, Freedom::Copies(original) if *original == id || plan.bike.button(*original).is_none())
    {
        return Err(EditError::NotPossible(
            "A button can copy only another button of this bike. Choose one.".into(),
        ));
    }
    button(&mut plan.bike, id)?.freedom = freedom.clone();
    // Each layout keeps only what the button may still have.
    let bike = &plan.bike;
    for layout in &mut plan.layouts {
        let loses_tap = layout
            .taps
            .get(&id)
            .is_some_and(|tap| may_take(bike, id, *tap).is_err());
        let loses_hold = layout.holds.get(&id).is_some_and(|hold| {
            may_hold(bike, id, *hold).is_err() || loses_tap && matches!(hold, Hold::Repeats(_))
        });
        if loses_tap {
            layout.taps.remove(&id);
        }
        if loses_hold {
            layout.holds.remove(&id);
        }
        layout
            .chords
            .retain(|chord| !chord.includes(id) || may_chord(bike, chord).is_ok());
    }
    Ok(())
}

/// Mirrors controls, thumb work and what pulls what. Control identities stay
/// with the control, so layouts and brake runs follow by themselves.
fn mirror_all(plan: &mut Plan) {
    let bike = &mut plan.bike;
    for control in &mut bike.controls {
        *control = refitted(&bike.bar, control.mirrored());
    }
    for work in &mut bike.thumb_work {
        work.side = work.side.mirrored();
        work.at = work.at.mirrored();
    }
    for together in &mut bike.brakes.together {
        together.hand = together.hand.other();
    }
    bike.system.required_levers = bike
        .system
        .required_levers
        .iter()
        .map(|side| side.mirrored())
        .collect();
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::catalogue::{TemplateId, template};
    use crate::cockpit::HoldRun;
    use crate::edit::{Edit, LayoutEdit, PlanEdit};
    use crate::finding::{Acceptance, Place, Role};
    use crate::function::Function;
    use crate::layout::Hold;
    use crate::shift_plan::ShiftPlanKind;
    use crate::testing::button;
    use crate::vocabulary::Vocabulary;

    #[test]
    fn a_blade_is_nearer_to_the_bar_when_pulled() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let lever = plan.bike.controls[0].id;
        let reach = |mm| Edit::Bike(BikeEdit::BladeReach(lever, Some(Mm(mm))));
        let gap = |mm| Edit::Bike(BikeEdit::BladeGap(lever, Some(Mm(mm))));
        let cleared = plan.apply(&Edit::Bike(BikeEdit::BladeGap(lever, None)));
        let plan = cleared
            .and_then(|plan| plan.apply(&reach(60.0)))
            .expect("both can be noted");
        assert!(plan.apply(&gap(59.0)).is_ok());
        let refused = plan
            .apply(&gap(60.0))
            .expect_err("it is not nearer")
            .to_string();
        assert!(
            refused.starts_with("At full pull the blade would be 60 mm from the bar"),
            "{refused}"
        );
        let plan = plan.apply(&gap(30.0)).expect("it is nearer");
        assert!(plan.apply(&reach(25.0)).is_err());
        // Whoever takes a value back is not held up.
        assert!(
            plan.apply(&Edit::Bike(BikeEdit::BladeReach(lever, None)))
                .is_ok()
        );
    }

    #[test]
    fn a_removed_control_takes_its_acceptances_along() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let control = plan.bike.controls.last().expect("a control").id;
        let accept = |place: Place| {
            Edit::Plan(PlanEdit::Accept(Acceptance {
                finding: format!("some-rule|{}", place.key()),
                reason: Text::new("tried"),
                by: Text::new("T."),
                role: Role::Shop,
                date: None,
                lapsed: false,
            }))
        };
        let button = ButtonId {
            control,
            part: crate::cockpit::ButtonPart::Single,
        };
        let plan = [
            accept(Place::Control(control)),
            accept(Place::Button(button)),
            accept(Place::Control(ControlId(1))),
            Edit::Bike(BikeEdit::Remove(control)),
        ]
        .iter()
        .try_fold(plan, |plan, edit| plan.apply(edit))
        .expect("the edits are possible");
        let left: Vec<&str> = plan.accepted.iter().map(|a| a.finding.as_str()).collect();
        assert_eq!(left, ["some-rule|control:1"]);
    }

    fn after(plan: &Plan, edit: BikeEdit) -> Plan {
        plan.apply(&Edit::Bike(edit)).expect("the edit is possible")
    }

    #[test]
    fn mirroring_the_whole_cockpit_twice_changes_nothing() {
        for id in TemplateId::ALL {
            let plan = template(*id).plan("Test");
            let once = after(&plan, BikeEdit::MirrorAll);
            assert_ne!(once, plan, "{id}");
            assert_eq!(after(&once, BikeEdit::MirrorAll), plan, "{id}");
        }
    }

    #[test]
    fn a_sprint_button_refitted_on_the_other_side_does_what_is_fixed_there() {
        let plan = template(TemplateId::RoadPods).plan("Test");
        let right = button(&plan, "right sprint button");
        let plan = after(&plan, BikeEdit::Mirror(right.control));
        let (control, found) = plan.bike.button(right).expect("it is still there");
        assert_eq!(control.place(), "left sprint button");
        assert_eq!(found.freedom, Freedom::Fixed(Function::RearEasier));
        // The left one was there before, so it lies beside that.
        let near = plan.bike.nearest_button(right).expect("there are others");
        assert!(near.1 > Mm(15.0), "{near:?}");
    }

    #[test]
    fn controls_come_and_go_with_what_is_on_them() {
        let plan = template(TemplateId::Gravel).plan("Test");
        let plan = after(
            &plan,
            BikeEdit::Add(ControlKind::Pod, Side::Left, Zone::Tops),
        );
        let near = button(&plan, "left tops pod, near button");
        let hood = button(&plan, "left hood button");
        let plan = after(&plan, BikeEdit::Freedom(hood, Freedom::Copies(near)));
        let tap = LayoutEdit::Tap(near, Some(Function::Lights));
        let plan = plan.apply(&Edit::Layout(tap)).expect("the button is free");
        assert_eq!(plan.layout().tap(&plan.bike, hood), Some(Function::Lights));

        let moved = after(&plan, BikeEdit::MoveTo(near.control, Zone::Drops));
        let (control, _) = moved.bike.button(near).expect("it moved along");
        assert_eq!(control.place(), "left drops pod");

        let gone = after(&plan, BikeEdit::Remove(near.control));
        assert!(gone.bike.button(near).is_none() && gone.layout().is_blank(near));
        let (_, copy) = gone.bike.button(hood).expect("the hood stays");
        assert_eq!(copy.freedom, Freedom::Free);
    }

    #[test]
    fn what_does_not_fit_is_refused_with_a_reason() {
        let plan = template(TemplateId::FlatSingle).plan("Test");
        let edit = BikeEdit::Add(ControlKind::BrakeShiftLever, Side::Left, Zone::Hoods);
        let refused = plan.apply(&Edit::Bike(edit)).map_err(|e| e.to_string());
        assert_eq!(
            refused,
            Err(
                "A brake-shift lever does not fit the hoods of this bar. Choose another zone."
                    .into()
            )
        );
    }

    #[test]
    fn a_bar_is_full_some_time() {
        let mut plan = template(TemplateId::FlatSingle).plan("Test");
        let add = Edit::Bike(BikeEdit::Add(ControlKind::Pod, Side::Left, Zone::Grip));
        while plan.bike.controls.len() < limits::MOST_CONTROLS {
            plan = plan.apply(&add).expect("there is room");
        }
        let refused = plan.apply(&add).map_err(|e| e.to_string());
        assert_eq!(
            refused,
            Err("A plan holds at most 24 controls. Remove one first.".into())
        );
    }

    #[test]
    fn one_ring_leaves_nothing_to_plan_for_the_front() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let single = after(&plan, BikeEdit::Rings(1));
        assert_eq!(single.shift_plan, ShiftPlanKind::SingleRing);
        let double = after(&single, BikeEdit::Rings(2));
        assert_eq!(double.shift_plan, ShiftPlanKind::Separate);
    }

    #[test]
    fn a_button_described_anew_keeps_only_what_it_may_have() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let outer = button(&plan, "right outer paddle");
        let hold = LayoutEdit::Hold(outer, Some(Hold::Repeats(HoldRun::Cogs(2))));
        let plan = plan.apply(&Edit::Layout(hold)).expect("a hold is possible");
        let given = |freedom| {
            let plan = after(&plan, BikeEdit::Freedom(outer, freedom));
            let layout = plan.layout();
            (
                layout.taps.get(&outer).copied(),
                layout.holds.contains_key(&outer),
            )
        };
        let easier = Function::RearEasier;
        assert_eq!(given(Freedom::Limited(vec![easier])), (Some(easier), true));
        assert_eq!(
            given(Freedom::Limited(vec![Function::Lights])),
            (None, false)
        );
        assert_eq!(given(Freedom::Fixed(Function::Lights)), (None, false));
        let itself = Edit::Bike(BikeEdit::Freedom(outer, Freedom::Copies(outer)));
        assert!(plan.apply(&itself).is_err());
    }

    #[test]
    fn seen_reach_replaces_what_was_seen_before() {
        use crate::cockpit::{Ease, HandPosition};
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let hood = button(&plan, "left hood button");
        let seen = |ease| SeenReach {
            from: HandPosition::Hoods,
            contact: crate::rider::Contact::Thumb,
            ease,
        };
        let plan = after(&plan, BikeEdit::SeenReach(hood, seen(Some(Ease::Stretch))));
        let plan = after(&plan, BikeEdit::SeenReach(hood, seen(None)));
        let (_, found) = plan.bike.button(hood).expect("it is there");
        assert_eq!(found.seen_reach, [seen(None)]);
    }

    #[test]
    fn absurd_numbers_are_refused() {
        let plan = template(TemplateId::RoadPlain).plan("Test");
        let (button, ..) = plan.bike.buttons()[0];
        let mut system = plan.bike.system.clone();
        system.holds = Some(HoldRun::Cogs(200));
        for edit in [
            Edit::Bike(BikeEdit::System(system)),
            Edit::Bike(BikeEdit::Travel(button, Mm(f64::INFINITY))),
            Edit::Layout(LayoutEdit::Hold(
                button,
                Some(Hold::Repeats(HoldRun::Cogs(0))),
            )),
        ] {
            let refused = plan.apply(&edit).expect_err("absurd");
            assert!(matches!(refused, EditError::OutOfRange { .. }), "{refused}");
        }
    }
}
