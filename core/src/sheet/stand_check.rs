//! The check on the stand: brakes first, then every button.

use super::{Tick, TickList, levers};
use crate::cockpit::{Bike, Blade, ButtonId, Control, Wheel};
use crate::function::Function;
use crate::layout::{Hold, Layout};
use crate::proof::stand_steps;
use crate::situation::Situation;

/// The lists in the order in which they are worked through (*common
/// practice*).
pub(super) fn lists(situation: &Situation<'_>) -> Vec<TickList> {
    let (bike, layout) = (&situation.plan.bike, situation.layout);
    let all = [
        brakes(bike),
        full_lock(),
        buttons(bike, layout),
        holds(bike, layout),
        chords(bike, layout),
        chain(situation),
        power(),
    ];
    all.into_iter()
        .filter(|list| !list.ticks.is_empty())
        .collect()
}

fn brakes(bike: &Bike) -> TickList {
    let mut ticks = Vec::new();
    for control in levers(bike) {
        ticks.extend(lever(bike, control));
    }
    ticks.extend(bike.brakes.wheels.iter().filter_map(|b| balance(b.wheel)));
    TickList {
        title: "Brakes first",
        note: "Nothing else is checked until every line here is ticked.",
        ticks,
    }
}

fn lever(bike: &Bike, control: &Control) -> Vec<Tick> {
    let place = control.place();
    if !control.has_blade() {
        return vec![Tick::of(
            format!("Look at the {place}"),
            "no blade, gap covered",
        )];
    }
    let Some(run) = bike.brakes.run(control.id) else {
        return vec![Tick::of(
            format!("Look at the {place}"),
            "its blade pulls nothing: take it off",
        )];
    };
    let mut ticks = vec![
        Tick::of(
            format!("Squeeze the {place} hard for ten seconds"),
            format!(
                "firm, and the blade stays {} or more off the bar",
                Blade::LEAST_GAP
            ),
        )
        .with("Gap, mm"),
    ];
    ticks.extend(run.wheels.iter().map(|wheel| {
        Tick::of(
            format!("Keep it pulled and push: {wheel}"),
            "it holds; let go and it turns freely",
        )
    }));
    if control.blade.is_some_and(|blade| blade.latch.is_some()) {
        ticks.push(Tick::of(
            format!("Set and release the parking latch of the {place}"),
            "the rider does it alone; set, it holds the machine on a slope",
        ));
    }
    ticks
}

fn balance(wheel: Wheel) -> Option<Tick> {
    let other = wheel.beside().filter(|other| wheel < *other)?;
    Some(Tick::of(
        format!("Brake the {wheel} and the {other}"),
        "both hold alike; it does not pull to one side",
    ))
}

fn full_lock() -> TickList {
    TickList {
        title: "Full lock",
        note: "",
        ticks: vec![
            Tick::of(
                "Turn the bar to full lock, left and right",
                "nothing pulls tight; nothing shifts or brakes",
            )
            .times(2),
        ],
    }
}

fn buttons(bike: &Bike, layout: &Layout) -> TickList {
    let ticks = bike
        .buttons()
        .into_iter()
        .enumerate()
        .map(|(at, (id, control, _))| {
            Tick::of(
                control.place_of(id.part),
                three_presses(layout.tap(bike, id)),
            )
            .about(vec![at + 1])
            .times(3)
        })
        .collect();
    TickList {
        title: "Three presses on each button",
        note: "Blank ones, too. Turn the cranks; start in the middle of the cassette. Some front derailleurs refuse the outermost gears: there, nothing may be right. Look in the manual.",
        ticks,
    }
}

/// What three short presses show.
pub(crate) const fn three_presses(function: Option<Function>) -> &'static str {
    match function {
        None => "nothing happens",
        Some(Function::RearHarder) => "one cog smaller each time",
        Some(Function::RearEasier) => "one cog larger each time",
        Some(Function::FrontLarger) => "to the larger ring, then no more",
        Some(Function::FrontSmaller) => "to the smaller ring, then no more",
        Some(Function::FrontToggle) => "to the other ring each time",
        Some(Function::RungUp) => "one rung harder each time",
        Some(Function::RungDown) => "one rung easier each time",
        Some(Function::NextScreen) => "the next screen each time",
        Some(Function::Lights) => "lights change each time",
    }
}

/// Every button that was given a hold, then all others at once: a hold that
/// nobody asked for runs on unseen.
fn holds(bike: &Bike, layout: &Layout) -> TickList {
    let mut ticks: Vec<Tick> = bike
        .buttons()
        .into_iter()
        .filter(|(_, control, _)| control.connected)
        .filter_map(|(id, control, _)| {
            let expect = match layout.holds.get(&id)? {
                hold @ Hold::Repeats(_) => format!("{hold}, and stops when let go"),
                Hold::Does(function) => format!("{function}, once"),
            };
            let numbers = bike.balloon(id).into_iter().collect();
            Some(Tick::of(control.place_of(id.part), expect).about(numbers))
        })
        .collect();
    let all = if ticks.is_empty() {
        "Every button"
    } else {
        "Every other button"
    };
    ticks.push(Tick::of(all, "no more than one press does"));
    TickList {
        title: "Hold for three seconds",
        note: "",
        ticks,
    }
}

fn chords(bike: &Bike, layout: &Layout) -> TickList {
    let plugged = |id: ButtonId| bike.control(id.control).is_some_and(|c| c.connected);
    let ticks = layout
        .chords
        .iter()
        .map(|chord| {
            let live = plugged(chord.first) && plugged(chord.second);
            let function = live.then_some(chord.function);
            Tick::of(
                format!(
                    "{} and {}",
                    bike.place_of(chord.first),
                    bike.place_of(chord.second)
                ),
                three_presses(function),
            )
            .about(
                [chord.first, chord.second]
                    .into_iter()
                    .filter_map(|id| bike.balloon(id))
                    .collect(),
            )
            .times(3)
        })
        .collect();
    TickList {
        title: "Two buttons together",
        note: "",
        ticks,
    }
}

/// The same steps as the check on the screen has.
fn chain(situation: &Situation<'_>) -> TickList {
    let bike = &situation.plan.bike;
    let ticks = stand_steps::chain(situation).into_iter().map(|step| {
        let numbers = step.places.iter().filter_map(|place| place.balloon(bike));
        Tick::of(step.act, step.expect)
            .about(numbers.collect())
            .times(step.times)
    });
    TickList {
        title: "Chain and rings",
        note: "",
        ticks: ticks.collect(),
    }
}

fn power() -> TickList {
    TickList {
        title: "Off and on",
        note: "",
        ticks: vec![
            Tick::of(
                "Switch off and on, then press each button once",
                "everything as before",
            ),
            Tick::of("Charge level", stand_steps::CHARGED),
        ],
    }
}
