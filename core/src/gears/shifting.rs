//! The shift plan worked out: what each press makes of each gear.

use super::{Direction, Gear, Gears, Ladder, Millis, Pace, Paired, ShiftSettings, ShiftingError};
use crate::cockpit::HoldRun;
use crate::function::Function;
use crate::plan::Plan;
use crate::shift_plan::ShiftPlanKind;

/// How the derailleurs work together, worked out for the gears.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Scheme {
    /// No front derailleur.
    SingleRing,
    /// Each derailleur by itself.
    Separate,
    /// A front shift brings rear shifts.
    Paired(Paired),
    /// One list of gears each way.
    Ladder(Ladder),
}

impl Scheme {
    /// The kind of shift plan.
    pub fn kind(&self) -> ShiftPlanKind {
        match self {
            Scheme::SingleRing => ShiftPlanKind::SingleRing,
            Scheme::Separate => ShiftPlanKind::Separate,
            Scheme::Paired(_) => ShiftPlanKind::Paired,
            Scheme::Ladder(_) => ShiftPlanKind::Ladder,
        }
    }
}

/// A press of a button with a function.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Press {
    /// A tap.
    Tap(Function),
    /// Kept pressed for a run of cogs: it repeats the function.
    Hold(Function, HoldRun),
}

/// What a tap does to a gear: one act of the derailleurs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shift {
    /// The gear it leads to.
    pub to: Gear,
    /// How many rings the front moves; above zero is to a larger one.
    pub front: i8,
    /// How many cogs the rear moves; above zero is to a smaller one.
    pub rear: i8,
    /// How long it takes, front and rear moving together.
    pub time: Millis,
}

/// What a press does to a gear, a hold with all its shifts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Moved {
    /// The gear it ends in.
    pub to: Gear,
    /// Its shifts in order, at least one.
    pub shifts: Vec<Shift>,
    /// How long it takes from the moment the button goes down.
    pub time: Millis,
}

impl Moved {
    /// How many of its shifts move the front.
    pub fn front_changes(&self) -> usize {
        self.shifts.iter().filter(|shift| shift.front != 0).count()
    }
}

/// The gears of a bike under a shift plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Shifting {
    /// The gears.
    pub gears: Gears,
    /// How the derailleurs work together.
    pub scheme: Scheme,
    /// How fast the system is.
    pub pace: Pace,
    /// Whether a hold runs on across a crossover of the ladder.
    pub holds_cross: bool,
}

impl Shifting {
    /// The shift plan of a plan.
    ///
    /// # Errors
    /// When the teeth are not known, or the ladder does not work.
    pub fn of(plan: &Plan) -> Result<Shifting, ShiftingError> {
        Shifting::under(plan, plan.shift_plan)
    }

    /// The same bike under any shift plan that goes with it.
    ///
    /// # Errors
    /// As of [`Shifting::of`], and when the bike has no front derailleur for the
    /// plan, or has one that the single-ring plan has no use for.
    pub fn under(plan: &Plan, kind: ShiftPlanKind) -> Result<Shifting, ShiftingError> {
        let drivetrain = &plan.bike.drivetrain;
        let Some(gears) = drivetrain.gears() else {
            let what = drivetrain.not_entered().unwrap_or("gears");
            return Err(ShiftingError::NotEntered { what });
        };
        Shifting::with(gears, kind, &plan.shift_settings)
    }

    /// Given gears under a shift plan.
    ///
    /// # Errors
    /// As of [`Shifting::under`].
    pub fn with(
        gears: Gears,
        kind: ShiftPlanKind,
        settings: &ShiftSettings,
    ) -> Result<Shifting, ShiftingError> {
        let single = kind == ShiftPlanKind::SingleRing;
        if single != (gears.rings.len() == 1) {
            return Err(if single {
                ShiftingError::HasFront
            } else {
                ShiftingError::NoFront(kind)
            });
        }
        let scheme = match kind {
            ShiftPlanKind::SingleRing => Scheme::SingleRing,
            ShiftPlanKind::Separate => Scheme::Separate,
            ShiftPlanKind::Paired => Scheme::Paired(Paired::of(&gears, settings.paired)),
            ShiftPlanKind::Ladder => Scheme::Ladder(Ladder::of(&gears, &settings.ladder)?),
        };
        Ok(Shifting {
            gears,
            scheme,
            pace: settings.pace,
            holds_cross: settings.holds_cross,
        })
    }

