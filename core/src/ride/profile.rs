//! The picture of a ride: elevation, speed and gear along one axis, with the
//! shifts of each hand, and a table that says the same.

use super::event::{Clash, What};
use super::gearbox::Gearbox;
use super::road::Road;
use super::simulation::{Ride, Sample};
use crate::rider::Side;

vocabulary! {
    /// What runs along the picture.
    pub enum Axis as "axis" {
        /// The road.
        Distance = "distance", "distance";
        /// Time, stops included.
        Time = "time", "time";
    }
}

/// Values along the axis. Each point is its place along the axis, 0 to 1, and
/// its value between `low` and `high`, as 0 to 1 from below.
#[derive(Debug, Clone, PartialEq)]
pub struct Lane {
    /// What is drawn, with its unit: "Height, m".
    pub label: &'static str,
    /// The value at the lower edge.
    pub low: f64,
    /// The value at the upper edge.
    pub high: f64,
    /// The points.
    pub points: Vec<(f64, f64)>,
}

/// A mark on the axis with a label.
#[derive(Debug, Clone, PartialEq)]
pub struct Tick {
    /// Where, 0 to 1.
    pub at: f64,
    /// "12 km".
    pub label: String,
}

/// What hands do in one strip of the picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Strip {
    /// Presses by the left and by the right hand.
    pub presses: [u32; 2],
    /// Brake pulls by the left and by the right hand.
    pub pulls: [u32; 2],
    /// Presses that move the front derailleur.
    pub front: u32,
    /// Presses while the same hand brakes, shifts put off, and brakes wanted
    /// while the hand was away.
    pub clashes: u32,
}

/// One line of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// From where to where: "0 to 2.4 km".
    pub place: String,
    /// "Climbs 45 m, falls 3 m".
    pub slope: String,
    /// "8 to 24 km/h".
    pub speed: String,
    /// "2.1 to 5.4 m a turn".
    pub gears: String,
    /// What hands do.
    pub hands: Strip,
}

/// The picture of a ride.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// What runs along.
    pub axis: Axis,
    /// Marks along the axis.
    pub ticks: Vec<Tick>,
    /// Heights in metres.
    pub height: Lane,
    /// Speed in km/h.
    pub speed: Lane,
    /// Development of the gear in metres.
    pub gear: Lane,
    /// [`STRIPS`] strips of equal width.
    pub strips: Vec<Strip>,
    /// The most presses of one hand in a strip: the scale for drawing them.
    pub most: u32,
    /// The same in words, section by section.
    pub table: Vec<Section>,
}

/// Into how many strips the picture is cut.
pub const STRIPS: usize = 120;

/// Into how many sections the table is cut.
const SECTIONS: usize = 12;

impl Profile {
    /// The picture of a ride over a road, whole or so far: always of the whole
    /// road along the distance, and of the time so far along the time.
    pub fn of(road: &Road, ride: &Ride, gearbox: &Gearbox, axis: Axis) -> Profile {
        let whole = match axis {
            Axis::Distance => road.length(),
            Axis::Time => ride.seconds.max(1.0),
        };
        let place = |sample: &Sample| match axis {
            Axis::Distance => sample.at / whole,
            Axis::Time => sample.time / whole,
        };
        let lane = |label, value: &dyn Fn(&Sample) -> f64| {
            let points = ride.trace.iter().map(|s| (place(s), value(s))).collect();
            lane(label, points)
        };
        let strips = strips(ride, axis, whole, STRIPS);
        let most = strips.iter().flat_map(|strip| strip.presses).max();
        Profile {
            axis,
            ticks: ticks(axis, whole),
            height: match axis {
                Axis::Distance => heights(road),
                Axis::Time => lane("Height, m", &|s| road.height(s.at)),
            },
            speed: lane("Speed, km/h", &|s| s.speed * 3.6),
            gear: lane("Gear, m a turn", &|s| gearbox.gears()[s.gear].development),
            most: most.unwrap_or(0),
            strips,
            table: table(road, ride, gearbox, axis, whole),
        }
    }
}

/// Points with values of any size, scaled between round bounds.
fn lane(label: &'static str, mut points: Vec<(f64, f64)>) -> Lane {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for (_, value) in &points {
        (low, high) = (low.min(*value), high.max(*value));
    }
    if points.is_empty() {
        (low, high) = (0.0, 1.0);
    }
    let step = round_step((high - low) / 3.0);
    let low = (low / step).floor() * step;
    let high = ((high / step).ceil() * step).max(low + step);
    for (_, value) in &mut points {
        *value = (*value - low) / (high - low);
    }
    Lane {
        label,
        low,
        high,
        points,
    }
}

fn heights(road: &Road) -> Lane {
    let pieces = 400.min(road.samples() - 1);
    let at = |n: usize| n as f64 / pieces as f64;
    let points = (0..=pieces).map(|n| (at(n), road.height(at(n) * road.length())));
    lane("Height, m", points.collect())
}

