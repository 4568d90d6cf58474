//! The templates themselves.

use super::{Template, TemplateId, parts};
use crate::cockpit::{
    Bar, BarKind, BarSide, Bike, BrakeKind, BrakeRun, Brakes, ButtonId, ButtonPart, ControlId,
    ControlKind, Frame, Joint, Latch, Medium, SystemProfile, ThumbWorkKind, Wheel, WheelBrake,
    Zone,
};
use crate::function::Function;
use crate::gears::{PresetId, Rolling, Tyre};
use crate::layout::Chord;
use crate::rider::{Answer, Side};
use crate::text::Text;
use crate::vocabulary::Vocabulary;

use ButtonPart::{Far, InnerPaddle, LongPaddle, Lower, Near, OuterPaddle, Single, Upper};
use ControlKind::{
    BaseBarLever, BrakeLever, BrakeShiftLever, OnePaddleLever, Pod, SinglePod, SprintButton,
};
use Function::{FrontLarger, FrontSmaller, FrontToggle, RearEasier, RearHarder};
use Side::{Left, Right};

/// A generic cockpit by its name.
pub fn template(id: TemplateId) -> Template {
    match id {
        TemplateId::RoadPlain => road(id).done(),
        TemplateId::RoadPods => {
            let mut build = road(id);
            build.pair(Pod, Zone::Tops);
            build.pair(SprintButton, Zone::Drops);
            build.tap(Right, Pod, Near, RearHarder);
            build.tap(Right, Pod, Far, RearEasier);
            build.done()
        }
        TemplateId::RoadOnePaddle => one_paddle(id),
        TemplateId::Gravel => gravel(id),
        TemplateId::AeroTwoButton => {
            let mut build = aero(id);
            build.pair(Pod, Zone::Tip);
            build.tap(Left, Pod, Near, FrontLarger);
            build.tap(Left, Pod, Far, FrontSmaller);
            build.tap(Right, Pod, Near, RearHarder);
            build.tap(Right, Pod, Far, RearEasier);
            build.done()
        }
        TemplateId::AeroOneButton => {
            let mut build = aero(id);
            build.pair(SinglePod, Zone::Tip);
            build.tap(Left, SinglePod, Single, RearEasier);
            build.tap(Right, SinglePod, Single, RearHarder);
            build.done()
        }
        TemplateId::FlatSingle => {
            let mut build = flat(id, Frame::Bicycle, PresetId::Single32x12);
            build.add(Right, Pod, Zone::Grip);
            build.direct(Medium::Cable, BrakeKind::Disc);
            build.tap(Right, Pod, Near, RearEasier);
            build.tap(Right, Pod, Far, RearHarder);
            build.done()
        }
        TemplateId::FlatDouble => {
            let mut build = flat(id, Frame::Bicycle, PresetId::Double4630x11);
            build.pair(Pod, Zone::Grip);
            build.direct(Medium::Hose, BrakeKind::Disc);
            build.tap(Left, Pod, Near, FrontSmaller);
            build.tap(Left, Pod, Far, FrontLarger);
            build.tap(Right, Pod, Near, RearEasier);
            build.tap(Right, Pod, Far, RearHarder);
            build.done()
        }
        TemplateId::Tricycle => tricycle(id),
        TemplateId::Recumbent => recumbent(id),
        TemplateId::SingleSidedLeft => single_sided(id, Left),
        TemplateId::SingleSidedRight => single_sided(id, Right),
    }
}

/// A road drop bar with a brake-shift lever on each side.
fn road(id: TemplateId) -> Build {
    let mut build = Build::new(id, Frame::Bicycle, BarKind::Drop, PresetId::Double5034x12);
    build.pair(BrakeShiftLever, Zone::Hoods);
    build.direct(Medium::Hose, BrakeKind::Disc);
    build.tap(Left, BrakeShiftLever, OuterPaddle, FrontLarger);
    build.tap(Left, BrakeShiftLever, InnerPaddle, FrontSmaller);
    build.tap(Right, BrakeShiftLever, OuterPaddle, RearEasier);
    build.tap(Right, BrakeShiftLever, InnerPaddle, RearHarder);
    build
}

fn one_paddle(id: TemplateId) -> Template {
    let mut build = Build::new(id, Frame::Bicycle, BarKind::Drop, PresetId::Double5034x12);
    build.pair(OnePaddleLever, Zone::Hoods);
    build.direct(Medium::Hose, BrakeKind::Disc);
    build.tap(Left, OnePaddleLever, LongPaddle, RearEasier);
    build.tap(Right, OnePaddleLever, LongPaddle, RearHarder);
    let chord = Chord {
        first: build.button(Left, OnePaddleLever, LongPaddle),
        second: build.button(Right, OnePaddleLever, LongPaddle),
        function: FrontToggle,
    };
    build.chords.push(chord);
    build.done()
}

