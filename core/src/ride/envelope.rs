//! How fast a rider goes at most at each place: for bends, stops and the speed
//! that feels comfortable downhill, early enough to brake gently.

use crate::ride::road::{Road, StopKind};

/// Sideways acceleration in bends, in m/s² (our judgement: a fifth of gravity,
/// unhurried; racers take twice as much).
const SIDEWAYS: f64 = 2.0;

/// Braking that is foreseen, in m/s² (our judgement: gentle).
pub(super) const GENTLE: f64 = 1.2;

/// Braking for what was not foreseen, in m/s² (*common practice*: firm, both
/// brakes, well below what throws a rider).
pub(super) const FIRM: f64 = 3.0;

/// The highest speed at each height of a road, in m/s, squared: between two
/// heights the square changes evenly, as it does under even braking.
#[derive(Debug, Clone)]
pub(super) struct Envelope {
    spacing: f64,
    squares: Vec<f32>,
}

impl Envelope {
    /// Of a road, with the speed in m/s that is comfortable downhill. Sudden
    /// stops are left out: nobody knows of them.
    pub(super) fn of(road: &Road, comfortable: f64) -> Envelope {
        let spacing = road.spacing();
        let mut squares: Vec<f32> = (0..road.samples())
            .map(|n| {
                let bend = road.bend(n).radius().map(|radius| SIDEWAYS * radius);
                let most = comfortable * comfortable;
                bend.map_or(most, |bend| bend.min(most)) as f32
            })
            .collect();
        for stop in road.stops().iter().filter(|s| s.kind != StopKind::Sudden) {
            let n = (stop.at / spacing).round() as usize;
            let square = stop.kind.speed() * stop.kind.speed();
            squares[n] = squares[n].min(square as f32);
        }
        let gain = (2.0 * GENTLE * spacing) as f32;
        for n in (1..squares.len()).rev() {
            squares[n - 1] = squares[n - 1].min(squares[n] + gain);
        }
        Envelope { spacing, squares }
    }

    /// The highest speed at a place, in m/s.
    pub(super) fn at(&self, at: f64) -> f64 {
        let along = (at / self.spacing).max(0.0);
        let n = (along as usize).min(self.squares.len() - 2);
        let share = (along - n as f64).min(1.0);
        let (from, to) = (f64::from(self.squares[n]), f64::from(self.squares[n + 1]));
        (from + (to - from) * share).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ride::road::{Bend, RoadKind, Stop};

    #[test]
    fn a_rider_can_brake_gently_from_anywhere() {
        for kind in [RoadKind::Town, RoadKind::Pass, RoadKind::BikePath] {
            let road = Road::built_in(kind);
            let envelope = Envelope::of(&road, 9.0);
            for n in 1..road.samples() {
                let (a, b) = (envelope.squares[n - 1], envelope.squares[n]);
                assert!(f64::from(a - b) <= 2.0 * GENTLE * road.spacing() + 1e-3);
            }
        }
    }

    #[test]
    fn bends_and_stops_slow_down() {
        let bends = vec![
            Bend::Straight,
            Bend::Hairpin,
            Bend::Straight,
            Bend::Straight,
        ];
        let stop = Stop {
            at: 210.0,
            kind: StopKind::Halt,
        };
        let road = Road::new("Test".into(), 300.0, &[0.0; 4], bends, vec![stop]);
        let envelope = Envelope::of(&road.expect("it is a road"), 10.0);
        assert!((envelope.at(100.0) - 12.0_f64.sqrt()).abs() < 1e-3);
        assert!(envelope.at(200.0) < 1e-3);
    }
}
