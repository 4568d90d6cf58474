//! What the rider sees of the road: shapes that follow from the place on it
//! alone.
//!
//! A camera at the height of the eyes looks along the road. Heights are drawn
//! [`STEEPER`] than they are, or a hill would hardly show.

use std::fmt::Write;

use super::course::Course;

/// Width of the picture, units.
pub const WIDE: f64 = 4000.0;
/// Height of the picture, units.
pub const HIGH: f64 = 1300.0;

/// The level horizon, units from the top.
const HORIZON: f64 = 520.0;
/// Units for a metre seen from a metre away.
const FOCUS: f64 = 2000.0;
/// How high the eyes are, in metres.
const EYES: f64 = 1.5;
/// How many times steeper slopes are drawn.
const STEEPER: f64 = 2.4;
/// How much of the slope under the wheels the eyes follow.
const FOLLOWS: f64 = 0.6;
/// Half the width of the road, in metres.
const HALF: f64 = 2.2;
/// How far out posts stand, in metres.
const POST: f64 = 3.3;
/// From one post to the next, in metres.
const POSTS: f64 = 12.0;
/// From one dash of the middle line to the next, in metres.
const DASHES: f64 = 6.0;
/// Nearest and farthest that is drawn, in metres.
const NEAR: f64 = 2.3;
const FAR: f64 = 170.0;
/// Each sample lies so many times farther than the one before.
const FARTHER: f64 = 1.12;

/// Path data of an SVG picture of [`WIDE`] by [`HIGH`] units, in painting order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct RoadView {
    /// Far hills, a line.
    pub hills: String,
    /// The ground, an area.
    pub ground: String,
    /// Furrows across the ground, lines.
    pub furrows: String,
    /// The road, an area.
    pub road: String,
    /// Its edges, lines.
    pub edges: String,
    /// The middle line and the line to stop at, areas.
    pub marks: String,
    /// Posts along the road, lines.
    pub posts: String,
    /// The board at the line to stop at, an area.
    pub board: String,
}

/// The road straight ahead, sampled.
struct Ahead {
    samples: Vec<Sample>,
}

#[derive(Clone, Copy)]
struct Sample {
    /// How far ahead, in metres.
    far: f64,
    /// How far to the right the middle of the road is, in metres.
    aside: f64,
    /// How high it is above the line of sight, in metres as drawn.
    high: f64,
    /// The highest point on the picture of everything nearer, units from the top.
    top: f64,
}

impl Sample {
    fn x(&self, aside: f64) -> f64 {
        WIDE / 2.0 + FOCUS * (self.aside + aside) / self.far
    }

    fn y(&self, above: f64) -> f64 {
        HORIZON + FOCUS * (EYES - self.high - above) / self.far
    }

    /// Whether what is nearer does not hide it.
    fn is_seen(&self) -> bool {
        self.y(0.0) <= self.top + 1.0
    }

    /// Its height on the picture, at most where it comes out from behind what is
    /// nearer.
    fn seen_y(&self) -> f64 {
        self.y(0.0).min(self.top)
    }
}

impl Ahead {
    fn of(course: &Course, at: f64) -> Ahead {
        let sight = course.grade(at) * STEEPER * FOLLOWS;
        let mut samples = Vec::new();
        let (mut far, mut heading, mut aside, mut high) = (0.0, 0.0, 0.0, 0.0);
        // What is nearest lies below the picture and hides nothing.
        let mut top = f64::INFINITY;
        let mut next = NEAR;
        while next <= FAR {
            let length = next - far;
            let middle = at + far + length / 2.0;
            heading += course.bend(middle) * length / 2.0;
            aside += heading * length;
            heading += course.bend(middle) * length / 2.0;
            high += (course.grade(middle) * STEEPER - sight) * length;
            far = next;
            let sample = Sample {
                far,
                aside,
                high,
                top,
            };
            top = top.min(sample.y(0.0));
            samples.push(sample);
            next *= FARTHER;
        }
        Ahead { samples }
    }

    /// The road so many metres ahead, between two samples.
    fn at(&self, far: f64) -> Option<Sample> {
        let after = self.samples.iter().position(|sample| sample.far >= far)?;
        let (a, b) = (self.samples[after.checked_sub(1)?], self.samples[after]);
        let share = (far - a.far) / (b.far - a.far);
        Some(Sample {
            far,
            aside: a.aside + share * (b.aside - a.aside),
            high: a.high + share * (b.high - a.high),
            top: b.top.min(a.top),
        })
    }

