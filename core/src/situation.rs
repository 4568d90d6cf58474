//! What every rule may ask, worked out once.

use crate::cockpit::{BrakeRun, Control, ControlId, HandPosition};
use crate::coverage::{Cell, Coverage};
use crate::function::Function;
use crate::layout::Layout;
use crate::plan::Plan;
use crate::rider::{Ability, Day, Hand, Side, Standing};
use crate::vocabulary::Vocabulary;

/// A plan and one of its layouts with what follows from them.
#[derive(Debug)]
pub struct Situation<'a> {
    /// The plan.
    pub plan: &'a Plan,
    /// The layout looked at.
    pub layout: &'a Layout,
    /// Its coverage table.
    pub coverage: Coverage,
}

impl<'a> Situation<'a> {
    /// The situation of the layout in hand.
    pub fn of(plan: &'a Plan) -> Self {
        Self::of_layout(plan, plan.layout())
    }

    /// The situation of one layout of the plan.
    pub fn of_layout(plan: &'a Plan, layout: &'a Layout) -> Self {
        Situation {
            plan,
            layout,
            coverage: Coverage::of(plan, layout),
        }
    }

    /// A hand of the rider.
    pub fn hand(&self, side: Side) -> &'a Hand {
        self.plan.rider.hands.get(side)
    }

    /// The positions used.
    pub fn positions(&self) -> &[HandPosition] {
        &self.coverage.positions
    }

    /// The sides whose hands may be counted on to steer: working hands for
    /// which steering alone is not step 3 or 4. Not asked is counted on here; a
    /// finding of its own says that it was not asked.
    pub fn steering_hands(&self) -> Vec<Side> {
        Side::ALL
            .iter()
            .copied()
            .filter(|side| {
                let hand = self.hand(*side);
                hand.works()
                    && hand
                        .step(Ability::SteersAlone, Day::Usual)
                        .is_none_or(|s| s.standing() == Standing::Able)
            })
            .collect()
    }

    /// The only hand that steers, if there is just one.
    pub fn only_steering_hand(&self) -> Option<Side> {
        match self.steering_hands()[..] {
            [side] => Some(side),
            _ => None,
        }
    }

    /// Whether a hand may leave its place while riding: another hand steers
    /// meanwhile, or the bike stands by itself.
    pub fn may_let_go(&self, side: Side) -> bool {
        !self.is_two_wheeler() || self.steering_hands().iter().any(|s| *s != side)
    }

    /// Whether a function can be called up while riding, from a position on a
    /// usual day, at worst with a hand that may let go.
    pub fn callable_from(&self, function: Function, position: HandPosition) -> bool {
        let cell = self.coverage.cell(function, position, Day::Usual);
        cell.is_some_and(|cell| self.callable(cell))
    }

    /// Whether what a cell tells can be done while riding, at worst with a hand
    /// that may let go.
    pub fn callable(&self, cell: &Cell) -> bool {
        match cell {
            Cell::Reached(_) => true,
            Cell::ByLettingGo(way) => self.may_let_go(way.hand),
            Cell::No(_) => false,
        }
    }

    /// The sides whose hands brake: they pull some lever that is live from some
    /// used position on a usual day, without letting go.
    pub fn braking_hands(&self) -> Vec<Side> {
        Side::ALL
            .iter()
            .copied()
            .filter(|side| {
                self.live_runs()
                    .any(|run| self.brakes_with(*side, run.lever))
            })
            .collect()
    }

    /// Whether a hand pulls a lever from some used position on a usual day,
    /// without letting go.
    pub fn brakes_with(&self, side: Side, lever: ControlId) -> bool {
        let mut positions = self.positions().iter();
        positions.any(|position| self.pulls_from(side, lever, *position))
    }

    /// Whether a hand pulls a lever from a position on a usual day, without
    /// letting go.
    pub fn pulls_from(&self, side: Side, lever: ControlId, position: HandPosition) -> bool {
        let pulls = self.coverage.pulls(lever, position, Day::Usual);
        pulls.iter().any(|pull| pull.hand == side && pull.counts())
    }

    /// What a lever is called: "left brake lever".
    pub fn lever_name(&self, lever: ControlId) -> String {
        let control = self.plan.bike.control(lever);
        control.map_or_else(|| format!("lever {lever}"), Control::place)
    }

    /// Brake runs whose lever still has its blade and pulls something.
    pub fn live_runs(&self) -> impl Iterator<Item = &'a BrakeRun> {
        let bike = &self.plan.bike;
        bike.brakes
            .runs
            .iter()
            .filter(|run| !run.wheels.is_empty())
            .filter(|run| bike.control(run.lever).is_some_and(|c| c.has_blade()))
    }

    /// Whether the rider steers and balances two wheels.
    pub fn is_two_wheeler(&self) -> bool {
        !self.plan.bike.frame.is_tricycle()
    }
}
