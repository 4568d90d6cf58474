//! Ways of calling up functions.

use super::{Cell, Via, Way, WhyNot, easiest, harder, presses};
use crate::cockpit::{ButtonId, HandPosition};
use crate::function::Function;
use crate::layout::{Chord, Hold, Layout};
use crate::plan::Plan;
use crate::rider::{Ability, Day};

/// Everything on the cockpit that calls up a function.
pub(super) struct Ways<'a> {
    plan: &'a Plan,
    given: Vec<Given>,
}

struct Given {
    function: Function,
    via: Via,
    /// Whether the bike can be made to do it.
    buildable: bool,
}

/// How a button is best pressed from a position on a day, whatever it does.
pub fn press_of(plan: &Plan, button: ButtonId, position: HandPosition, day: Day) -> Cell {
    Ways::none(plan).cell_of(&[Via::Tap(button)], position, day)
}

impl<'a> Ways<'a> {
    /// Nothing calls up anything: for asking about presses alone.
    fn none(plan: &'a Plan) -> Self {
        let given = Vec::new();
        Ways { plan, given }
    }

    pub(super) fn of(plan: &'a Plan, layout: &Layout) -> Self {
        let bike = &plan.bike;
        let mut given = Vec::new();
        for control in bike.controls.iter().filter(|c| c.connected) {
            for button in &control.buttons {
                let id = control.button_id(button.part);
                given.extend(layout.tap(bike, id).map(|function| Given {
                    function,
                    via: Via::Tap(id),
                    buildable: bike.can_do(id, function),
                }));
                if let Some(hold @ Hold::Does(function)) = layout.holds.get(&id) {
                    given.push(Given {
                        function: *function,
                        via: Via::Hold(id),
                        buildable: hold.is_buildable(bike, id),
                    });
                }
            }
        }
        let chords = layout.chords.iter();
        given.extend(
            chords
                .filter(|chord| chord.is_connected(bike))
                .map(|chord| Given {
                    function: chord.function,
                    via: Via::Chord(*chord),
                    buildable: chord.is_buildable(bike),
                }),
        );
        Ways { plan, given }
    }

    pub(super) fn has(&self, function: Function) -> bool {
        self.given.iter().any(|given| given.function == function)
    }

    pub(super) fn cell(&self, function: Function, position: HandPosition, day: Day) -> Cell {
        let vias = self.vias(function);
        if !vias.is_empty() {
            return self.cell_of(&vias, position, day);
        }
        let named = self.given.iter().any(|g| g.function.serves(function));
        Cell::No(if named {
            WhyNot::NotProgrammable
        } else {
            WhyNot::NoButton
        })
    }

    /// Everything that calls up a function and can be built.
    pub(super) fn vias(&self, function: Function) -> Vec<Via> {
        self.given
            .iter()
            .filter(|given| given.buildable && given.function.serves(function))
            .map(|given| given.via)
            .collect()
    }

    /// Whether a function is called up as in another layout of the same bike.
    pub(super) fn serve_alike(&self, other: &Ways<'_>, function: Function) -> bool {
        let serving = |ways: &Ways<'_>| {
            let given = ways.given.iter();
            let serving = given.filter(|given| given.function.serves(function));
            serving
                .map(|given| (given.via, given.buildable))
                .collect::<Vec<_>>()
        };
        serving(self) == serving(other)
    }

    /// The best of several presses.
    pub(super) fn cell_of(&self, vias: &[Via], position: HandPosition, day: Day) -> Cell {
        let all: Vec<Way> = vias
            .iter()
            .flat_map(|via| self.ways_of(*via, position, day))
            .collect();
        easiest(self.plan, &all).unwrap_or_else(|| Cell::No(self.why_not(vias, &all)))
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
        let mut ways = match via {
            Via::Tap(id) | Via::Hold(id) => presses(self.plan, id, position, day),
            Via::Chord(chord) => together(
                chord,
                &presses(self.plan, chord.first, position, day),
                &presses(self.plan, chord.second, position, day),
            ),
        };
        for way in &mut ways {
            way.via = via;
            if matches!(via, Via::Hold(_)) {
                let hand = self.plan.rider.hands.get(way.hand);
                way.step = harder(way.step, hand.step(Ability::KeepsPressed, day));
            }
        }
        ways
    }
}

/// Every pair of presses that two hands, or two contacts of one hand, make at
/// the same time: as far off as the farther press, as hard as the harder.
fn together(chord: Chord, first: &[Way], second: &[Way]) -> Vec<Way> {
    let one_control = chord.first.control == chord.second.control;
    first
        .iter()
        .flat_map(|a| second.iter().map(move |b| (a, b)))
        .filter(|(a, b)| at_once(a, b, one_control))
        .map(|(a, b)| {
            // The hand that lets go stands for the pair, else the one with the
            // harder press.
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

/// Whether two presses can be made at the same time: one hand needs two contacts
/// and is in one place only; two hands do not both let go.
fn at_once(a: &Way, b: &Way, one_control: bool) -> bool {
    if a.hand != b.hand {
        return a.keeps_hold() || b.keeps_hold();
    }
    let one_place = a.keeps_hold() && b.keeps_hold() || one_control && a.ease == b.ease;
    a.contact != b.contact && one_place
}
