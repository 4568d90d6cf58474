//! The best ladder, exactly, by dynamic programming.
//!
//! Both ways are worked out together, ring by ring: the state is where the way
//! up and the way down stand on a ring. They meet in the cost and in the
//! condition that where one crossover lands the other does not yet leave. The
//! largest step is no sum, so it takes two rounds: the first finds how small it
//! can be, the second, with larger steps left out, the most even steps.
#![expect(
    clippy::needless_range_loop,
    reason = "several tables are walked by the same two cogs"
)]

use std::cmp::Ordering;

use super::{CogMove, Ends, Gear, Gears, HandCrossovers, LadderError, LadderSettings};
use crate::gears::LadderGoal;
use crate::gears::Percent;
use crate::limits::MOST_COGS;

/// Steps of more than this let the legs jump (our judgement).
pub const WIDE_STEP: Percent = Percent(20.0);

/// Landings of more cogs than this take long (our judgement).
pub(crate) const MOST_LANDING: u8 = 3;

/// The last cog, counted from the largest, by which a comfortable ladder has
/// changed to the smaller ring (our judgement: the third-largest).
const COMFORT_LAST_COG: u8 = 2;

/// The landing of a comfortable ladder (our judgement).
const COMFORT_LANDING: u8 = 2;

/// A landing this near to where the opposite crossover leaves is close (our
/// judgement).
pub(crate) const CLOSE: u8 = 2;

const N: usize = MOST_COGS as usize;

/// What a part of a ladder costs: compared from the first to the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Cost {
    counts: [u8; 5],
    /// The largest step in the first round, the sum of squares in the second.
    steps: u64,
}

/// A state with the cheapest way to it.
#[derive(Debug, Clone, Copy)]
struct Entry {
    cost: Cost,
    /// What the state was made from; what it means depends on the table.
    from: (u8, u8),
}

/// States by where the way up and the way down stand.
type Table = [[Option<Entry>; N]; N];

/// The tables of one crossing, kept for the way back.
struct Crossing {
    /// Before it: by the cogs left, from the cogs landed on before.
    leaves: Table,
    /// Up crossed, down not yet: from the cog that the way up left.
    between: Table,
    /// After it: from the cog where the way down lands.
    lands: Table,
}

/// The crossovers of the best ladder, from the smallest ring it uses.
pub(super) fn moves(
    gears: &Gears,
    settings: &LadderSettings,
    ends: Ends,
) -> Result<Vec<HandCrossovers>, LadderError> {
    let mut search = Search {
        gears,
        settings,
        ends,
        most: None,
    };
    let (cost, _) = search.run().ok_or(ends.no_way())?;
    search.most = Some(cost.steps);
    let (_, moves) = search.run().ok_or(ends.no_way())?;
    Ok(moves)
}

struct Search<'a> {
    gears: &'a Gears,
    settings: &'a LadderSettings,
    ends: Ends,
    /// The largest step allowed, in the second round.
    most: Option<u64>,
}

