//! Curves through points, and their text as SVG path data.

use kurbo::{BezPath, Circle, Ellipse, PathEl, Point, Rect, RoundedRect, Shape, Vec2};

/// How closely circles and ellipses are followed, in drawing units (mm).
const TOLERANCE: f64 = 0.02;

/// A smooth closed curve through the points in order. A point given twice running is a corner.
pub fn blob(points: &[(f64, f64)]) -> BezPath {
    let mut path = smooth(points, true);
    path.close_path();
    path
}

/// A smooth open curve through the points in order. A point given twice running is a corner.
pub fn through(points: &[(f64, f64)]) -> BezPath {
    smooth(points, false)
}

/// Straight lines through the points in order.
pub fn polyline(points: &[(f64, f64)]) -> BezPath {
    let mut path = BezPath::new();
    for (i, &p) in points.iter().enumerate() {
        if i == 0 {
            path.move_to(p);
        } else {
            path.line_to(p);
        }
    }
    path
}

/// Straight lines through the points and back to the first.
pub fn polygon(points: &[(f64, f64)]) -> BezPath {
    let mut path = polyline(points);
    path.close_path();
    path
}

/// An ellipse about `(x, y)`.
pub fn ellipse(x: f64, y: f64, rx: f64, ry: f64) -> BezPath {
    Ellipse::new((x, y), (rx, ry), 0.0).to_path(TOLERANCE)
}

/// A circle about `(x, y)`.
pub fn circle(x: f64, y: f64, r: f64) -> BezPath {
    Circle::new((x, y), r).to_path(TOLERANCE)
}

/// A rectangle of `w` by `h` centred on `(x, y)`, its corners rounded by `r`.
pub fn rounded(x: f64, y: f64, w: f64, h: f64, r: f64) -> BezPath {
    let rect = Rect::from_center_size((x, y), (w, h));
    RoundedRect::from_rect(rect, r).to_path(TOLERANCE)
}

// Each knot takes the tangent of the circle through itself and its neighbours; handles are a third
// of the chord, so evenly spaced points on a circle give a circle.
fn smooth(points: &[(f64, f64)], closed: bool) -> BezPath {
    let (knots, corner) = knots(points, closed);
    let n = knots.len();
    let mut path = BezPath::new();
    let Some(&first) = knots.first() else {
        return path;
    };
    path.move_to(first);
    let tangent = |i: usize| -> Vec2 {
        let at_end = !closed && (i == 0 || i == n - 1);
        if corner[i] || at_end || n < 3 {
            return Vec2::ZERO;
        }
        let back = knots[i] - knots[(i + n - 1) % n];
        let on = knots[(i + 1) % n] - knots[i];
        let (lb, lo) = (back.hypot().max(1e-9), on.hypot().max(1e-9));
        let t = back * (lo / lb) + on * (lb / lo);
        t / t.hypot().max(1e-9)
    };
    let spans = if closed { n } else { n - 1 };
    for i in 0..spans {
        let j = (i + 1) % n;
        let chord = (knots[j] - knots[i]).hypot();
        let (ti, tj) = (tangent(i), tangent(j));
        let straight = (knots[j] - knots[i]) / 3.0;
        let leave = if ti == Vec2::ZERO {
            straight
        } else {
            ti * (chord * 0.36)
        };
        let arrive = if tj == Vec2::ZERO {
            straight
        } else {
            tj * (chord * 0.36)
        };
        path.curve_to(knots[i] + leave, knots[j] - arrive, knots[j]);
    }
    path
}

fn knots(points: &[(f64, f64)], closed: bool) -> (Vec<Point>, Vec<bool>) {
    let mut knots: Vec<Point> = Vec::new();
    let mut corner = Vec::new();
    for &p in points {
        let p = Point::from(p);
        if knots.last() == Some(&p) {
            corner[knots.len() - 1] = true;
        } else {
            knots.push(p);
            corner.push(false);
        }
    }
    if closed && knots.len() > 1 && knots.first() == knots.last() {
        knots.pop();
        corner.pop();
        corner[0] = true;
    }
    (knots, corner)
}

/// SVG path data, rounded to a tenth of a unit.
pub fn path_data(path: &BezPath) -> String {
    let mut d = String::new();
    let mut put = |letter: char, points: &[Point]| {
        d.push(letter);
        for (i, p) in points.iter().enumerate() {
            if i > 0 {
                d.push(' ');
            }
            tenth(&mut d, p.x);
            d.push(' ');
            tenth(&mut d, p.y);
        }
    };
    for el in path.elements() {
        match *el {
            PathEl::MoveTo(p) => put('M', &[p]),
            PathEl::LineTo(p) => put('L', &[p]),
            PathEl::QuadTo(a, p) => put('Q', &[a, p]),
            PathEl::CurveTo(a, b, p) => put('C', &[a, b, p]),
            PathEl::ClosePath => put('Z', &[]),
        }
    }
    d
}

// "-0.0" and trailing ".0" would only cost bytes.
fn tenth(d: &mut String, value: f64) {
    use std::fmt::Write;
    let tenths = (value * 10.0).round() as i64;
    let (whole, part) = (tenths / 10, (tenths % 10).abs());
    let sign = if tenths < 0 && whole == 0 { "-" } else { "" };
    let _ = write!(d, "{sign}{whole}");
    if part != 0 {
        let _ = write!(d, ".{part}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_of_a_circle_give_a_circle() {
        let d = 0.5_f64.sqrt() * 10.0;
        let path = blob(&[
            (10.0, 0.0),
            (d, d),
            (0.0, 10.0),
            (-d, d),
            (-10.0, 0.0),
            (-d, -d),
            (0.0, -10.0),
            (d, -d),
        ]);
        let area = path.area().abs();
        // Pi times 100.
        assert!((area - 314.16).abs() < 3.0, "{area}");
    }

    #[test]
    fn a_point_given_twice_is_a_corner() {
        let round = blob(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]);
        let square = blob(&[
            (0.0, 0.0),
            (0.0, 0.0),
            (10.0, 0.0),
            (10.0, 0.0),
            (10.0, 10.0),
            (10.0, 10.0),
            (0.0, 10.0),
            (0.0, 10.0),
        ]);
        assert!((square.area().abs() - 100.0).abs() < 1e-6);
        assert!(round.area().abs() > 110.0);
    }

    #[test]
    fn path_data_is_short_and_exact_to_a_tenth() {
        let path = polygon(&[(0.0, -0.04), (-0.26, 12.0), (3.949, -7.25)]);
        assert_eq!(path_data(&path), "M0 0L-0.3 12L3.9 -7.3Z");
    }
}
