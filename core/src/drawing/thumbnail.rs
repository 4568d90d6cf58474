//! The cockpit as a small picture: nothing but its parts, for lists.

use super::cockpit;
use super::curve::path_data;
use super::pen::{Ink, Mark};
use super::picture::Shape;
use crate::cockpit::Bike;
use kurbo::{Affine, Rect, Shape as _};

/// A small picture of a cockpit, without balloons and without texture.
#[derive(Debug, Clone, PartialEq)]
pub struct Thumbnail {
    /// Width, units.
    pub width: f64,
    /// Height, units.
    pub height: f64,
    /// Shapes, to be painted in this order.
    pub shapes: Vec<Shape>,
}

impl Thumbnail {
    /// Room round the drawing for its lines, units.
    const EDGE: f64 = 3.0;

    /// Draws the cockpit of a bike as large as fits into a width and a height,
    /// the stem in the middle. One unit is one CSS pixel at that width.
    pub fn of(bike: &Bike, width: f64, height: f64) -> Thumbnail {
        let art = cockpit::draw(bike);
        let marks: Vec<&Mark> = art.marks.iter().filter(|m| m.ink != Ink::Detail).collect();
        let bounds = marks
            .iter()
            .map(|mark| mark.path.bounding_box())
            .reduce(|a, b| a.union(b))
            .unwrap_or(Rect::new(-1.0, -1.0, 1.0, 1.0));
        let half = bounds.x1.max(-bounds.x0);
        let scale = ((width - 2.0 * Self::EDGE) / (2.0 * half))
            .min((height - 2.0 * Self::EDGE) / bounds.height());
        let place = Affine::translate((width / 2.0, height / 2.0))
            * Affine::scale(scale)
            * Affine::translate((0.0, -bounds.center().y));
        let shapes = marks
            .iter()
            .map(|mark| Shape {
                ink: mark.ink,
                tone: mark.tone,
                owner: mark.owner,
                d: path_data(&(place * &mark.path)),
            })
            .collect();
        Thumbnail {
            width,
            height,
            shapes,
        }
    }

    /// What an SVG element's `viewBox` says.
    pub fn view_box(&self) -> String {
        format!("0 0 {:.0} {:.0}", self.width, self.height)
    }
}

#[cfg(test)]
mod tests {
    use super::Thumbnail;
    use crate::Vocabulary;
    use crate::catalogue::{TemplateId, template};
    use kurbo::{BezPath, Rect, Shape as _};

    #[test]
    fn every_template_fits_its_small_picture_and_fills_it_one_way() {
        for id in TemplateId::ALL {
            let picture = Thumbnail::of(&template(*id).bike, 200.0, 110.0);
            let drawn = picture
                .shapes
                .iter()
                .map(|s| BezPath::from_svg(&s.d).expect("path data").bounding_box())
                .reduce(|a, b| a.union(b))
                .expect("something is drawn");
            let page = Rect::new(2.0, 2.0, 198.0, 108.0);
            assert!(page.union(drawn) == page, "{id}: {drawn:?}");
            assert!(
                drawn.height() > 90.0 || drawn.width() > 90.0,
                "{id}: {drawn:?}"
            );
        }
    }
}
