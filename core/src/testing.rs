//! Random plans, riders and edits for property tests.

use std::fmt::Debug;
use std::sync::Arc;

use proptest::option;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

use crate::catalogue::{TemplateId, template};
use crate::cockpit::{
    Bar, BarKind, BarSide, BrakeRun, ButtonId, ButtonPart, ControlId, Freedom, HandPosition,
    HoldRun, Latch, ProfileOrigin, PulledTogether, SeenReach, SystemProfile,
};
use crate::edit::{
    BikeEdit, BrakeEdit, Edit, GearEdit, LayoutEdit, PlanEdit, RecordEdit, RideEdit, RiderEdit,
};
use crate::finding::{Acceptance, Place, Role};
use crate::function::Function;
use crate::gears::{CogMove, Derailleurs, Gear, Millis, Pace, Rolling, Teeth, Tyre};
use crate::layout::{Chord, Chosen, Hold, LayoutId};
use crate::plan::Plan;
use crate::record::{Code, Matter, MixUp, Pin, Practised, Step};
use crate::review::{NotAssessed, Review, ReviewEvent, Trial};
use crate::ride::kept::{FineHand, HandFigures, KnownRide, Remembered, RoadChoice};
use crate::ride::road::{Bend, Road};
use crate::rider::{
    Ability, Acts, Answer, Contact, Device, Difficulty, Evidence, Hand, HandPlace, Later, Side,
    Worn, YesNo, digits,
};
use crate::text::{Date, Text};
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

/// A plan as it may stand after any work in the app: a template, a rider
/// answered about more or less, then edits of every kind.
pub(crate) fn plan() -> impl Strategy<Value = Plan> {
    any::<TemplateId>().prop_flat_map(|id| {
        let bare = template(id).plan("Test");
        let names = Names::of(&bare);
        let changes = (rider_edits(), prop::collection::vec(names.edit(), 0..16));
        changes.prop_map(move |(rider, edits)| after(bare.clone(), rider.iter().chain(&edits)))
    })
}

/// A plan as a document may bring it: also with entries that no edit would make.
pub(crate) fn plan_from_document() -> impl Strategy<Value = Plan> {
    let strays = prop::collection::vec(stray(), 0..6);
    let rides = option::weighted(0.3, prop::array::uniform2(hand_figures()));
    (plan(), strays, rides).prop_map(|(mut plan, strays, rides)| {
        for stray in strays {
            stray.put_into(&mut plan);
        }
        if let Some([left, right]) = rides {
            plan.rides.remembered = vec![Remembered {
                left,
                right,
                ..Remembered::blank(&plan)
            }];
        }
        plan
    })
}

/// A plan and edits that may or may not go with it, names of nothing included.
pub(crate) fn plan_and_edits() -> impl Strategy<Value = (Plan, Vec<Edit>)> {
    plan().prop_flat_map(|plan| {
        let edits = prop::collection::vec(Names::of(&plan).edit(), 1..24);
        (Just(plan), edits)
    })
}

/// The plan after those edits that are possible.
pub(crate) fn after<'a>(plan: Plan, edits: impl Iterator<Item = &'a Edit>) -> Plan {
    edits.fold(plan, |plan, edit| plan.apply(edit).unwrap_or(plan))
}

/// The button at a place in words: "left outer paddle".
#[track_caller]
pub(crate) fn button(plan: &Plan, place: &str) -> ButtonId {
    plan.bike
        .buttons()
        .into_iter()
        .map(|(id, ..)| id)
        .find(|id| plan.bike.place_of(*id) == place)
        .unwrap_or_else(|| panic!("there is no {place}"))
}

/// Any item of a vocabulary.
fn any<T: Vocabulary + Debug>() -> impl Strategy<Value = T> + Clone {
    select(T::ALL)
}

fn answer<T: Vocabulary + Debug>() -> impl Strategy<Value = Answer<T>> {
    option::weighted(0.8, any::<T>()).prop_map(of_value)
}

fn of_value<T>(value: Option<T>) -> Answer<T> {
    Answer {
        before: None,
        value,
        evidence: None,
    }
}

/// A hand about which everything was asked, and which does it all easily.
pub(crate) fn able_hand() -> Hand {
    let mut hand = Hand::does_all(None);
    for ability in Ability::ALL {
        hand.abilities.set(*ability, Answer::of(Difficulty::None));
    }
    for contact in digits() {
        hand.contacts.set(contact, Answer::of(Difficulty::None));
    }
    hand.moves_by_itself = Answer::of(YesNo::No);
    hand.later = Answer::of(Later::Same);
    hand
}

