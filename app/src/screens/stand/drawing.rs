//! The cockpit with the places of a step lit.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::{Look, Margin, Owner, Picture, Sheet};
use leverwright_core::finding::{Place, Severity};
use leverwright_core::lights::Lights;
use leverwright_core::ordered::SmallMap;
use leverwright_core::plan::Plan;

use crate::drawing::{ButtonView, Cockpit, Touch};

/// Width of the picture in its own units: balloons come out large.
const WIDTH: f64 = 460.0;

/// How lit places weigh for the drawing; the style sheet gives them one tone.
const LIT: Severity = Severity::GoodToKnow;

/// The drawing of a step.
#[component]
pub fn StepDrawing(plan: Arc<Plan>, places: Vec<Place>) -> impl IntoView {
    let sheet = Sheet {
        width: WIDTH,
        margin: Margin::Balloons,
    };
    let lights = Lights::of(&plan, &places);
    let label = match lit_words(&plan, &lights) {
        words if words.is_empty() => "The cockpit".to_owned(),
        words => format!("The cockpit, lit: {words}"),
    };
    let controls = lights.controls.iter();
    let lit: Vec<(Owner, Severity)> = controls
        .flat_map(|id| [(Owner::Control(*id), LIT), (Owner::Blade(*id), LIT)])
        .collect();
    view! {
        <figure class="step-drawing">
            <Cockpit name="step" label=Signal::stored(label)
                picture=Signal::stored(Picture::of(&plan.bike, sheet))
                buttons=Signal::stored(looks(&plan, &lights)) lit=Signal::stored(lit)/>
        </figure>
    }
}

fn looks(plan: &Plan, lights: &Lights) -> SmallMap<ButtonId, ButtonView> {
    let look = |id: ButtonId| {
        let shown = ButtonView {
            label: plan.bike.place_of(id),
            look: Look::of(&plan.bike, plan.layout(), id)?,
            reach: None,
            lit: lights.buttons.contains(&id).then_some(LIT),
            touch: Touch::Rest,
        };
        Some((id, shown))
    };
    let buttons = plan.bike.buttons();
    buttons.iter().filter_map(|(id, ..)| look(*id)).collect()
}

fn lit_words(plan: &Plan, lights: &Lights) -> String {
    let controls = lights.controls.iter().map(|id| Place::Control(*id));
    let buttons = lights.buttons.iter().map(|id| Place::Button(*id));
    let words: Vec<String> = controls
        .chain(buttons)
        .map(|place| place.words(&plan.bike))
        .collect();
    words.join(", ")
}

/// The balloon numbers of the buttons among places.
pub fn numbers(plan: &Plan, places: &[Place]) -> Vec<usize> {
    let number = |place: &Place| match place {
        Place::Button(id) => plan.bike.balloon(*id),
        _ => None,
    };
    places.iter().filter_map(number).collect()
}
