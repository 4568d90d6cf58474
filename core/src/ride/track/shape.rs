//! Heights and bends at even distances.

use super::Point;
use super::clean::distance;
use crate::ride::road::{Bend, MOST_HEIGHTS, SPACING, smoothed};

pub(super) struct Shape {
    pub(super) heights: Vec<f64>,
    pub(super) bends: Vec<Bend>,
}

/// How far before and after a place the track is looked at for its bend, in
/// metres: less would take the receiver's wander for bends (our judgement).
const ARM: f64 = 15.0;

/// Between points farther apart than this the track says nothing of bends, in
/// metres.
const SPARSE: f64 = 40.0;

/// Of points that lie at least 1 m apart, how far along they lie, and their
/// heights.
pub(super) fn shape(points: &[Point], along: &[f64], heights: &[f64]) -> Shape {
    let length = along[along.len() - 1];
    let pieces = ((length / SPACING).round() as usize).clamp(1, MOST_HEIGHTS - 1);
    let spacing = length / pieces as f64;
    let mut even = Vec::with_capacity(pieces + 1);
    let mut bends = Vec::with_capacity(pieces + 1);
    let mut walk = Walk { along, n: 0 };
    let (mut behind, mut ahead) = (Walk { along, n: 0 }, Walk { along, n: 0 });
    for piece in 0..=pieces {
        let at = piece as f64 * spacing;
        let (n, share) = walk.to(at);
        even.push(heights[n] + (heights[n + 1] - heights[n]) * share);
        let places = [behind.to(at - ARM), (n, share), ahead.to(at + ARM)];
        let inside = at >= ARM && at <= length - ARM;
        let dense = places
            .iter()
            .all(|(n, _)| along[n + 1] - along[*n] <= SPARSE);
        bends.push(if inside && dense {
            Bend::of_radius(radius(places.map(|(n, share)| between(points, n, share))))
        } else {
            Bend::Straight
        });
    }
    Shape {
        heights: smoothed(&even, spacing),
        bends,
    }
}

/// Walks along the points, forward only.
struct Walk<'a> {
    along: &'a [f64],
    n: usize,
}

impl Walk<'_> {
    /// The point before a distance, and how much of the way to the next.
    fn to(&mut self, at: f64) -> (usize, f64) {
        while self.n + 2 < self.along.len() && self.along[self.n + 1] < at {
            self.n += 1;
        }
        let (from, to) = (self.along[self.n], self.along[self.n + 1]);
        (self.n, ((at - from) / (to - from)).clamp(0.0, 1.0))
    }
}

fn between(points: &[Point], n: usize, share: f64) -> Point {
    let (a, b) = (points[n], points[n + 1]);
    Point {
        latitude: a.latitude + (b.latitude - a.latitude) * share,
        longitude: a.longitude + (b.longitude - a.longitude) * share,
        height: None,
    }
}

/// The radius in metres of the circle through three places: the product of the
/// sides over four times the area (elementary geometry).
fn radius(places: [Point; 3]) -> f64 {
    let [a, b, c] = places;
    let (ab, bc, ac) = (distance(&a, &b), distance(&b, &c), distance(&a, &c));
    let half = 0.5 * (ab + bc + ac);
    let square = half * (half - ab) * (half - bc) * (half - ac);
    if square <= 1e-9 {
        // In one line: straight on, or back on itself.
        return if ac < 0.5 * (ab + bc) {
            1.0
        } else {
            f64::INFINITY
        };
    }
    ab * bc * ac / (4.0 * square.sqrt())
}
