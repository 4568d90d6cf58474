//! Plans to write and read.

use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::cockpit::{
    BarSide, ButtonId, ButtonPart, ControlId, ControlKind, Ease, Freedom, HandPosition, HoldRun,
    Latch, Link, PulledTogether, SeenReach, ThumbWorkKind, UnusedPort, Zone,
};
use leverwright_core::edit::{
    BikeEdit, BrakeEdit, Edit, GearEdit, LayoutEdit, PlanEdit, RiderEdit,
};
use leverwright_core::finding::{Acceptance, Role};
use leverwright_core::function::Function;
use leverwright_core::gears::{
    CogMove, Derailleurs, Direction, Gear, LadderGoal, Millis, Pace, Rolling, Teeth, Tyre,
};
use leverwright_core::layout::{Chord, Hold};
use leverwright_core::plan::Plan;
use leverwright_core::rider::{
    Ability, Acts, Answer, Contact, Device, Difficulty, Evidence, HandPlace, Later, Pressing, Side,
    Source, Use, Worn, YesNo,
};
use leverwright_core::shift_plan::ShiftPlanKind;
use leverwright_core::text::{Date, Text};
use leverwright_core::units::Mm;
use proptest::prelude::*;

/// The plan after edits that are all possible.
#[track_caller]
pub fn after(plan: Plan, edits: &[Edit]) -> Plan {
    edits
        .iter()
        .fold(plan, |plan, edit| match plan.apply(edit) {
            Ok(next) => next,
            Err(error) => panic!("{edit:?}: {error}"),
        })
}

/// The plan after those of the edits that are possible.
pub fn after_possible(plan: Plan, edits: &[Act]) -> Plan {
    edits.iter().fold(plan, |plan, act| {
        let next = plan.apply(&act.edit(&plan));
        next.unwrap_or(plan)
    })
}

