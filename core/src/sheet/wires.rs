//! Each control's wire and ports.

use super::left_to_right;
use crate::cockpit::{Bike, Control, Link, UnusedPort};
use crate::ordered;

/// A control's wire.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WireLine {
    /// The balloons of the buttons it serves.
    pub numbers: Vec<usize>,
    /// The control.
    pub control: String,
    /// How it is joined to the rest.
    pub link: Link,
    /// Whether it is plugged in or paired.
    pub connected: bool,
    /// What is to be done with its unused port; empty if it has none.
    pub unused_port: &'static str,
    /// Whether a wire is to be measured: at full lock, plus 30 mm.
    pub measure: bool,
}

impl WireLine {
    /// What to do: "plug in", "pair", "leave unplugged".
    pub const fn act(&self) -> &'static str {
        match (self.connected, self.link) {
            (false, _) => "leave unplugged",
            (true, Link::Wired) => "plug in",
            (true, Link::WirelessToWired | Link::Wireless) => "pair",
        }
    }
}

/// The controls with buttons, left to right.
pub(super) fn lines(bike: &Bike) -> Vec<WireLine> {
    left_to_right(bike)
        .filter(|c| !c.buttons.is_empty())
        .map(|control| WireLine {
            numbers: numbers(bike, control),
            control: control.place(),
            link: control.link,
            connected: control.connected,
            unused_port: port(control.unused_port),
            measure: control.connected && control.link == Link::Wired,
        })
        .collect()
}

fn numbers(bike: &Bike, control: &Control) -> Vec<usize> {
    let mut numbers: Vec<usize> = control
        .buttons
        .iter()
        .filter_map(|button| bike.balloon(control.button_id(button.part)))
        .collect();
    ordered::sort(&mut numbers);
    numbers
}

const fn port(port: UnusedPort) -> &'static str {
    match port {
        UnusedPort::None => "",
        UnusedPort::Blanked => "unused port blanked",
        UnusedPort::Open => "blank the unused port",
    }
}