    /// The ladder, where that is the plan.
    pub fn ladder(&self) -> Option<&Ladder> {
        match &self.scheme {
            Scheme::Ladder(ladder) => Some(ladder),
            _ => None,
        }
    }

    /// What a press makes of a gear; `None` where nothing moves: at an end, or
    /// because the function has no use under this plan.
    pub fn press(&self, from: Gear, press: Press) -> Option<Moved> {
        match press {
            Press::Tap(function) => {
                let shift = self.tap(from, function)?;
                Some(Moved {
                    to: shift.to,
                    time: shift.time,
                    shifts: vec![shift],
                })
            }
            Press::Hold(function, run) => self.hold(from, function, run),
        }
    }

    /// What a tap makes of a gear; `None` where nothing moves.
    ///
    /// A front toggle goes to the larger ring from the smallest and to the next
    /// smaller from any other.
    pub fn tap(&self, from: Gear, function: Function) -> Option<Shift> {
        if !self.gears.has(from) {
            return None;
        }
        let to = match (&self.scheme, function) {
            (Scheme::Ladder(ladder), Function::RungUp) => {
                ladder.next(&self.gears, from, Direction::Up)
            }
            (Scheme::Ladder(ladder), Function::RungDown) => {
                ladder.next(&self.gears, from, Direction::Down)
            }
            (_, Function::RearHarder) => from.harder_by(1),
            (_, Function::RearEasier) => from.harder_by(-1),
            (_, Function::FrontLarger) => self.front(from, Direction::Up),
            (_, Function::FrontSmaller) => self.front(from, Direction::Down),
            (_, Function::FrontToggle) if from.ring == 0 => self.front(from, Direction::Up),
            (_, Function::FrontToggle) => self.front(from, Direction::Down),
            _ => None,
        }?;
        self.gears.has(to).then(|| self.shift(from, to))
    }

    fn front(&self, from: Gear, way: Direction) -> Option<Gear> {
        match (&self.scheme, way) {
            (Scheme::SingleRing, _) => None,
            (Scheme::Paired(paired), _) => paired.shift(&self.gears, from, way),
            (_, Direction::Up) => Some(Gear {
                ring: from.ring + 1,
                ..from
            }),
            (_, Direction::Down) => Some(Gear {
                ring: from.ring.checked_sub(1)?,
                ..from
            }),
        }
    }

    fn shift(&self, from: Gear, to: Gear) -> Shift {
        let front = to.ring as i8 - from.ring as i8;
        let rear = from.cogs_to(to);
        Shift {
            to,
            front,
            rear,
            time: self.pace.of_move(front.unsigned_abs(), rear.unsigned_abs()),
        }
    }

    /// A hold shifts at once, waits for the trigger time and then shifts on. In
    /// the ladder it stops at crossovers, before and after, unless they may be
    /// crossed.
    fn hold(&self, from: Gear, function: Function, run: HoldRun) -> Option<Moved> {
        let first = self.tap(from, function)?;
        let most = match run {
            HoldRun::Cogs(n) => usize::from(n.max(1)),
            HoldRun::ToEnd => usize::MAX,
        };
        let stops = |shift: &Shift| shift.front != 0 && !self.holds_cross;
        let mut shifts = vec![first];
        let mut time = first.time;
        let repeats = function.repeats() && !stops(&first);
        while repeats && shifts.len() < most {
            let last = shifts[shifts.len() - 1];
            let Some(next) = self.tap(last.to, function).filter(|next| !stops(next)) else {
                break;
            };
            if shifts.len() == 1 {
                time = time.max(self.pace.trigger);
            }
            time = Millis(time.0 + next.time.0);
            shifts.push(next);
        }
        let to = shifts[shifts.len() - 1].to;
        Some(Moved { to, shifts, time })
    }
}