/// What is said about both hands: much at once, then single answers.
fn rider_edits() -> impl Strategy<Value = Vec<Edit>> {
    let hand = |side| {
        let whole = prop_oneof![
            4 => Just(RiderEdit::HandDoesAll(side, None)),
            2 => (any::<HandPlace>()).prop_map(move |p| RiderEdit::HandDoesNothing(side, p, None)),
            1 => Just(RiderEdit::ForgetHand(side)),
        ];
        let single = prop_oneof![
            (any::<Ability>(), answer()).prop_map(move |(a, s)| RiderEdit::Ability(side, a, s)),
            (any::<Contact>(), answer()).prop_map(move |(c, s)| RiderEdit::Contact(side, c, s)),
            answer().prop_map(move |later| RiderEdit::Later(side, later)),
            answer().prop_map(move |place| RiderEdit::Place(side, place)),
        ];
        (whole, prop::collection::vec(single, 0..8))
    };
    let positions = prop::collection::vec((any(), answer()), 0..4);
    (hand(Side::Left), hand(Side::Right), positions).prop_map(|(left, right, positions)| {
        let positions = positions.into_iter();
        [left.0, right.0]
            .into_iter()
            .chain(left.1)
            .chain(right.1)
            .chain(positions.map(|(p, used)| RiderEdit::Position(p, used)))
            .map(Edit::Rider)
            .collect()
    })
}

/// What edits may name: what a plan has, and now and then what it has not.
#[derive(Debug, Clone)]
struct Names {
    buttons: Vec<ButtonId>,
    controls: Vec<ControlId>,
}

impl Names {
    fn of(plan: &Plan) -> Names {
        Names {
            buttons: plan.bike.buttons().iter().map(|(id, ..)| *id).collect(),
            controls: plan.bike.controls.iter().map(|c| c.id).collect(),
        }
    }

    fn button(&self) -> BoxedStrategy<ButtonId> {
        if self.buttons.is_empty() {
            return stray_button().boxed();
        }
        prop_oneof![12 => select(self.buttons.clone()), 1 => stray_button()].boxed()
    }

    fn control(&self) -> BoxedStrategy<ControlId> {
        if self.controls.is_empty() {
            return stray_control().boxed();
        }
        prop_oneof![12 => select(self.controls.clone()), 1 => stray_control()].boxed()
    }

    fn chord(&self) -> impl Strategy<Value = Chord> + use<> {
        (self.button(), self.button(), any()).prop_map(|(first, second, function)| Chord {
            first,
            second,
            function,
        })
    }

    fn freedom(&self) -> impl Strategy<Value = Freedom> + use<> {
        prop_oneof![
            2 => Just(Freedom::Free),
            1 => functions().prop_map(Freedom::Limited),
            1 => self.button().prop_map(Freedom::Copies),
            1 => any().prop_map(Freedom::Fixed),
        ]
    }

    /// An edit of any kind, one on its own or several as one act.
    fn edit(&self) -> BoxedStrategy<Edit> {
        let single = prop_oneof![
            6 => self.layout_edit().prop_map(Edit::Layout),
            4 => self.bike_edit().prop_map(Edit::Bike),
            2 => self.brake_edit().prop_map(Edit::Brakes),
            2 => rider_edit().prop_map(Edit::Rider),
            2 => plan_edit().prop_map(Edit::Plan),
            2 => ride_edit().prop_map(Edit::Ride),
            2 => gear_edit().prop_map(Edit::Gears),
            2 => self.record_edit().prop_map(Edit::Record),
        ]
        .boxed();
        let several = prop::collection::vec(single.clone(), 0..4).prop_map(|edits| Edit::Several {
            label: "several".into(),
            edits,
        });
        prop_oneof![12 => single, 1 => several].boxed()
    }

