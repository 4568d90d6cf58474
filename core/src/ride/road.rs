//! A road as hands meet it: how long, how steep, how bent, where to stop.

mod ascent;
mod built_in;
mod packed;

pub use ascent::{ascent, smoothed};
pub use packed::PackedError;

use crate::text::Text;

vocabulary! {
    /// Roads of our own making, to ride without a track.
    pub enum RoadKind as "road" {
        /// Level, with wide bends and few stops.
        Level = "level", "level road";
        /// One low hill after another.
        Rolling = "rolling", "rolling road";
        /// A long climb and the descent from it, with hairpins.
        Pass = "pass", "long climb and descent";
        /// Short blocks with stops, some of them sudden.
        Town = "town", "town with stops";
        /// A path with gates, tight bends and short ramps.
        BikePath = "bike-path", "bike path with gates";
    }
}

vocabulary! {
    /// How tight a bend is: the smallest radius that the class stands for. Only
    /// the class is kept of a track, so that its shape cannot be drawn again.
    pub enum Bend as "bend" {
        /// No bend that slows a bike.
        Straight = "straight", "straight";
        /// 80 m and more.
        Wide = "wide", "wide bend";
        /// 50 m.
        Open = "open", "open bend";
        /// 30 m.
        Medium = "medium", "bend";
        /// 18 m.
        Tight = "tight", "tight bend";
        /// 10 m.
        Sharp = "sharp", "sharp bend";
        /// 6 m.
        Hairpin = "hairpin", "hairpin";
    }
}

impl Bend {
    /// The radius in metres that the class stands for; `None`: straight.
    pub const fn radius(self) -> Option<f64> {
        match self {
            Bend::Straight => None,
            Bend::Wide => Some(80.0),
            Bend::Open => Some(50.0),
            Bend::Medium => Some(30.0),
            Bend::Tight => Some(18.0),
            Bend::Sharp => Some(10.0),
            Bend::Hairpin => Some(6.0),
        }
    }

    /// The class of a radius in metres; what is wider than 120 m slows nobody.
    pub fn of_radius(radius: f64) -> Bend {
        match radius {
            r if r.is_nan() || r >= 120.0 => Bend::Straight,
            r if r >= 80.0 => Bend::Wide,
            r if r >= 50.0 => Bend::Open,
            r if r >= 30.0 => Bend::Medium,
            r if r >= 18.0 => Bend::Tight,
            r if r >= 10.0 => Bend::Sharp,
            _ => Bend::Hairpin,
        }
    }
}

vocabulary! {
    /// Why a rider slows down at a place.
    pub enum StopKind as "stop" {
        /// Comes to a stand and waits: a light, a stop sign.
        Halt = "halt", "stop and wait";
        /// Slows to a walking pace and rolls on: a gate, a barrier.
        Gate = "gate", "gate";
        /// Slows down to look.
        GiveWay = "give-way", "give way";
        /// Comes to a stand for something not seen coming.
        Sudden = "sudden", "sudden stop";
    }
}

impl StopKind {
    /// How fast a rider passes, in m/s (our judgement).
    pub const fn speed(self) -> f64 {
        match self {
            StopKind::Halt | StopKind::Sudden => 0.0,
            StopKind::Gate => 1.5,
            StopKind::GiveWay => 3.0,
        }
    }

    /// How long a rider stands, in seconds (our judgement).
    pub const fn wait(self) -> f64 {
        match self {
            StopKind::Halt => 12.0,
            StopKind::Sudden => 4.0,
            StopKind::Gate | StopKind::GiveWay => 0.0,
        }
    }
}

/// A place where the rider slows down or stops.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stop {
    /// How far along the road, in metres; a road moves it to the nearest of its
    /// heights, and takes stops nearer than three of them as one.
    pub at: f64,
    /// Why.
    pub kind: StopKind,
}

/// A road: heights and bends at even distances, and stops. It knows no
/// coordinates and no times.
#[derive(Debug, Clone, PartialEq)]
pub struct Road {
    /// What people call it.
    pub name: Text,
    /// In metres.
    length: f64,
    /// From one height to the next, in metres.
    spacing: f64,
    /// Heights in centimetres at even distances from the start to the end, at
    /// least two.
    heights: Vec<i32>,
    /// The bend at each height.
    bends: Vec<Bend>,
    /// In order of distance.
    stops: Vec<Stop>,
}

/// The shortest road that is ridden, in metres.
pub const SHORTEST: f64 = 100.0;
/// The longest road that is ridden, in metres.
pub const LONGEST: f64 = 2_000_000.0;
/// The most heights that a road has: beyond 400 km they stand more than 10 m
/// apart.
pub const MOST_HEIGHTS: usize = 40_001;
/// The most stops that a road has.
pub const MOST_STOPS: usize = 2_000;
/// How far apart heights stand at best, in metres.
pub const SPACING: f64 = 10.0;
/// Heights on earth that a road may have, in centimetres.
const HEIGHTS: std::ops::RangeInclusive<i32> = -50_000..=900_000;
/// The steepest grade that is ridden; steeper steps in a track are faults of
/// its heights (our judgement).
const STEEPEST: f64 = 0.35;

