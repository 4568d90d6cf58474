//! Plover: a flat bar whose left thumb rests, with two ideas to compare.

use super::{Work, asked_singly, seen, told};
use crate::catalogue::TemplateId;
use crate::cockpit::{
    BarSide, ButtonPart, ControlKind, ProfileOrigin, SystemProfile, ThumbWorkKind,
};
use crate::edit::{BikeEdit, Edit, GearEdit, LayoutEdit, PlanEdit, RiderEdit};
use crate::function::Function;
use crate::gears::LadderGoal;
use crate::rider::{Ability, Answer, Contact, Difficulty, Later, Side, YesNo};
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, Text};

pub(super) const STORY: &str = "Plover tours with bags on a flat bar. The left thumb presses only with great effort, and in the cold both hands take one step more. The first idea puts a ladder under the right thumb; the second keeps the front ring under the left index finger. Two points wait for somebody to decide.";

pub(super) fn work() -> Work {
    let work = Work::on(TemplateId::FlatDouble, "Plover, touring bike");
    let day = Date::new(2031, 3, 3);
    let near = work.button(Side::Left, ControlKind::Pod, ButtonPart::Near);
    let thumb_hurts = told(YesNo::Yes, day);
    let step = |step| Answer::with(step, seen(day));
    let system = SystemProfile {
        name: Text::new("Wired, two rings, eleven cogs"),
        origin: ProfileOrigin::FromManual,
        ..work.plan.bike.system.clone()
    };
    work.then([
        Edit::Plan(PlanEdit::Job(Text::new("31-029"))),
        Edit::Plan(PlanEdit::Date(day)),
        Edit::Rider(RiderEdit::Nickname(Text::new("Plover"))),
        Edit::Rider(RiderEdit::OwnWords(Text::new(
            "After the pass my left thumb is done for the day.",
        ))),
        Edit::Rider(RiderEdit::HandDoesAll(Side::Right, seen(day))),
        Edit::Rider(RiderEdit::HandDoesAll(Side::Left, seen(day))),
    ])
    .then(asked_singly(Side::Right, day))
    .then(asked_singly(Side::Left, day))
    .then([
        Edit::Rider(RiderEdit::Contact(
            Side::Left,
            Contact::Thumb,
            step(Difficulty::Severe),
        )),
        Edit::Rider(RiderEdit::Contact(
            Side::Left,
            Contact::Index,
            step(Difficulty::Mild),
        )),
        Edit::Rider(RiderEdit::Ability(
            Side::Left,
            Ability::BrakesHard,
            step(Difficulty::Moderate),
        )),
        Edit::Rider(RiderEdit::Ability(
            Side::Left,
            Ability::Comfort,
            step(Difficulty::Moderate),
        )),
        Edit::Rider(RiderEdit::Hurts(Side::Left, Contact::Thumb, thumb_hurts)),
        Edit::Rider(RiderEdit::Later(
            Side::Left,
            told(Later::OneStepHarder, day),
        )),
        Edit::Rider(RiderEdit::Later(
            Side::Right,
            told(Later::OneStepHarder, day),
        )),
        Edit::Rider(RiderEdit::MountsFrom(told(Side::Left, day))),
        Edit::Rider(RiderEdit::HoldsBrakeMounting(told(Side::Right, day))),
        Edit::Rider(RiderEdit::FrontBrakeHabit(told(Side::Left, day))),
        Edit::Bike(BikeEdit::Name(Text::new("Grey touring bike"))),
        Edit::Bike(BikeEdit::System(system)),
        Edit::Bike(BikeEdit::ChainCatcher(Answer::of(YesNo::No))),
        Edit::Bike(BikeEdit::PutThumbWork(ThumbWorkKind::Bell, BarSide::Right)),
        Edit::Plan(PlanEdit::RenameLayout(Text::new(
            "Front under the left index finger",
        ))),
        Edit::Layout(LayoutEdit::Clear),
        Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)),
        Edit::Gears(GearEdit::LadderGoal(LadderGoal::Comfort)),
        Edit::Layout(LayoutEdit::AllShiftingOn(Side::Right)),
        Edit::Layout(LayoutEdit::Tap(near, Some(Function::FrontToggle))),
        Edit::Plan(PlanEdit::DuplicateLayout(Text::new(
            "Ladder under the right thumb",
        ))),
        Edit::Layout(LayoutEdit::ClearButton(near)),
    ])
}