fn gravel(id: TemplateId) -> Template {
    let mut build = Build::new(
        id,
        Frame::Bicycle,
        BarKind::FlaredDrop,
        PresetId::Single40x12,
    );
    build.tyre(40, 622);
    build.pair(BrakeShiftLever, Zone::Hoods);
    build.direct(Medium::Hose, BrakeKind::Disc);
    build.tap(Right, BrakeShiftLever, OuterPaddle, RearEasier);
    build.tap(Right, BrakeShiftLever, InnerPaddle, RearHarder);
    build.done()
}

/// An aero bar with base-bar levers; the tips are still bare.
fn aero(id: TemplateId) -> Build {
    let mut build = Build::new(id, Frame::Bicycle, BarKind::Aero, PresetId::Double5236x12);
    build.pair(BaseBarLever, Zone::BaseBar);
    build.direct(Medium::Cable, BrakeKind::Rim);
    build.tap(Left, BaseBarLever, Upper, FrontLarger);
    build.tap(Left, BaseBarLever, Lower, FrontSmaller);
    build.tap(Right, BaseBarLever, Upper, RearHarder);
    build.tap(Right, BaseBarLever, Lower, RearEasier);
    build
}

/// A flat bar with brake levers and a bell; pods and brakes still to come.
fn flat(id: TemplateId, frame: Frame, gears: PresetId) -> Build {
    let mut build = Build::new(id, frame, BarKind::Flat, gears);
    build.tyre(47, 622);
    build.pair(BrakeLever, Zone::Grip);
    let bell = parts::thumb_work(&build.bike.bar, ThumbWorkKind::Bell, BarSide::Left);
    build.bike.thumb_work.push(bell);
    build
}

/// The left lever brakes the front wheel and latches for parking; the right
/// one brakes both rear wheels through a doubler.
fn tricycle(id: TemplateId) -> Template {
    let mut build = flat(id, Frame::TricycleTwoRear, PresetId::Single38x12);
    build.tyre(47, 507);
    build.add(Right, Pod, Zone::Grip);
    build.tap(Right, Pod, Near, RearEasier);
    build.tap(Right, Pod, Far, RearHarder);
    build.wheel(Wheel::Front, BrakeKind::Disc);
    build.wheel(Wheel::RearLeft, BrakeKind::Drum);
    build.wheel(Wheel::RearRight, BrakeKind::Drum);
    build.run(
        Left,
        BrakeLever,
        Medium::Cable,
        Joint::Direct,
        &[Wheel::Front],
    );
    build.run(
        Right,
        BrakeLever,
        Medium::Cable,
        Joint::CableDoubler,
        &[Wheel::RearLeft, Wheel::RearRight],
    );
    let left = build.control(Left, BrakeLever);
    if let Some(blade) = build
        .bike
        .control_mut(left)
        .and_then(|control| control.blade.as_mut())
    {
        blade.latch = Some(Latch::default());
    }
    build.done()
}

fn recumbent(id: TemplateId) -> Template {
    let mut build = Build::new(id, Frame::Bicycle, BarKind::SideGrip, PresetId::Single38x12);
    build.pair(BrakeLever, Zone::SideGrip);
    build.add(Right, Pod, Zone::SideGrip);
    build.direct(Medium::Hose, BrakeKind::Disc);
    build.tap(Right, Pod, Near, RearEasier);
    build.tap(Right, Pod, Far, RearHarder);
    build.done()
}

/// A drop bar whose every control is on one side: one lever brakes both wheels
/// through a splitter.
fn single_sided(id: TemplateId, side: Side) -> Template {
    let mut build = Build::new(id, Frame::Bicycle, BarKind::Drop, PresetId::Double5034x12);
    build.add(side, BrakeShiftLever, Zone::Hoods);
    build.add(side, Pod, Zone::Tops);
    build.wheel(Wheel::Front, BrakeKind::Disc);
    build.wheel(Wheel::Rear, BrakeKind::Disc);
    build.run(
        side,
        BrakeShiftLever,
        Medium::Hose,
        Joint::HoseSplitter,
        &[Wheel::Front, Wheel::Rear],
    );
    build.tap(side, BrakeShiftLever, OuterPaddle, RearEasier);
    build.tap(side, BrakeShiftLever, InnerPaddle, RearHarder);
    build.tap(side, Pod, Near, FrontLarger);
    build.tap(side, Pod, Far, FrontSmaller);
    build.done()
}

