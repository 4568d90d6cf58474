//! Two drawn hands, palm down, as the rider sees their own.
//!
//! Measures are of a middle-sized adult hand (about 188 mm from wrist to middle finger tip, 86 mm
//! across the knuckles), *from memory*; the drawing shows which part is meant, it measures nobody.

use super::curve::{blob, path_data, through};
use crate::rider::{Contact, Side};
use kurbo::{Affine, BezPath, Point};

/// A part of the drawn hand that can be chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HandPart {
    /// A contact that is drawn: a digit, the heel, the side, the knuckles, the forearm.
    Contact(Contact),
    /// The back of the hand: stands for the hand as a whole.
    Back,
}

/// A part of the hand as a closed shape.
#[derive(Debug, Clone, PartialEq)]
pub struct HandRegion {
    /// Which part.
    pub part: HandPart,
    /// SVG path data, closed.
    pub d: String,
    /// A point well inside, for a number or a mark.
    pub middle: Point,
}

/// A drawn hand, in the units of [`HandPicture::VIEW_BOX`].
#[derive(Debug, Clone, PartialEq)]
pub struct HandPicture {
    /// Whose hand.
    pub side: Side,
    /// The parts, back to front; together they fill the outline.
    pub regions: Vec<HandRegion>,
    /// SVG path data of the outer edge: wrist round the fingers and back.
    pub outline: String,
    /// SVG path data of nails.
    pub nails: String,
    /// SVG path data of creases and tendons: fine lines.
    pub creases: String,
}

impl HandPicture {
    /// Width and height of the picture, units of one millimetre of the hand.
    pub const SIZE: (f64, f64) = (172.0, 284.0);
    /// What an SVG element's `viewBox` says.
    pub const VIEW_BOX: &'static str = "0 0 172 284";

    /// Draws the rider's hand of that side: the thumbs point to each other.
    pub fn of(side: Side) -> HandPicture {
        let place = match side {
            Side::Right => Affine::translate((107.0, 200.0)),
            Side::Left => Affine::translate((65.0, 200.0)) * Affine::FLIP_X,
        };
        let regions = regions()
            .into_iter()
            .map(|(part, path, middle)| HandRegion {
                part,
                d: path_data(&(place * path)),
                middle: place * Point::from(middle),
            })
            .collect();
        HandPicture {
            side,
            regions,
            outline: path_data(&(place * outline())),
            nails: path_data(&(place * nails())),
            creases: path_data(&(place * creases())),
        }
    }
}

type P = (f64, f64);

/// A finger of the right hand: from its web on the thumb side round the tip to its other web.
struct Finger {
    contact: Contact,
    near: P,
    far: P,
    tip: P,
    /// Half the width at the middle joint.
    girth: f64,
    /// How far the middle bows to the little finger's side.
    bow: f64,
}

const FINGERS: [Finger; 4] = [
    Finger {
        contact: Contact::Index,
        near: (-40.5, -92.0),
        far: (-19.0, -104.5),
        tip: (-46.0, -168.0),
        girth: 9.7,
        bow: -2.0,
    },
    Finger {
        contact: Contact::Middle,
        near: (-19.0, -104.5),
        far: (3.0, -105.0),
        tip: (-13.0, -186.0),
        girth: 9.9,
        bow: -0.6,
    },
    Finger {
        contact: Contact::Ring,
        near: (3.0, -105.0),
        far: (22.5, -96.0),
        tip: (22.0, -176.0),
        girth: 9.3,
        bow: 1.6,
    },
    Finger {
        contact: Contact::Little,
        near: (22.5, -96.0),
        far: (41.0, -78.0),
        tip: (53.0, -138.0),
        girth: 8.2,
        bow: 2.4,
    },
];

// Half-widths along a finger, as shares of its girth: full at the knuckle end and the middle joint,
// slimmer between, rounded at the tip.
const PROFILE: [(f64, f64); 9] = [
    (0.16, 0.97),
    (0.27, 0.97),
    (0.40, 1.02),
    (0.54, 0.94),
    (0.68, 0.95),
    (0.80, 0.90),
    (0.90, 0.80),
    (0.965, 0.56),
    (0.993, 0.26),
];

impl Finger {
    fn root(&self) -> P {
        (
            (self.near.0 + self.far.0) / 2.0,
            (self.near.1 + self.far.1) / 2.0,
        )
    }

