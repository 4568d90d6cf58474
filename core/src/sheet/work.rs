//! The order of work.

use super::{Tick, TickList, listed};
use crate::cockpit::{Bike, Control, Link, Medium, UnusedPort};
use crate::plan::Plan;

/// The work in order (*common practice*): what could be lost is saved first,
/// what stops the bike comes before what shifts it.
pub(super) fn list(plan: &Plan) -> TickList {
    let bike = &plan.bike;
    let mut ticks = vec![
        save_old(plan),
        Tick::plain(
            "Adjust the shifting, then update the system. An update may bring old functions back.",
        ),
    ];
    ticks.extend(brakes(bike));
    ticks.extend(blades(bike));
    ticks.push(Tick::plain(
        "Mount the controls where the drawing shows them. The rider tries the reach before the tape goes on.",
    ));
    ticks.push(
        Tick::plain("Torque: what each maker’s manual says, nothing from memory.")
            .with("Values used"),
    );
    ticks.push(wire(bike));
    ticks.extend(unplug(bike));
    ticks.push(pair(bike));
    ticks.push(Tick::plain(
        "Program in the order of “Settings”. Leave nothing in its adjusting state.",
    ));
    ticks.push(
        Tick::plain("Save the new settings and read them back: each is as under “Now”.")
            .with("Saved as"),
    );
    ticks.push(Tick::plain("Do the stand check."));
    TickList {
        title: "Order of work",
        note: "",
        ticks,
    }
}

fn save_old(plan: &Plan) -> Tick {
    let act = if plan.as_found.is_empty() {
        "Save the old settings. Write what each button did under “Was”."
    } else {
        "Save the old settings. They are as under “Was”, or corrected there."
    };
    Tick::plain(act).with("Saved as")
}

fn brakes(bike: &Bike) -> Vec<Tick> {
    bike.brakes
        .runs
        .iter()
        .filter_map(|run| {
            let lever = bike.control(run.lever).filter(|c| c.has_blade())?;
            let joint = run
                .joints_in_words()
                .map_or_else(String::new, |joints| format!(" through the {joints}"));
            // A system that was opened has air in it (*common practice*).
            let bleed = match (run.medium, joint.is_empty()) {
                (Medium::Hose, false) => {
                    " Bleed it as its maker’s manual says: no leak while the lever is kept pulled."
                }
                _ => "",
            };
            let act = format!(
                "Brake: {} to {} by {}{joint}.{bleed} Test before going on.",
                lever.place(),
                listed(&run.wheels),
                run.medium
            );
            Some(Tick::plain(act))
        })
        .collect()
}

/// Blades that are off stay off; blades that pull nothing look like brakes.
fn blades(bike: &Bike) -> Vec<Tick> {
    let has_hoses = bike
        .brakes
        .runs
        .iter()
        .any(|run| run.medium == Medium::Hose);
    let port = match has_hoses {
        true => " Where a hose was taken off, close its port as the maker’s manual says.",
        false => "",
    };
    bike.controls
        .iter()
        .filter_map(|control| {
            let blade = control.blade?;
            let place = control.place();
            match (blade.fitted, bike.brakes.run(control.id)) {
                (false, _) => Some(format!(
                    "{}: no blade. Cover the gap.{port}",
                    super::capital(&place)
                )),
                (true, None) => Some(format!(
                    "{}: its blade pulls nothing. Take it off.",
                    super::capital(&place)
                )),
                (true, Some(_)) => None,
            }
        })
        .map(Tick::plain)
        .collect()
}

fn wire(bike: &Bike) -> Tick {
    let open = bike
        .controls
        .iter()
        .any(|c| c.unused_port == UnusedPort::Open);
    Tick::plain(if open {
        "Wire as under “Wires”. Blank every open port. Turn the bar to full lock both ways."
    } else {
        "Wire as under “Wires”. Turn the bar to full lock both ways."
    })
}

fn unplug(bike: &Bike) -> Option<Tick> {
    let unplugged: Vec<&Control> = bike.controls.iter().filter(|c| !c.connected).collect();
    let numbers = unplugged
        .iter()
        .flat_map(|c| c.buttons.iter().map(|b| c.button_id(b.part)))
        .filter_map(|id| bike.balloon(id))
        .collect();
    let places: Vec<String> = unplugged.iter().map(|c| c.place()).collect();
    (!places.is_empty()).then(|| {
        Tick::plain(format!(
            "Unplug: {}. Tie back or blank what is left.",
            listed(&places)
        ))
        .about(numbers)
    })
}

fn pair(bike: &Bike) -> Tick {
    let wireless: Vec<String> = bike
        .controls
        .iter()
        .filter(|c| c.connected && c.link != Link::Wired)
        .map(Control::place)
        .collect();
    Tick::plain(if wireless.is_empty() {
        "Pair: every control here is wired. Pair only the maker’s own tool.".into()
    } else {
        format!("Pair: {}. New coin cells.", listed(&wireless))
    })
}
