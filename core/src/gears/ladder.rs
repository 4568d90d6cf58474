//! The ladder: two ways through the gears, one walked by "rung up" and one by
//! "rung down".
//!
//! Each way leads from the easiest gear allowed to the hardest, or back, every
//! rung strictly harder, or easier, than the one before. It moves one cog at a
//! time; where it changes to the next ring, a *crossover*, the rear lands on a
//! chosen cog at the same time. The crossover up lies above the crossover down:
//! where the one lands, the other does not yet leave. So no alternation of up
//! and down presses, from whatever gear, changes the front more than once.

mod best;

use std::cmp::Ordering;

pub use best::WIDE_STEP;
pub(crate) use best::{CLOSE, MOST_LANDING};

use super::{
    CogMove, Direction, Gear, Gears, HandCrossovers, LadderError, LadderSettings, Millis, Pace,
    Percent,
};
use crate::ordered::sort_by_key;
use crate::vocabulary::Vocabulary;

/// A ladder that works.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ladder {
    /// The rungs walked up, the easiest first.
    pub up: Vec<Gear>,
    /// The rungs walked down, the hardest first.
    pub down: Vec<Gear>,
    /// Gears that it keeps out of.
    forbidden: Vec<Gear>,
}

vocabulary! {
    /// An end of a crossover.
    pub enum CrossoverEnd as "end of a crossover" {
        /// Where the front changes.
        Leaves = "leaves", "front changes";
        /// Where the chain lands.
        Lands = "lands", "lands";
    }
}

/// A rung at which the front changes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Crossover {
    /// Which way it leads.
    pub way: Direction,
    /// The gear it leaves.
    pub from: Gear,
    /// The gear it lands on.
    pub to: Gear,
}

impl Crossover {
    /// The smaller of its rings, 0 for the smallest of all.
    pub fn pair(&self) -> u8 {
        self.from.ring.min(self.to.ring)
    }

    /// How many cogs the rear moves meanwhile.
    pub fn cogs(&self) -> u8 {
        self.from.cog.abs_diff(self.to.cog)
    }

    /// The time it takes, front and rear moving together.
    pub fn time(&self, pace: Pace) -> Millis {
        pace.of_move(1, self.cogs())
    }

    /// The step that the rider feels, above zero where it goes that way.
    pub fn step(&self, gears: &Gears) -> Percent {
        match self.way {
            Direction::Up => gears.step(self.from, self.to),
            Direction::Down => gears.step(self.to, self.from),
        }
    }

    /// The cogs with the front changing on another cog, landing as many cogs
    /// away as before, or as the cassette has.
    pub fn leaving(&self, gears: &Gears, cog: u8) -> CogMove {
        let last = gears.cogs.len() as u8 - 1;
        let leaves = cog.min(last);
        let far = self.from.cogs_to(self.to);
        CogMove {
            leaves,
            lands: leaves.saturating_add_signed(far).min(last),
        }
    }

    /// The cogs with one end a cog further: where the front changes, with its
    /// landing, or the landing alone. `None` at the end of the cassette.
    pub fn stepped(&self, gears: &Gears, end: CrossoverEnd, harder: bool) -> Option<CogMove> {
        let off = if harder { 1 } else { -1 };
        let on = |gear: Gear| gear.harder_by(off).filter(|gear| gears.has(*gear));
        Some(match end {
            CrossoverEnd::Leaves => self.leaving(gears, on(self.from)?.cog),
            CrossoverEnd::Lands => CogMove {
                leaves: self.from.cog,
                lands: on(self.to)?.cog,
            },
        })
    }

    /// The cogs alone.
    pub fn cog_move(&self) -> CogMove {
        CogMove {
            leaves: self.from.cog,
            lands: self.to.cog,
        }
    }
}

impl Ladder {
    /// The ladder of these gears: with the crossovers set by hand, else the
    /// best one for its goal.
    ///
    /// Best is, one after the other: the whole range of the gears allowed, the
    /// front changed only towards the end walked to and so as seldom as can be,
    /// no forbidden gear; then
    ///
    /// - for [`LadderGoal::Even`](super::LadderGoal::Even): the fewest
    ///   crossovers that move more than three cogs, the fewest steps of more than
    ///   20 %, the fewest cogs moved at crossovers, the smallest largest step,
    ///   the most even steps;
    /// - for [`LadderGoal::Comfort`](super::LadderGoal::Comfort): down crossovers
    ///   no later than the third-largest cog, the fewest crossovers that move
    ///   more than three cogs, the fewest steps of more than 20 %, landings
    ///   nearest to two cogs, the fewest landings within two rungs of where the
    ///   opposite crossover leaves, the smallest largest step, the most even
    ///   steps.
    ///
    /// Both ways count together. Most even is the smallest sum of squared steps,
    /// a step being the logarithm of the change in ratio. Steps of more than
    /// 20 % count before cogs moved, because otherwise the best crossover would
    /// move no cog at all and let the legs jump by the whole change of rings (our
    /// judgement).
    ///
    /// # Errors
    /// When no ladder leads through the gears allowed, or the crossovers set by
    /// hand do not make one.
    pub fn of(gears: &Gears, settings: &LadderSettings) -> Result<Ladder, LadderError> {
        let ends = Ends::of(gears, settings)?;
        if settings.by_hand.is_empty() {
            let moves = best::moves(gears, settings, ends)?;
            return Ladder::through(gears, settings, ends, &moves);
        }
        if settings.by_hand.len() + 1 != gears.rings.len() {
            return Err(LadderError::OtherGears);
        }
        let (from, to) = (
            usize::from(ends.easiest.ring),
            usize::from(ends.hardest.ring),
        );
        let moves = settings.by_hand.get(from..to).ok_or(ends.no_way())?;
        Ladder::through(gears, settings, ends, moves)
    }