    /// What people write, in roles that may and that may not.
    fn record_edit(&self) -> BoxedStrategy<RecordEdit> {
        let button = || self.button();
        let pin = prop_oneof![
            Just(Pin::Whole),
            button().prop_map(|b| Pin::Place(Place::Button(b))),
            any().prop_map(|side| Pin::Place(Place::Hand(side))),
            text().prop_map(|finding| Pin::Finding(finding.as_str().into())),
        ];
        let trial = (text(), text(), text()).prop_map(|(place, with, stop_if)| Trial {
            place,
            with,
            stop_if,
            review_by: Date::new(2031, 6, 1),
        });
        let review = (
            (any(), any(), option::of(trial), option::of(any())),
            prop::collection::vec((any(), any()), 0..3),
            prop::collection::vec((button(), text()), 0..3),
            subsequence(NotAssessed::ALL, 0..4),
            subsequence(ReviewEvent::ALL, 0..3),
            (text(), text()),
        )
            .prop_map(
                |(first, seen, changes, not_assessed, again_after, words)| Review {
                    trial: first.2,
                    rider_agrees: first.3,
                    seen,
                    changes,
                    not_assessed: not_assessed.to_vec(),
                    again_after: again_after.to_vec(),
                    bike: words.0,
                    conditions: words.1,
                    worn: Some(Worn::Glove),
                    again_on: Date::new(2031, 12, 24),
                    ..Review::of(first.0, first.1)
                },
            );
        let layout = || prop_oneof![4 => 1..4u16, 1 => Just(u16::MAX)].prop_map(LayoutId);
        let matter = prop_oneof![
            3 => review.prop_map(|review| Matter::Review(Box::new(review))),
            1 => (pin, any(), text()).prop_map(|(on, audience, text)| Matter::Comment { on, audience, text }),
            1 => text().prop_map(Matter::Words),
            1 => (button(), any(), text()).prop_map(|(button, kind, text)| Matter::Mark { button, kind, text }),
            2 => (any(), any(), text(), option::of(length())).prop_map(|(check, outcome, what, measured)| {
                let step = "lock".into();
                Matter::Step(Step { check, step, outcome, what, measured })
            }),
            1 => any().prop_map(Matter::Again),
            1 => (layout(), 0..50u32, button(), option::of(0..9u32)).prop_map(|(layout, calls, pressed, late)| {
                Matter::Practice(Practised {
                    layout,
                    calls,
                    right_first: calls / 2,
                    wrong: 1,
                    late,
                    presses: vec![(pressed, calls)],
                    mixed_up: vec![MixUp { wanted: pressed, pressed, times: 1 }],
                })
            }),
            1 => text().prop_map(|text| Matter::Addendum { to: Code::of("nothing"), text }),
        ];
        (text(), any(), matter)
            .prop_map(|(by, role, matter)| RecordEdit {
                by,
                role,
                date: Date::new(2031, 5, 10),
                layout: None,
                matter,
            })
            .boxed()
    }

    fn layout_edit(&self) -> BoxedStrategy<LayoutEdit> {
        let button = || self.button();
        prop_oneof![
            8 => (button(), option::weighted(0.8, any())).prop_map(|(b, f)| LayoutEdit::Tap(b, f)),
            2 => (button(), button()).prop_map(|(a, b)| LayoutEdit::Swap(a, b)),
            3 => (button(), option::weighted(0.8, hold())).prop_map(|(b, h)| LayoutEdit::Hold(b, h)),
            2 => self.chord().prop_map(LayoutEdit::AddChord),
            1 => self.chord().prop_map(LayoutEdit::RemoveChord),
            1 => button().prop_map(LayoutEdit::ClearButton),
            2 => any().prop_map(LayoutEdit::AllShiftingOn),
            1 => Just(LayoutEdit::Mirror),
            1 => Just(LayoutEdit::Clear),
            1 => Just(LayoutEdit::BlankUnderRestingHands),
        ]
        .boxed()
    }