/// The next of 1, 2, 5, 10, 20 and so on that is not smaller.
fn round_step(least: f64) -> f64 {
    let mut step = 0.1;
    for factor in [2.0, 2.5, 2.0].into_iter().cycle() {
        if step >= least || step > 1e9 {
            break;
        }
        step *= factor;
    }
    step
}

fn ticks(axis: Axis, whole: f64) -> Vec<Tick> {
    let (unit, name) = match axis {
        Axis::Distance => (1000.0, "km"),
        Axis::Time => (60.0, "min"),
    };
    let step = round_step(whole / unit / 6.0);
    let mut ticks = Vec::new();
    let mut value = 0.0;
    while value * unit <= whole && ticks.len() < 20 {
        let label = if step < 1.0 {
            format!("{value:.1} {name}")
        } else {
            format!("{value:.0} {name}")
        };
        ticks.push(Tick {
            at: value * unit / whole,
            label,
        });
        value += step;
    }
    ticks
}

fn strips(ride: &Ride, axis: Axis, whole: f64, count: usize) -> Vec<Strip> {
    let mut strips = vec![Strip::default(); count];
    for event in &ride.events {
        let along = match axis {
            Axis::Distance => event.at,
            Axis::Time => event.time,
        };
        let n = ((along / whole * count as f64) as usize).min(count - 1);
        let strip = &mut strips[n];
        let hand = |side: Side| side as usize;
        match event.what {
            What::Press {
                hand: side,
                clash,
                function,
                ..
            } => {
                strip.presses[hand(side)] += 1;
                strip.front += u32::from(function.is_front());
                strip.clashes += u32::from(clash != Clash::No);
            }
            What::Pull { hand: side, .. } => strip.pulls[hand(side)] += 1,
            What::Delay { .. } | What::Wanted { .. } => strip.clashes += 1,
            _ => {}
        }
    }
    strips
}

fn table(road: &Road, ride: &Ride, gearbox: &Gearbox, axis: Axis, whole: f64) -> Vec<Section> {
    let hands = strips(ride, axis, whole, SECTIONS);
    let along = |sample: &Sample| match axis {
        Axis::Distance => sample.at,
        Axis::Time => sample.time,
    };
    let width = whole / SECTIONS as f64;
    let mut sections = Vec::new();
    for (n, hands) in hands.into_iter().enumerate() {
        let (from, to) = (n as f64 * width, (n + 1) as f64 * width);
        let own = |s: &&Sample| along(s) >= from && along(s) < to;
        let samples: Vec<&Sample> = ride.trace.iter().filter(own).collect();
        if samples.is_empty() {
            // Not ridden yet.
            break;
        }
        sections.push(Section {
            place: match axis {
                Axis::Distance => format!("{:.1} to {:.1} km", from / 1e3, to / 1e3),
                Axis::Time => format!("{:.0} to {:.0} min", from / 60.0, to / 60.0),
            },
            slope: slope(road, &samples),
            speed: speeds(&samples),
            gears: gears(gearbox, &samples),
            hands,
        });
    }
    sections
}

fn slope(road: &Road, samples: &[&Sample]) -> String {
    let (mut up, mut down) = (0.0, 0.0);
    for pair in samples.windows(2) {
        let rise = road.height(pair[1].at) - road.height(pair[0].at);
        up += rise.max(0.0);
        down += (-rise).max(0.0);
    }
    format!("climbs {up:.0} m, falls {down:.0} m")
}

fn speeds(samples: &[&Sample]) -> String {
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for sample in samples {
        (low, high) = (low.min(sample.speed), high.max(sample.speed));
    }
    format!("{:.0} to {:.0} km/h", low * 3.6, high * 3.6)
}

fn gears(gearbox: &Gearbox, samples: &[&Sample]) -> String {
    let development = |sample: &Sample| gearbox.gears()[sample.gear].development;
    let (mut low, mut high) = (f64::INFINITY, 0.0_f64);
    for sample in samples {
        let own = development(sample);
        (low, high) = (low.min(own), high.max(own));
    }
    if low == high {
        format!("{low:.1} m a turn")
    } else {
        format!("{low:.1} to {high:.1} m a turn")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round() {
        for (least, step) in [
            (0.05, 0.1),
            (0.3, 0.5),
            (1.0, 1.0),
            (3.3, 5.0),
            (41.0, 50.0),
        ] {
            assert!((round_step(least) - step).abs() < 1e-9, "{least}");
        }
    }

    #[test]
    fn a_lane_lies_between_its_bounds() {
        let lane = lane("x", vec![(0.0, 103.0), (0.5, 148.0), (1.0, 110.0)]);
        assert_eq!((lane.low, lane.high), (100.0, 160.0));
        assert!(lane.points.iter().all(|(_, y)| (0.0..=1.0).contains(y)));
        assert_eq!(super::lane("x", Vec::new()).points, Vec::new());
    }
}