    // A place `t` of the way to the tip, `across` mm to the little finger's side.
    fn at(&self, t: f64, across: f64) -> P {
        let (rx, ry) = self.root();
        let (dx, dy) = (self.tip.0 - rx, self.tip.1 - ry);
        let length = (dx * dx + dy * dy).sqrt();
        let (ux, uy) = (dx / length, dy / length);
        let side = across + self.bow * 4.0 * t * (1.0 - t);
        (rx + dx * t - uy * side, ry + dy * t + ux * side)
    }

    // From the web on the thumb side over the tip to the other web, webs left out.
    fn round(&self) -> Vec<P> {
        let mut points: Vec<P> = PROFILE
            .iter()
            .map(|&(t, w)| self.at(t, -w * self.girth))
            .collect();
        points.push(self.at(1.0, 0.0));
        points.extend(
            PROFILE
                .iter()
                .rev()
                .map(|&(t, w)| self.at(t, w * self.girth)),
        );
        points
    }

    fn region(&self) -> BezPath {
        let mut points = vec![self.near, self.near];
        points.extend(self.round());
        points.extend([self.far, self.far]);
        // The line between finger and knuckle bows down a little.
        points.push(self.at(-0.05, 0.0));
        blob(&points)
    }
}

/// From the wrist up the thumb's outer side, round its tip, down to the web beside the index.
const THUMB: [P; 17] = [
    (-40.0, -29.0),
    (-50.5, -43.0),
    (-60.5, -54.5),
    (-69.5, -66.0),
    (-78.5, -79.5),
    (-86.0, -93.0),
    (-92.5, -107.0),
    (-94.8, -117.5),
    (-91.0, -125.0),
    (-83.5, -125.0),
    (-76.5, -116.0),
    (-70.5, -103.5),
    (-63.5, -91.5),
    (-56.5, -80.5),
    (-51.0, -70.5),
    (-46.6, -62.5),
    (-43.2, -59.5),
];
/// Where the thumb's region begins in [`THUMB`].
const THUMB_ROOT: usize = 1;

const WRIST_IN: P = (-29.0, 0.0);
const WRIST_OUT: P = (28.0, 0.0);
const ARM_END: f64 = 78.0;

// Thumb's side of wrist and forearm, going up.
const ARM_IN: [P; 4] = [(-36.0, ARM_END), (-33.0, 45.0), (-29.5, 18.0), (-29.0, 0.0)];
const PALM_IN: [P; 2] = [(-30.5, -10.0), (-34.0, -20.0)];
// From the web beside the thumb to the index.
const INDEX_SIDE: [P; 3] = [(-41.0, -62.0), (-40.5, -70.0), (-41.0, -82.0)];
// From the little finger down the outer side.
const PALM_OUT: [P; 5] = [
    (42.5, -66.0),
    (42.0, -48.0),
    (38.0, -28.0),
    (32.5, -12.0),
    (28.0, 0.0),
];
const ARM_OUT: [P; 3] = [(28.5, 18.0), (33.0, 45.0), (37.0, ARM_END)];

fn outline() -> BezPath {
    let mut points: Vec<P> = ARM_IN.to_vec();
    points.extend(PALM_IN);
    points.extend(THUMB);
    points.extend(INDEX_SIDE);
    for finger in &FINGERS {
        if finger.contact != Contact::Index {
            // A web is a small round valley, not a corner.
            points.push(finger.near);
        }
        points.extend(finger.round());
    }
    points.push(FINGERS[3].far);
    points.extend(PALM_OUT);
    points.extend(ARM_OUT);
    through(&points)
}

// Knuckle line: below it the back of the hand begins.
const KNUCKLES: [P; 5] = [
    (-41.0, -76.0),
    (-24.0, -83.0),
    (-4.0, -84.0),
    (16.0, -77.0),
    (33.0, -63.0),
];
// Inner edge of the side of the hand, from the knuckles down.
const SIDE_EDGE: [P; 4] = [(33.0, -63.0), (31.0, -46.0), (27.0, -30.0), (24.0, -21.0)];
// Upper edge of the heel, from the side to the thumb.
const HEEL_EDGE: [P; 4] = [(24.0, -21.0), (8.0, -26.0), (-12.0, -26.0), (-34.0, -20.0)];

fn regions() -> Vec<(HandPart, BezPath, P)> {
    let mut all = vec![
        (HandPart::Contact(Contact::Forearm), forearm(), (0.0, 42.0)),
        (HandPart::Contact(Contact::Heel), heel(), (-3.0, -12.5)),
        (HandPart::Back, back(), (-6.0, -54.0)),
        (HandPart::Contact(Contact::HandSide), side(), (35.5, -44.0)),
        (
            HandPart::Contact(Contact::Knuckle),
            knuckles(),
            (-8.0, -93.0),
        ),
        (HandPart::Contact(Contact::Thumb), thumb(), (-72.0, -88.0)),
    ];
    for finger in &FINGERS {
        all.push((
            HandPart::Contact(finger.contact),
            finger.region(),
            finger.at(0.55, 0.0),
        ));
    }
    all
}

