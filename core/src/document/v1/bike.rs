//! The bike in format 1.

use super::Id;
use super::gears::Drivetrain;
use super::rider::Answer;
use crate::cockpit::{
    self, BarKind, BarSide, BrakeKind, ButtonPart, ControlId, ControlKind, Ease, Frame, Freedom,
    HandPosition, Joint, Link, Medium, Press, ProfileOrigin, ThumbWorkKind, UnusedPort, Wheel,
    Zone,
};
use crate::document::code::Code;
use crate::document::key::{ButtonKey, Run};
use crate::document::list::{Item, List, Plain};
use crate::document::number::{Length, Whole};
use crate::document::part::Given;
use crate::document::reader::Reader;
use crate::function::Function;
use crate::limits::{self, MOST_COGS, MOST_CONTROLS, MOST_RINGS};
use crate::ordered::SmallSet;
use crate::rider::{Contact, Side, YesNo};
use crate::shift_plan::ShiftPlanKind;
use crate::text::Text;
use crate::units;
use crate::vocabulary::Vocabulary;

type Width = Length<{ limits::BAR_WIDTH.from }, { limits::BAR_WIDTH.to }>;
type BarReach = Length<{ limits::BAR_REACH.from }, { limits::BAR_REACH.to }>;
type Drop = Length<{ limits::BAR_DROP.from }, { limits::BAR_DROP.to }>;
type Travel = Length<{ limits::TRAVEL.from }, { limits::TRAVEL.to }>;
type BladeReach = Length<{ limits::BLADE_REACH.from }, { limits::BLADE_REACH.to }>;
type BladeGap = Length<{ limits::BLADE_GAP.from }, { limits::BLADE_GAP.to }>;
type Coordinate = Length<{ limits::COORDINATE.from }, { limits::COORDINATE.to }>;

part! {
    /// The bike as far as hands meet it. Lengths are in millimetres.
    pub(super) struct Bike as "a bike" {
        name: Text,
        frame: Code<Frame>,
        bar: Bar,
        controls: List<Control, MOST_CONTROLS>,
        brakes: Brakes,
        /// Other work for a thumb, one of each kind.
        thumb_work: List<ThumbWork, { ThumbWorkKind::ALL.len() }>,
        system: System,
        rings: Whole<1, { MOST_RINGS as u32 }>,
        cogs: Whole<1, { MOST_COGS as u32 }>,
        chain_catcher (default): Answer<Code<YesNo>>,
        /// What more is known of the drivetrain than how many rings and cogs.
        drivetrain (default): Given<Drivetrain>,
    }
}

part! {
    /// A bar with its main measures.
    struct Bar as "a bar" {
        kind: Code<BarKind>,
        width: Width,
        reach: BarReach,
        drop: Drop,
    }
}

part! {
    /// A place: x to the rider's right, y up, z forward, from the middle of the
    /// stem clamp.
    struct Point as "a place such as {\"x\": 0, \"y\": 0, \"z\": 0}" {
        x: Coordinate,
        y: Coordinate,
        z: Coordinate,
    }
}

part! {
    /// What is clamped to the bar.
    pub(in crate::document) struct Control as "a control" {
        id: Id,
        kind: Code<ControlKind>,
        side: Code<BarSide>,
        zone: Code<Zone>,
        at: Point,
        buttons: List<Button, { ButtonPart::ALL.len() }>,
        blade (default): Option<Blade>,
        link: Code<Link>,
        /// Whether it is plugged in or paired.
        connected: bool,
        unused_port: Code<UnusedPort>,
    }
}

