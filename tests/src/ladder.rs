//! The best ladder by brute force and by a general graph search (the
//! `pathfinding` crate), to hold the core's against.
//!
//! Written from the objective in the documentation of `Ladder::of`; it shares no
//! code with the core and knows gears as numbers only.

use std::ops::Add;

use leverwright_core::gears::{Gear, Gears, Ladder, LadderGoal, LadderSettings, Teeth};
use pathfinding::num_traits::Zero;
use pathfinding::prelude::dijkstra;

/// A ring and a cog, both counted from the easiest gear on.
pub type Rung = (usize, usize);

/// The rungs of a way, from the easiest, between which the ring changes.
fn crossings(way: &[Rung]) -> Vec<(Rung, Rung)> {
    let pairs = way.windows(2).map(|pair| (pair[0], pair[1]));
    pairs.filter(|(a, b)| a.0 != b.0).collect()
}

/// What the objective compares, first to last; the steps in millionths of the
/// logarithm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Worth {
    counts: [u64; 5],
    largest: u64,
    squares: u64,
}

/// A bike as numbers.
pub struct Bike {
    /// Teeth of the rings, from the smallest.
    pub rings: Vec<u64>,
    /// Teeth of the cogs, from the largest.
    pub cogs: Vec<u64>,
    /// What the ladder aims at.
    pub goal: LadderGoal,
    /// What it keeps out of.
    pub forbidden: Vec<Rung>,
}

impl Bike {
    fn harder(&self, (r, c): Rung, (s, d): Rung) -> bool {
        self.rings[s] * self.cogs[c] > self.rings[r] * self.cogs[d]
    }

    fn step(&self, (r, c): Rung, (s, d): Rung) -> u64 {
        let change = (self.rings[s] as f64 / self.cogs[d] as f64)
            / (self.rings[r] as f64 / self.cogs[c] as f64);
        (change.ln() * 1e6).round() as u64
    }

    fn wide(&self, (r, c): Rung, (s, d): Rung) -> u64 {
        u64::from(self.rings[s] * self.cogs[c] * 10 > self.rings[r] * self.cogs[d] * 12)
    }

    fn open(&self, gear: Rung) -> bool {
        !self.forbidden.contains(&gear)
    }

    /// What a step between neighbouring rungs adds; `late` is how many cogs
    /// later than the third-largest a crossover down leaves.
    fn counts(&self, a: Rung, b: Rung, late: u64) -> [u64; 5] {
        let (wide, cogs) = (self.wide(a, b), a.1.abs_diff(b.1) as u64);
        if a.0 == b.0 {
            return match self.goal {
                LadderGoal::Even => [0, wide, 0, 0, 0],
                LadderGoal::Comfort => [0, 0, wide, 0, 0],
            };
        }
        let far = u64::from(cogs > 3);
        match self.goal {
            LadderGoal::Even => [far, wide, cogs, 0, 0],
            LadderGoal::Comfort => [late, far, wide, cogs.abs_diff(2), 0],
        }
    }

    /// What two ways are worth, each from the easiest rung.
    pub fn worth(&self, ways: [&[Rung]; 2]) -> Worth {
        let mut worth = Worth {
            counts: [0; 5],
            largest: 0,
            squares: 0,
        };
        for (down, way) in ways.into_iter().enumerate() {
            for pair in way.windows(2) {
                let late = if down == 1 {
                    2_usize.saturating_sub(pair[1].1)
                } else {
                    0
                };
                let more = self.counts(pair[0], pair[1], late as u64);
                for (sum, more) in worth.counts.iter_mut().zip(more) {
                    *sum += more;
                }
                let step = self.step(pair[0], pair[1]);
                worth.largest = worth.largest.max(step);
                worth.squares += step * step;
            }
        }
        for (u, d) in crossings(ways[0]).iter().zip(&crossings(ways[1])) {
            worth.counts[4] += self.close(d.0.1, u.0.1) + self.close(d.1.1, u.1.1);
        }
        worth
    }

    /// Whether a landing is within two rungs of where the opposite crossover
    /// leaves, as far as the goal asks.
    fn close(&self, a: usize, b: usize) -> u64 {
        u64::from(self.goal == LadderGoal::Comfort && a.abs_diff(b) <= 2)
    }

    fn ends(&self) -> Option<[Rung; 2]> {
        let all = (0..self.rings.len()).flat_map(|r| (0..self.cogs.len()).map(move |c| (r, c)));
        let open: Vec<_> = all.filter(|gear| self.open(*gear)).collect();
        let first = *open.first()?;
        let easiest = open
            .iter()
            .fold(first, |a, b| if self.harder(*b, a) { *b } else { a });
        let hardest = open
            .iter()
            .fold(first, |a, b| if self.harder(*b, a) { a } else { *b });
        Some([easiest, hardest])
    }

    /// Every way from the easiest gear to the hardest: cog by cog, rings only
    /// towards the larger.
    fn ways(&self) -> Vec<Vec<Rung>> {
        let Some([from, to]) = self.ends() else {
            return Vec::new();
        };
        let mut ways = Vec::new();
        self.walk(vec![from], to, &mut ways);
        ways
    }