    fn bike_edit(&self) -> BoxedStrategy<BikeEdit> {
        let control = || self.control();
        let button = || self.button();
        let controls = prop_oneof![
            (any(), any(), any()).prop_map(|(k, s, z)| BikeEdit::Add(k, s, z)),
            control().prop_map(BikeEdit::Remove),
            (control(), any()).prop_map(|(c, zone)| BikeEdit::MoveTo(c, zone)),
            control().prop_map(BikeEdit::Mirror),
            Just(BikeEdit::MirrorAll),
            (control(), prop::bool::ANY).prop_map(|(c, on)| BikeEdit::Connect(c, on)),
            (control(), any()).prop_map(|(c, link)| BikeEdit::Link(c, link)),
            (control(), any()).prop_map(|(c, port)| BikeEdit::UnusedPort(c, port)),
            (control(), prop::bool::ANY).prop_map(|(c, on)| BikeEdit::BladeFitted(c, on)),
            (control(), option::of(length())).prop_map(|(c, mm)| BikeEdit::BladeReach(c, mm)),
            (control(), option::of(length())).prop_map(|(c, mm)| BikeEdit::BladeGap(c, mm)),
            (
                control(),
                option::of(answer().prop_map(|tried| Latch { tried }))
            )
                .prop_map(|(c, latch)| BikeEdit::Latch(c, latch)),
        ];
        let buttons = prop_oneof![
            (button(), self.freedom()).prop_map(|(b, freedom)| BikeEdit::Freedom(b, freedom)),
            (button(), length()).prop_map(|(b, mm)| BikeEdit::Travel(b, mm)),
            (button(), seen_reach()).prop_map(|(b, seen)| BikeEdit::SeenReach(b, seen)),
        ];
        let bike = prop_oneof![
            text().prop_map(BikeEdit::Name),
            bar().prop_map(BikeEdit::BarMeasures),
            (0..5u8).prop_map(BikeEdit::Rings),
            (0..20u8).prop_map(BikeEdit::Cogs),
            answer().prop_map(BikeEdit::ChainCatcher),
            (any(), any()).prop_map(|(kind, side)| BikeEdit::PutThumbWork(kind, side)),
            any().prop_map(BikeEdit::RemoveThumbWork),
            system().prop_map(BikeEdit::System),
        ];
        prop_oneof![3 => controls, 2 => buttons, 2 => bike].boxed()
    }

    fn brake_edit(&self) -> BoxedStrategy<BrakeEdit> {
        let lever = || self.control();
        let run = (lever(), any(), any(), answer(), wheels()).prop_map(
            |(lever, medium, joint, throw_tested, wheels)| BrakeRun {
                lever,
                medium,
                joint,
                throw_tested,
                wheels,
            },
        );
        let together =
            (any(), lever(), lever(), answer()).prop_map(|(hand, first, second, tried)| {
                PulledTogether {
                    hand,
                    first,
                    second,
                    tried,
                }
            });
        prop_oneof![
            2 => lever().prop_map(BrakeEdit::AllOnLever),
            2 => run.prop_map(BrakeEdit::SetRun),
            1 => lever().prop_map(BrakeEdit::RemoveRun),
            1 => (lever(), answer()).prop_map(|(l, tested)| BrakeEdit::ThrowTested(l, tested)),
            1 => together.prop_map(BrakeEdit::Together),
            1 => (lever(), lever()).prop_map(|(a, b)| BrakeEdit::NotTogether(a, b)),
            1 => (any(), answer()).prop_map(|(wheel, seen)| BrakeEdit::Balanced(wheel, seen)),
        ]
        .boxed()
    }
}

fn stray_control() -> impl Strategy<Value = ControlId> {
    prop_oneof![0..12u16, Just(u16::MAX)].prop_map(ControlId)
}

fn stray_button() -> impl Strategy<Value = ButtonId> {
    (stray_control(), any::<ButtonPart>()).prop_map(|(control, part)| ButtonId { control, part })
}

fn functions() -> impl Strategy<Value = Vec<Function>> {
    subsequence(Function::ALL, 0..=Function::ALL.len())
}

fn wheels() -> impl Strategy<Value = Vec<crate::cockpit::Wheel>> {
    subsequence(crate::cockpit::Wheel::ALL, 0..=3)
}

fn run() -> impl Strategy<Value = HoldRun> {
    prop_oneof![(0..16u8).prop_map(HoldRun::Cogs), Just(HoldRun::ToEnd)]
}

fn hold() -> impl Strategy<Value = Hold> {
    prop_oneof![run().prop_map(Hold::Repeats), any().prop_map(Hold::Does)]
}

/// Lengths in and out of any range, and what is no length at all.
fn length() -> impl Strategy<Value = Mm> {
    prop_oneof![
        8 => (0.0..260.0).prop_map(Mm),
        1 => prop::num::f64::ANY.prop_map(Mm),
    ]
}

fn text() -> impl Strategy<Value = Text> {
    ".{0,12}".prop_map(|text| Text::new(&text))
}