    /// The ladder with given crossovers, from the smallest ring it uses.
    fn through(
        gears: &Gears,
        settings: &LadderSettings,
        ends: Ends,
        moves: &[HandCrossovers],
    ) -> Result<Ladder, LadderError> {
        let base = ends.easiest.ring;
        let cogs = gears.cogs.len() as u8;
        for (k, pair) in moves.iter().enumerate() {
            let ring = base + k as u8;
            let all = [
                pair.up.leaves,
                pair.up.lands,
                pair.down.leaves,
                pair.down.lands,
            ];
            if all.iter().any(|cog| *cog >= cogs) {
                return Err(LadderError::OtherGears);
            }
            let fault = |way, why| {
                Err(LadderError::Crossover {
                    way,
                    pair: ring,
                    why,
                })
            };
            let at = |ring: u8, cog: u8| Gear { ring, cog };
            let (leaves, lands) = (at(ring, pair.up.leaves), at(ring + 1, pair.up.lands));
            if gears.compare(leaves, lands) != Ordering::Less {
                return fault(Direction::Up, "it does not land on a harder gear");
            }
            let (leaves, lands) = (at(ring + 1, pair.down.leaves), at(ring, pair.down.lands));
            if gears.compare(leaves, lands) != Ordering::Greater {
                return fault(Direction::Down, "it does not land on an easier gear");
            }
            if pair.up.lands <= pair.down.leaves {
                return fault(
                    Direction::Up,
                    "it lands where the crossover down leaves, so that presses up and down would change the front each time",
                );
            }
            if pair.down.lands >= pair.up.leaves {
                return fault(
                    Direction::Down,
                    "it lands where the crossover up leaves, so that presses up and down would change the front each time",
                );
            }
        }
        let ladder = Ladder {
            up: ends.walk_up(moves)?,
            down: ends.walk_down(moves)?,
            forbidden: settings.forbidden.clone(),
        };
        let crossed = |path: &[Gear]| path.iter().any(|gear| settings.forbids(*gear));
        match moves {
            // Nothing was set, so nothing of it is at fault.
            [] if crossed(&ladder.up) => Err(ends.no_way()),
            _ => {
                for (path, way) in [(&ladder.up, Direction::Up), (&ladder.down, Direction::Down)] {
                    if let Some(gear) = path.iter().find(|gear| settings.forbids(**gear)) {
                        return Err(LadderError::Crossover {
                            way,
                            pair: gear.ring.clamp(base, ends.hardest.ring - 1),
                            why: "a forbidden gear lies on the way",
                        });
                    }
                }
                Ok(ladder)
            }
        }
    }

    /// The rungs of a way, in the order of walking.
    pub fn path(&self, way: Direction) -> &[Gear] {
        match way {
            Direction::Up => &self.up,
            Direction::Down => &self.down,
        }
    }

    /// Whether a gear is a rung of either way.
    pub fn has(&self, gear: Gear) -> bool {
        self.up.contains(&gear) || self.down.contains(&gear)
    }

    /// The crossovers of both ways, from the smallest ring, up before down.
    pub fn crossovers(&self) -> Vec<Crossover> {
        let mut found = Vec::new();
        for way in Direction::ALL {
            for pair in self.path(*way).windows(2) {
                if pair[0].ring != pair[1].ring {
                    let (way, from, to) = (*way, pair[0], pair[1]);
                    found.push(Crossover { way, from, to });
                }
            }
        }
        sort_by_key(&mut found, |c: &Crossover| (c.pair(), c.way));
        found
    }

    /// The crossover between a ring and the next larger, that way.
    pub fn crossover(&self, pair: u8, way: Direction) -> Option<Crossover> {
        self.crossovers()
            .into_iter()
            .find(|c| c.pair() == pair && c.way == way)
    }

    /// The crossovers as they are set by hand.
    pub fn as_set_by_hand(&self, gears: &Gears) -> Vec<HandCrossovers> {
        let mut sets = Vec::new();
        for pair in 0..(gears.rings.len() as u8).saturating_sub(1) {
            let own = |way| {
                self.crossover(pair, way).map_or(
                    CogMove {
                        leaves: 0,
                        lands: 0,
                    },
                    |crossover| crossover.cog_move(),
                )
            };
            let (up, down) = (own(Direction::Up), own(Direction::Down));
            sets.push(HandCrossovers { up, down });
        }
        sets
    }