fn corner(p: P) -> [P; 2] {
    [p, p]
}

fn forearm() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(ARM_IN[0]));
    points.extend(&ARM_IN[1..3]);
    points.extend(corner(WRIST_IN));
    points.push((0.0, 3.0));
    points.extend(corner(WRIST_OUT));
    points.extend(&ARM_OUT[..2]);
    points.extend(corner(ARM_OUT[2]));
    blob(&points)
}

fn heel() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(WRIST_IN));
    points.push(PALM_IN[0]);
    points.extend(corner(PALM_IN[1]));
    points.extend([HEEL_EDGE[2], HEEL_EDGE[1]]);
    points.extend(corner(HEEL_EDGE[0]));
    points.extend(corner((35.5, -20.0)));
    points.push(PALM_OUT[3]);
    points.extend(corner(WRIST_OUT));
    points.push((0.0, 3.0));
    blob(&points)
}

fn back() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(HEEL_EDGE[3]));
    points.push(THUMB[0]);
    points.extend(corner(THUMB[THUMB_ROOT]));
    points.push((-49.0, -56.0));
    points.extend(corner(THUMB[16]));
    points.extend(&INDEX_SIDE[..2]);
    points.extend(corner(KNUCKLES[0]));
    points.extend(&KNUCKLES[1..4]);
    points.extend(corner(KNUCKLES[4]));
    points.extend(&SIDE_EDGE[1..3]);
    points.extend(corner(SIDE_EDGE[3]));
    points.extend(&HEEL_EDGE[1..3]);
    blob(&points)
}

fn side() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(KNUCKLES[4]));
    points.extend(corner((42.3, -63.0)));
    points.extend(&PALM_OUT[1..2]);
    points.extend(corner((35.5, -20.0)));
    points.extend(corner(SIDE_EDGE[3]));
    points.extend([SIDE_EDGE[2], SIDE_EDGE[1]]);
    blob(&points)
}

fn knuckles() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(KNUCKLES[0]));
    points.push(INDEX_SIDE[2]);
    for finger in &FINGERS {
        points.extend(corner(finger.near));
        points.push(finger.at(-0.05, 0.0));
    }
    points.extend(corner(FINGERS[3].far));
    points.push(PALM_OUT[0]);
    points.extend(corner((42.3, -63.0)));
    points.extend(corner(KNUCKLES[4]));
    points.extend([KNUCKLES[3], KNUCKLES[2], KNUCKLES[1]]);
    blob(&points)
}

fn thumb() -> BezPath {
    let mut points = Vec::new();
    points.extend(corner(THUMB[THUMB_ROOT]));
    points.extend(&THUMB[THUMB_ROOT + 1..16]);
    points.extend(corner(THUMB[16]));
    points.push((-49.0, -56.0));
    blob(&points)
}

fn nails() -> BezPath {
    let mut all = BezPath::new();
    for finger in &FINGERS {
        let w = finger.girth * 0.52;
        all.extend(blob(&[
            finger.at(0.875, -w * 0.94),
            finger.at(0.925, -w),
            finger.at(0.955, -w * 0.8),
            finger.at(0.966, 0.0),
            finger.at(0.955, w * 0.8),
            finger.at(0.925, w),
            finger.at(0.875, w * 0.94),
            finger.at(0.852, w * 0.6),
            finger.at(0.845, 0.0),
            finger.at(0.852, -w * 0.6),
        ]));
    }
    // The thumb's nail is seen aslant.
    all.extend(blob(&[
        (-91.0, -118.5),
        (-88.0, -121.3),
        (-83.8, -119.0),
        (-79.5, -112.0),
        (-78.8, -107.5),
        (-82.0, -106.5),
        (-86.5, -110.0),
    ]));
    all
}

