//! Ways of calling up functions.

use super::{Cell, Via, Way, WhyNot, easiest, harder, press_step};
use crate::cockpit::{BarSide, Button, ButtonId, Control, Ease, HandPosition, Press};
use crate::function::Function;
use crate::layout::{Chord, Hold, Layout};
use crate::plan::Plan;
use crate::reach;
use crate::rider::{Ability, Contact, Day, Hand, Side};
use crate::vocabulary::Vocabulary;

/// Everything on the cockpit that calls up a function.
pub(super) struct Ways<'a> {
    plan: &'a Plan,
    ways: Vec<(Function, Via)>,
}

/// How a button is best pressed from a position on a day, whatever it does.
pub fn press_of(plan: &Plan, button: ButtonId, position: HandPosition, day: Day) -> Cell {
    Ways::none(plan).cell_of(&[Via::Tap(button)], position, day)
}

impl<'a> Ways<'a> {
    /// Nothing calls up anything: for asking about presses alone.
    pub(super) fn none(plan: &'a Plan) -> Self {
        let ways = Vec::new();
        Ways { plan, ways }
    }

    pub(super) fn of(plan: &'a Plan, layout: &Layout) -> Self {
        let bike = &plan.bike;
        let mut ways = Vec::new();
        for control in bike.controls.iter().filter(|c| c.connected) {
            for button in &control.buttons {
                let id = control.button_id(button.part);
                ways.extend(layout.tap(bike, id).map(|f| (f, Via::Tap(id))));
                if let Some(Hold::Does(function)) = layout.holds.get(&id) {
                    ways.push((*function, Via::Hold(id)));
                }
            }
        }
        for chord in &layout.chords {
            let connected = |id: ButtonId| bike.control(id.control).is_some_and(|c| c.connected);
            if connected(chord.first) && connected(chord.second) {
                ways.push((chord.function, Via::Chord(*chord)));
            }
        }
        Ways { plan, ways }
    }

    pub(super) fn has(&self, function: Function) -> bool {
        self.ways.iter().any(|(given, _)| *given == function)
    }

    pub(super) fn cell(&self, function: Function, position: HandPosition, day: Day) -> Cell {
        let vias = self.vias(function);
        if vias.is_empty() {
            return Cell::No(WhyNot::NoButton);
        }
        self.cell_of(&vias, position, day)
    }

    /// Everything that calls up a function.
    pub(super) fn vias(&self, function: Function) -> Vec<Via> {
        self.ways
            .iter()
            .filter(|(given, _)| given.serves(function))
            .map(|(_, via)| *via)
            .collect()
    }

    /// The best of several presses.
    pub(super) fn cell_of(&self, vias: &[Via], position: HandPosition, day: Day) -> Cell {
        let all: Vec<Way> = vias
            .iter()
            .flat_map(|via| self.ways_of(*via, position, day))
            .collect();
        easiest(&all).unwrap_or_else(|| Cell::No(self.why_not(vias, &all)))
    }

    fn why_not(&self, vias: &[Via], all: &[Way]) -> WhyNot {
        if let Some(way) = all.iter().find(|w| w.keeps_hold()).or(all.first()) {
            return WhyNot::HandCannot(way.hand);
        }
        let idle = vias.iter().flat_map(Via::buttons).find_map(|id| {
            let side = self.plan.bike.control(id.control)?.side.hand()?;
            (!self.plan.rider.hands.get(side).works()).then_some(side)
        });
        idle.map_or(WhyNot::OutOfReach, WhyNot::UnderIdleHand)
    }

    /// Every way of one press from a position.
    pub(super) fn ways_of(&self, via: Via, position: HandPosition, day: Day) -> Vec<Way> {
        match via {
            Via::Tap(id) => self.presses(via, id, position, day),
            Via::Hold(id) => {
                let mut ways = self.presses(via, id, position, day);
                for way in &mut ways {
                    let hand = self.plan.rider.hands.get(way.hand);
                    way.step = harder(way.step, hand.step(Ability::KeepsPressed, day));
                }
                ways
            }
            Via::Chord(chord) => {
                let first = self.presses(via, chord.first, position, day);
                let second = self.presses(via, chord.second, position, day);
                Self::together(chord, &first, &second)
            }
        }
    }

