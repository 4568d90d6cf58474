//! Where balloons, leader lines and slots go.
//!
//! Wide pictures: a column of slots in the margin on each button's own side, those of the middle
//! in a row below. Narrow pictures: balloons in a row above and a row below the bar, which then
//! has the whole width. Slots are dealt so that no two leader lines cross and their lengths are
//! short.

use super::picture::{BALLOON, Sheet};
use crate::cockpit::BarSide;
use crate::ordered;
use kurbo::{Affine, Point, Rect, Size};

/// What stands in the margins.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Margin {
    /// Slots of this size, picture units.
    Slots {
        /// Width of a slot.
        width: f64,
        /// Height of a slot.
        height: f64,
    },
    /// Balloons only.
    Balloons,
}

/// A button that wants a balloon.
#[derive(Debug, Clone, Copy)]
pub struct Call {
    /// The side of the bar it sits on.
    pub side: BarSide,
    /// Where its leader line ends, mm on the drawing plane.
    pub anchor: Point,
}

/// A balloon with its slot and leader line, picture units.
#[derive(Debug, Clone, PartialEq)]
pub struct Seat {
    /// The slot.
    pub slot: Rect,
    /// Middle of the balloon.
    pub balloon: Point,
    /// From the slot to the anchor.
    pub leader: Vec<Point>,
}

/// The whole layout.
#[derive(Debug, Clone)]
pub struct Plan {
    /// Size of the picture.
    pub size: Size,
    /// From drawing plane to picture.
    pub place: Affine,
    /// A seat for each call, in the same order.
    pub seats: Vec<Seat>,
}

/// Free paper round everything, picture units.
const EDGE: f64 = 8.0;
/// Least room between slots, picture units.
pub const SLOT_GAP: f64 = 8.0;
/// Between a column of slots and the drawing, picture units.
const AISLE: f64 = 30.0;
/// How far a leader line runs straight out of its balloon, picture units.
const STUB: f64 = 8.0;
/// Largest scale, picture units per mm: beyond it lines look thin.
const LARGEST: f64 = 1.9;
/// Highest drawing for its width: tall bars must not push everything off the screen.
const TALLEST: f64 = 0.5;
/// Side of a narrow picture's balloon cell, picture units (WCAG 2.2, 2.5.5: 44).
const CELL: f64 = 44.0;

/// Lays out the balloons of buttons on a drawing that fills `bounds` (mm).
pub fn lay_out(calls: &[Call], bounds: Rect, sheet: Sheet) -> Plan {
    let width = sheet.width.max(Sheet::NARROWEST);
    match sheet.margin {
        Margin::Slots {
            width: w,
            height: h,
        } => columns(calls, bounds, width, Size::new(w, h)),
        Margin::Balloons => rows(calls, bounds, width),
    }
}

