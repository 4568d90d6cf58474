//! Wren: a drop bar ridden with the left hand, ready to build.

use super::{Work, asked_singly, seen, told};
use crate::catalogue::TemplateId;
use crate::cockpit::{
    ButtonPart, ControlKind, HandPosition, HoldRun, ProfileOrigin, SystemProfile, UnusedPort,
};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use crate::finding::Role;
use crate::function::Function;
use crate::rider::{Answer, HandPlace, Side, Use, YesNo};
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, Text};
use crate::units::Mm;

pub(super) const STORY: &str = "Wren rides the Ossenbrook road with the left hand; the right hand rests on its hood. One pair of paddles walks a ladder of gears, one lever pulls both brakes. Everything was asked, measured and decided: the sheet says READY.";

pub(super) fn work() -> Work {
    let work = Work::on(TemplateId::RoadPods, "Wren, road bike");
    let day = Date::new(2031, 4, 12);
    let left = work.control(Side::Left, ControlKind::BrakeShiftLever);
    let right = work.control(Side::Right, ControlKind::BrakeShiftLever);
    let sprints = [Side::Left, Side::Right].map(|s| work.control(s, ControlKind::SprintButton));
    let hood = work.button(
        Side::Left,
        ControlKind::BrakeShiftLever,
        ButtonPart::HoodButton,
    );
    let yes = Answer::with(YesNo::Yes, seen(day));
    let reach = |mm| Answer::with(Mm(mm), seen(day));
    let system = SystemProfile {
        name: Text::new("Wired, two rings, twelve cogs"),
        origin: ProfileOrigin::FromManual,
        holds: Some(HoldRun::Cogs(3)),
        keeps_settings: Answer::of(YesNo::Yes),
        ..work.plan.bike.system.clone()
    };
    work.then([
        Edit::Plan(PlanEdit::Job(Text::new("31-042"))),
        Edit::Plan(PlanEdit::Date(day)),
        Edit::Rider(RiderEdit::Nickname(Text::new("Wren"))),
        Edit::Rider(RiderEdit::OwnWords(Text::new(
            "I ride on the hoods. In the drops only down to the ford.",
        ))),
        Edit::Rider(RiderEdit::HandDoesAll(Side::Left, seen(day))),
        Edit::Rider(RiderEdit::HandDoesNothing(
            Side::Right,
            HandPlace::Rests,
            seen(day),
        )),
        Edit::Rider(RiderEdit::BladeReach(
            Side::Left,
            HandPosition::Hoods,
            reach(92.0),
        )),
        Edit::Rider(RiderEdit::BladeReach(
            Side::Left,
            HandPosition::Drops,
            reach(96.0),
        )),
        Edit::Rider(RiderEdit::Position(
            HandPosition::Hoods,
            told(Use::Mostly, day),
        )),
        Edit::Rider(RiderEdit::Position(
            HandPosition::Drops,
            told(Use::Sometimes, day),
        )),
        Edit::Rider(RiderEdit::Position(
            HandPosition::Tops,
            told(Use::Never, day),
        )),
        Edit::Rider(RiderEdit::MountsFrom(told(Side::Left, day))),
        Edit::Rider(RiderEdit::HoldsBrakeMounting(told(Side::Left, day))),
        Edit::Rider(RiderEdit::FrontBrakeHabit(told(Side::Left, day))),
        Edit::Rider(RiderEdit::FineRidePresses(told(240, day))),
        Edit::Bike(BikeEdit::Name(Text::new("Green road bike"))),
        Edit::Bike(BikeEdit::System(system)),
        Edit::Bike(BikeEdit::ChainCatcher(Answer::of(YesNo::Yes))),
        Edit::Bike(BikeEdit::Connect(sprints[0], false)),
        Edit::Bike(BikeEdit::Connect(sprints[1], false)),
        Edit::Bike(BikeEdit::UnusedPort(left, UnusedPort::Blanked)),
        Edit::Bike(BikeEdit::UnusedPort(right, UnusedPort::Blanked)),
        Edit::Brakes(BrakeEdit::AllOnLever(left)),
        Edit::Brakes(BrakeEdit::ThrowTested(left, yes)),
        Edit::Bike(BikeEdit::BladeFitted(right, false)),
        Edit::Bike(BikeEdit::BladeReach(left, Some(Mm(74.0)))),
        Edit::Bike(BikeEdit::BladeGap(left, Some(Mm(31.0)))),
        Edit::Plan(PlanEdit::RenameLayout(Text::new("Ladder on the left"))),
        Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)),
        Edit::Layout(LayoutEdit::Clear),
        Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
        Edit::Layout(LayoutEdit::Tap(hood, Some(Function::FrontToggle))),
    ])
    .then(asked_singly(Side::Left, day))
    .accept(
        "position-change-by-only-steering-hand",
        "Changed hoods to drops and back ten times at walking pace, eyes up. Only before the ford, never on a bend.",
        "Hand therapist",
        Role::Clinician,
    )
    .accept(
        "one-sided-braking-loads-other-arm",
        "Braked hard from the hoods on the closed lane: the right arm stays quiet.",
        "Hand therapist",
        Role::Clinician,
    )
    .accept(
        "front-and-rear-on-one-lever",
        "Asked at the road office of the valley: one lever for both will do here. The rider asks again before a tour elsewhere.",
        "Fitter",
        Role::Shop,
    )
    .accept(
        "one-joint-for-front-and-rear",
        "Told the rider that both brakes hang on one circuit. Looked at every spring; the lever is tried before each ride.",
        "Fitter",
        Role::Shop,
    )
}
