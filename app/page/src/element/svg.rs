//! One function for each tag of a drawing that the app uses.

use super::Element;

pub use leptos::svg::*;

macro_rules! elements {
    ($($function:ident $tag:ident)*) => {
        $(
            #[doc = concat!("The element `", stringify!($function), "`.")]
            pub fn $function() -> Element<leptos::svg::$tag> {
                Element::new()
            }
        )*
    };
}

elements! {
    circle Circle
    defs Defs
    ellipse Ellipse
    g G
    line Line
    path Path
    pattern Pattern
    polygon Polygon
    polyline Polyline
    rect Rect
    svg Svg
    text Text
}