part! {
    /// A button. Without `limited_to`, `copies` and `fixed_to` it is free; it has
    /// at most one of them.
    #[cfg_attr(
        feature = "schema",
        schemars(extend("not" = { "anyOf": [
            { "required": ["limited_to", "copies"] },
            { "required": ["limited_to", "fixed_to"] },
            { "required": ["copies", "fixed_to"] },
        ] }))
    )]
    pub(in crate::document) struct Button as "a button" {
        part: Code<ButtonPart>,
        at: Point,
        press: Code<Press>,
        /// How far it moves until it acts.
        travel: Travel,
        /// The functions that may be assigned to it.
        limited_to (default): Given<Plain<Code<Function>>>,
        /// The button that it copies.
        copies (default): Given<ButtonKey>,
        /// What it does and nothing else: excluded from remapping.
        fixed_to (default): Given<Code<Function>>,
        /// Reach the fitter saw on this rider.
        seen_reach: List<SeenReach, { HandPosition::ALL.len() * Contact::ALL.len() }>,
    }
}

part! {
    /// A reach that the fitter saw.
    pub(in crate::document) struct SeenReach as "a reach that was seen" {
        from: Code<HandPosition>,
        contact: Code<Contact>,
        /// How well; null is not at all.
        ease (default): Option<Code<Ease>>,
    }
}

part! {
    /// A brake blade.
    struct Blade as "a brake blade" {
        /// Whether it is there.
        fitted: bool,
        at: Point,
        /// From the bar to the blade at rest, as measured.
        reach (default): Option<BladeReach>,
        /// From the bar to the blade at full pull, as measured.
        gap_at_full_pull (default): Option<BladeGap>,
        latch (default): Option<Latch>,
    }
}

part! {
    /// A latch that keeps a brake on for parking.
    struct Latch as "a parking latch" {
        tried (default): Answer<Code<YesNo>>,
    }
}

part! {
    /// All the brakes.
    struct Brakes as "the brakes" {
        wheels: List<WheelBrake, { Wheel::ALL.len() }>,
        /// What pulls them, one entry for each lever.
        runs: List<BrakeRun, MOST_CONTROLS>,
        /// Levers that one hand pulls together.
        together: List<PulledTogether, { MOST_CONTROLS * MOST_CONTROLS }>,
    }
}

part! {
    /// A brake at a wheel.
    pub(in crate::document) struct WheelBrake as "a wheel brake" {
        wheel: Code<Wheel>,
        kind: Code<BrakeKind>,
        /// Whether two wheels on one axle were seen to brake alike.
        balanced (default): Answer<Code<YesNo>>,
    }
}

part! {
    /// One lever and the wheel brakes it pulls.
    pub(in crate::document) struct BrakeRun as "what a lever pulls" {
        /// The id of the control whose blade pulls.
        lever: Id,
        medium: Code<Medium>,
        joint: Code<Joint>,
        throw_tested (default): Answer<Code<YesNo>>,
        wheels: Plain<Code<Wheel>>,
    }
}

part! {
    /// Two levers that one hand pulls together.
    pub(in crate::document) struct PulledTogether as "two levers pulled together" {
        hand: Code<Side>,
        first: Id,
        second: Id,
        tried (default): Answer<Code<YesNo>>,
    }
}

part! {
    /// Something else on the bar for a thumb.
    pub(in crate::document) struct ThumbWork as "other work for a thumb" {
        kind: Code<ThumbWorkKind>,
        side: Code<BarSide>,
        at: Point,
    }
}

part! {
    /// What the shift system can program.
    struct System as "a shift system" {
        name: Text,
        origin: Code<ProfileOrigin>,
        functions: Plain<Code<Function>>,
        /// The longest hold; null is that holds cannot be programmed.
        longest_hold (default): Option<Run>,
        /// Whether two buttons together can have a function.
        chords: bool,
        shift_plans: Plain<Code<ShiftPlanKind>>,
        /// Levers without which it does not start.
        required_levers: Plain<Code<BarSide>>,
        keeps_settings (default): Answer<Code<YesNo>>,
    }
}

macro_rules! named_by {
    ($item:ty, $list:literal, $($field:ident),+) => {
        impl Item for $item {
            const LIST: &'static str = $list;
            const NAMED_BY: &'static [&'static str] = &[$(stringify!($field)),+];

            fn name(&self) -> String {
                [$(spell(&self.$field)),+].join(" and ")
            }
        }
    };
}

