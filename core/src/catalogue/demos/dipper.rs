//! Dipper: a tricycle as it came in, with work to do.

use super::{Work, told};
use crate::catalogue::TemplateId;
use crate::cockpit::HandPosition;
use crate::edit::{BikeEdit, Edit, PlanEdit, RiderEdit};
use crate::rider::{HandPlace, Side, Use, YesNo};
use crate::text::{Date, Text};

pub(super) const STORY: &str = "Dipper’s tricycle came in as it left another shop, all shifting on the right. Dipper’s right hand rests, and that arm moves by itself on a bump. The sheet says NOT READY: go through what must be fixed, one after the other, and try what each fix does.";

pub(super) fn work() -> Work {
    let work = Work::on(TemplateId::Tricycle, "Dipper, tricycle");
    let day = Date::new(2031, 5, 20);
    let asked = told((), day).evidence;
    work.then([
        Edit::Plan(PlanEdit::Job(Text::new("31-077"))),
        Edit::Plan(PlanEdit::Date(day)),
        Edit::Rider(RiderEdit::Nickname(Text::new("Dipper"))),
        Edit::Rider(RiderEdit::OwnWords(Text::new(
            "I want to park at the ferry without calling for help.",
        ))),
        Edit::Rider(RiderEdit::HandDoesAll(Side::Left, asked)),
        Edit::Rider(RiderEdit::HandDoesNothing(
            Side::Right,
            HandPlace::Rests,
            asked,
        )),
        Edit::Rider(RiderEdit::MovesByItself(Side::Right, told(YesNo::Yes, day))),
        Edit::Rider(RiderEdit::Position(
            HandPosition::Grip,
            told(Use::Mostly, day),
        )),
        Edit::Bike(BikeEdit::Name(Text::new("Red tricycle"))),
    ])
}
