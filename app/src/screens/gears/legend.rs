//! What the marks mean.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::Direction;
use leverwright_core::gears::plot::{GearPlot, MarkShape};

use super::desk::GearDesk;
use super::drawn::{CROSSED, TWIN, shape};
use crate::erase::{memo, view_of};

/// What there is of each kind in the picture.
#[derive(Debug, Clone, PartialEq, Default)]
struct Kinds {
    shapes: Vec<MarkShape>,
    twins: bool,
    crossed: bool,
    ways: bool,
}

impl Kinds {
    fn of(plot: &GearPlot) -> Kinds {
        let mut kinds = Kinds::default();
        for shape in MarkShape::ALL {
            if plot.marks.iter().any(|mark| mark.shape == *shape) {
                kinds.shapes.push(*shape);
            }
        }
        kinds.twins = plot.marks.iter().any(|mark| mark.duplicate);
        kinds.crossed = plot.marks.iter().any(|mark| mark.crossed);
        kinds.ways = !plot.ways.is_empty();
        kinds
    }
}

impl Kinds {
    fn is_plain(&self) -> bool {
        self.shapes.len() < 2 && !self.twins && !self.crossed && !self.ways
    }
}

/// Only what is in the picture.
#[component]
pub fn Legend() -> impl IntoView {
    let desk = GearDesk::here();
    let kinds = memo(move || {
        desk.plot
            .with(|plot| plot.as_deref().map(Kinds::of))
            .unwrap_or_default()
    });
    view_of(move || {
        let kinds = kinds.get();
        // Discs alone speak for themselves.
        if kinds.is_plain() {
            return None;
        }
        let shapes = kinds
            .shapes
            .iter()
            .map(|kind| {
                item(
                    kind.code(),
                    view! { <path class="shape" d=shape(*kind)></path> }.into_any(),
                    kind.words(),
                )
            })
            .collect_view();
        let twin = kinds.twins.then(|| {
            let sign = view! {
                <circle class="outline" r=TWIN></circle>
                <path class="shape" d=shape(MarkShape::Used)></path>
            };
            item(
                "used twin",
                sign.into_any(),
                "about the same on another ring",
            )
        });
        let crossed = kinds.crossed.then(|| {
            let sign = view! {
                <path class="stroke" d=CROSSED></path>
                <path class="shape" d=shape(MarkShape::Used)></path>
            };
            item("used crossed", sign.into_any(), "chain runs crossed")
        });
        let ways = kinds.ways.then(|| {
            Direction::ALL
                .iter()
                .map(|way| {
                    let class = format!("way {}", way.code());
                    let words = match way {
                        Direction::Up => "way up the ladder",
                        Direction::Down => "way down",
                    };
                    item(
                        "",
                        view! { <path class=class d="M-12 0H12"></path> }.into_any(),
                        words,
                    )
                })
                .collect_view()
        });
        Some(
            view! { <ul class="gear-legend" aria-label="What the marks mean">{shapes}{twin}{crossed}{ways}</ul> },
        )
    })
}

fn item(class: &str, sign: AnyView, words: &'static str) -> impl IntoView + use<> {
    view! {
        <li>
            <svg class="gear-plot sign" viewBox="-13 -13 26 26" aria-hidden="true">
                <g class=format!("gear-mark {class}")>{sign}</g>
            </svg>
            {words}
        </li>
    }
}
