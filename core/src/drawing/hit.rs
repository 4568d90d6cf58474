//! Touch areas over buttons: as large as fingers want, cut where two would meet.

use kurbo::{BezPath, Point, Rect, Vec2};

/// Side of the smallest touch area where there is room, picture units (WCAG 2.2, 2.5.5: 44).
pub const SIDE: f64 = 44.0;

/// The touch area of the `i`-th of several buttons: a rectangle about its face, at least
/// [`SIDE`] wide and high, cut half-way to every other button's anchor, so that areas never
/// overlap and each contains its own anchor.
pub fn area(i: usize, anchors: &[Point], face: Rect) -> BezPath {
    let anchor = anchors[i];
    let wanted = Rect::from_center_size(anchor, (SIDE, SIDE)).union(face);
    let mut corners = vec![
        Point::new(wanted.x0, wanted.y0),
        Point::new(wanted.x1, wanted.y0),
        Point::new(wanted.x1, wanted.y1),
        Point::new(wanted.x0, wanted.y1),
    ];
    for (j, &other) in anchors.iter().enumerate() {
        let apart = other - anchor;
        if j != i && apart.hypot() > 1e-6 {
            corners = cut(&corners, anchor.midpoint(other), apart);
        }
    }
    let mut path = BezPath::new();
    for (k, &corner) in corners.iter().enumerate() {
        if k == 0 {
            path.move_to(corner);
        } else {
            path.line_to(corner);
        }
    }
    path.close_path();
    path
}

// Keeps what lies on the near side of the line through `on` across `towards`.
fn cut(corners: &[Point], on: Point, towards: Vec2) -> Vec<Point> {
    let side = |p: Point| (p - on).dot(towards);
    let mut kept = Vec::with_capacity(corners.len() + 1);
    for (k, &a) in corners.iter().enumerate() {
        let b = corners[(k + 1) % corners.len()];
        let (sa, sb) = (side(a), side(b));
        if sa <= 0.0 {
            kept.push(a);
        }
        if (sa < 0.0 && sb > 0.0) || (sa > 0.0 && sb < 0.0) {
            kept.push(a.lerp(b, sa / (sa - sb)));
        }
    }
    kept
}