fn columns(calls: &[Call], bounds: Rect, width: f64, slot: Size) -> Plan {
    let room = width - 2.0 * (EDGE + slot.width + AISLE);
    let scale = (room.max(60.0) / bounds.width())
        .min(width * TALLEST / bounds.height())
        .min(LARGEST);
    let of = |side: BarSide| -> Vec<usize> {
        (0..calls.len())
            .filter(|&i| calls[i].side == side)
            .collect()
    };
    let (left, middle, right) = (of(BarSide::Left), of(BarSide::Centre), of(BarSide::Right));
    let column =
        |n: usize| n as f64 * (slot.height + SLOT_GAP) - if n > 0 { SLOT_GAP } else { 0.0 };
    let art = bounds.height() * scale;
    let body = art.max(column(left.len())).max(column(right.len()));
    // Always one row: leaders of a second would run across the first. More than fit grow narrower.
    let share = (width - 2.0 * EDGE + SLOT_GAP) / middle.len().max(1) as f64 - SLOT_GAP;
    let middle_width = slot.width.min(share);
    let below = if middle.is_empty() {
        0.0
    } else {
        AISLE + slot.height + SLOT_GAP
    };
    let top = EDGE + (body - art) / 2.0;
    let place = Affine::new([
        scale,
        0.0,
        0.0,
        scale,
        width / 2.0 - scale * bounds.center().x,
        top - scale * bounds.y0,
    ]);
    let anchor = |i: usize| place * calls[i].anchor;
    let size = Size::new(width, EDGE + body + EDGE + below);
    let mut seats = vec![None; calls.len()];

    for (side, members) in [(BarSide::Left, &left), (BarSide::Right, &right)] {
        let is_left = side == BarSide::Left;
        let x = if is_left {
            EDGE
        } else {
            width - EDGE - slot.width
        };
        let inner = if is_left { x + slot.width } else { x };
        // The balloon sits astride the slot's edge; the leader leaves from its middle.
        let out = BALLOON + STUB;
        let stub = if is_left { inner + out } else { inner - out };
        let anchors: Vec<Point> = members.iter().map(|&i| anchor(i)).collect();
        let heights = spread(&anchors, slot.height, (EDGE, EDGE + body));
        let ports: Vec<Point> = heights.iter().map(|&y| Point::new(stub, y)).collect();
        for (port, &who) in deal(&ports, &anchors).iter().zip(members) {
            let y = ports[*port].y;
            seats[who] = Some(Seat {
                slot: Rect::new(
                    x,
                    y - slot.height / 2.0,
                    x + slot.width,
                    y + slot.height / 2.0,
                ),
                balloon: Point::new(inner, y),
                leader: vec![Point::new(inner, y), Point::new(stub, y), anchor(who)],
            });
        }
    }
    let y = EDGE + body + AISLE;
    let step = middle_width + SLOT_GAP;
    let start = width / 2.0 - (middle.len() as f64 * step - SLOT_GAP) / 2.0;
    let inset = BALLOON + 6.0;
    let anchors: Vec<Point> = middle.iter().map(|&i| anchor(i)).collect();
    let ports: Vec<Point> = (0..middle.len())
        .map(|k| Point::new(start + k as f64 * step + inset, y - BALLOON - STUB))
        .collect();
    for (port, &who) in deal(&ports, &anchors).iter().zip(&middle) {
        let port = ports[*port];
        let balloon = Point::new(port.x, y);
        let x = port.x - inset;
        seats[who] = Some(Seat {
            slot: Rect::new(x, y, x + middle_width, y + slot.height),
            balloon,
            leader: vec![balloon, port, anchor(who)],
        });
    }
    Plan {
        size,
        place,
        seats: seats.into_iter().flatten().collect(),
    }
}

// Evenly spaced heights for slots, centred on their buttons as far as the column allows.
fn spread(anchors: &[Point], height: f64, (top, bottom): (f64, f64)) -> Vec<f64> {
    let n = anchors.len() as f64;
    if anchors.is_empty() {
        return Vec::new();
    }
    let lows = anchors.iter().map(|a| a.y).fold(f64::INFINITY, f64::min);
    let highs = anchors
        .iter()
        .map(|a| a.y)
        .fold(f64::NEG_INFINITY, f64::max);
    let room = bottom - top - height;
    let loose = if n > 1.0 {
        (highs - lows) / (n - 1.0)
    } else {
        0.0
    };
    let most = if n > 1.0 { room / (n - 1.0) } else { 0.0 };
    let pitch = loose
        .max(height + SLOT_GAP * 1.6)
        .min(most.max(height + SLOT_GAP));
    let span = pitch * (n - 1.0);
    let first = ((lows + highs) / 2.0 - span / 2.0)
        .min(bottom - height / 2.0 - span)
        .max(top + height / 2.0);
    (0..anchors.len())
        .map(|i| first + i as f64 * pitch)
        .collect()
}

