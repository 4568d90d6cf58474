//! Ways of calling up functions.

use super::{Cell, Via, Way, WhyNot, harder, presses};
use crate::cockpit::HandPosition;
use crate::function::Function;
use crate::layout::{Hold, Layout};
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

impl<'a> Ways<'a> {
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
        given.extend(
            layout
                .chords
                .iter()
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
        let serving = || self.given.iter().filter(|g| g.function.serves(function));
        if serving().next().is_none() {
            return Cell::No(WhyNot::NoButton);
        }
        let vias: Vec<Via> = serving().filter(|g| g.buildable).map(|g| g.via).collect();
        if vias.is_empty() {
            return Cell::No(WhyNot::NotProgrammable);
        }
        let all: Vec<Way> = vias
            .iter()
            .flat_map(|via| self.ways_of(*via, position, day))
            .collect();
        let usable = || all.iter().filter(|way| way.is_usable());
        if let Some(way) = usable()
            .filter(|way| way.keeps_hold())
            .min_by_key(|way| way.effort())
        {
            return Cell::Reached(*way);
        }
        let hands = &self.plan.rider.hands;
        if let Some(way) = usable().min_by_key(|w| (!hands.steer_without(w.hand), w.effort())) {
            return Cell::ByLettingGo(*way);
        }
        Cell::No(self.why_not(&vias, &all))
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

    fn ways_of(&self, via: Via, position: HandPosition, day: Day) -> Vec<Way> {
        let mut ways = match via {
            Via::Tap(id) => return presses(self.plan, id, position, day),
            Via::Hold(id) => presses(self.plan, id, position, day),
            Via::Chord(chord) => together(
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
/// the same time. The press that is reached worse stands for the pair, with the
/// harder step of both.
fn together(first: &[Way], second: &[Way]) -> Vec<Way> {
    let mut pairs = Vec::new();
    for a in first {
        for b in second {
            if (a.hand, a.contact) == (b.hand, b.contact) {
                continue;
            }
            let worse = |way: &Way| (!way.keeps_hold(), way.effort());
            let mut pair = if worse(a) >= worse(b) { *a } else { *b };
            pair.step = harder(a.step, b.step);
            pairs.push(pair);
        }
    }
    pairs
}
