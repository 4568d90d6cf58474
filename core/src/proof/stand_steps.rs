//! The steps on the stand, brakes first (*common practice*).

use super::{CheckStep, Measure, StepKind};
use crate::cockpit::{Bike, ButtonId, Control};
use crate::finding::Place;
use crate::function::Function;
use crate::gears::{Crossover, Direction, Gears, Shifting};
use crate::layout::Hold;
use crate::sheet::stand_check::three_presses;
use crate::shift_plan::ShiftPlanKind;
use crate::situation::Situation;
use crate::text::capital;

pub(super) fn of(situation: &Situation<'_>) -> Vec<CheckStep> {
    let mut steps = brakes(&situation.plan.bike);
    steps.push(
        CheckStep::new(
            "lock",
            StepKind::FullLock,
            "Turn the bar to full lock, left and right",
        )
        .shows("no wire, cable or hose pulls tight; nothing shifts or brakes")
        .times(2),
    );
    steps.extend(buttons(situation));
    steps.extend(holds(situation));
    steps.extend(chords(situation));
    steps.extend(chain(situation));
    steps.extend(power(situation));
    steps
}

fn brakes(bike: &Bike) -> Vec<CheckStep> {
    let mut levers: Vec<&Control> = bike.controls.iter().filter(|c| c.blade.is_some()).collect();
    levers.sort_unstable_by_key(|control| (control.side, control.id));
    let mut steps: Vec<CheckStep> = levers
        .iter()
        .flat_map(|lever| of_lever(bike, lever))
        .collect();
    steps.extend(bike.brakes.wheels.iter().filter_map(|brake| {
        let other = brake.wheel.beside().filter(|other| brake.wheel < *other)?;
        let wheels = [brake.wheel, other].map(Place::Wheel);
        Some(
            CheckStep::new(
                format!("balance:{}", Place::Wheel(other).key()),
                StepKind::Wheel,
                format!("Brake the {} and the {other}, then push", brake.wheel),
            )
            .shows("both hold alike; it does not pull to one side")
            .at(wheels),
        )
    }));
    steps
}

fn of_lever(bike: &Bike, control: &Control) -> Vec<CheckStep> {
    let (id, place) = (control.id, control.place());
    let look = |expect: &str| {
        let act = format!("Look at the {place}");
        vec![
            CheckStep::new(format!("look:{id}"), StepKind::Brake, act)
                .shows(expect)
                .at([Place::Control(id)]),
        ]
    };
    if !control.has_blade() {
        return look("no blade, gap covered");
    }
    let Some(run) = bike.brakes.run(id).filter(|run| !run.wheels.is_empty()) else {
        return look("no blade: one that pulls nothing is taken off");
    };
    let step = |name: &str, kind, act: String| {
        CheckStep::new(format!("{name}:{id}"), kind, act).at([Place::Control(id)])
    };
    let mut steps = vec![
        step(
            "squeeze",
            StepKind::Brake,
            format!("Squeeze the {place} hard for ten seconds"),
        )
        .shows("firm, and it does not creep towards the bar")
        .lasts(10),
        step(
            "gap",
            StepKind::Brake,
            format!("Keep the {place} pulled and measure from blade to bar"),
        )
        .shows(format!("{} or more", Measure::GAP.least))
        .measures(Measure::GAP),
    ];
    steps.extend(run.wheels.iter().map(|wheel| {
        let key = format!("hold:{id}:{}", Place::Wheel(*wheel).key());
        let act = format!("Pull the {place} and push: {wheel}");
        CheckStep::new(key, StepKind::Wheel, act)
            .shows("it holds; let go, and it turns freely")
            .at([Place::Control(id), Place::Wheel(*wheel)])
    }));
    if control.blade.is_some_and(|blade| blade.latch.is_some()) {
        steps.push(
            step(
                "latch",
                StepKind::Brake,
                format!("Set and release the parking latch of the {place}"),
            )
            .shows("set, it holds the machine on a slope; released, it frees it"),
        );
    }
    steps
}