/// A template in the making.
struct Build {
    id: TemplateId,
    bike: Bike,
    taps: Vec<(ButtonId, Function)>,
    chords: Vec<Chord>,
}

impl Build {
    fn new(id: TemplateId, frame: Frame, bar: BarKind, gears: PresetId) -> Build {
        Build {
            id,
            bike: Bike {
                name: Text::new(id.words()),
                frame,
                bar: Bar::usual(bar),
                controls: Vec::new(),
                brakes: Brakes::default(),
                thumb_work: Vec::new(),
                system: SystemProfile::generic(),
                drivetrain: gears.drivetrain(),
                chain_catcher: Answer::NOT_ASKED,
            },
            taps: Vec::new(),
            chords: Vec::new(),
        }
    }

    fn done(self) -> Template {
        Template {
            id: self.id,
            bike: self.bike,
            taps: self.taps,
            chords: self.chords,
        }
    }

    /// Templates only ask for what fits; a test builds every one of them.
    fn add(&mut self, side: Side, kind: ControlKind, zone: Zone) {
        let id = self.bike.free_control_id();
        let control = parts::control(&self.bike.bar, id, kind, side, zone);
        self.bike.controls.extend(control);
    }

    /// The tyre of the driven wheel (common practice on such a bike).
    fn tyre(&mut self, width: u16, bead_seat: u16) {
        self.bike.drivetrain.wheel = Some(Rolling::Tyre(Tyre { width, bead_seat }));
    }

    fn pair(&mut self, kind: ControlKind, zone: Zone) {
        self.add(Left, kind, zone);
        self.add(Right, kind, zone);
    }

    fn control(&self, side: Side, kind: ControlKind) -> ControlId {
        self.bike
            .controls
            .iter()
            .find(|c| c.kind == kind && c.side == BarSide::from(side))
            .map_or(ControlId(0), |c| c.id)
    }

    fn button(&self, side: Side, kind: ControlKind, part: ButtonPart) -> ButtonId {
        ButtonId {
            control: self.control(side, kind),
            part,
        }
    }

    fn tap(&mut self, side: Side, kind: ControlKind, part: ButtonPart, function: Function) {
        self.taps.push((self.button(side, kind, part), function));
    }

    fn wheel(&mut self, wheel: Wheel, kind: BrakeKind) {
        self.bike.brakes.wheels.push(WheelBrake {
            wheel,
            kind,
            balanced: Answer::NOT_ASKED,
        });
    }

    fn run(
        &mut self,
        side: Side,
        kind: ControlKind,
        medium: Medium,
        joint: Joint,
        wheels: &[Wheel],
    ) {
        self.bike.brakes.runs.push(BrakeRun {
            lever: self.control(side, kind),
            medium,
            joint,
            throw_tested: Answer::NOT_ASKED,
            wheels: wheels.to_vec(),
        });
    }

    /// The left lever brakes the front wheel, the right one the rear wheel.
    fn direct(&mut self, medium: Medium, kind: BrakeKind) {
        let levers: Vec<(Side, ControlKind)> = self
            .bike
            .controls
            .iter()
            .filter(|c| c.blade.is_some())
            .filter_map(|c| Some((c.side.hand()?, c.kind)))
            .collect();
        for (side, lever) in levers {
            let wheel = match side {
                Left => Wheel::Front,
                Right => Wheel::Rear,
            };
            self.wheel(wheel, kind);
            self.run(side, lever, medium, Joint::Direct, &[wheel]);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules;

    #[test]
    fn every_template_is_whole() {
        for id in TemplateId::ALL {
            let template = template(*id);
            assert!(!template.bike.controls.is_empty(), "{id}");
            for (button, function) in &template.taps {
                let (_, found) = template.bike.button(*button).expect("a tap has its button");
                assert!(found.takes(*function), "{id}: {button}");
            }
            for run in &template.bike.brakes.runs {
                let lever = template
                    .bike
                    .control(run.lever)
                    .expect("a run has its lever");
                assert!(lever.has_blade(), "{id}");
            }
        }
    }

    #[test]
    fn every_template_gives_a_plan_that_rules_can_look_at() {
        for id in TemplateId::ALL {
            let plan = template(*id).plan("Test");
            assert_eq!(plan.as_found.len(), plan.bike.buttons().len(), "{id}");
            let _ = rules::findings(&plan);
        }
    }
}
