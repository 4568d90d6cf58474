//! Round tubes along a line in space, drawn as their outline.

use super::curve::through;
use super::eye::{Spot, on_plane, on_the_way, project, spot};
use kurbo::{BezPath, Point, Vec2};

/// A tube: the line of its middle and its radius there, in millimetres.
#[derive(Debug, Clone)]
pub struct Tube {
    rings: Vec<Ring>,
}

#[derive(Debug, Clone, Copy)]
struct Ring {
    at: Spot,
    middle: Point,
    normal: Vec2,
    radius: f64,
}

// Points between two given ones: enough that the eye sees no corner at wall size.
const STEPS: usize = 5;

impl Tube {
    /// A tube through the given places with the given radius at each. Needs two places or more.
    pub fn new(line: &[(Spot, f64)]) -> Tube {
        let mut places = Vec::new();
        for i in 0..line.len().saturating_sub(1) {
            for s in 0..STEPS {
                places.push(between(line, i, s as f64 / STEPS as f64));
            }
        }
        places.extend(line.last().copied());
        let flat: Vec<Point> = places.iter().map(|&(p, _)| project(p)).collect();
        let rings = places
            .iter()
            .enumerate()
            .map(|(i, &(at, radius))| Ring {
                at,
                middle: flat[i],
                normal: normal(&flat, i),
                radius,
            })
            .collect();
        Tube { rings }
    }

    /// A tube of one radius drawn straight on the drawing plane, through points in mm.
    pub fn flat(points: &[(f64, f64)], radius: f64) -> Tube {
        // Parallel projection: a place at y = 0 lands where its z says.
        let line: Vec<_> = points
            .iter()
            .map(|&(x, v)| (on_plane(x, v), radius))
            .collect();
        Tube::new(&line)
    }

    /// The closed outline, flat at both ends.
    pub fn outline(&self) -> BezPath {
        self.band(-1.0, 1.0)
    }

    /// The closed strip between two lines along the tube; -1 is the left edge, 0 the middle, 1 the
    /// right edge.
    pub fn band(&self, from: f64, to: f64) -> BezPath {
        let left: Vec<_> = self.rings.iter().map(|r| r.across(from)).collect();
        let right: Vec<_> = self.rings.iter().rev().map(|r| r.across(to)).collect();
        let mut path = run(&left);
        path.line_to(right[0]);
        path.extend(run(&right).into_iter().skip(1));
        path.close_path();
        path
    }

    /// A line along the tube at `across` (-1 left edge, 1 right edge) between two lengths in mm.
    pub fn along(&self, across: f64, from: f64, to: f64) -> BezPath {
        let mut points = vec![self.at(from).across(across)];
        let mut walked = 0.0;
        for pair in self.rings.windows(2) {
            walked += distance(pair[0].at, pair[1].at);
            if walked > from && walked < to {
                points.push(pair[1].across(across));
            }
        }
        points.push(self.at(to).across(across));
        run(&points)
    }

    /// Length along the middle, mm.
    pub fn length(&self) -> f64 {
        self.rings
            .windows(2)
            .map(|p| distance(p[0].at, p[1].at))
            .sum()
    }

    /// A ring drawn across the tube at a length, bowed towards the start (negative) or end
    /// (positive) by `bow` mm, slanted by `slant` mm from left edge to right edge.
    pub fn ring(&self, at: f64, slant: f64, bow: f64) -> BezPath {
        let a = self.at(at - slant / 2.0).across(-1.0);
        let b = self.at(at + slant / 2.0).across(1.0);
        let middle = self.at(at);
        let forward = Vec2::new(-middle.normal.y, middle.normal.x) * bow;
        let mut path = BezPath::new();
        path.move_to(a);
        path.curve_to(a.lerp(b, 0.3) + forward, a.lerp(b, 0.7) + forward, b);
        path
    }

    /// Wrapped tape: the edges of the turns from one length to another, `pitch` mm apart.
    pub fn wraps(&self, from: f64, to: f64, pitch: f64, slant: f64) -> Vec<BezPath> {
        let turns = ((to - from) / pitch).floor().max(0.0) as usize;
        (0..=turns)
            .map(|i| self.ring(from + i as f64 * pitch, slant, 1.6))
            .collect()
    }

    /// The middle of the tube on the drawing, at a length in mm.
    pub fn middle(&self, at: f64) -> Point {
        self.at(at).middle
    }

    /// Direction of the tube on the drawing at a length in mm, of length one.
    pub fn heading(&self, at: f64) -> Vec2 {
        let n = self.at(at).normal;
        Vec2::new(-n.y, n.x)
    }