fn buttons(situation: &Situation<'_>) -> Vec<CheckStep> {
    let bike = &situation.plan.bike;
    let all = bike.buttons().into_iter();
    all.map(|(id, control, _)| {
        let function = situation.layout.tap(bike, id);
        let kind = if function.is_some() {
            StepKind::Button
        } else {
            StepKind::Blank
        };
        let place = control.place_of(id.part);
        CheckStep::new(
            format!("press:{id}"),
            kind,
            format!("Cranks turning: press the {place}"),
        )
        .shows(three_presses(function))
        .expects_nothing(function.is_none())
        .times(3)
        .at([Place::Button(id)])
    })
    .collect()
}

fn holds(situation: &Situation<'_>) -> Vec<CheckStep> {
    let (bike, layout) = (&situation.plan.bike, situation.layout);
    let mut steps = Vec::new();
    for (id, control, _) in bike.buttons() {
        let Some(hold) = layout.holds.get(&id).filter(|_| control.connected) else {
            continue;
        };
        let expect = match hold {
            Hold::Repeats(_) => format!("{hold}, and stops when let go"),
            Hold::Does(function) => format!("{function}, once"),
        };
        let act = format!(
            "Keep the {} pressed for three seconds",
            control.place_of(id.part)
        );
        steps.push(
            CheckStep::new(format!("keep:{id}"), StepKind::Hold, act)
                .shows(expect)
                .lasts(3)
                .at([Place::Button(id)]),
        );
    }
    let is_other = |id: &ButtonId| !layout.holds.contains_key(id);
    let all = bike.buttons().into_iter().map(|(id, ..)| id);
    let rests_on = all.filter(is_other).map(Place::Button);
    let others = if steps.is_empty() {
        "every button"
    } else {
        "every other button"
    };
    steps.push(
        CheckStep::new(
            "keep-others",
            StepKind::Hold,
            format!("Keep {others} pressed for three seconds"),
        )
        .shows("no more than one press does")
        .lasts(3)
        .rests_on(rests_on),
    );
    steps
}

fn chords(situation: &Situation<'_>) -> Vec<CheckStep> {
    let bike = &situation.plan.bike;
    let chords = situation.layout.chords.iter();
    chords
        .map(|chord| {
            let function = chord.is_connected(bike).then_some(chord.function);
            let (first, second) = (chord.first.min(chord.second), chord.first.max(chord.second));
            let act = format!(
                "Press the {} and the {} together",
                bike.place_of(first),
                bike.place_of(second)
            );
            CheckStep::new(format!("chord:{first}+{second}"), StepKind::Chord, act)
                .shows(three_presses(function))
                .times(3)
                .at([Place::Button(first), Place::Button(second)])
        })
        .collect()
}

/// What the chain shows: at the ends of the cassette, and from ring to ring.
pub(crate) fn chain(situation: &Situation<'_>) -> Vec<CheckStep> {
    let mut steps = ends(situation);
    steps.extend(crossovers(situation));
    steps
}

fn ends(situation: &Situation<'_>) -> Vec<CheckStep> {
    let end = |functions: [Function; 2], cog: &str| {
        let places = pressing(situation, &functions);
        (!places.is_empty()).then(|| {
            CheckStep::new(
                format!("end:{cog}"),
                StepKind::End,
                format!("{} cog: press once more", capital(cog)),
            )
            .shows("the chain stays on that cog and runs true")
            .at(places)
        })
    };
    [
        end([Function::RearEasier, Function::RungDown], "largest"),
        end([Function::RearHarder, Function::RungUp], "smallest"),
    ]
    .into_iter()
    .flatten()
    .collect()
}