    fn walk(&self, so_far: Vec<Rung>, to: Rung, ways: &mut Vec<Vec<Rung>>) {
        let (r, c) = so_far[so_far.len() - 1];
        if (r, c) == to {
            ways.push(so_far);
            return;
        }
        let mut next = vec![(r, c + 1)];
        next.extend((0..self.cogs.len()).map(|d| (r + 1, d)));
        for rung in next {
            let there = rung.0 <= to.0 && rung.1 < self.cogs.len();
            if there && self.open(rung) && self.harder((r, c), rung) {
                let mut longer = so_far.clone();
                longer.push(rung);
                self.walk(longer, to, ways);
            }
        }
    }

    /// What the best ladder is worth, looking at all.
    pub fn best_by_brute_force(&self) -> Option<Worth> {
        let ways = self.ways();
        let mut best = None;
        for up in &ways {
            for down in &ways {
                // Where one crossover lands, the other does not yet leave.
                let (ups, downs) = (crossings(up), crossings(down));
                let mut both = ups.iter().zip(&downs);
                if both.all(|(u, d)| d.0.1 < u.0.1 && d.1.1 < u.1.1) {
                    let worth = self.worth([up, down]);
                    if best.is_none_or(|best| worth < best) {
                        best = Some(worth);
                    }
                }
            }
        }
        best
    }

    /// The same for the core.
    pub fn gears(&self) -> Gears {
        let teeth = |list: &[u64]| list.iter().map(|n| Teeth(*n as u8)).collect();
        Gears {
            rings: teeth(&self.rings),
            cogs: teeth(&self.cogs),
            wheel: None,
            crank: None,
        }
    }

    /// What the core's ladder is worth.
    pub fn found(&self) -> Option<Worth> {
        let forbidden = self.forbidden.iter();
        let settings = LadderSettings {
            goal: self.goal,
            forbidden: forbidden
                .map(|(r, c)| Gear::new(*r as u8, *c as u8))
                .collect(),
            by_hand: Vec::new(),
        };
        let ladder = Ladder::of(&self.gears(), &settings).ok()?;
        let plain = |gear: &Gear| (usize::from(gear.ring), usize::from(gear.cog));
        let up: Vec<_> = ladder.up.iter().map(plain).collect();
        let down: Vec<_> = ladder.down.iter().rev().map(plain).collect();
        Some(self.worth([&up, &down]))
    }
}

/// The cost of a graph search: counts add up; the last adds up or is the
/// largest, by the round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Cost<const SUM: bool>([u64; 5], u64);

impl<const SUM: bool> Add for Cost<SUM> {
    type Output = Self;

    fn add(self, more: Self) -> Self {
        let counts = std::array::from_fn(|at| self.0[at] + more.0[at]);
        Cost(
            counts,
            if SUM {
                self.1 + more.1
            } else {
                self.1.max(more.1)
            },
        )
    }
}

impl<const SUM: bool> Zero for Cost<SUM> {
    fn zero() -> Self {
        Cost([0; 5], 0)
    }

    fn is_zero(&self) -> bool {
        *self == Self::zero()
    }
}

/// Where both ways stand: the ring of the way down, whether the way up has
/// crossed already, the cogs of both.
type State = (usize, bool, usize, usize);

impl Bike {
    fn search<const SUM: bool>(&self, most: u64) -> Option<Cost<SUM>> {
        let [from, to] = self.ends()?;
        if from.0 > to.0 {
            return None;
        }
        let edge = |a: Rung, b: Rung, late: usize, close: u64| {
            if b.1 >= self.cogs.len() || !self.open(a) || !self.open(b) || !self.harder(a, b) {
                return None;
            }
            let step = self.step(a, b);
            let last = if SUM { step * step } else { step };
            let mut counts = self.counts(a, b, late as u64);
            counts[4] += close;
            (step <= most).then_some(Cost(counts, last))
        };
        let next = |&(ring, crossed, u, v): &State| {
            let mut next: Vec<(State, Cost<SUM>)> = Vec::new();
            let mut offer = |state: State, cost: Option<Cost<SUM>>| {
                next.extend(cost.map(|cost| (state, cost)));
            };
            if crossed {
                for c in 0..u {
                    let late = 2_usize.saturating_sub(c);
                    offer(
                        (ring + 1, false, u, c),
                        edge((ring, v), (ring + 1, c), late, self.close(u, c)),
                    );
                }
            } else {
                offer(
                    (ring, false, u + 1, v),
                    edge((ring, u), (ring, u + 1), 0, 0),
                );
                offer(
                    (ring, false, u, v + 1),
                    edge((ring, v), (ring, v + 1), 0, 0),
                );
                if ring < to.0 && v < u {
                    for b in 0..self.cogs.len() {
                        let edge = edge((ring, u), (ring + 1, b), 0, self.close(u, v));
                        offer((ring, true, b, v), edge);
                    }
                }
            }
            next
        };
        let start = (from.0, false, from.1, from.1);
        let end = (to.0, false, to.1, to.1);
        dijkstra(&start, next, |state| *state == end).map(|(_, cost)| cost)
    }

    /// What the best ladder is worth, by Dijkstra's search in two rounds.
    pub fn best_by_graph(&self) -> Option<Worth> {
        let largest: Cost<false> = self.search(u64::MAX - 1)?;
        let squares: Cost<true> = self.search(largest.1)?;
        Some(Worth {
            counts: squares.0,
            largest: largest.1,
            squares: squares.1,
        })
    }
}