named_by!(Control, "controls", id);
named_by!(Button, "buttons", part);
named_by!(SeenReach, "seen_reach", from, contact);
named_by!(WheelBrake, "wheels", wheel);
named_by!(BrakeRun, "runs", lever);
named_by!(ThumbWork, "thumb_work", kind);

impl Item for PulledTogether {
    const LIST: &'static str = "together";
    const NAMED_BY: &'static [&'static str] = &["first", "second"];

    /// The same in either order.
    fn name(&self) -> String {
        let (a, b) = (self.first.0, self.second.0);
        format!("{} and {}", a.min(b), a.max(b))
    }
}

/// How a field stands in a file.
trait Spelt {
    fn spelt(&self) -> String;
}

impl<T: Vocabulary> Spelt for Code<T> {
    fn spelt(&self) -> String {
        self.0.code().to_owned()
    }
}

impl Spelt for Id {
    fn spelt(&self) -> String {
        self.0.to_string()
    }
}

fn spell(field: &impl Spelt) -> String {
    field.spelt()
}

fn codes<'a, T: Vocabulary>(items: impl IntoIterator<Item = &'a T>) -> Plain<Code<T>> {
    Plain(items.into_iter().copied().map(Code).collect())
}

fn choices<T: Vocabulary>(codes: Plain<Code<T>>) -> Vec<T> {
    codes.0.into_iter().map(|code| code.0).collect()
}

fn set<T: Vocabulary>(codes: Plain<Code<T>>) -> SmallSet<T> {
    let mut set = SmallSet::new();
    for code in codes.0 {
        set.insert(code.0);
    }
    set
}

impl From<&cockpit::Bike> for Bike {
    fn from(bike: &cockpit::Bike) -> Self {
        Bike {
            name: bike.name.clone(),
            frame: Code(bike.frame),
            bar: Bar {
                kind: Code(bike.bar.kind),
                width: bike.bar.width.into(),
                reach: bike.bar.reach.into(),
                drop: bike.bar.drop.into(),
            },
            controls: List(bike.controls.iter().map(Control::from).collect()),
            brakes: (&bike.brakes).into(),
            thumb_work: List(bike.thumb_work.iter().map(ThumbWork::from).collect()),
            system: (&bike.system).into(),
            rings: bike.rings().into(),
            cogs: bike.cogs().into(),
            chain_catcher: Answer::of(bike.chain_catcher),
            drivetrain: Given(Drivetrain::of(&bike.drivetrain)),
        }
    }
}

impl Bike {
    /// Refuses what one field at a time cannot tell.
    pub(super) fn look_through(&self, reader: &mut Reader) {
        if let Some(drivetrain) = &self.drivetrain.0 {
            drivetrain.look_through(self.rings.into(), self.cogs.into(), reader);
        }
        for (at, control) in self.controls.0.iter().enumerate() {
            for (b, button) in control.buttons.0.iter().enumerate() {
                let given = [
                    button.limited_to.0.is_some(),
                    button.copies.0.is_some(),
                    button.fixed_to.0.is_some(),
                ];
                if given.iter().filter(|given| **given).count() > 1 {
                    reader.refuse_at(
                        &format!("bike.controls[{at}].buttons[{b}]"),
                        "expected at most one of “limited_to”, “copies” and “fixed_to”",
                    );
                }
            }
        }
    }
}

impl From<Bike> for cockpit::Bike {
    fn from(bike: Bike) -> Self {
        cockpit::Bike {
            name: bike.name,
            frame: bike.frame.0,
            bar: cockpit::Bar {
                kind: bike.bar.kind.0,
                width: bike.bar.width.into(),
                reach: bike.bar.reach.into(),
                drop: bike.bar.drop.into(),
            },
            controls: (bike.controls.0.into_iter())
                .map(cockpit::Control::from)
                .collect(),
            brakes: bike.brakes.into(),
            thumb_work: (bike.thumb_work.0.into_iter())
                .map(cockpit::ThumbWork::from)
                .collect(),
            system: bike.system.into(),
            drivetrain: (bike.drivetrain.0.unwrap_or_default())
                .read(bike.rings.into(), bike.cogs.into()),
            chain_catcher: bike.chain_catcher.answer(),
        }
    }
}

