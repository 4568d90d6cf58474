//! What the work needs: derived from the plan, named only by what it is.

use std::fmt;

use super::listed;
use crate::cockpit::{
    BarKind, Bike, BrakeRun, Control, Joint, Link, Medium, UnusedPort, Wheel, Zone,
};
use crate::plan::Plan;
use crate::rider::{Rider, Side};

/// A line of the parts list. Tick what is there, order the rest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartLine {
    /// How many.
    pub quantity: Quantity,
    /// What.
    pub part: String,
    /// Where or why.
    pub purpose: String,
}

/// How many of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Quantity {
    /// This many.
    Count(usize),
    /// As measured on the bike.
    AsMeasured,
    /// One, if the rider and the shop want it.
    Suggested,
}

impl fmt::Display for Quantity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Quantity::Count(count) => count.fmt(f),
            Quantity::AsMeasured => f.write_str("measure"),
            Quantity::Suggested => f.write_str("1, suggested"),
        }
    }
}

/// The parts list (*common practice*).
pub(super) fn lines(plan: &Plan) -> Vec<PartLine> {
    let (bike, rider) = (&plan.bike, &plan.rider);
    let mut lines = Vec::new();
    for run in &bike.brakes.runs {
        lines.extend(joint(bike, run));
    }
    lines.extend(labels(bike, rider));
    lines.extend(blade_blanks(bike));
    lines.extend(port_blanks(bike));
    lines.extend(wires(plan));
    lines.extend(cells(bike));
    lines.extend(catcher(bike));
    lines.push(bar_end_plugs(bike));
    lines
}

fn count(count: usize, part: impl Into<String>, purpose: impl Into<String>) -> Option<PartLine> {
    (count > 0).then(|| PartLine {
        quantity: Quantity::Count(count),
        part: part.into(),
        purpose: purpose.into(),
    })
}

/// What joins one lever to several wheel brakes.
fn joint(bike: &Bike, run: &BrakeRun) -> Vec<PartLine> {
    let lever = bike
        .control(run.lever)
        .map_or_else(String::new, Control::place);
    let wheels = listed(&run.wheels);
    let joints = run.joints();
    if joints.is_empty() {
        return Vec::new();
    }
    let parts = [
        (Joint::DualPull, "dual-pull brake lever"),
        (Joint::CableDoubler, "cable doubler"),
        (Joint::HoseSplitter, "hose splitter"),
    ];
    let line = match run.medium {
        Medium::Cable => "brake cable and housing",
        Medium::Hose => "brake hose, with new fittings and the fluid its maker names",
    };
    let parts = parts.into_iter().filter_map(|(joint, part)| {
        let number = joints.iter().filter(|j| **j == joint).count();
        count(number, part, format!("{lever} to {wheels}"))
    });
    let line = PartLine {
        quantity: Quantity::AsMeasured,
        part: line.into(),
        purpose: format!("to {wheels}, at full lock"),
    };
    parts.chain([line]).collect()
}

/// A label for each lever that does not brake what its side is used for: it
/// brakes both ends of the bike, or the rider expects the other side.
fn labels(bike: &Bike, rider: &Rider) -> Vec<PartLine> {
    let habit = rider.front_brake_habit.value;
    bike.brakes
        .runs
        .iter()
        .filter_map(|run| {
            let lever = bike.control(run.lever).filter(|c| c.has_blade())?;
            let changed = brakes_both_ends(run) || against_habit(run, lever.side.hand(), habit);
            let purpose = format!("{}: brakes the {}", lever.place(), listed(&run.wheels));
            changed.then(|| count(1, "label on the lever", purpose))?
        })
        .collect()
}

fn brakes_both_ends(run: &BrakeRun) -> bool {
    let front = |wheel: &Wheel| wheel.is_front();
    run.wheels.iter().any(front) && !run.wheels.iter().all(front)
}

fn against_habit(run: &BrakeRun, side: Option<Side>, habit: Option<Side>) -> bool {
    let (Some(side), Some(habit)) = (side, habit) else {
        return false;
    };
    run.wheels.iter().any(|wheel| wheel.is_front()) != (side == habit)
}

fn blade_blanks(bike: &Bike) -> Option<PartLine> {
    let removed: Vec<String> = bike
        .controls
        .iter()
        .filter(|c| c.blade.is_some_and(|blade| !blade.fitted))
        .map(Control::place)
        .collect();
    count(
        removed.len(),
        "cover where a blade was removed",
        listed(&removed),
    )
}

/// A port without a wire, and the port that an unplugged control leaves, take
/// a blank.
fn port_blanks(bike: &Bike) -> Vec<PartLine> {
    let open: Vec<String> = bike
        .controls
        .iter()
        .filter(|c| c.connected && c.unused_port == UnusedPort::Open)
        .map(Control::place)
        .collect();
    let unplugged: Vec<String> = bike
        .controls
        .iter()
        .filter(|c| !c.connected && c.link == Link::Wired)
        .map(Control::place)
        .collect();
    let open = count(
        open.len(),
        "port blank",
        format!("open port: {}", listed(&open)),
    );
    let left = count(
        unplugged.len(),
        "port blank",
        format!("where it was plugged in: {}", listed(&unplugged)),
    );
    open.into_iter().chain(left).collect()
}

/// Wires for the controls that the bike did not come in with. While nobody
/// noted what came in, all of them.
fn wires(plan: &Plan) -> Option<PartLine> {
    let came_in = |c: &Control| plan.as_found.keys().any(|button| button.control == c.id);
    let wired = |c: &&Control| c.connected && c.link == Link::Wired && !c.buttons.is_empty();
    let controls = plan.bike.controls.iter().filter(wired);
    let wires = controls.filter(|c| !came_in(c)).count();
    let purpose = if plan.as_found.is_empty() {
        "as far as the bike has none yet; lengths: see “Wires”"
    } else {
        "controls added; lengths: see “Wires”"
    };
    count(wires, "control wire", purpose)
}

fn cells(bike: &Bike) -> Option<PartLine> {
    let wireless = |c: &&Control| c.connected && c.link != Link::Wired;
    let cells = bike.controls.iter().filter(wireless).count();
    count(cells, "coin cell", "wireless controls; new before the ride")
}

fn catcher(bike: &Bike) -> Option<PartLine> {
    (bike.has_front_derailleur() && !bike.chain_catcher.is_yes()).then(|| PartLine {
        quantity: Quantity::Suggested,
        part: "chain catcher".into(),
        purpose: "a dropped chain takes two hands".into(),
    })
}

/// Every open end of bar and extensions. A pod in an extension tip closes it.
fn bar_end_plugs(bike: &Bike) -> PartLine {
    let tips = bike.controls.iter().filter(|c| c.zone == Zone::Tip).count();
    let ends = match bike.bar.kind {
        BarKind::Aero => 2 + 2_usize.saturating_sub(tips),
        BarKind::Drop | BarKind::FlaredDrop | BarKind::Flat | BarKind::SideGrip => 2,
    };
    PartLine {
        quantity: Quantity::Count(ends),
        part: "bar-end plug".into(),
        purpose: "every open end, also where a control was taken off".into(),
    }
}
