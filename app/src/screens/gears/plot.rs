//! All gears on a logarithmic axis: a mark for each, the ways of the ladder, and
//! crossovers that can be moved.

use leptos::ev::MouseEvent;
use leptos::html;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::gears::plot::{CadenceBand, Quantity};
use leverwright_core::gears::{Direction, Rpm};

use wasm_bindgen::JsCast;
use web_sys::Element;

use super::desk::GearDesk;
use super::drag::CrossoverHandles;
use super::drawn::{ground, stretches};
use super::legend::Legend;
use super::marks::{CogTeeth, Marks, nearest};
use super::readout::Readout;
use crate::erase::{memo, text, view_of};
use crate::number::number;
use crate::observe::observe;
use crate::widgets::{Choice, NumberField};
use crate::words::capitalised;

/// The picture of all gears with what is said of one.
#[component]
pub fn AllGears() -> impl IntoView {
    let desk = GearDesk::here();
    let room = NodeRef::<html::Div>::new();
    observe(room, move || {
        if let Some(room) = room.get_untracked() {
            let width = room.get_bounding_client_rect().width().floor();
            desk.width.set(user_units(width, text_size()));
        }
    });
    let is_drawn = memo(move || desk.plot.with(Option::is_some));
    let trouble = memo(move || desk.trouble.get());
    view! {
        <section class="gears-all" aria-labelledby="all-gears">
            <div class="plot-head">
                <h2 id="all-gears">"All gears"</h2>
                <QuantityChoice/>
            </div>
            <div node_ref=room>
                <p class="gears-trouble">{move || trouble.get()}</p>
                {view_of(move || is_drawn.get().then(|| view! { <Picture/> }))}
            </div>
        </section>
    }
}

/// The text size of the page, as a multiple of the usual 16 pixels.
fn text_size() -> f64 {
    let root = document().document_element();
    let style = root.and_then(|root| window().get_computed_style(&root).ok().flatten());
    let size = style.and_then(|style| style.get_property_value("font-size").ok());
    size.and_then(|size| number(size.trim_end_matches("px")))
        .map_or(1.0, |size| size / 16.0)
}

/// In pictures of fewer units marks are smaller, or they would touch.
const NARROW: f64 = 440.0;

/// A picture of fewer units than this has no room for its marks.
const LEAST: f64 = 280.0;

/// The width in units: one is a pixel at the usual text size, and larger where
/// text is and there is room.
fn user_units(width: f64, text: f64) -> f64 {
    (width / text).max(LEAST.min(width))
}

/// What the axis shows.
#[component]
fn QuantityChoice() -> impl IntoView {
    let desk = GearDesk::here();
    let known = memo(move || {
        desk.read(|plan| Quantity::known(&plan.bike.drivetrain).to_vec())
            .unwrap_or_default()
    });
    let chosen = Signal::derive(move || {
        let known = known.get();
        let wanted = desk.quantity.get();
        known
            .contains(&wanted)
            .then_some(wanted)
            .or(known.first().copied())
    });
    let choose = Callback::new(move |quantity: Option<Quantity>| {
        if let Some(quantity) = quantity {
            desk.quantity.set(quantity);
        }
    });
    view! {
        {view_of(move || {
            let choices = known.get().into_iter()
                .map(|quantity| (Some(quantity), capitalised(quantity.words())))
                .collect();
            view! {
                <Choice legend="Show" legend_unseen=true name="quantity" choices chosen choose/>
            }
        })}
        {view_of(move || (chosen.get() == Some(Quantity::Speed)).then(|| view! { <Band/> }))}
    }
}

/// The cadences of speeds.
#[component]
fn Band() -> impl IntoView {
    let desk = GearDesk::here();
    let set = move |change: fn(&mut CadenceBand, Rpm), rpm: Option<f64>| {
        let mut band = desk.band.get_untracked();
        change(&mut band, Rpm(rpm.unwrap_or(0.0)));
        match band.checked() {
            Ok(band) => desk.band.set(band),
            Err(error) => desk.workspace.refuse(&error.to_string()),
        }
    };
    view! {
        <div class="cadence-band">
            <NumberField label="From (rpm)" least=20.0 most=150.0
                value=Signal::derive(move || Some(desk.band.get().from.0))
                set={move |rpm: Option<f64>| set(|band, rpm| band.from = rpm, rpm)}/>
            <NumberField label="To (rpm)" least=20.0 most=150.0
                value=Signal::derive(move || Some(desk.band.get().to.0))
                set={move |rpm: Option<f64>| set(|band, rpm| band.to = rpm, rpm)}/>
        </div>
    }
}

#[component]
fn Picture() -> impl IntoView {
    let desk = GearDesk::here();
    let frame = NodeRef::<leptos::svg::Svg>::new();
    let size = memo(move || desk.plot.with(|plot| plot.as_ref().map(|plot| plot.size)));
    let view_box = text(move || {
        let (width, height) = size.get().unwrap_or((1.0, 1.0));
        format!("0 0 {width} {height}")
    });
    let is_narrow = memo(move || size.get().is_some_and(|(width, _)| width < NARROW));
    let summary = text(move || {
        desk.plot
            .with(|plot| plot.as_ref().map(|p| p.summary.clone()).unwrap_or_default())
    });
    let way = move |way: Direction| {
        text(move || {
            desk.plot.with(|plot| {
                let plot = plot.as_ref();
                let line = plot.and_then(|plot| plot.ways.iter().find(|line| line.way == way));
                line.map(stretches).unwrap_or_default()
            })
        })
    };
    // Whoever taps beside a small mark means the nearest.
    let tap = move |event: MouseEvent| {
        if is_on_handle(&event) {
            return;
        }
        let place = frame.get_untracked().map(|frame| {
            let frame = frame.get_bounding_client_rect();
            let units = size.get_untracked().map_or(1.0, |size| size.0) / frame.width();
            (
                (f64::from(event.client_x()) - frame.left()) * units,
                (f64::from(event.client_y()) - frame.top()) * units,
            )
        });
        if let Some(gear) = place.and_then(|place| untrack(|| nearest(desk, place))) {
            desk.shown.set(gear);
        }
    };
    view! {
        <p id="gears-summary" class="unseen">{summary}</p>
        <svg class="gear-plot" class:narrow=move || is_narrow.get() viewBox=view_box node_ref=frame on:click=tap>
            <g aria-hidden="true">
                {view_of(move || desk.plot.get().map(|plot| ground(&plot)))}
                <path class="way up" d=way(Direction::Up)></path>
                <path class="way down" d=way(Direction::Down)></path>
            </g>
            <Marks/>
            <CogTeeth/>
            <CrossoverHandles/>
        </svg>
        <Readout/>
        <Legend/>
    }
}

/// Whether a crossover is meant, and no gear.
fn is_on_handle(event: &MouseEvent) -> bool {
    let target = event.target().and_then(|t| t.dyn_into::<Element>().ok());
    target.is_some_and(|target| matches!(target.closest(".handle"), Ok(Some(_))))
}

#[cfg(test)]
mod tests {
    use super::user_units;

    #[test]
    fn units_grow_with_the_text_where_there_is_room() {
        assert!((user_units(800.0, 1.0) - 800.0).abs() < 1e-9);
        assert!((user_units(800.0, 2.0) - 400.0).abs() < 1e-9);
        assert!((user_units(300.0, 2.0) - 280.0).abs() < 1e-9);
        assert!((user_units(260.0, 2.0) - 260.0).abs() < 1e-9);
    }
}