/// A plan in which everything that a file can say is said.
pub fn full() -> Plan {
    let plan = template(TemplateId::RoadPods).plan("Up the long valley");
    let id = |at: usize| {
        let (control, part) = [
            (1, ButtonPart::HoodButton),
            (1, ButtonPart::OuterPaddle),
            (1, ButtonPart::InnerPaddle),
            (3, ButtonPart::Near),
        ][at];
        ButtonId {
            control: ControlId(control),
            part,
        }
    };
    let lever = |at: usize| plan.bike.brakes.runs[at].lever;
    let day = Date::new(2031, 5, 9);
    let seen = Some(Evidence {
        source: Source::SeenByFitter,
        date: day,
        worn: Some(Worn::Glove),
        in_one_tap: false,
    });
    let told = Some(Evidence {
        source: Source::Told,
        date: None,
        worn: None,
        in_one_tap: false,
    });
    let mut system = plan.bike.system.clone();
    system.holds = Some(HoldRun::Cogs(3));
    system.required_levers.insert(BarSide::Left);
    system.keeps_settings = Answer::with(YesNo::No, told);
    let bar = plan.bike.bar;
    let edits = [
        Edit::Plan(PlanEdit::Job("J-17".into())),
        Edit::Plan(PlanEdit::Date(day)),
        Edit::Plan(PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder)),
        Edit::Rider(RiderEdit::Nickname("Wren".into())),
        Edit::Rider(RiderEdit::OwnWords("“Not over cobbles.”".into())),
        Edit::Rider(RiderEdit::HandDoesAll(Side::Left, seen)),
        Edit::Rider(RiderEdit::HandDoesNothing(
            Side::Right,
            HandPlace::Rests,
            told,
        )),
        Edit::Rider(RiderEdit::Ability(
            Side::Left,
            Ability::Steady,
            Answer::of(Difficulty::Mild),
        )),
        Edit::Rider(RiderEdit::Contact(
            Side::Left,
            Contact::Knuckle,
            Answer::with(Difficulty::Severe, seen),
        )),
        Edit::Rider(RiderEdit::Pressing(
            Side::Left,
            Answer::of(Pressing::AllTogether),
        )),
        Edit::Rider(RiderEdit::MovesByItself(
            Side::Right,
            Answer::with(YesNo::Yes, seen),
        )),
        Edit::Rider(RiderEdit::Later(
            Side::Left,
            Answer::of(Later::OneStepHarder),
        )),
        Edit::Rider(RiderEdit::Hurts(
            Side::Left,
            Contact::Thumb,
            Answer::with(YesNo::Yes, told),
        )),
        Edit::Rider(RiderEdit::BladeReach(
            Side::Left,
            HandPosition::Hoods,
            Answer::with(Mm(72.5), seen),
        )),
        Edit::Rider(RiderEdit::Device(
            Side::Right,
            Some(Device {
                releases_in_fall: Answer::of(YesNo::Yes),
                acts: Answer::of(Acts::Pulls),
            }),
        )),
        Edit::Rider(RiderEdit::Position(
            HandPosition::Hoods,
            Answer::of(Use::Mostly),
        )),
        Edit::Rider(RiderEdit::MountsFrom(Answer::of(Side::Left))),
        Edit::Rider(RiderEdit::HoldsBrakeMounting(Answer {
            evidence: told,
            ..Answer::NOT_ASKED
        })),
        Edit::Rider(RiderEdit::FrontBrakeHabit(Answer::of(Side::Right))),
        Edit::Rider(RiderEdit::FineRidePresses(Answer::of(340))),
        Edit::Bike(BikeEdit::Name("The blue one".into())),
        Edit::Bike(BikeEdit::BarMeasures(leverwright_core::cockpit::Bar {
            width: Mm(423.7),
            ..bar
        })),
        Edit::Bike(BikeEdit::ChainCatcher(Answer::of(YesNo::Yes))),
        Edit::Bike(BikeEdit::Add(
            ControlKind::SinglePod,
            Side::Left,
            Zone::Stem,
        )),
        Edit::Bike(BikeEdit::Link(ControlId(1), Link::Wireless)),
        Edit::Bike(BikeEdit::UnusedPort(ControlId(1), UnusedPort::Blanked)),
        Edit::Bike(BikeEdit::Connect(ControlId(6), false)),
        Edit::Bike(BikeEdit::Freedom(
            id(0),
            Freedom::Limited(vec![Function::Lights, Function::NextScreen]),
        )),
        Edit::Bike(BikeEdit::Freedom(id(1), Freedom::Copies(id(2)))),
        Edit::Bike(BikeEdit::Travel(id(2), Mm(2.75))),
        Edit::Bike(BikeEdit::SeenReach(
            id(2),
            SeenReach {
                from: HandPosition::Hoods,
                contact: Contact::Ring,
                ease: Some(Ease::Stretch),
            },
        )),
        Edit::Bike(BikeEdit::SeenReach(
            id(2),
            SeenReach {
                from: HandPosition::Drops,
                contact: Contact::Thumb,
                ease: None,
            },
        )),
        Edit::Bike(BikeEdit::BladeReach(lever(0), Some(Mm(68.0)))),
        Edit::Bike(BikeEdit::BladeFitted(lever(1), false)),
        Edit::Bike(BikeEdit::Latch(
            lever(0),
            Some(Latch {
                tried: Answer::of(YesNo::No),
            }),
        )),
        Edit::Bike(BikeEdit::PutThumbWork(ThumbWorkKind::Bell, BarSide::Left)),
        Edit::Bike(BikeEdit::System(system)),
        Edit::Brakes(BrakeEdit::AllOnLever(lever(0))),
        Edit::Bike(BikeEdit::BladeGap(lever(0), Some(Mm(24.0)))),
        Edit::Brakes(BrakeEdit::ThrowTested(
            lever(0),
            Answer::with(YesNo::Yes, seen),
        )),
        Edit::Brakes(BrakeEdit::Together(PulledTogether {
            hand: Side::Left,
            first: lever(0),
            second: lever(1),
            tried: Answer::of(YesNo::No),
        })),
        Edit::Brakes(BrakeEdit::Balanced(
            leverwright_core::cockpit::Wheel::Front,
            Answer::of(YesNo::Yes),
        )),
        Edit::Layout(LayoutEdit::Tap(id(0), Some(Function::Lights))),
        Edit::Layout(LayoutEdit::Hold(
            id(2),
            Some(Hold::Repeats(HoldRun::Cogs(2))),
        )),
        Edit::Layout(LayoutEdit::Hold(
            id(3),
            Some(Hold::Does(Function::NextScreen)),
        )),
        Edit::Layout(LayoutEdit::AddChord(Chord {
            first: id(2),
            second: id(3),
            function: Function::FrontToggle,
        })),
        Edit::Gears(GearEdit::Wheel(Some(Rolling::Measured(Mm(2099.5))))),
        Edit::Gears(GearEdit::Crank(Some(Mm(172.5)))),
        Edit::Gears(GearEdit::Chainstay(Some(Mm(412.0)))),
        Edit::Gears(GearEdit::Derailleurs(Derailleurs {
            largest_cog: Some(Teeth(36)),
            wrap: Some(Teeth(41)),
            front_difference: Some(Teeth(16)),
        })),
        Edit::Gears(GearEdit::RearShifts(Direction::Up, Some(2))),
        Edit::Gears(GearEdit::RearShifts(Direction::Down, Some(3))),
        Edit::Gears(GearEdit::LadderGoal(LadderGoal::Comfort)),
        Edit::Gears(GearEdit::Forbid(Gear::new(0, 11), true)),
        Edit::Gears(GearEdit::Crossover(
            0,
            Direction::Up,
            CogMove {
                leaves: 6,
                lands: 4,
            },
        )),
        Edit::Gears(GearEdit::HoldsCross(true)),
        Edit::Gears(GearEdit::Pace(Pace {
            trigger: Millis(400),
            rear: Millis(150),
            front: Millis(900),
        })),
        Edit::Plan(PlanEdit::DuplicateLayout("Second thought".into())),
        Edit::Layout(LayoutEdit::Hold(id(2), Some(Hold::Repeats(HoldRun::ToEnd)))),
        Edit::Plan(PlanEdit::Accept(Acceptance {
            finding: "one-lever-for-both|control:1".into(),
            reason: "asked at the counter".into(),
            by: "M.".into(),
            role: Role::Clinician,
            date: day,
            lapsed: false,
        })),
    ];
    after(plan.clone(), &edits)
}