impl Search<'_> {
    fn run(&self) -> Option<(Cost, Vec<HandCrossovers>)> {
        let (easiest, hardest) = (self.ends.easiest, self.ends.hardest);
        let mut table: Table = [[None; N]; N];
        let at = usize::from(easiest.cog);
        let free = Cost {
            counts: [0; 5],
            steps: 0,
        };
        table[at][at] = Some(Entry {
            cost: free,
            from: (easiest.cog, easiest.cog),
        });
        let mut crossings = Vec::new();
        for ring in easiest.ring..hardest.ring {
            let leaves = self.along(&table, ring);
            let between = self.cross_up(&leaves, ring);
            let lands = self.cross_down(&between, ring);
            table = lands;
            crossings.push(Crossing {
                leaves,
                between,
                lands,
            });
        }
        let last = self.along(&table, hardest.ring);
        let top = usize::from(hardest.cog);
        let end = last[top][top]?;
        Some((end.cost, way_back(&crossings, end.from)))
    }

    /// Both ways move on along a ring, each as far as it likes.
    fn along(&self, table: &Table, ring: u8) -> Table {
        let mut moved = *table;
        for (u, row) in moved.iter_mut().enumerate() {
            for (v, entry) in row.iter_mut().enumerate() {
                if let Some(entry) = entry {
                    entry.from = (u as u8, v as u8);
                }
            }
        }
        let steps = self.steps_along(ring);
        for u in 1..N {
            for v in 0..N {
                let candidate = moved[u - 1][v];
                self.offer(&mut moved[u][v], candidate, steps[u]);
            }
        }
        for u in 0..N {
            for v in 1..N {
                let candidate = moved[u][v - 1];
                self.offer(&mut moved[u][v], candidate, steps[v]);
            }
        }
        moved
    }

    /// What the step to each cog of a ring costs, from the cog before.
    fn steps_along(&self, ring: u8) -> [Option<Cost>; N] {
        let mut steps = [None; N];
        for cog in 1..self.gears.cogs.len() as u8 {
            let (from, to) = (Gear::new(ring, cog - 1), Gear::new(ring, cog));
            if !self.settings.forbids(from) && !self.settings.forbids(to) {
                steps[usize::from(cog)] = self.step(from, to);
            }
        }
        steps
    }

    /// The way up changes to the next larger ring.
    fn cross_up(&self, table: &Table, ring: u8) -> Table {
        let mut crossed = [[None; N]; N];
        let cogs = self.gears.cogs.len();
        for a in 0..cogs {
            for b in 0..cogs {
                let (from, to) = (Gear::new(ring, a as u8), Gear::new(ring + 1, b as u8));
                let Some(cost) = self.crossover(from, to, 0) else {
                    continue;
                };
                // Where the way down lands, the way up does not leave yet.
                for d in 0..a {
                    let candidate = table[a][d].map(|entry| Entry {
                        from: (a as u8, 0),
                        ..entry
                    });
                    let cost = self.with_close(cost, a - d);
                    self.offer(&mut crossed[b][d], candidate, Some(cost));
                }
            }
        }
        crossed
    }

    /// The way down, walked from its end, changes to the next larger ring.
    fn cross_down(&self, table: &Table, ring: u8) -> Table {
        let mut crossed = [[None; N]; N];
        let cogs = self.gears.cogs.len();
        for d in 0..cogs {
            for c in 0..cogs {
                let (to, from) = (Gear::new(ring, d as u8), Gear::new(ring + 1, c as u8));
                let late = COMFORT_LAST_COG.saturating_sub(c as u8);
                let Some(cost) = self.crossover(to, from, late) else {
                    continue;
                };
                for b in c + 1..cogs {
                    let candidate = table[b][d].map(|entry| Entry {
                        from: (d as u8, 0),
                        ..entry
                    });
                    let cost = self.with_close(cost, b - c);
                    self.offer(&mut crossed[b][c], candidate, Some(cost));
                }
            }
        }
        crossed
    }

    /// What a crossover costs; `None` where it cannot be.
    fn crossover(&self, easier: Gear, harder: Gear, late: u8) -> Option<Cost> {
        let forbidden = self.settings.forbids(easier) || self.settings.forbids(harder);
        if forbidden || self.gears.compare(easier, harder) != Ordering::Less {
            return None;
        }
        let mut cost = self.step(easier, harder)?;
        let cogs = easier.cog.abs_diff(harder.cog);
        let far = u8::from(cogs > MOST_LANDING);
        let wide = u8::from(is_wide(self.gears, easier, harder));
        cost.counts = match self.settings.goal {
            LadderGoal::Even => [far, wide, cogs, 0, 0],
            LadderGoal::Comfort => [late, far, wide, cogs.abs_diff(COMFORT_LANDING), 0],
        };
        Some(cost)
    }

    /// The same with a landing so many rungs from the opposite crossover.
    fn with_close(&self, mut cost: Cost, rungs: usize) -> Cost {
        if self.settings.goal == LadderGoal::Comfort {
            cost.counts[4] += u8::from(rungs <= usize::from(CLOSE));
        }
        cost
    }

    /// What a step costs; `None` where it is larger than allowed.
    fn step(&self, easier: Gear, harder: Gear) -> Option<Cost> {
        let step = weight(self.gears, easier, harder);
        let wide = u8::from(is_wide(self.gears, easier, harder));
        let counts = match self.settings.goal {
            LadderGoal::Even => [0, wide, 0, 0, 0],
            LadderGoal::Comfort => [0, 0, wide, 0, 0],
        };
        match self.most {
            None => Some(Cost {
                counts,
                steps: step,
            }),
            Some(most) if step <= most => Some(Cost {
                counts,
                steps: step * step,
            }),
            Some(_) => None,
        }
    }

    fn offer(&self, place: &mut Option<Entry>, candidate: Option<Entry>, cost: Option<Cost>) {
        let (Some(candidate), Some(cost)) = (candidate, cost) else {
            return;
        };
        let mut sum = candidate.cost;
        for (sum, more) in sum.counts.iter_mut().zip(cost.counts) {
            *sum += more;
        }
        sum.steps = match self.most {
            None => sum.steps.max(cost.steps),
            Some(_) => sum.steps + cost.steps,
        };
        if place.is_none_or(|there| sum < there.cost) {
            *place = Some(Entry {
                cost: sum,
                ..candidate
            });
        }
    }
}

/// The crossovers that led to a state on the last ring.
fn way_back(crossings: &[Crossing], mut landed: (u8, u8)) -> Vec<HandCrossovers> {
    let mut moves = Vec::new();
    let from = |table: &Table, u: u8, v: u8| {
        table[usize::from(u)][usize::from(v)].map_or((0, 0), |entry| entry.from)
    };
    for crossing in crossings.iter().rev() {
        let (b, c) = landed;
        let (d, _) = from(&crossing.lands, b, c);
        let (a, _) = from(&crossing.between, b, d);
        moves.push(HandCrossovers {
            up: CogMove {
                leaves: a,
                lands: b,
            },
            down: CogMove {
                leaves: c,
                lands: d,
            },
        });
        landed = from(&crossing.leaves, a, d);
    }
    moves.reverse();
    moves
}

/// A step as the logarithm of the change in ratio, in millionths: whole numbers
/// add up to the same in any order.
pub(crate) fn weight(gears: &Gears, easier: Gear, harder: Gear) -> u64 {
    let change = gears.ratio(harder).0 / gears.ratio(easier).0;
    libm::round(libm::log(change) * 1e6) as u64
}

/// Whether a step is over [`WIDE_STEP`], without rounding.
pub(crate) fn is_wide(gears: &Gears, easier: Gear, harder: Gear) -> bool {
    let cross = |ring: Gear, cog: Gear| u32::from(gears.ring(ring).0) * u32::from(gears.cog(cog).0);
    cross(harder, easier) * 100 > cross(easier, harder) * (100 + WIDE_STEP.0 as u32)
}