    /// Multiples of a distance along the road that lie ahead, farthest last.
    fn multiples(&self, at: f64, every: f64, most: f64) -> impl Iterator<Item = f64> + use<> {
        let first = every - at.rem_euclid(every);
        let count = (most / every) as u32;
        (0..count)
            .map(move |n| first + f64::from(n) * every)
            .filter(move |far| *far > NEAR && *far < most)
    }

    fn highest(&self) -> f64 {
        let seen = self.samples.iter().map(Sample::seen_y);
        seen.fold(HIGH, f64::min)
    }
}

impl RoadView {
    /// The view from a place on a course, in metres.
    pub fn of(course: &Course, at: f64) -> RoadView {
        let ahead = Ahead::of(course, at);
        let mut view = RoadView::default();
        view.draw_hills(course, at);
        view.draw_ground(&ahead, at);
        view.draw_road(&ahead);
        view.draw_marks(&ahead, course, at);
        view.draw_posts(&ahead, at);
        view
    }

    fn draw_hills(&mut self, course: &Course, at: f64) {
        let level = HORIZON + FOCUS * course.grade(at) * STEEPER * FOLLOWS;
        let hills = [
            0.0, 60.0, 40.0, 130.0, 90.0, 30.0, 70.0, 160.0, 110.0, 50.0, 20.0,
        ];
        let width = WIDE / (hills.len() - 1) as f64;
        for (n, height) in hills.iter().enumerate() {
            point(&mut self.hills, n == 0, n as f64 * width, level - height);
        }
    }

    fn draw_ground(&mut self, ahead: &Ahead, at: f64) {
        let top = ahead.highest();
        let _ = write!(self.ground, "M0 {top:.0}H{WIDE}V{HIGH}H0Z");
        for far in ahead.multiples(at, POSTS, 120.0) {
            let Some(sample) = ahead.at(far).filter(Sample::is_seen) else {
                continue;
            };
            let y = sample.y(0.0);
            let (left, right) = (sample.x(-POST), sample.x(POST));
            let _ = write!(self.furrows, "M0 {y:.0}H{left:.0}M{right:.0} {y:.0}H{WIDE}");
        }
    }

    fn draw_road(&mut self, ahead: &Ahead) {
        let runs = ahead.samples.chunk_by(|a, b| a.is_seen() == b.is_seen());
        for run in runs.filter(|run| run[0].is_seen()) {
            let mut back = String::new();
            for (n, sample) in run.iter().enumerate() {
                let y = sample.seen_y();
                point(&mut self.road, n == 0, sample.x(-HALF), y);
                point(&mut self.edges, n == 0, sample.x(-HALF), y);
                point(&mut back, n == 0, sample.x(HALF), y);
            }
            self.edges.push_str(&back);
            for sample in run.iter().rev() {
                point(&mut self.road, false, sample.x(HALF), sample.seen_y());
            }
            self.road.push('Z');
        }
    }

    fn draw_marks(&mut self, ahead: &Ahead, course: &Course, at: f64) {
        for far in ahead.multiples(at, DASHES, 70.0) {
            self.across(ahead, (far, far + 2.0), 0.07);
        }
        if let Some(line) = course.line(at) {
            let far = (line - at).max(NEAR);
            self.across(ahead, (far, far + 0.6), HALF);
            self.draw_board(ahead, line - at + 0.5);
        }
    }

    /// Paint on the road from one distance to another.
    fn across(&mut self, ahead: &Ahead, (from, to): (f64, f64), half: f64) {
        let ends = ahead.at(from).zip(ahead.at(to));
        let Some((near, far)) = ends.filter(|(near, far)| near.is_seen() && far.is_seen()) else {
            return;
        };
        let corners = [(near, -half), (near, half), (far, half), (far, -half)];
        for (n, (sample, aside)) in corners.iter().enumerate() {
            point(&mut self.marks, n == 0, sample.x(*aside), sample.y(0.0));
        }
        self.marks.push('Z');
    }