/// What stands in for one thing a person does at random.
#[derive(Debug, Clone)]
pub struct Act {
    what: u8,
    a: u16,
    b: u16,
    c: u16,
    words: String,
}

fn pick<T: Vocabulary>(n: u16) -> T {
    T::ALL[usize::from(n) % T::ALL.len()]
}

fn answer<T>(value: T, n: u16) -> Answer<T> {
    let evidence = Evidence {
        source: pick(n),
        date: Date::new(2000 + n % 900, 1 + (n % 12) as u8, 1 + (n % 28) as u8),
        worn: (n > 99).then(|| pick(n)),
        in_one_tap: n.is_multiple_of(5),
    };
    match n % 4 {
        0 => Answer::NOT_ASKED,
        1 => Answer::of(value),
        _ => Answer::with(value, Some(evidence)),
    }
}

impl Act {
    fn edit(&self, plan: &Plan) -> Edit {
        let Act { a, b, c, .. } = *self;
        let text = || Text::new(&self.words);
        let controls = &plan.bike.controls;
        let control = |n: u16| {
            (controls.get(usize::from(n) % controls.len().max(1))).map_or(ControlId(n), |c| c.id)
        };
        let buttons = plan.bike.buttons();
        let button = |n: u16| {
            (buttons.get(usize::from(n) % buttons.len().max(1))).map_or(
                ButtonId {
                    control: ControlId(n),
                    part: pick(n),
                },
                |(id, ..)| *id,
            )
        };
        let mm = |n: u16| Mm(f64::from(n % 2100) / 10.3);
        let side = pick::<Side>(c);
        match self.what {
            0 => Edit::Plan(PlanEdit::Name(text())),
            1 => Edit::Rider(RiderEdit::OwnWords(text())),
            2 => Edit::Rider(RiderEdit::HandDoesAll(side, answer((), a).evidence)),
            3 => Edit::Rider(RiderEdit::HandDoesNothing(side, pick(a), None)),
            4 => Edit::Rider(RiderEdit::Ability(side, pick(a), answer(pick(b), c))),
            5 => Edit::Rider(RiderEdit::Contact(side, pick(a), answer(pick(b), c))),
            6 => Edit::Rider(RiderEdit::BladeReach(side, pick(a), answer(mm(b), c))),
            7 => Edit::Rider(RiderEdit::Position(pick(a), answer(pick(b), c))),
            8 => Edit::Rider(RiderEdit::FineRidePresses(answer(a, b))),
            9 => Edit::Rider(RiderEdit::Later(side, answer(pick(a), b))),
            10 => Edit::Rider(RiderEdit::MovesByItself(side, answer(pick(a), b))),
            11 | 12 => Edit::Bike(BikeEdit::Add(pick(a), side, pick(b))),
            13 => Edit::Bike(BikeEdit::Remove(control(a))),
            14 => Edit::Bike(BikeEdit::MoveTo(control(a), pick(b))),
            15 => Edit::Bike(BikeEdit::Mirror(control(a))),
            16 => Edit::Bike(BikeEdit::MirrorAll),
            17 => Edit::Bike(BikeEdit::Connect(control(a), b % 2 == 0)),
            18 => Edit::Bike(BikeEdit::Rings(1 + (a % 3) as u8)),
            19 => Edit::Bike(BikeEdit::Freedom(
                button(a),
                match b % 4 {
                    0 => Freedom::Free,
                    1 => Freedom::Limited(vec![pick(c), pick(a)]),
                    2 => Freedom::Copies(button(c)),
                    _ => Freedom::Fixed(pick(c)),
                },
            )),
            20 => Edit::Bike(BikeEdit::SeenReach(
                button(a),
                SeenReach {
                    from: pick(b),
                    contact: pick(c),
                    ease: (a > 9).then(|| pick(a)),
                },
            )),
            21 => Edit::Bike(BikeEdit::BladeFitted(control(a), b % 2 == 0)),
            22 => Edit::Bike(BikeEdit::BladeReach(control(a), Some(mm(b)))),
            23 => Edit::Bike(BikeEdit::Latch(
                control(a),
                Some(Latch {
                    tried: answer(pick(b), c),
                }),
            )),
            24 => Edit::Bike(BikeEdit::PutThumbWork(pick(a), pick(b))),
            25 => Edit::Brakes(BrakeEdit::AllOnLever(control(a))),
            26 => Edit::Brakes(BrakeEdit::ThrowTested(control(a), answer(pick(b), c))),
            27 => Edit::Brakes(BrakeEdit::Together(PulledTogether {
                hand: side,
                first: control(a),
                second: control(b),
                tried: answer(pick(b), c),
            })),
            28 | 29 => Edit::Layout(LayoutEdit::Tap(button(a), Some(pick(b)))),
            30 => Edit::Layout(LayoutEdit::Swap(button(a), button(b))),
            31 => Edit::Layout(LayoutEdit::Hold(
                button(a),
                Some(match b % 3 {
                    0 => Hold::Repeats(HoldRun::ToEnd),
                    1 => Hold::Repeats(HoldRun::Cogs((c % 16) as u8)),
                    _ => Hold::Does(pick(c)),
                }),
            )),
            32 => Edit::Layout(LayoutEdit::AddChord(Chord {
                first: button(a),
                second: button(b),
                function: pick(c),
            })),
            33 => Edit::Layout(LayoutEdit::AllShiftingOn(side)),
            34 => Edit::Layout(LayoutEdit::Mirror),
            35 => Edit::Layout(LayoutEdit::BlankUnderRestingHands),
            36 => Edit::Plan(PlanEdit::ShiftPlanAndButtons(pick(a))),
            37 => Edit::Plan(PlanEdit::DuplicateLayout(text())),
            38 => Edit::Plan(PlanEdit::RemoveLayout(plan.layouts[0].id)),
            39 => Edit::Plan(PlanEdit::Accept(Acceptance {
                finding: format!("some-rule|button:{}", button(a)),
                reason: text(),
                by: Text::new("M."),
                role: pick(b),
                date: Date::new(2031, 1, 1 + (c % 31) as u8),
                lapsed: a % 3 == 0,
            })),
            40 => Edit::Rider(RiderEdit::ForgetHand(side)),
            41 => Edit::Gears(GearEdit::Preset(pick(a))),
            42 => Edit::Gears(GearEdit::Forbid(
                Gear::new((a % 3) as u8, (b % 14) as u8),
                c % 4 > 0,
            )),
            43 => Edit::Gears(GearEdit::Crossover(
                (a % 2) as u8,
                pick(a),
                CogMove {
                    leaves: (b % 14) as u8,
                    lands: (c % 14) as u8,
                },
            )),
            44 => Edit::Gears(GearEdit::Cogs(
                (0..=a % 14)
                    .map(|n| Teeth((9 + n + n * (b % 4)) as u8))
                    .collect(),
            )),
            45 => Edit::Gears(GearEdit::Wheel(match a % 3 {
                0 => None,
                1 => Tyre::new(b % 150, 622).ok().map(Rolling::Tyre),
                _ => Some(Rolling::Measured(mm(b))),
            })),
            46 => Edit::Gears(GearEdit::LadderGoal(pick(a))),
            47 => Edit::Rider(RiderEdit::Hurts(side, pick(a), answer(pick(b), c))),
            _ => Edit::Plan(PlanEdit::NoteAsFound),
        }
    }
}