impl From<units::Point> for Point {
    fn from(point: units::Point) -> Self {
        let coordinate = |mm| Coordinate::from(units::Mm(mm));
        Point {
            x: coordinate(point.x),
            y: coordinate(point.y),
            z: coordinate(point.z),
        }
    }
}

impl From<Point> for units::Point {
    fn from(point: Point) -> Self {
        let mm = |coordinate| units::Mm::from(coordinate).0;
        units::Point::new(mm(point.x), mm(point.y), mm(point.z))
    }
}

impl From<&cockpit::Control> for Control {
    fn from(control: &cockpit::Control) -> Self {
        Control {
            id: control.id.0.into(),
            kind: Code(control.kind),
            side: Code(control.side),
            zone: Code(control.zone),
            at: control.at.into(),
            buttons: List(control.buttons.iter().map(Button::from).collect()),
            blade: control.blade.map(Blade::from),
            link: Code(control.link),
            connected: control.connected,
            unused_port: Code(control.unused_port),
        }
    }
}

impl From<Control> for cockpit::Control {
    fn from(control: Control) -> Self {
        cockpit::Control {
            id: ControlId(control.id.into()),
            kind: control.kind.0,
            side: control.side.0,
            zone: control.zone.0,
            at: control.at.into(),
            buttons: (control.buttons.0.into_iter())
                .map(cockpit::Button::from)
                .collect(),
            blade: control.blade.map(cockpit::Blade::from),
            link: control.link.0,
            connected: control.connected,
            unused_port: control.unused_port.0,
        }
    }
}

impl From<&cockpit::Button> for Button {
    fn from(button: &cockpit::Button) -> Self {
        let (mut limited_to, mut copies, mut fixed_to) = (None, None, None);
        match &button.freedom {
            Freedom::Free => {}
            Freedom::Limited(functions) => limited_to = Some(codes(functions)),
            Freedom::Copies(original) => copies = Some(ButtonKey(*original)),
            Freedom::Fixed(function) => fixed_to = Some(Code(*function)),
        }
        let seen_reach = button.seen_reach.iter().map(|seen| SeenReach {
            from: Code(seen.from),
            contact: Code(seen.contact),
            ease: seen.ease.map(Code),
        });
        Button {
            part: Code(button.part),
            at: button.at.into(),
            press: Code(button.press),
            travel: button.travel.into(),
            limited_to: Given(limited_to),
            copies: Given(copies),
            fixed_to: Given(fixed_to),
            seen_reach: List(seen_reach.collect()),
        }
    }
}

impl From<Button> for cockpit::Button {
    fn from(button: Button) -> Self {
        let freedom = match (button.limited_to.0, button.copies.0, button.fixed_to.0) {
            (Some(functions), ..) => Freedom::Limited(choices(functions)),
            (None, Some(original), _) => Freedom::Copies(original.0),
            (None, None, Some(function)) => Freedom::Fixed(function.0),
            (None, None, None) => Freedom::Free,
        };
        let seen_reach = button
            .seen_reach
            .0
            .into_iter()
            .map(|seen| cockpit::SeenReach {
                from: seen.from.0,
                contact: seen.contact.0,
                ease: seen.ease.map(|code| code.0),
            });
        cockpit::Button {
            part: button.part.0,
            at: button.at.into(),
            press: button.press.0,
            travel: button.travel.into(),
            freedom,
            seen_reach: seen_reach.collect(),
        }
    }
}

impl From<cockpit::Blade> for Blade {
    fn from(blade: cockpit::Blade) -> Self {
        Blade {
            fitted: blade.fitted,
            at: blade.at.into(),
            reach: blade.reach.map(BladeReach::from),
            gap_at_full_pull: blade.gap_at_full_pull.map(BladeGap::from),
            latch: blade.latch.map(|latch| Latch {
                tried: Answer::of(latch.tried),
            }),
        }
    }
}

