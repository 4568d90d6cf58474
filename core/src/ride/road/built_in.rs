//! Roads of our own making. Nothing in them is random: each is a few waves,
//! and bends and stops at set distances.

use std::f64::consts::TAU;

use super::{Bend, Road, RoadKind, SPACING, Stop, StopKind};
use crate::text::Text;

/// What makes a road, as far along as a distance in metres says.
struct Recipe {
    name: &'static str,
    /// In metres.
    length: f64,
    height: fn(f64) -> f64,
    /// Bends come once in so many metres and are so long.
    bends: &'static [(f64, f64, Bend)],
    /// Stops come once in so many metres.
    stops: &'static [(f64, StopKind)],
}

pub(super) fn road(kind: RoadKind) -> Road {
    let recipe = match kind {
        RoadKind::Level => LEVEL,
        RoadKind::Rolling => ROLLING,
        RoadKind::Pass => PASS,
        RoadKind::Town => TOWN,
        RoadKind::BikePath => BIKE_PATH,
    };
    recipe.road().expect("our own roads are roads")
}

const LEVEL: Recipe = Recipe {
    name: "Level road",
    length: 20_000.0,
    height: |at| 30.0 + 0.8 * wave(at, 2_600.0),
    bends: &[(900.0, 60.0, Bend::Wide), (3_100.0, 40.0, Bend::Medium)],
    stops: &[(4_300.0, StopKind::GiveWay), (9_700.0, StopKind::Halt)],
};

const ROLLING: Recipe = Recipe {
    name: "Rolling road",
    length: 30_000.0,
    height: |at| 150.0 + 10.0 * wave(at, 2_200.0) + 3.0 * wave(at, 930.0),
    bends: &[(700.0, 50.0, Bend::Open), (2_300.0, 30.0, Bend::Tight)],
    stops: &[(5_900.0, StopKind::GiveWay), (11_700.0, StopKind::Halt)],
};

const PASS: Recipe = Recipe {
    name: "Long climb and descent",
    length: 24_000.0,
    height: |at| {
        let share = match at {
            at if at < 2_000.0 => 0.0,
            at if at < 12_000.0 => (at - 2_000.0) / 10_000.0,
            at if at < 22_000.0 => (22_000.0 - at) / 10_000.0,
            _ => 0.0,
        };
        400.0 + 580.0 * share + 4.0 * share.min(0.2) * wave(at, 1_300.0)
    },
    bends: &[(430.0, 40.0, Bend::Medium), (1_100.0, 30.0, Bend::Sharp)],
    stops: &[(11_950.0, StopKind::Halt)],
};

const TOWN: Recipe = Recipe {
    name: "Town with stops",
    length: 10_000.0,
    height: |at| 60.0 + 3.0 * wave(at, 1_900.0) + 1.0 * wave(at, 420.0),
    bends: &[(780.0, 20.0, Bend::Sharp), (330.0, 20.0, Bend::Tight)],
    stops: &[
        (520.0, StopKind::Halt),
        (690.0, StopKind::GiveWay),
        (2_150.0, StopKind::Sudden),
    ],
};

const BIKE_PATH: Recipe = Recipe {
    name: "Bike path with gates",
    length: 12_000.0,
    height: |at| {
        // A ramp up to a bridge and down again, once in 3 km.
        let along = at % 3_000.0;
        let ramp = (1.0 - (along - 1_500.0).abs() / 120.0).clamp(0.0, 1.0);
        15.0 + 6.0 * ramp + 0.6 * wave(at, 1_700.0)
    },
    bends: &[(410.0, 20.0, Bend::Sharp), (640.0, 30.0, Bend::Medium)],
    stops: &[(950.0, StopKind::Gate), (3_700.0, StopKind::GiveWay)],
};

/// A wave between -1 and 1 that starts in its middle, rising. The sine is not
/// the platform's, so that a browser and a native test get the same digits.
fn wave(at: f64, length: f64) -> f64 {
    libm::sin(at / length % 1.0 * TAU)
}

impl Recipe {
    fn road(&self) -> Option<Road> {
        let pieces = (self.length / SPACING) as usize;
        let place = |n: usize| n as f64 * SPACING;
        let heights: Vec<f64> = (0..=pieces).map(|n| (self.height)(place(n))).collect();
        let bends = (0..=pieces).map(|n| self.bend(place(n))).collect();
        let mut stops = Vec::new();
        for (every, kind) in self.stops {
            let mut at = *every;
            while at < self.length {
                stops.push(Stop { at, kind: *kind });
                at += every;
            }
        }
        Road::new(Text::new(self.name), self.length, &heights, bends, stops)
    }

    /// The tightest bend at a distance; none in the first metres.
    fn bend(&self, at: f64) -> Bend {
        let here = |bend: &&(f64, f64, Bend)| at >= bend.0 && at % bend.0 < bend.1;
        let mut tightest = Bend::Straight;
        for (.., bend) in self.bends.iter().filter(here) {
            tightest = tightest.max(*bend);
        }
        tightest
    }
}