    /// A board with eight corners on a post.
    fn draw_board(&mut self, ahead: &Ahead, far: f64) {
        const CORNERS: [(f64, f64); 8] = [
            (-0.5, 0.2),
            (-0.2, 0.5),
            (0.2, 0.5),
            (0.5, 0.2),
            (0.5, -0.2),
            (0.2, -0.5),
            (-0.2, -0.5),
            (-0.5, -0.2),
        ];
        let Some(sample) = ahead.at(far) else { return };
        upright(&mut self.posts, &sample, POST, 0.8);
        for (n, (aside, above)) in CORNERS.iter().enumerate() {
            let y = sample.y(1.3 + above);
            point(&mut self.board, n == 0, sample.x(POST + aside), y);
        }
        self.board.push('Z');
    }

    fn draw_posts(&mut self, ahead: &Ahead, at: f64) {
        for far in ahead.multiples(at, POSTS, 120.0) {
            let Some(sample) = ahead.at(far) else {
                continue;
            };
            upright(&mut self.posts, &sample, -POST, 0.8);
            upright(&mut self.posts, &sample, POST, 0.8);
        }
    }
}

/// A post, as much of it as is seen.
fn upright(posts: &mut String, sample: &Sample, aside: f64, height: f64) {
    let (x, foot, head) = (sample.x(aside), sample.seen_y(), sample.y(height));
    if head < foot && x > -WIDE && x < 2.0 * WIDE {
        let _ = write!(posts, "M{x:.0} {foot:.0}V{head:.0}");
    }
}

fn point(path: &mut String, first: bool, x: f64, y: f64) {
    let letter = if first { 'M' } else { 'L' };
    // Whole units are a quarter of a pixel at most and quick to write.
    let _ = write!(path, "{letter}{} {}", x as i32, y as i32);
}

#[cfg(test)]
mod tests {
    use super::super::Scene;
    use super::*;

    fn numbers(path: &str) -> Vec<f64> {
        let parts = path.split(|c: char| !(c.is_ascii_digit() || c == '-' || c == '.'));
        parts.filter_map(|part| part.parse().ok()).collect()
    }

    /// How high the ground reaches, units from the top.
    fn top(view: &RoadView) -> f64 {
        numbers(&view.ground)[1]
    }

    /// Where the far end of the road is, units from the left.
    fn end(view: &RoadView) -> f64 {
        let points = numbers(&view.edges);
        points[points.len() - 2]
    }

    fn seen(scene: Scene, from: f64) -> RoadView {
        let mut course = Course::default();
        course.put(scene, from);
        RoadView::of(&course, 0.0)
    }

    #[test]
    fn a_hill_rises_and_a_crest_hides_what_is_behind() {
        let level = RoadView::of(&Course::default(), 0.0);
        assert!(top(&seen(Scene::Hill, 20.0)) < top(&level) - 100.0);
        let crest = seen(Scene::Crest, 40.0);
        assert!(crest.edges.len() < level.edges.len());
        // Beyond the crest the road dips below its top and comes back in view.
        assert!(top(&crest) < HORIZON + FOCUS * EYES / 40.0);
    }

    #[test]
    fn bends_go_one_way_and_then_the_other() {
        let mut course = Course::default();
        course.put(Scene::Bend, 20.0);
        let left = RoadView::of(&course, 0.0);
        course.put(Scene::Bend, 220.0);
        let right = RoadView::of(&course, 200.0);
        let straight = end(&RoadView::of(&Course::default(), 0.0));
        assert!(end(&left) < straight - 100.0 && end(&right) > straight + 100.0);
    }

    #[test]
    fn a_stop_has_a_line_and_a_board_that_grow() {
        let mut course = Course::default();
        course.put(Scene::Stop, 40.0);
        let size = |at: f64| {
            let board = numbers(&RoadView::of(&course, at).board);
            let high: Vec<f64> = board.iter().skip(1).step_by(2).copied().collect();
            high.iter().fold(0.0_f64, |a, b| a.max(*b)) - high.iter().fold(HIGH, |a, b| a.min(*b))
        };
        assert!(size(30.0) > 2.0 * size(10.0) && size(10.0) > 0.0);
        assert!(RoadView::of(&course, 50.0).board.is_empty());
    }

    #[test]
    fn the_same_place_looks_the_same_and_another_does_not() {
        let mut course = Course::default();
        course.put(Scene::Hill, 30.0);
        let view = |at| RoadView::of(&course, at);
        assert_eq!(view(10.0), view(10.0));
        assert_ne!(view(10.0), view(10.5));
        // Nothing is drawn that is no number.
        for at in 0..200 {
            let view = view(f64::from(at));
            assert!(!format!("{view:?}").contains("NaN"));
        }
    }
}