    fn at(&self, length: f64) -> Ring {
        let mut left = length;
        for pair in self.rings.windows(2) {
            let step = distance(pair[0].at, pair[1].at);
            if left <= step {
                let t = (left / step.max(1e-9)).max(0.0);
                return pair[0].mix(pair[1], t);
            }
            left -= step;
        }
        self.rings[self.rings.len() - 1]
    }
}

impl Ring {
    fn across(self, side: f64) -> Point {
        self.middle - self.normal * (self.radius * -side)
    }

    fn mix(self, other: Ring, t: f64) -> Ring {
        let normal = self.normal.lerp(other.normal, t);
        Ring {
            at: on_the_way(self.at, other.at, t),
            middle: self.middle.lerp(other.middle, t),
            normal: normal / normal.hypot().max(1e-9),
            radius: self.radius + (other.radius - self.radius) * t,
        }
    }
}

// Catmull-Rom through the given places; the ends repeat themselves.
fn between(line: &[(Spot, f64)], i: usize, t: f64) -> (Spot, f64) {
    let get = |k: isize| line[k.clamp(0, line.len() as isize - 1) as usize];
    let i = i as isize;
    let (a, b, c, d) = (get(i - 1), get(i), get(i + 1), get(i + 2));
    let curve = |a: f64, b: f64, c: f64, d: f64| {
        let m0 = (c - a) / 2.0;
        let m1 = (d - b) / 2.0;
        let (t2, t3) = (t * t, t * t * t);
        (2.0 * t3 - 3.0 * t2 + 1.0) * b
            + (t3 - 2.0 * t2 + t) * m0
            + (3.0 * t2 - 2.0 * t3) * c
            + (t3 - t2) * m1
    };
    let at = spot(
        curve(a.0.x, b.0.x, c.0.x, d.0.x),
        curve(a.0.y, b.0.y, c.0.y, d.0.y),
        curve(a.0.z, b.0.z, c.0.z, d.0.z),
    );
    (at, b.1 + (c.1 - b.1) * t)
}

fn normal(flat: &[Point], i: usize) -> Vec2 {
    let before = flat[i.saturating_sub(1)];
    let after = flat[(i + 1).min(flat.len() - 1)];
    let d = after - before;
    let d = d / d.hypot().max(1e-9);
    Vec2::new(-d.y, d.x)
}

fn distance(a: Spot, b: Spot) -> f64 {
    let (x, y, z) = (b.x - a.x, b.y - a.y, b.z - a.z);
    (x * x + y * y + z * z).sqrt()
}

fn run(points: &[Point]) -> BezPath {
    let tuples: Vec<(f64, f64)> = points.iter().map(|p| (p.x, p.y)).collect();
    through(&tuples)
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::Shape;

    #[test]
    fn a_level_tube_is_as_high_as_its_diameter() {
        let tube = Tube::new(&[(spot(0.0, 0.0, 0.0), 12.0), (spot(100.0, 0.0, 0.0), 12.0)]);
        let bounds = tube.outline().bounding_box();
        assert!((bounds.height() - 24.0).abs() < 1e-6, "{bounds}");
        assert!((bounds.width() - 100.0).abs() < 1e-6, "{bounds}");
        assert!((tube.length() - 100.0).abs() < 1e-6);
    }

    #[test]
    fn a_tube_pointing_away_is_shortened_by_the_pitch_and_keeps_its_thickness() {
        let tube = Tube::new(&[(spot(0.0, 0.0, 0.0), 10.0), (spot(0.0, 0.0, 80.0), 10.0)]);
        let bounds = tube.outline().bounding_box();
        // Half of 80 mm: the sine of 30 degrees.
        assert!((bounds.height() - 40.0).abs() < 1e-6, "{bounds}");
        assert!((bounds.width() - 20.0).abs() < 1e-6, "{bounds}");
    }

    #[test]
    fn wraps_are_spaced_along_the_tube() {
        let tube = Tube::new(&[(spot(0.0, 0.0, 0.0), 12.0), (spot(100.0, 0.0, 0.0), 12.0)]);
        let wraps = tube.wraps(10.0, 90.0, 20.0, 6.0);
        let middles: Vec<f64> = wraps.iter().map(|w| w.bounding_box().center().x).collect();
        assert_eq!(middles.len(), 5);
        for (i, x) in middles.iter().enumerate() {
            assert!((x - (10.0 + 20.0 * i as f64)).abs() < 2.0, "{middles:?}");
        }
    }
}