fn bar() -> impl Strategy<Value = Bar> {
    let measure = || prop_oneof![8 => (0.0..1100.0).prop_map(Mm), 1 => length()];
    (any::<BarKind>(), measure(), length(), length()).prop_map(|(kind, width, reach, drop)| Bar {
        kind,
        width,
        reach,
        drop,
    })
}

fn seen_reach() -> impl Strategy<Value = SeenReach> {
    (any(), any(), option::of(any())).prop_map(|(from, contact, ease)| SeenReach {
        from,
        contact,
        ease,
    })
}

fn system() -> impl Strategy<Value = SystemProfile> {
    let plans = subsequence(crate::shift_plan::ShiftPlanKind::ALL, 0..=4);
    let levers = subsequence(BarSide::ALL, 0..=2);
    let some = (
        functions(),
        option::of(run()),
        prop::bool::ANY,
        plans,
        levers,
    );
    some.prop_map(|(functions, holds, chords, plans, levers)| SystemProfile {
        name: Text::new("Some system"),
        origin: ProfileOrigin::FromManual,
        functions: functions.into_iter().collect(),
        holds,
        chords,
        shift_plans: plans.into_iter().collect(),
        required_levers: levers.into_iter().collect(),
        keeps_settings: Answer::NOT_ASKED,
    })
}

fn evidence() -> impl Strategy<Value = Option<Evidence>> {
    let seen = (any(), option::of(any()));
    option::of(seen.prop_map(|(source, worn)| Evidence {
        source,
        date: Date::new(2031, 5, 9),
        worn,
        in_one_tap: false,
    }))
}

fn rider_edit() -> BoxedStrategy<RiderEdit> {
    let side = any::<Side>;
    let device = (answer(), answer::<Acts>()).prop_map(|(releases_in_fall, acts)| Device {
        releases_in_fall,
        acts,
    });
    prop_oneof![
        text().prop_map(RiderEdit::Nickname),
        text().prop_map(RiderEdit::OwnWords),
        (side(), evidence()).prop_map(|(s, e)| RiderEdit::HandDoesAll(s, e)),
        (side(), any(), evidence()).prop_map(|(s, p, e)| RiderEdit::HandDoesNothing(s, p, e)),
        side().prop_map(RiderEdit::ForgetHand),
        (side(), answer()).prop_map(|(s, place)| RiderEdit::Place(s, place)),
        (side(), any(), answer::<Difficulty>()).prop_map(|(s, a, d)| RiderEdit::Ability(s, a, d)),
        (side(), any(), answer::<Difficulty>()).prop_map(|(s, c, d)| RiderEdit::Contact(s, c, d)),
        (side(), answer()).prop_map(|(s, pressing)| RiderEdit::Pressing(s, pressing)),
        (side(), answer()).prop_map(|(s, moves)| RiderEdit::MovesByItself(s, moves)),
        (side(), answer()).prop_map(|(s, later)| RiderEdit::Later(s, later)),
        (side(), any(), answer()).prop_map(|(s, part, hurts)| RiderEdit::Hurts(s, part, hurts)),
        (side(), any(), option::of(length()).prop_map(of_value))
            .prop_map(|(s, p, mm)| RiderEdit::BladeReach(s, p, mm)),
        (side(), option::of(device)).prop_map(|(s, device)| RiderEdit::Device(s, device)),
        (any::<HandPosition>(), answer()).prop_map(|(p, used)| RiderEdit::Position(p, used)),
        answer().prop_map(RiderEdit::MountsFrom),
        answer().prop_map(RiderEdit::HoldsBrakeMounting),
        answer().prop_map(RiderEdit::FrontBrakeHabit),
        option::of(prop::num::u16::ANY).prop_map(|n| RiderEdit::FineRidePresses(of_value(n))),
    ]
    .boxed()
}