impl From<Blade> for cockpit::Blade {
    fn from(blade: Blade) -> Self {
        cockpit::Blade {
            fitted: blade.fitted,
            at: blade.at.into(),
            reach: blade.reach.map(units::Mm::from),
            gap_at_full_pull: blade.gap_at_full_pull.map(units::Mm::from),
            latch: blade.latch.map(|latch| cockpit::Latch {
                tried: latch.tried.answer(),
            }),
        }
    }
}

impl From<&cockpit::Brakes> for Brakes {
    fn from(brakes: &cockpit::Brakes) -> Self {
        let wheels = brakes.wheels.iter().map(|brake| WheelBrake {
            wheel: Code(brake.wheel),
            kind: Code(brake.kind),
            balanced: Answer::of(brake.balanced),
        });
        let runs = brakes.runs.iter().map(|run| BrakeRun {
            lever: run.lever.0.into(),
            medium: Code(run.medium),
            joint: Code(run.joint),
            throw_tested: Answer::of(run.throw_tested),
            wheels: codes(&run.wheels),
        });
        let together = brakes.together.iter().map(|pair| PulledTogether {
            hand: Code(pair.hand),
            first: pair.first.0.into(),
            second: pair.second.0.into(),
            tried: Answer::of(pair.tried),
        });
        Brakes {
            wheels: List(wheels.collect()),
            runs: List(runs.collect()),
            together: List(together.collect()),
        }
    }
}

impl From<Brakes> for cockpit::Brakes {
    fn from(brakes: Brakes) -> Self {
        let wheels = brakes
            .wheels
            .0
            .into_iter()
            .map(|brake| cockpit::WheelBrake {
                wheel: brake.wheel.0,
                kind: brake.kind.0,
                balanced: brake.balanced.answer(),
            });
        let runs = brakes.runs.0.into_iter().map(|run| cockpit::BrakeRun {
            lever: ControlId(run.lever.into()),
            medium: run.medium.0,
            joint: run.joint.0,
            throw_tested: run.throw_tested.answer(),
            wheels: choices(run.wheels),
        });
        let together = (brakes.together.0.into_iter()).map(|pair| cockpit::PulledTogether {
            hand: pair.hand.0,
            first: ControlId(pair.first.into()),
            second: ControlId(pair.second.into()),
            tried: pair.tried.answer(),
        });
        cockpit::Brakes {
            wheels: wheels.collect(),
            runs: runs.collect(),
            together: together.collect(),
        }
    }
}

impl From<&cockpit::ThumbWork> for ThumbWork {
    fn from(work: &cockpit::ThumbWork) -> Self {
        ThumbWork {
            kind: Code(work.kind),
            side: Code(work.side),
            at: work.at.into(),
        }
    }
}

impl From<ThumbWork> for cockpit::ThumbWork {
    fn from(work: ThumbWork) -> Self {
        cockpit::ThumbWork {
            kind: work.kind.0,
            side: work.side.0,
            at: work.at.into(),
        }
    }
}

impl From<&cockpit::SystemProfile> for System {
    fn from(system: &cockpit::SystemProfile) -> Self {
        System {
            name: system.name.clone(),
            origin: Code(system.origin),
            functions: codes(&system.functions),
            longest_hold: system.holds.map(Run),
            chords: system.chords,
            shift_plans: codes(&system.shift_plans),
            required_levers: codes(&system.required_levers),
            keeps_settings: Answer::of(system.keeps_settings),
        }
    }
}

impl From<System> for cockpit::SystemProfile {
    fn from(system: System) -> Self {
        cockpit::SystemProfile {
            name: system.name,
            origin: system.origin.0,
            functions: set(system.functions),
            holds: system.longest_hold.map(|run| run.0),
            chords: system.chords,
            shift_plans: set(system.shift_plans),
            required_levers: set(system.required_levers),
            keeps_settings: system.keeps_settings.answer(),
        }
    }
}