pub fn act() -> impl Strategy<Value = Act> {
    (
        0..49_u8,
        any::<u16>(),
        any::<u16>(),
        any::<u16>(),
        ".{0,40}",
    )
        .prop_map(|(what, a, b, c, words)| Act {
            what,
            a,
            b,
            c,
            words,
        })
}

/// A plan that people could have made: a template and up to forty acts.
pub fn any_plan() -> impl Strategy<Value = Plan> {
    (
        0..TemplateId::ALL.len(),
        prop::collection::vec(act(), 0..40),
    )
        .prop_map(|(at, acts)| after_possible(template(TemplateId::ALL[at]).plan("Random"), &acts))
}

/// Everything that the app asks of a plan it opened, so that a panic shows.
pub fn look_at(plan: &Plan) {
    use leverwright_core::drawing::{Picture, Sheet as Paper};
    use leverwright_core::rules;
    use leverwright_core::sheet::{Sheet, SheetOptions};
    use leverwright_core::situation::Situation;
    use leverwright_core::slot::Slot;
    for layout in &plan.layouts {
        let _ = rules::findings_in(&Situation::of_layout(plan, layout));
    }
    for finding in rules::findings(plan) {
        for fix in &finding.fixes {
            let _ = plan.apply(&fix.edit);
        }
    }
    let options = SheetOptions {
        hand_page: true,
        ..SheetOptions::default()
    };
    let _ = (Sheet::of(plan, options), Slot::all(plan));
    let _ = Picture::of(&plan.bike, Paper::for_width(390.0));
    crate::recorded::look_at(plan);
    for (id, ..) in plan.bike.buttons() {
        let _ = (plan.bike.balloon(id), plan.bike.nearest_button(id));
    }
    for edit in [
        Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
        Edit::Layout(LayoutEdit::Mirror),
        Edit::Layout(LayoutEdit::BlankUnderRestingHands),
        Edit::Bike(BikeEdit::MirrorAll),
        Edit::Bike(BikeEdit::Add(ControlKind::Pod, Side::Right, Zone::Tops)),
        Edit::Plan(PlanEdit::NoteAsFound),
        Edit::Plan(PlanEdit::RemoveHandDetails(None)),
    ] {
        let _ = plan.apply(&edit);
    }
}
