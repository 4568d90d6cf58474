//! Points that repeat, stray or lie far apart.

use super::Point;

/// The mean radius of the earth, in metres (IUGG, as the reference distances
/// were computed with it).
const EARTH: f64 = 6_371_008.8;

/// Points nearer to the last one than this, in metres, say nothing new: a bike
/// that stands still wanders (our judgement).
const NEAR: f64 = 1.0;

/// A point this far off both its neighbours, which lie near each other, is a
/// jump of the receiver (our judgement), in metres.
const JUMP: f64 = 300.0;

/// Points farther apart than this, in metres, are a gap: worth a note.
const GAP: f64 = 1_000.0;

/// Points in order with what was found on the way.
pub(super) struct Cleaned {
    pub(super) points: Vec<Point>,
    /// How far along each point lies, in metres.
    pub(super) along: Vec<f64>,
    /// The height of each, in metres.
    pub(super) heights: Vec<f64>,
    pub(super) raw_length: f64,
    pub(super) raw_ascent: f64,
    pub(super) notes: Vec<String>,
}

/// The distance in metres between two points along the earth's curve (the
/// haversine formula), with the same digits in a browser and natively.
pub(super) fn distance(a: &Point, b: &Point) -> f64 {
    let half = |degrees: f64| {
        let sine = libm::sin(0.5 * degrees.to_radians());
        sine * sine
    };
    let across = libm::cos(a.latitude.to_radians()) * libm::cos(b.latitude.to_radians());
    let h = half(b.latitude - a.latitude) + across * half(b.longitude - a.longitude);
    2.0 * EARTH * libm::asin(h.min(1.0).sqrt())
}

pub(super) fn clean(raw: &[Point]) -> Cleaned {
    let mut cleaned = Cleaned {
        points: Vec::with_capacity(raw.len()),
        along: Vec::with_capacity(raw.len()),
        heights: Vec::new(),
        raw_length: raw
            .windows(2)
            .map(|pair| distance(&pair[0], &pair[1]))
            .sum(),
        raw_ascent: 0.0,
        notes: Vec::new(),
    };
    let (mut jumps, mut gaps, mut longest) = (0, 0, 0.0_f64);
    for (n, point) in raw.iter().enumerate() {
        let Some(last) = cleaned.points.last() else {
            cleaned.points.push(*point);
            cleaned.along.push(0.0);
            continue;
        };
        let step = distance(last, point);
        if step < NEAR {
            continue;
        }
        if step > JUMP
            && raw
                .get(n + 1)
                .is_some_and(|next| is_jump(last, point, next))
        {
            jumps += 1;
            continue;
        }
        if step > GAP {
            gaps += 1;
            longest = longest.max(step);
        }
        let along = cleaned.along.last().copied().unwrap_or(0.0) + step;
        cleaned.points.push(*point);
        cleaned.along.push(along);
    }
    if jumps > 0 {
        let note = format!("{jumps} points far off the track were left out.");
        cleaned.notes.push(note);
    }
    if gaps > 0 {
        let km = longest / 1000.0;
        cleaned.notes.push(format!(
            "The track has {gaps} gaps, the longest of {km:.1} km. They are ridden straight and evenly."
        ));
    }
    (cleaned.heights, cleaned.raw_ascent) = heights(raw, &mut cleaned);
    cleaned
}

fn is_jump(last: &Point, point: &Point, next: &Point) -> bool {
    distance(point, next) > JUMP && distance(last, next) < JUMP
}

/// The height of each kept point, filled in evenly where it is missing, and the
/// raw ascent.
fn heights(raw: &[Point], cleaned: &mut Cleaned) -> (Vec<f64>, f64) {
    let mut ascent = 0.0;
    let mut before = None;
    for height in raw.iter().filter_map(|point| point.height) {
        ascent += (height - before.unwrap_or(height)).max(0.0);
        before = Some(height);
    }
    let known: Vec<usize> = (0..cleaned.points.len())
        .filter(|n| cleaned.points[*n].height.is_some())
        .collect();
    let of = |n: usize| cleaned.points[n].height.unwrap_or(0.0);
    let (Some(first), Some(last)) = (known.first(), known.last()) else {
        let note = "The track has no heights: the road is taken as level.";
        cleaned.notes.push(note.into());
        return (vec![0.0; cleaned.points.len()], 0.0);
    };
    let mut heights = vec![of(*first); cleaned.points.len()];
    for pair in known.windows(2) {
        let (from, to) = (pair[0], pair[1]);
        let span = cleaned.along[to] - cleaned.along[from];
        let between = cleaned.along[from..to].iter().zip(&mut heights[from..to]);
        for (along, height) in between {
            let share = (along - cleaned.along[from]) / span;
            *height = of(from) + (of(to) - of(from)) * share;
        }
    }
    heights[*last..].fill(of(*last));
    let missing = cleaned.points.len() - known.len();
    if missing > 0 {
        let note =
            format!("{missing} points without a height were filled in from their neighbours.");
        cleaned.notes.push(note);
    }
    (heights, ascent)
}