fn plan_edit() -> BoxedStrategy<PlanEdit> {
    let layout = || prop_oneof![4 => 1..4u16, 1 => Just(u16::MAX)].prop_map(LayoutId);
    let acceptance =
        (text(), text(), text(), any()).prop_map(|(finding, reason, by, role)| Acceptance {
            finding: finding.as_str().into(),
            reason,
            by,
            role,
            date: None,
            lapsed: false,
        });
    prop_oneof![
        text().prop_map(PlanEdit::Name),
        text().prop_map(PlanEdit::Job),
        Just(PlanEdit::Date(Date::new(2031, 5, 9))),
        any().prop_map(PlanEdit::ShiftPlan),
        any().prop_map(PlanEdit::ShiftPlanAndButtons),
        Just(PlanEdit::NoteAsFound),
        acceptance.prop_map(PlanEdit::Accept),
        text().prop_map(|text| PlanEdit::Withdraw(text.as_str().into())),
        text().prop_map(PlanEdit::AddLayout),
        (layout(), 0..4usize).prop_map(|(id, to)| PlanEdit::MoveLayout(id, to)),
        option::of((layout(), text())).prop_map(|chosen| {
            PlanEdit::ChooseLayout(chosen.map(|(layout, reason)| Chosen {
                layout,
                reason,
                by: Text::new("N."),
                role: Role::Shop,
                date: None,
            }))
        }),
        text().prop_map(PlanEdit::DuplicateLayout),
        text().prop_map(PlanEdit::RenameLayout),
        layout().prop_map(PlanEdit::SelectLayout),
        layout().prop_map(PlanEdit::RemoveLayout),
        Just(PlanEdit::RemoveHandDetails(Date::new(2031, 5, 9))),
    ]
    .boxed()
}

fn habits() -> impl Strategy<Value = RideEdit> {
    (any(), option::of(0..600u16)).prop_map(|(habit, value)| RideEdit::Habit(habit, value))
}

/// A short road that bends and rises at random.
fn road() -> impl Strategy<Value = Road> {
    let place = (-30.0..30.0, any::<Bend>());
    (text(), 100.0..9000.0, prop::collection::vec(place, 2..40)).prop_map(
        |(name, length, places)| {
            let (heights, bends): (Vec<f64>, Vec<Bend>) = places.into_iter().unzip();
            let road = Road::new(name, length, &heights, bends, Vec::new());
            road.expect("its length and heights are a road's")
        },
    )
}

fn hand_figures() -> impl Strategy<Value = HandFigures> {
    let count = || prop_oneof![2 => Just(0u16), 3 => 0..900u16];
    let contacts = prop::collection::btree_map(any::<Contact>(), count(), 0..3);
    let counts = prop::array::uniform10(count());
    (counts, contacts).prop_map(|(n, contacts)| HandFigures {
        presses: contacts.values().sum(),
        presses_per_hour: (n[0].min(n[1]), n[0].max(n[1])),
        worst_ten_minutes: n[2],
        bursts: n[3],
        longest_burst: n[4],
        pulls: n[5],
        clashes: n[6],
        delays: n[7],
        wanted: n[8],
        contacts: contacts.into_iter().collect(),
    })
}

fn ride_edit() -> BoxedStrategy<RideEdit> {
    let fine = || {
        prop::array::uniform3(0..900u16).prop_map(|[a, b, c]| FineHand {
            presses_per_hour: a,
            worst_ten_minutes: b,
            pulled_per_hour: c,
        })
    };
    let known =
        (text(), fine(), fine()).prop_map(|(name, left, right)| KnownRide { name, left, right });
    let remembered = (
        1..4u16,
        text(),
        hand_figures(),
        hand_figures(),
        prop::num::u64::ANY,
    );
    let remembered = remembered.prop_map(|(layout, road, left, right, mark)| Remembered {
        layout: LayoutId(layout),
        road,
        minutes: 90,
        inputs: mark,
        results: mark / 3,
        left,
        right,
    });
    prop_oneof![
        3 => habits(),
        1 => any().prop_map(|kind| RideEdit::Road(RoadChoice::BuiltIn(kind))),
        1 => Just(RideEdit::Road(RoadChoice::Imported)),
        1 => road().prop_map(|road| RideEdit::Import(Arc::new(road))),
        1 => Just(RideEdit::RemoveImported),
        1 => option::of(known).prop_map(RideEdit::Known),
        1 => remembered.prop_map(RideEdit::Remember),
        1 => Just(RideEdit::Forget),
    ]
    .boxed()
}