fn rows(calls: &[Call], bounds: Rect, width: f64) -> Plan {
    let room = width - 2.0 * EDGE;
    let scale = (room / bounds.width()).min(LARGEST);
    let middle = width / 2.0;
    let per_row = (room / CELL).floor().max(1.0) as usize;
    let (above, below) = split(calls, bounds.center().y, per_row);
    let pad = 16.0;
    let row = |members: &[usize]| if members.is_empty() { 0.0 } else { CELL + pad };
    let top = EDGE + row(&above);
    let art = bounds.height() * scale;
    let place = Affine::new([
        scale,
        0.0,
        0.0,
        scale,
        middle - scale * bounds.center().x,
        top - scale * bounds.y0,
    ]);
    let anchor = |i: usize| place * calls[i].anchor;
    let low = top + art + pad;
    let size = Size::new(width, top + art + row(&below) + EDGE);
    let mut seats = vec![None; calls.len()];
    for (members, is_above) in [(&above, true), (&below, false)] {
        // A second row would put leaders across balloons, so all share one row, of narrower cells
        // when there are more than fit.
        let n = members.len();
        let pitch = (room / n.max(1) as f64).min(CELL);
        let anchors: Vec<Point> = members.iter().map(|&i| anchor(i)).collect();
        let xs = level(&anchors, pitch, (EDGE, width - EDGE));
        let y = if is_above {
            EDGE + CELL / 2.0
        } else {
            low + CELL / 2.0
        };
        let edge = if is_above { y + BALLOON } else { y - BALLOON };
        let ports: Vec<Point> = xs.iter().map(|&x| Point::new(x, edge)).collect();
        for (port, &who) in deal(&ports, &anchors).iter().zip(members) {
            let x = ports[*port].x;
            seats[who] = Some(Seat {
                slot: Rect::from_center_size((x, y), (pitch, CELL)),
                balloon: Point::new(x, y),
                leader: vec![ports[*port], anchor(who)],
            });
        }
    }
    Plan {
        size,
        place,
        seats: seats.into_iter().flatten().collect(),
    }
}

// Buttons in the upper half of the drawing are called from above, the others from below, each
// side and the middle by itself so that the picture is alike on both sides; a full row passes
// what lies nearest the middle to the other.
fn split(calls: &[Call], middle: f64, per_row: usize) -> (Vec<usize>, Vec<usize>) {
    let (mut above, mut below) = (Vec::new(), Vec::new());
    for side in [BarSide::Left, BarSide::Centre, BarSide::Right] {
        let mut members: Vec<usize> = (0..calls.len())
            .filter(|&i| calls[i].side == side)
            .collect();
        ordered::sort_by(&mut members, |&a, &b| {
            calls[a]
                .anchor
                .y
                .total_cmp(&calls[b].anchor.y)
                .then(a.cmp(&b))
        });
        let n = members.len();
        let share = (per_row / 2).max(1);
        let high = members
            .iter()
            .filter(|&&i| calls[i].anchor.y < middle)
            .count();
        // More than two shares go half and half.
        let high = high
            .min(share.max(n / 2))
            .max(n.saturating_sub(share.max(n.div_ceil(2))));
        above.extend_from_slice(&members[..high]);
        below.extend_from_slice(&members[high..]);
    }
    (above, below)
}

// Places along a row, each as near its button as its neighbours allow, at least `pitch` apart.
fn level(anchors: &[Point], pitch: f64, (from, to): (f64, f64)) -> Vec<f64> {
    let mut xs: Vec<f64> = anchors.iter().map(|a| a.x).collect();
    ordered::sort_by(&mut xs, f64::total_cmp);
    let n = xs.len();
    let (from, to) = (from + pitch / 2.0, to - pitch / 2.0);
    // Clusters of neighbours that push each other keep their common middle.
    let mut clusters: Vec<(f64, usize)> = Vec::new();
    for x in xs {
        clusters.push((x, 1));
        while clusters.len() > 1 {
            let (x1, n1) = clusters[clusters.len() - 1];
            let (x0, n0) = clusters[clusters.len() - 2];
            let need = (n0 + n1) as f64 / 2.0 * pitch;
            if clamp(x1, n1, pitch, from, to) - clamp(x0, n0, pitch, from, to) >= need - 1e-9 {
                break;
            }
            let total = n0 + n1;
            // Middle that keeps the mean of wanted places.
            let mean = (x0 * n0 as f64 + x1 * n1 as f64) / total as f64;
            clusters.truncate(clusters.len() - 2);
            clusters.push((mean, total));
        }
    }
    let mut placed = Vec::with_capacity(n);
    for (x, count) in clusters {
        let middle = clamp(x, count, pitch, from, to);
        for k in 0..count {
            placed.push(middle + (k as f64 - (count - 1) as f64 / 2.0) * pitch);
        }
    }
    placed
}

