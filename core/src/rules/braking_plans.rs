//! Fixes of the clash and brake rules on random bikes and riders: brakes plumbed
//! at will, hands of any ability.

use proptest::prelude::*;

use super::testing::{bike, fixes_hold};
use super::{ALL, Family};
use crate::catalogue::TemplateId;
use crate::cockpit::{
    BrakeRun, ControlId, ControlKind, Frame, Joint, Latch, Medium, PulledTogether, Wheel,
    WheelBrake, Zone,
};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, RiderEdit};
use crate::function::Function;
use crate::layout::Chord;
use crate::plan::Plan;
use crate::rider::{
    Ability, Answer, Contact, Device, Difficulty, HandPlace, Later, Side, Use, YesNo,
};
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

/// A stream of choices from raw numbers.
struct Choices(std::vec::IntoIter<u16>);

impl Choices {
    fn number(&mut self) -> usize {
        usize::from(self.0.next().unwrap_or(0))
    }

    fn one<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.number() % of.len()]
    }

    fn any<T: Vocabulary>(&mut self) -> T {
        self.one(T::ALL)
    }

    fn answer<T: Vocabulary>(&mut self) -> Answer<T> {
        let at = self.number() % (T::ALL.len() + 1);
        T::ALL
            .get(at)
            .map_or(Answer::NOT_ASKED, |item| Answer::of(*item))
    }

    fn length(&mut self) -> Mm {
        Mm(self.one(&[12.0, 18.0, 25.0, 55.0, 70.0, 95.0]))
    }

    fn lever(&mut self, plan: &Plan) -> ControlId {
        let controls = plan.bike.controls.iter();
        let levers: Vec<ControlId> = controls
            .filter(|c| c.blade.is_some())
            .map(|c| c.id)
            .collect();
        if levers.is_empty() {
            return ControlId(0);
        }
        self.one(&levers)
    }

    fn button(&mut self, plan: &Plan) -> crate::cockpit::ButtonId {
        let buttons: Vec<_> = plan.bike.buttons().iter().map(|(id, ..)| *id).collect();
        self.one(&buttons)
    }

    fn wheel(&mut self, plan: &Plan) -> Wheel {
        let wheels: Vec<_> = plan.bike.brakes.wheels.iter().map(|b| b.wheel).collect();
        self.one(&wheels)
    }

    fn run(&mut self, plan: &Plan) -> BrakeRun {
        let wheels: Vec<_> = plan.bike.brakes.wheels.iter().map(|b| b.wheel).collect();
        let mask = self.number();
        let picked = wheels
            .iter()
            .enumerate()
            .filter(|(nth, _)| mask >> nth & 1 == 1);
        BrakeRun {
            lever: self.lever(plan),
            medium: self.any::<Medium>(),
            joint: self.any::<Joint>(),
            throw_tested: self.answer(),
            wheels: picked.map(|(_, wheel)| *wheel).collect(),
        }
    }

    fn edit(&mut self, plan: &Plan) -> Edit {
        match self.number() % 26 {
            0 => Edit::Rider(RiderEdit::HandDoesNothing(
                self.any(),
                self.one(&[HandPlace::Rests, HandPlace::OffBar]),
                None,
            )),
            1 => Edit::Rider(RiderEdit::Place(self.any(), self.answer())),
            2..=6 => Edit::Rider(RiderEdit::Ability(
                self.any(),
                self.one(&[
                    Ability::BrakesHard,
                    Ability::ReleasesBrake,
                    Ability::BrakesHard,
                    Ability::Steady,
                    Ability::TellsApart,
                    Ability::LetsGo,
                    Ability::SteersAlone,
                    Ability::StaysOn,
                ]),
                self.answer::<Difficulty>(),
            )),
            7 => Edit::Rider(RiderEdit::Contact(
                self.any(),
                self.any::<Contact>(),
                self.answer(),
            )),
            8 => {
                let at = self.one(plan.bike.bar.kind.positions());
                Edit::Rider(RiderEdit::Position(at, self.answer::<Use>()))
            }
            9 => {
                let at = self.one(plan.bike.bar.kind.positions());
                let reach = Answer::of(self.length());
                Edit::Rider(RiderEdit::BladeReach(self.any(), at, reach))
            }
            10 => Edit::Rider(RiderEdit::Device(
                self.any(),
                Some(Device {
                    releases_in_fall: self.answer(),
                    acts: self.answer(),
                }),
            )),
            11 => Edit::Rider(RiderEdit::FrontBrakeHabit(self.answer::<Side>())),
            12 => Edit::Rider(RiderEdit::Later(self.any(), self.answer::<Later>())),
            13 => {
                let zone = self.one(&[Zone::Hoods, Zone::Tops, Zone::Grip, Zone::BaseBar]);
                Edit::Bike(BikeEdit::Add(ControlKind::BrakeLever, self.any(), zone))
            }
            14 => Edit::Bike(BikeEdit::BladeFitted(
                self.lever(plan),
                self.any::<YesNo>() == YesNo::Yes,
            )),
            15 => Edit::Bike(BikeEdit::BladeReach(self.lever(plan), Some(self.length()))),
            16 => Edit::Bike(BikeEdit::BladeGap(self.lever(plan), Some(self.length()))),
            17 => {
                let latch = Latch {
                    tried: self.answer(),
                };
                Edit::Bike(BikeEdit::Latch(self.lever(plan), Some(latch)))
            }
            18 => Edit::Brakes(BrakeEdit::Together(PulledTogether {
                hand: self.any(),
                first: self.lever(plan),
                second: self.lever(plan),
                tried: self.answer::<YesNo>(),
            })),
            19 => Edit::Layout(LayoutEdit::Tap(
                self.button(plan),
                Some(self.any::<Function>()),
            )),
            20 => Edit::Layout(LayoutEdit::AddChord(Chord {
                first: self.button(plan),
                second: self.button(plan),
                function: self.any(),
            })),
            21..=23 => {
                let wheel = self.wheel(plan);
                Edit::Brakes(BrakeEdit::SetRun(BrakeRun {
                    joint: Joint::Direct,
                    wheels: vec![wheel],
                    ..self.run(plan)
                }))
            }
            _ => Edit::Brakes(BrakeEdit::SetRun(self.run(plan))),
        }
    }
}