fn creases() -> BezPath {
    let mut all = BezPath::new();
    for finger in &FINGERS {
        let w = finger.girth;
        // Middle joint: two folds with an eye between; end joint: one.
        for (t, bend) in [(0.375, -0.014), (0.425, 0.014)] {
            all.extend(through(&[
                finger.at(t, -w * 0.55),
                finger.at(t + bend, 0.0),
                finger.at(t, w * 0.55),
            ]));
        }
        all.extend(through(&[
            finger.at(0.70, -w * 0.45),
            finger.at(0.707, 0.0),
            finger.at(0.70, w * 0.45),
        ]));
        // Knuckle.
        let (x, y) = finger.root();
        let y = y + 12.0;
        all.extend(through(&[
            (x - w * 0.7, y + 2.5),
            (x - w * 0.25, y - 1.0),
            (x + w * 0.35, y - 0.5),
            (x + w * 0.75, y + 3.5),
        ]));
    }
    // Thumb joint.
    all.extend(through(&[(-76.5, -83.0), (-72.0, -87.5), (-66.0, -90.0)]));
    all.extend(through(&[(-79.0, -87.0), (-74.0, -91.5), (-68.0, -94.0)]));
    // Tendons fan from the wrist.
    for (from, to) in [
        ((-9.0, -34.0), (-24.0, -72.0)),
        ((-3.0, -36.0), (-6.0, -74.0)),
        ((4.0, -35.0), (12.0, -68.0)),
        ((10.0, -33.0), (25.0, -58.0)),
    ] {
        let middle = ((from.0 + to.0) / 2.0 + 0.8, (from.1 + to.1) / 2.0);
        all.extend(through(&[from, middle, to]));
    }
    // The thumb's tendon and the bone of the wrist.
    all.extend(through(&[(-24.0, -14.0), (-34.0, -28.0), (-47.0, -45.0)]));
    all.extend(through(&[
        (14.0, 12.0),
        (18.0, 7.0),
        (23.0, 8.0),
        (25.0, 14.0),
    ]));
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Vocabulary;
    use kurbo::{Rect, Shape};

    fn path(d: &str) -> BezPath {
        BezPath::from_svg(d).expect("path data is SVG")
    }

    #[test]
    fn every_part_lies_on_the_picture_about_its_own_middle_only() {
        let page = Rect::new(0.0, 0.0, HandPicture::SIZE.0, HandPicture::SIZE.1);
        for side in [Side::Left, Side::Right] {
            let hand = HandPicture::of(side);
            for region in &hand.regions {
                let bounds = path(&region.d).bounding_box();
                assert_eq!(page.union(bounds), page, "{side}: {:?}", region.part);
                for other in &hand.regions {
                    let inside = path(&other.d).contains(region.middle);
                    assert_eq!(inside, other.part == region.part, "{:?}", region.part);
                }
            }
        }
    }

    #[test]
    fn all_of_a_hand_and_arm_can_be_chosen() {
        let hand = HandPicture::of(Side::Left);
        for contact in Contact::ALL {
            let drawn = hand
                .regions
                .iter()
                .any(|r| r.part == HandPart::Contact(*contact));
            // These two take the place of a hand.
            let other = matches!(contact, Contact::ResidualLimb | Contact::DeviceTip);
            assert_eq!(drawn, !other, "{contact}");
        }
    }

    #[test]
    fn parts_fill_the_outline() {
        let hand = HandPicture::of(Side::Right);
        let mut outline = path(&hand.outline);
        outline.close_path();
        let parts: f64 = hand.regions.iter().map(|r| path(&r.d).area().abs()).sum();
        let whole = outline.area().abs();
        assert!((parts / whole - 1.0).abs() < 0.03, "{parts} of {whole}");
    }

    #[test]
    fn thumbs_point_to_each_other() {
        let thumb = |side| {
            let hand = HandPicture::of(side);
            let thumb = HandPart::Contact(Contact::Thumb);
            let region = hand.regions.into_iter().find(|r| r.part == thumb);
            region.expect("a hand has a thumb").middle
        };
        let (left, right) = (thumb(Side::Left), thumb(Side::Right));
        assert!(left.x > HandPicture::SIZE.0 / 2.0);
        assert!((left.x + right.x - HandPicture::SIZE.0).abs() < 0.01);
        assert!((left.y - right.y).abs() < 0.01);
    }

    #[test]
    fn fingers_keep_the_order_of_their_lengths() {
        let hand = HandPicture::of(Side::Right);
        let top = |contact| {
            let part = HandPart::Contact(contact);
            let region = hand.regions.iter().find(|r| r.part == part);
            path(&region.expect("it is drawn").d).bounding_box().y0
        };
        assert!(top(Contact::Middle) < top(Contact::Ring));
        assert!(top(Contact::Ring) < top(Contact::Index));
        assert!(top(Contact::Index) < top(Contact::Little));
        assert!(top(Contact::Little) < top(Contact::Thumb));
    }
}