fn crossovers(situation: &Situation<'_>) -> Vec<CheckStep> {
    let plan = situation.plan;
    let (up, down): (&[Function], &[Function]) = match plan.shift_plan {
        ShiftPlanKind::SingleRing => return Vec::new(),
        ShiftPlanKind::Ladder => (
            &[Function::RungUp, Function::FrontToggle],
            &[Function::RungDown, Function::FrontToggle],
        ),
        _ => (
            &[Function::FrontLarger, Function::FrontToggle],
            &[Function::FrontSmaller, Function::FrontToggle],
        ),
    };
    let expect = match plan.shift_plan {
        ShiftPlanKind::Ladder => "front and rear shift together, and the chain stays on",
        ShiftPlanKind::Paired => "the set number of rear shifts follows, and the chain stays on",
        _ => "the chain changes rings and stays on",
    };
    if let Some((crossovers, gears)) = ladder_of(situation) {
        let steps = crossovers
            .iter()
            .map(|crossover| walked(situation, crossover, &gears));
        return steps.collect();
    }
    let step = |key: &str, functions, ring: &str| {
        CheckStep::new(
            key,
            StepKind::Crossover,
            format!("Shift over to the {ring} ring"),
        )
        .shows(expect)
        .times(3)
        .at(pressing(situation, functions))
    };
    vec![
        step("cross:up", up, "larger"),
        step("cross:down", down, "smaller"),
    ]
}

/// The crossovers of a ladder that works, with its gears.
fn ladder_of(situation: &Situation<'_>) -> Option<(Vec<Crossover>, Gears)> {
    let shifting = Shifting::of(situation.plan).ok()?;
    let crossovers = shifting.ladder()?.crossovers();
    (!crossovers.is_empty()).then_some((crossovers, shifting.gears))
}

fn walked(situation: &Situation<'_>, crossover: &Crossover, gears: &Gears) -> CheckStep {
    let (way, function) = match crossover.way {
        Direction::Up => ("up", Function::RungUp),
        Direction::Down => ("down", Function::RungDown),
    };
    let (from, to) = (gears.words(crossover.from), gears.words(crossover.to));
    CheckStep::new(
        format!("cross:{way}:{}", crossover.pair()),
        StepKind::Crossover,
        format!("Walk {way} the ladder over the crossover: {from} to {to}"),
    )
    .shows("front and rear shift together, and the chain stays on")
    .times(3)
    .at(pressing(situation, &[function]))
}

fn power(situation: &Situation<'_>) -> Vec<CheckStep> {
    let bike = &situation.plan.bike;
    let buttons = bike.buttons().into_iter();
    let mut steps = vec![
        CheckStep::new("power", StepKind::Power, "Switch the system off and on")
            .shows("it starts, and nothing shifts by itself")
            .rests_on(buttons.map(|(id, ..)| Place::Button(id))),
    ];
    steps.extend(bike.buttons().into_iter().map(|(id, control, _)| {
        let function = situation.layout.tap(bike, id);
        let expect = match function {
            Some(function) => format!("{function}, as before"),
            None => "nothing happens, as before".into(),
        };
        let act = format!("Again: press the {} once", control.place_of(id.part));
        CheckStep::new(format!("again:{id}"), StepKind::Power, act)
            .shows(expect)
            .expects_nothing(function.is_none())
            .at([Place::Button(id)])
    }));
    steps
        .push(CheckStep::new("charge", StepKind::Power, "Look at the charge level").shows(CHARGED));
    steps
}

/// What the charge level is to be (*common practice*).
pub(crate) const CHARGED: &str = "full; rider or helper reaches the charging place";

fn pressing(situation: &Situation<'_>, functions: &[Function]) -> Vec<Place> {
    let bike = &situation.plan.bike;
    let buttons = bike.buttons().into_iter().map(|(id, ..)| id);
    buttons
        .filter(|id| {
            situation
                .layout
                .tap(bike, *id)
                .is_some_and(|f| functions.contains(&f))
        })
        .map(Place::Button)
        .collect()
}
