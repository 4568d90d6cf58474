//! What every rule may ask, worked out once.

use std::cell::OnceCell;

use crate::cockpit::{BrakeRun, ButtonId, Control, ControlId, HandPosition};
use crate::coverage::{self, Cell, Coverage, Way};
use crate::finding::Fix;
use crate::function::Function;
use crate::gears::{Shifting, ShiftingError};
use crate::layout::Layout;
use crate::plan::Plan;
use crate::ride::kept::Remembered;
use crate::rider::{Day, Hand, Side};
use crate::suggest_button::{self, Suited};
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
    /// Whether rules propose fixes. These change the layout in hand, so they
    /// make sense for that one only.
    proposes_fixes: bool,
    /// Whether the remembered ride belongs to this plan as it stands, once it
    /// was asked.
    ride_is_current: OnceCell<bool>,
    /// The shift plan worked out, once somebody asks.
    shifting: OnceCell<Result<Shifting, ShiftingError>>,
    /// How buttons are reached on each day, once somebody asks.
    suited: [OnceCell<Vec<Suited>>; Day::ALL.len()],
}

impl<'a> Situation<'a> {
    /// The situation of the layout in hand, for which rules propose fixes.
    pub fn of(plan: &'a Plan) -> Self {
        Situation {
            proposes_fixes: true,
            ..Self::of_layout(plan, plan.layout())
        }
    }

    /// The situation of one layout of the plan, without fixes: for comparing
    /// layouts, and wherever fixes are not shown.
    pub fn of_layout(plan: &'a Plan, layout: &'a Layout) -> Self {
        Self::with(plan, layout, Coverage::of(plan, layout))
    }

    fn with(plan: &'a Plan, layout: &'a Layout, coverage: Coverage) -> Self {
        Situation {
            plan,
            layout,
            coverage,
            proposes_fixes: false,
            ride_is_current: OnceCell::new(),
            shifting: OnceCell::new(),
            suited: Default::default(),
        }
    }

    /// The situation after a change, without fixes: what the change leaves alone is taken over.
    pub(crate) fn after<'b>(&self, plan: &'b Plan) -> Situation<'b> {
        let layout = plan.layout();
        let coverage = Coverage::after((self.plan, self.layout, &self.coverage), plan, layout);
        Situation::with(plan, layout, coverage)
    }

    /// Whether rules propose fixes here.
    pub(crate) fn proposes_fixes(&self) -> bool {
        self.proposes_fixes
    }

    /// The fixes that a rule proposes, worked out only where they are wanted.
    pub(crate) fn propose(&self, fixes: impl FnOnce() -> Vec<Fix>) -> Vec<Fix> {
        if self.proposes_fixes {
            fixes()
        } else {
            Vec::new()
        }
    }

    /// Whether the ride that is remembered of this layout belongs to the plan as
    /// it stands.
    pub(crate) fn ride_is_current(&self, ride: &Remembered) -> bool {
        *self
            .ride_is_current
            .get_or_init(|| !ride.is_stale(self.plan))
    }

    /// The shift plan worked out for the gears, or why it cannot be.
    pub fn shifting(&self) -> Result<&Shifting, &ShiftingError> {
        let shifting = self.shifting.get_or_init(|| Shifting::of(self.plan));
        shifting.as_ref()
    }

    /// The buttons that can be remapped and that a hand presses on a day without letting go.
    pub(crate) fn suited(&self, day: Day) -> &[Suited] {
        self.suited[day as usize].get_or_init(|| suggest_button::suited(self.plan, day))
    }

    /// A hand of the rider.
    pub fn hand(&self, side: Side) -> &'a Hand {
        self.plan.rider.hands.get(side)
    }

    /// The positions used.
    pub fn positions(&self) -> &[HandPosition] {
        &self.coverage.positions
    }

    /// The sides whose hands may be counted on to steer.
    pub fn steering_hands(&self) -> Vec<Side> {
        self.plan.rider.hands.steering()
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
        !self.is_two_wheeler() || self.plan.rider.hands.steer_without(side)
    }

    /// A function's best cell among the positions in use on a usual day:
    /// keeping hold, else letting go with a hand while the other steers, else
    /// letting go; `None` where it cannot be called up at all.
    pub fn best_cell(&self, function: Function) -> Option<&Cell> {
        let hands = &self.plan.rider.hands;
        self.positions()
            .iter()
            .filter_map(|position| self.coverage.cell(function, *position, Day::Usual))
            .filter(|cell| cell.way().is_some())
            .min_by_key(|cell| match cell {
                Cell::Reached(_) => 0,
                Cell::ByLettingGo(way) if hands.steer_without(way.hand) => 1,
                Cell::ByLettingGo(_) | Cell::No(_) => 2,
            })
    }

    /// Whether a function can be called up while riding from some position on a
    /// usual day, at worst with a hand that may let go.
    pub fn is_callable(&self, function: Function) -> bool {
        let best = self.best_cell(function);
        best.is_some_and(|cell| self.callable(cell))
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

    /// How a function is called up from a position on a usual day without
    /// letting go.
    pub fn reached(&self, function: Function, position: HandPosition) -> Option<&Way> {
        self.coverage
            .cell(function, position, Day::Usual)?
            .reached()
    }

    /// The hands that work a button: those that press it without letting go
    /// from a position in use, or failing them those that let go for it.
    pub fn hands_on(&self, button: ButtonId) -> Vec<Side> {
        let ways: Vec<Way> = self
            .positions()
            .iter()
            .flat_map(|position| coverage::presses(self.plan, button, *position, Day::Usual))
            .filter(Way::is_usable)
            .collect();
        let stays = ways.iter().any(Way::keeps_hold);
        let by = |side: Side| {
            ways.iter()
                .any(|way| way.hand == side && way.keeps_hold() == stays)
        };
        Side::ALL.iter().copied().filter(|s| by(*s)).collect()
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