/// A bike, perhaps with its brakes still to be plumbed, and what is done to it.
type Story = (TemplateId, Option<Frame>, Vec<u16>);

fn any_story() -> impl Strategy<Value = Story> {
    (
        prop::sample::select(TemplateId::ALL),
        prop::option::of(prop::sample::select(Frame::ALL)),
        prop::collection::vec(any::<u16>(), 0..80),
    )
}

fn told((id, frame, numbers): Story) -> Plan {
    let mut plan = bike(id).plan();
    // A second lever on each side, so that one hand may have two.
    for side in Side::ALL {
        for zone in [Zone::Grip, Zone::SideGrip, Zone::BaseBar, Zone::Hoods] {
            let add = BikeEdit::Add(ControlKind::BrakeLever, *side, zone);
            plan = plan.apply(&Edit::Bike(add)).unwrap_or(plan);
        }
    }
    if let Some(frame) = frame {
        let brakes = &mut plan.bike.brakes;
        let brake = brakes.wheels[0];
        brakes.runs.clear();
        brakes.wheels = frame
            .wheels()
            .iter()
            .map(|w| WheelBrake { wheel: *w, ..brake })
            .collect();
        plan.bike.frame = frame;
    }
    let mut choices = Choices(numbers.into_iter());
    while choices.0.len() > 0 {
        let edit = choices.edit(&plan);
        // What does not fit this bike is refused, and the plan stays.
        plan = plan.apply(&edit).unwrap_or(plan);
    }
    plan
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]
    #[test]
    fn fixes_remove_their_finding_and_add_nothing_that_must_be_fixed(story in any_story()) {
        let plan = told(story);
        for rule in ALL.iter().filter(|r| matches!(r.family, Family::Clash | Family::Brake)) {
            prop_assert_eq!(fixes_hold(&plan, rule), Ok(()));
        }
    }
}