/// Cogs and rings, most of them such as bikes have.
fn gear_edit() -> BoxedStrategy<GearEdit> {
    let teeth = |most: usize| {
        let sprocket = prop_oneof![16 => 9..60u8, 1 => prop::num::u8::ANY].prop_map(Teeth);
        let sorted = prop::collection::vec(sprocket, 0..most).prop_map(|mut teeth| {
            teeth.sort_unstable();
            teeth.dedup();
            teeth
        });
        prop_oneof![9 => sorted, 1 => prop::collection::vec((0..60u8).prop_map(Teeth), 0..4)]
    };
    let tooth = || option::of((0..60u8).prop_map(Teeth));
    let cogs = || (0..14u8, 0..14u8).prop_map(|(leaves, lands)| CogMove { leaves, lands });
    let millis = || (0..2000u32).prop_map(Millis);
    let wheel = prop_oneof![
        (18..60u16, select(&[622u16, 559, 600][..]))
            .prop_map(|(width, bead_seat)| Rolling::Tyre(Tyre { width, bead_seat })),
        (0.0..3000.0).prop_map(|mm| Rolling::Measured(Mm(mm))),
    ];
    prop_oneof![
        3 => any().prop_map(GearEdit::Preset),
        2 => teeth(5).prop_map(GearEdit::Rings),
        2 => teeth(16).prop_map(GearEdit::Cogs),
        1 => option::of(wheel).prop_map(GearEdit::Wheel),
        1 => option::of(length()).prop_map(GearEdit::Crank),
        1 => option::of(length()).prop_map(GearEdit::Chainstay),
        2 => (tooth(), tooth(), tooth()).prop_map(|(largest_cog, wrap, front_difference)| {
            GearEdit::Derailleurs(Derailleurs { largest_cog, wrap, front_difference })
        }),
        1 => (any(), option::of(0..16u8)).prop_map(|(way, n)| GearEdit::RearShifts(way, n)),
        2 => any().prop_map(GearEdit::LadderGoal),
        4 => (0..3u8, any(), cogs()).prop_map(|(k, way, cogs)| GearEdit::Crossover(k, way, cogs)),
        1 => Just(GearEdit::CrossoversWorkedOut),
        4 => (0..3u8, 0..14u8, prop::bool::ANY)
            .prop_map(|(ring, cog, on)| GearEdit::Forbid(Gear { ring, cog }, on)),
        1 => prop::bool::ANY.prop_map(GearEdit::HoldsCross),
        1 => (millis(), millis(), millis())
            .prop_map(|(trigger, rear, front)| GearEdit::Pace(Pace { trigger, rear, front })),
    ]
    .boxed()
}

/// An entry of a document that no edit would make.
#[derive(Debug, Clone)]
enum Stray {
    Tap(usize, Function),
    Hold(usize, Hold),
    Chord(usize, usize, Function),
    Nowhere(ButtonId, Function),
    Copy(usize, ButtonId),
}

fn stray() -> impl Strategy<Value = Stray> {
    let at = || 0..32usize;
    prop_oneof![
        (at(), any()).prop_map(|(at, function)| Stray::Tap(at, function)),
        (at(), hold()).prop_map(|(at, hold)| Stray::Hold(at, hold)),
        (at(), at(), any()).prop_map(|(a, b, function)| Stray::Chord(a, b, function)),
        (stray_button(), any()).prop_map(|(id, function)| Stray::Nowhere(id, function)),
        (at(), stray_button()).prop_map(|(at, original)| Stray::Copy(at, original)),
    ]
}

impl Stray {
    fn put_into(self, plan: &mut Plan) {
        let buttons: Vec<ButtonId> = plan.bike.buttons().iter().map(|(id, ..)| *id).collect();
        let Some(of) = (!buttons.is_empty()).then_some(|at: usize| buttons[at % buttons.len()])
        else {
            return;
        };
        match self {
            Stray::Tap(at, function) => {
                plan.layout_mut().taps.insert(of(at), function);
            }
            Stray::Hold(at, hold) => {
                plan.layout_mut().holds.insert(of(at), hold);
            }
            Stray::Chord(a, b, function) => {
                let (first, second) = (of(a), of(b));
                let chord = Chord {
                    first,
                    second,
                    function,
                };
                let chords = &mut plan.layout_mut().chords;
                chords.retain(|c| !c.same_buttons(&chord));
                chords.push(chord);
            }
            Stray::Nowhere(id, function) => {
                plan.layout_mut().taps.insert(id, function);
            }
            Stray::Copy(at, original) => {
                let id = of(at);
                let control = plan.bike.control_mut(id.control);
                let button = control.and_then(|c| c.buttons.iter_mut().find(|b| b.part == id.part));
                if let Some(button) = button {
                    button.freedom = Freedom::Copies(original);
                }
            }
        }
    }
}