    /// Every pair of presses that two hands, or two contacts of one hand, make
    /// at the same time: as far off as the farther press, as hard as the harder.
    fn together(chord: Chord, first: &[Way], second: &[Way]) -> Vec<Way> {
        let one_control = chord.first.control == chord.second.control;
        first
            .iter()
            .flat_map(|a| second.iter().map(move |b| (a, b)))
            .filter(|(a, b)| at_once(a, b, one_control))
            .map(|(a, b)| {
                // The hand that lets go stands for the pair, else the one with
                // the harder press.
                let a_stands = match (a.keeps_hold(), b.keeps_hold()) {
                    (true, false) => false,
                    (false, true) => true,
                    _ => a.effort() >= b.effort(),
                };
                Way {
                    ease: a.ease.max(b.ease),
                    step: harder(a.step, b.step),
                    ..if a_stands { *a } else { *b }
                }
            })
            .collect()
    }

    /// How each working hand presses one button from a position.
    pub(super) fn presses(
        &self,
        via: Via,
        id: ButtonId,
        position: HandPosition,
        day: Day,
    ) -> Vec<Way> {
        let Some((control, button)) = self.plan.bike.button(id) else {
            return Vec::new();
        };
        let mut ways = Vec::new();
        for side in Side::ALL {
            let hand = self.plan.rider.hands.get(*side);
            if !hand.works() {
                continue;
            }
            if control.side == BarSide::from(*side) || control.side == BarSide::Centre {
                own_side(&mut ways, via, *side, hand, control, button, position, day);
            } else {
                crossing_over(&mut ways, via, *side, hand, control, button, day);
            }
        }
        ways
    }
}

#[expect(clippy::too_many_arguments, reason = "one press has this many sides")]
fn own_side(
    ways: &mut Vec<Way>,
    via: Via,
    side: Side,
    hand: &Hand,
    control: &Control,
    button: &Button,
    position: HandPosition,
    day: Day,
) {
    for reach in reach::of_button(control, button, position) {
        if in_use(hand, reach.contact) {
            ways.push(Way {
                via,
                hand: side,
                contact: reach.contact,
                ease: reach.ease,
                step: press_step(hand, reach.contact, button.press == Press::Sweep, day),
                reason: reach.reason,
            });
        }
    }
}

/// A hand that crosses over leaves its place, so its position does not matter:
/// it presses with what presses there from anywhere.
fn crossing_over(
    ways: &mut Vec<Way>,
    via: Via,
    side: Side,
    hand: &Hand,
    control: &Control,
    button: &Button,
    day: Day,
) {
    let target = reach::Target::of_button(control, button);
    let natural = reach::REACH
        .iter()
        .filter(|row| row.target == target && row.ease == Ease::Natural)
        .flat_map(|row| row.contacts);
    for contact in natural {
        if in_use(hand, *contact) && !ways.iter().any(|w| w.hand == side && w.contact == *contact) {
            ways.push(Way {
                via,
                hand: side,
                contact: *contact,
                ease: Ease::CrossOver,
                step: press_step(hand, *contact, button.press == Press::Sweep, day),
                reason: "the other hand must let go and cross over",
            });
        }
    }
}

/// Whether two presses can be made at the same time: one hand needs two contacts
/// and is in one place only; two hands do not both let go.
fn at_once(a: &Way, b: &Way, one_control: bool) -> bool {
    if a.hand != b.hand {
        return a.keeps_hold() || b.keeps_hold();
    }
    let one_place = a.keeps_hold() && b.keeps_hold() || one_control && a.ease == b.ease;
    a.contact != b.contact && one_place
}

/// Digits are in use until said otherwise; other contacts only once answered.
fn in_use(hand: &Hand, contact: Contact) -> bool {
    contact.is_digit() || hand.contacts.value(contact).is_some()
}