    /// The rung that a press leads to; `None` at the end.
    ///
    /// From a gear that is no rung, as after a knock, the chain stays on its ring
    /// while rungs lie ahead there, else goes to the next rung that way.
    pub fn next(&self, gears: &Gears, from: Gear, way: Direction) -> Option<Gear> {
        let path = self.path(way);
        if let Some(at) = path.iter().position(|rung| *rung == from) {
            return path.get(at + 1).copied();
        }
        if self.leads_ahead(from, way) {
            return from.harder_by(match way {
                Direction::Up => 1,
                Direction::Down => -1,
            });
        }
        let (beyond, ahead): (Ordering, fn(u8, u8) -> bool) = match way {
            Direction::Up => (Ordering::Greater, |to, from| to >= from),
            Direction::Down => (Ordering::Less, |to, from| to <= from),
        };
        path.iter()
            .copied()
            .find(|rung| ahead(rung.ring, from.ring) && gears.compare(*rung, from) == beyond)
    }

    /// Whether rungs of the same ring lie ahead and nothing forbidden between.
    fn leads_ahead(&self, from: Gear, way: Direction) -> bool {
        let Some(first) = self.path(way).iter().find(|rung| rung.ring == from.ring) else {
            return false;
        };
        let between = match way {
            Direction::Up => from.cog + 1..first.cog,
            Direction::Down => first.cog + 1..from.cog,
        };
        let before = match way {
            Direction::Up => from.cog < first.cog,
            Direction::Down => from.cog > first.cog,
        };
        before
            && !between
                .into_iter()
                .any(|cog| self.forbidden.contains(&Gear { cog, ..from }))
    }

    /// How many rungs lie between where a crossover lands and the opposite one.
    /// At least 1: where they are next to each other.
    pub fn rungs_to_opposite(&self, crossover: Crossover) -> Option<u8> {
        let opposite = self.crossover(crossover.pair(), crossover.way.other())?;
        Some(opposite.from.cog.abs_diff(crossover.to.cog))
    }
}

/// The gears at the ends of a ladder.
#[derive(Debug, Clone, Copy)]
struct Ends {
    easiest: Gear,
    hardest: Gear,
}

impl Ends {
    fn of(gears: &Gears, settings: &LadderSettings) -> Result<Ends, LadderError> {
        let mut ends: Option<Ends> = None;
        for gear in gears.all().filter(|gear| !settings.forbids(*gear)) {
            let ends = ends.get_or_insert(Ends {
                easiest: gear,
                hardest: gear,
            });
            if gears.compare(gear, ends.easiest) == Ordering::Less {
                ends.easiest = gear;
            }
            if gears.compare(gear, ends.hardest) != Ordering::Less {
                ends.hardest = gear;
            }
        }
        let ends = ends.ok_or(LadderError::NoGear)?;
        if ends.easiest.ring > ends.hardest.ring {
            return Err(ends.no_way());
        }
        Ok(ends)
    }

    fn no_way(self) -> LadderError {
        LadderError::NoWay {
            easiest: self.easiest,
            hardest: self.hardest,
        }
    }

    fn walk_up(self, moves: &[HandCrossovers]) -> Result<Vec<Gear>, LadderError> {
        let mut path = Vec::new();
        let mut start = self.easiest;
        for pair in moves {
            self.stretch(&mut path, start, pair.up.leaves)?;
            start = Gear::new(start.ring + 1, pair.up.lands);
        }
        self.stretch(&mut path, start, self.hardest.cog)?;
        Ok(path)
    }

    fn walk_down(self, moves: &[HandCrossovers]) -> Result<Vec<Gear>, LadderError> {
        let mut path = Vec::new();
        let mut start = self.easiest;
        for pair in moves {
            self.stretch(&mut path, start, pair.down.lands)?;
            start = Gear::new(start.ring + 1, pair.down.leaves);
        }
        self.stretch(&mut path, start, self.hardest.cog)?;
        path.reverse();
        Ok(path)
    }

    /// Rungs of one ring, the easiest first.
    fn stretch(self, path: &mut Vec<Gear>, from: Gear, last: u8) -> Result<(), LadderError> {
        if from.cog > last {
            return Err(
                if from.ring == self.easiest.ring && from.ring == self.hardest.ring {
                    self.no_way()
                } else {
                    LadderError::Crossover {
                        way: Direction::Up,
                        pair: from.ring.clamp(self.easiest.ring, self.hardest.ring - 1),
                        why: "it lies beyond the next one on that ring",
                    }
                },
            );
        }
        path.extend((from.cog..=last).map(|cog| Gear { cog, ..from }));
        Ok(())
    }
}

#[cfg(test)]
mod tests;