fn clamp(x: f64, count: usize, pitch: f64, from: f64, to: f64) -> f64 {
    let half = (count - 1) as f64 / 2.0 * pitch;
    x.min(to - half).max(from + half)
}

/// Deals ports to anchors: `result[k]` is the port of anchor `k`. No two of the straight lines
/// cross; among such deals it is a short one that keeps off the other anchors and leaves the
/// balloon numbers in order.
fn deal(ports: &[Point], anchors: &[Point]) -> Vec<usize> {
    let n = anchors.len();
    let mut order: Vec<usize> = (0..n).collect();
    let vertical = ports.len() > 1 && (ports[0].x - ports[1].x).abs() < 1e-9;
    ordered::sort_by(&mut order, |&a, &b| {
        let key = |i: usize| if vertical { anchors[i].y } else { anchors[i].x };
        key(a).total_cmp(&key(b)).then(a.cmp(&b))
    });
    let mut by_place = vec![0; n];
    for (rank, &who) in order.iter().enumerate() {
        by_place[who] = rank;
    }
    // Two starts, by place and by number, each improved; the cheaper one wins.
    let price = |port: &[usize]| cost(port, ports, anchors);
    let mut starts = [by_place, (0..n).collect()];
    for port in &mut starts {
        improve(port, price);
    }
    let [by_place, by_number] = starts;
    let mut port = if price(&by_number) < price(&by_place) {
        by_number
    } else {
        by_place
    };
    // Swapping the ends of two crossing lines always shortens them, so this ends; it has the last
    // word.
    while let Some((a, b)) = crossing(&port, ports, anchors) {
        port.swap(a, b);
    }
    port
}

fn improve(port: &mut [usize], cost: impl Fn(&[usize]) -> f64) {
    let mut best = cost(port);
    // Each round makes the cost smaller; the limit only bounds the work on absurd cockpits.
    for _ in 0..64 {
        let mut changed = false;
        for a in 0..port.len() {
            for b in a + 1..port.len() {
                port.swap(a, b);
                let now = cost(port);
                if now + 1e-9 < best {
                    best = now;
                    changed = true;
                } else {
                    port.swap(a, b);
                }
            }
        }
        if !changed {
            break;
        }
    }
}

fn cost(port: &[usize], ports: &[Point], anchors: &[Point]) -> f64 {
    const CROSSING: f64 = 10_000.0;
    const TOUCHING: f64 = 300.0;
    const CLEAR: f64 = 6.5;
    const OUT_OF_ORDER: f64 = 90.0;
    let mut total = 0.0;
    for a in 0..port.len() {
        let from = ports[port[a]];
        total += (anchors[a] - from).hypot();
        for b in 0..port.len() {
            if b == a {
                continue;
            }
            if a < b && port[a] > port[b] {
                total += OUT_OF_ORDER;
            }
            if a < b && cross(from, anchors[a], ports[port[b]], anchors[b]) {
                total += CROSSING;
            }
            let near = distance_to_line(anchors[b], from, anchors[a]);
            total += TOUCHING * (1.0 - near / CLEAR).max(0.0);
        }
    }
    total
}

fn crossing(port: &[usize], ports: &[Point], anchors: &[Point]) -> Option<(usize, usize)> {
    (0..port.len())
        .flat_map(|a| (a + 1..port.len()).map(move |b| (a, b)))
        .find(|&(a, b)| cross(ports[port[a]], anchors[a], ports[port[b]], anchors[b]))
}

/// Whether two straight lines properly cross.
pub fn cross(a: Point, b: Point, c: Point, d: Point) -> bool {
    let turn = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
    turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0
}

fn distance_to_line(p: Point, a: Point, b: Point) -> f64 {
    let ab = b - a;
    let t = ((p - a).dot(ab) / ab.hypot2().max(1e-9)).clamp(0.0, 1.0);
    (p - (a + ab * t)).hypot()
}