impl Road {
    /// A road of heights in metres and bends at even distances. Heights beyond
    /// the earth's are cut to them; steps steeper than a road's are levelled.
    /// `None` where the road is too short, too long, or has too many heights.
    pub fn new(
        name: Text,
        length: f64,
        heights: &[f64],
        bends: Vec<Bend>,
        stops: Vec<Stop>,
    ) -> Option<Road> {
        let fits = (SHORTEST..=LONGEST).contains(&length)
            && (2..=MOST_HEIGHTS).contains(&heights.len())
            && heights.len() == bends.len()
            && heights.iter().all(|height| height.is_finite());
        if !fits {
            return None;
        }
        let most = length / (heights.len() - 1) as f64 * STEEPEST * 100.0;
        let mut level: Vec<i32> = Vec::with_capacity(heights.len());
        for height in heights {
            let wanted = (height * 100.0).clamp(-50_000.0, 900_000.0);
            let from = level.last().map_or(wanted, |last| f64::from(*last));
            level.push(wanted.clamp(from - most, from + most).round() as i32);
        }
        Road::of_centimetres(name, length, level, bends, stops)
    }

    /// The same from heights in centimetres, which are taken as they are.
    fn of_centimetres(
        name: Text,
        length: f64,
        heights: Vec<i32>,
        bends: Vec<Bend>,
        mut stops: Vec<Stop>,
    ) -> Option<Road> {
        let fits = (SHORTEST..=LONGEST).contains(&length)
            && (2..=MOST_HEIGHTS).contains(&heights.len())
            && heights.len() == bends.len()
            && heights.iter().all(|height| HEIGHTS.contains(height))
            && stops.len() <= MOST_STOPS
            && stops.iter().all(|s| s.at > 0.0 && s.at < length);
        let spacing = length / (heights.len().max(2) - 1) as f64;
        for stop in &mut stops {
            let inner = (heights.len().max(3) - 2) as f64;
            stop.at = (stop.at / spacing).round().clamp(1.0, inner) * spacing;
        }
        stops.sort_unstable_by(|a, b| a.at.total_cmp(&b.at).then(a.kind.cmp(&b.kind)));
        let near = 3.0 * spacing;
        stops.dedup_by(|later, first| {
            let joins = later.at - first.at < near;
            if joins && later.kind.speed() < first.kind.speed() {
                first.kind = later.kind;
            }
            joins
        });
        fits.then_some(Road {
            name,
            length,
            spacing,
            heights,
            bends,
            stops,
        })
    }

    /// One of our own.
    pub fn built_in(kind: RoadKind) -> Road {
        built_in::road(kind)
    }

    /// How long it is, in metres.
    pub fn length(&self) -> f64 {
        self.length
    }

    /// How far apart its heights stand, in metres.
    pub fn spacing(&self) -> f64 {
        self.spacing
    }

    /// How many heights it has.
    pub fn samples(&self) -> usize {
        self.heights.len()
    }

    /// The stops in order of distance.
    pub fn stops(&self) -> &[Stop] {
        &self.stops
    }

    /// The bend at the nth height.
    pub fn bend(&self, n: usize) -> Bend {
        self.bends.get(n).copied().unwrap_or(Bend::Straight)
    }

    /// The height in metres at a distance in metres; beyond the ends, that of
    /// the end.
    pub fn height(&self, at: f64) -> f64 {
        let along = (at / self.spacing).clamp(0.0, (self.heights.len() - 1) as f64);
        let n = (along as usize).min(self.heights.len() - 2);
        let (from, to) = (self.heights[n], self.heights[n + 1]);
        (f64::from(from) + f64::from(to - from) * (along - n as f64)) / 100.0
    }

    /// How steep the road is at a distance in metres: rise over length.
    pub fn grade(&self, at: f64) -> f64 {
        self.grade_of(self.piece(at))
    }

    /// The piece between two heights that a distance lies on.
    pub(crate) fn piece(&self, at: f64) -> usize {
        ((at / self.spacing).max(0.0) as usize).min(self.heights.len() - 2)
    }

    /// How steep a piece is.
    pub(crate) fn grade_of(&self, piece: usize) -> f64 {
        let rise = f64::from(self.heights[piece + 1] - self.heights[piece]) / 100.0;
        rise / self.spacing
    }

    /// The metres climbed in all, as [`ascent`] counts them.
    pub fn ascent(&self) -> f64 {
        ascent(self.heights.iter().map(|height| f64::from(*height) / 100.0))
    }

