//! The road ahead while practising: put together as calls are made.

use super::Scene;

/// A piece of road that comes.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Piece {
    scene: Scene,
    /// Where it begins, in metres along the road.
    from: f64,
    /// Where it ends.
    to: f64,
    /// Whether a bend goes left.
    left: bool,
}

/// A road that is level and straight but for what was put on it. All places are
/// metres along the road.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Course {
    pieces: Vec<Piece>,
    bends: u32,
}

/// Slopes and the tightness of a bend (our judgement: clear to see, ordinary to
/// ride).
const CLIMB: f64 = 0.06;
const BEFORE_CREST: f64 = 0.04;
const FALL: f64 = -0.05;
const BEND: f64 = 1.0 / 35.0;

/// How far the rise before a crest reaches back, in metres.
const RISE: f64 = 35.0;

/// How long slopes and bends take to come and to go, in metres.
const SOFT: f64 = 10.0;

/// How far behind a piece is forgotten, in metres.
const BEHIND: f64 = 20.0;

/// How long a piece is, in metres (our judgement).
const fn length(scene: Scene) -> f64 {
    match scene {
        Scene::Hill => 90.0,
        Scene::Crest => 80.0,
        Scene::Bend => 40.0,
        Scene::Stop | Scene::Flat => 0.0,
    }
}

impl Course {
    /// Puts a piece on the road; slopes that reach as far end there.
    pub fn put(&mut self, scene: Scene, from: f64) {
        for piece in &mut self.pieces {
            if piece.scene != Scene::Bend {
                piece.to = piece.to.min(from).max(piece.from);
            }
        }
        self.bends += u32::from(scene == Scene::Bend);
        self.pieces.push(Piece {
            scene,
            from,
            to: from + length(scene),
            left: self.bends % 2 == 1,
        });
    }

    /// Forgets what lies far behind.
    pub fn pass(&mut self, at: f64) {
        self.pieces.retain(|piece| piece.to > at - BEHIND);
    }

    /// The slope: rise over distance.
    pub fn grade(&self, at: f64) -> f64 {
        let pieces = self.pieces.iter().map(|piece| match piece.scene {
            Scene::Hill => CLIMB * within(at, piece.from, piece.to),
            Scene::Crest => {
                BEFORE_CREST * within(at, piece.from - RISE, piece.from - SOFT)
                    + FALL * within(at, piece.from, piece.to)
            }
            Scene::Bend | Scene::Stop | Scene::Flat => 0.0,
        });
        pieces.sum()
    }

    /// How much it bends: one over the radius in metres, above zero to the right.
    pub fn bend(&self, at: f64) -> f64 {
        let bends = self.pieces.iter().filter(|p| p.scene == Scene::Bend);
        bends
            .map(|piece| {
                let way = if piece.left { -BEND } else { BEND };
                way * within(at, piece.from, piece.to)
            })
            .sum()
    }

    /// The first line to stop at from a place on.
    pub fn line(&self, at: f64) -> Option<f64> {
        let lines = self.pieces.iter().filter(|p| p.scene == Scene::Stop);
        lines
            .map(|piece| piece.from)
            .filter(|from| *from >= at)
            .reduce(f64::min)
    }
}

/// 1 between two places, 0 outside, softly in between.
fn within(at: f64, from: f64, to: f64) -> f64 {
    soft((at - from) / SOFT) * (1.0 - soft((at - to) / SOFT))
}

fn soft(share: f64) -> f64 {
    let share = share.clamp(0.0, 1.0);
    share * share * (3.0 - 2.0 * share)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_piece_is_what_it_is_called() {
        let mut road = Course::default();
        road.put(Scene::Hill, 50.0);
        assert_eq!(road.grade(40.0), 0.0);
        assert_eq!(road.grade(80.0), CLIMB);
        road.put(Scene::Crest, 120.0);
        assert!(road.grade(105.0) > 0.0 && road.grade(160.0) == FALL);
        road.put(Scene::Bend, 300.0);
        road.put(Scene::Bend, 400.0);
        assert!(road.bend(320.0) < 0.0 && road.bend(420.0) > 0.0);
        road.put(Scene::Stop, 500.0);
        assert_eq!((road.line(450.0), road.line(501.0)), (Some(500.0), None));
        road.pass(600.0);
        assert_eq!(road.line(0.0), None);
        assert_eq!(road.grade(160.0), 0.0);
    }

    #[test]
    fn a_slope_ends_where_the_next_piece_begins() {
        let mut road = Course::default();
        road.put(Scene::Hill, 0.0);
        road.put(Scene::Stop, 40.0);
        assert_eq!(road.grade(60.0), 0.0);
    }
}
