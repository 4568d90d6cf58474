//! Seats along a bar: who sits where, so that nothing is drawn on top of something else.

use crate::cockpit::BarSide;

/// A stretch of bar along which things sit side by side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rail {
    /// On the bar: tops of a drop bar, front of a flat bar.
    Top,
    /// Under a flat bar, towards the rider.
    Under,
    /// Where levers clamp.
    Hood,
    /// Along the drop.
    Drop,
    /// Back from the end of an extension.
    Tip,
    /// The low bar of side grips.
    Low,
    /// The stem.
    Stem,
}

/// What is taken so far.
#[derive(Debug, Clone, Default)]
pub struct Seats {
    taken: Vec<(Rail, BarSide, f64, f64)>,
}

impl Seats {
    /// Takes the free place nearest to `want` within `range` (mm along the rail) for something
    /// `width` mm wide. Gives the place and how many sit there already: zero while the rail has
    /// room, more when things must be stacked.
    pub fn take(
        &mut self,
        rail: Rail,
        side: BarSide,
        want: f64,
        width: f64,
        range: (f64, f64),
    ) -> (f64, f64) {
        let (low, high) = (range.0.min(range.1), range.1.max(range.0));
        let want = want.clamp(low, high);
        let mut offers = vec![want];
        for &(r, s, middle, half) in &self.taken {
            if r == rail && s == side {
                let apart = half + width / 2.0;
                offers.extend([middle - apart, middle + apart]);
            }
        }
        let at = offers
            .into_iter()
            .filter(|&x| x >= low && x <= high && self.is_free(rail, side, x, width))
            .min_by(|a, b| (a - want).abs().total_cmp(&(b - want).abs()))
            .unwrap_or(want);
        let stacked = self.met(rail, side, at, width).count() as f64;
        self.taken.push((rail, side, at, width / 2.0));
        (at, stacked)
    }

    /// Blocks a stretch `width` mm wide about `at`.
    pub fn block(&mut self, rail: Rail, side: BarSide, at: f64, width: f64) {
        self.taken.push((rail, side, at, width / 2.0));
    }

    /// How many sit on the rail already; takes the next seat.
    pub fn count(&mut self, rail: Rail, side: BarSide) -> f64 {
        let count = self
            .taken
            .iter()
            .filter(|t| t.0 == rail && t.1 == side)
            .count();
        self.block(rail, side, 0.0, 0.0);
        count as f64
    }

    fn is_free(&self, rail: Rail, side: BarSide, at: f64, width: f64) -> bool {
        self.met(rail, side, at, width).next().is_none()
    }

    fn met(
        &self,
        rail: Rail,
        side: BarSide,
        at: f64,
        width: f64,
    ) -> impl Iterator<Item = &(Rail, BarSide, f64, f64)> {
        // A hair of overlap lets neighbours touch.
        self.taken
            .iter()
            .filter(move |t| t.0 == rail && t.1 == side)
            .filter(move |t| (t.2 - at).abs() < t.3 + width / 2.0 - 0.01)
    }
}