    /// The road ridden again and again until it is this long in metres, for
    /// long rides; `None` where that is too long.
    pub fn repeated(&self, times: usize) -> Option<Road> {
        let mut heights = Vec::new();
        let (mut bends, mut stops) = (Vec::new(), Vec::new());
        let step = self.heights[self.heights.len() - 1] - self.heights[0];
        for turn in 0..times {
            let skip = usize::from(turn > 0);
            let lift = step.saturating_mul(i32::try_from(turn).ok()?);
            heights.extend(self.heights[skip..].iter().map(|h| h.saturating_add(lift)));
            bends.extend_from_slice(&self.bends[skip..]);
            let before = self.length * turn as f64;
            stops.extend(self.stops.iter().map(|s| Stop {
                at: s.at + before,
                ..*s
            }));
        }
        let length = self.length * times as f64;
        Road::of_centimetres(self.name.clone(), length, heights, bends, stops)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Vocabulary;

    #[test]
    fn heights_and_grades_are_read_between_samples() {
        let bends = vec![Bend::Straight; 3];
        let road = Road::new("Test".into(), 200.0, &[10.0, 15.0, 5.0], bends, Vec::new());
        let road = road.expect("it is a road");
        assert_eq!(road.spacing(), 100.0);
        assert_eq!(
            [0.0, 50.0, 100.0, 200.0].map(|at| road.height(at)),
            [10.0, 12.5, 15.0, 5.0]
        );
        assert_eq!((road.height(-5.0), road.height(900.0)), (10.0, 5.0));
        assert_eq!(
            (road.grade(20.0), road.grade(120.0), road.grade(500.0)),
            (0.05, -0.10, -0.10)
        );
    }

    #[test]
    fn what_is_no_road_is_none() {
        let road = |length, heights: &[f64]| {
            let bends = vec![Bend::Straight; heights.len()];
            Road::new("Test".into(), length, heights, bends, Vec::new())
        };
        assert!(road(1000.0, &[0.0, 1.0]).is_some());
        for length in [0.0, 50.0, -1.0, f64::NAN, f64::INFINITY, 3e6] {
            assert!(road(length, &[0.0, 1.0]).is_none(), "{length}");
        }
        assert!(road(1000.0, &[]).is_none() && road(1000.0, &[0.0]).is_none());
        assert!(road(1000.0, &[0.0, f64::NAN]).is_none());
    }

    #[test]
    fn a_step_steeper_than_a_road_is_levelled() {
        let bends = vec![Bend::Straight; 4];
        let road = Road::new(
            "Test".into(),
            300.0,
            &[0.0, 500.0, 0.0, 0.0],
            bends,
            Vec::new(),
        );
        let road = road.expect("it is a road");
        assert!(road.grade(50.0) <= 0.36 && road.grade(150.0) >= -0.36);
    }

    #[test]
    fn a_bend_is_never_taken_as_wider_than_it_is() {
        for radius in [1.0, 6.0, 9.0, 12.0, 29.9, 30.0, 79.0, 119.0] {
            let class = Bend::of_radius(radius).radius().expect("it bends");
            assert!(class <= radius.max(6.0), "{radius}: {class}");
        }
        assert_eq!(Bend::of_radius(f64::INFINITY), Bend::Straight);
    }

    #[test]
    fn our_own_roads_are_what_they_are_called() {
        let of = Road::built_in;
        for kind in RoadKind::ALL {
            let road = of(*kind);
            assert!(
                road.length() >= 5_000.0 && road.spacing() <= SPACING + 1e-9,
                "{kind}"
            );
        }
        assert!(of(RoadKind::Level).ascent() < 5.0);
        assert!(of(RoadKind::Rolling).ascent() > 250.0);
        let pass = of(RoadKind::Pass);
        assert!(pass.ascent() > 500.0 && (0..pass.samples()).any(|n| pass.bend(n) == Bend::Sharp));
        let stops = |kind, what| of(kind).stops().iter().filter(|s| s.kind == what).count();
        assert!(stops(RoadKind::Town, StopKind::Halt) > 10);
        assert!(stops(RoadKind::Town, StopKind::Sudden) > 2);
        assert!(stops(RoadKind::BikePath, StopKind::Gate) > 5);
    }

    #[test]
    fn a_road_ridden_twice_is_twice_as_long() {
        let town = Road::built_in(RoadKind::Town);
        let twice = town.repeated(2).expect("it is not too long");
        assert_eq!(twice.length(), 2.0 * town.length());
        assert_eq!(twice.stops().len(), 2 * town.stops().len());
        let at = town.length() / 3.0;
        let lift = town.height(town.length()) - town.height(0.0);
        assert!((twice.height(at + town.length()) - town.height(at) - lift).abs() < 0.01);
        assert!(town.repeated(10_000).is_none());
    }
}
