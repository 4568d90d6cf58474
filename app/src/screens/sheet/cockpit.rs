//! The drawing as printed: black on white, balloons only; the table below says
//! the rest.

use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::drawing::{Look, Margin, Picture, Sheet};
use leverwright_core::ordered::SmallMap;
use leverwright_core::plan::Plan;

use crate::drawing::{ButtonView, Cockpit, Touch};

/// Width of the picture in its own units: narrow, so that balloons come out
/// large enough to be read at arm’s length.
const WIDTH: f64 = 440.0;

/// The cockpit with its balloons.
#[component]
pub fn PrintedCockpit<'a>(plan: &'a Plan) -> impl IntoView + use<> {
    let sheet = Sheet {
        width: WIDTH,
        margin: Margin::Balloons,
    };
    let picture = Picture::of(&plan.bike, sheet);
    let looks = looks(plan);
    view! {
        <figure class="sheet-drawing">
            <Cockpit name="printed"
                label="Drawing of the cockpit with the balloon numbers that the text names"
                picture=Signal::stored(picture) buttons=Signal::stored(looks)/>
        </figure>
    }
}

fn looks(plan: &Plan) -> SmallMap<ButtonId, ButtonView> {
    let look = |id: ButtonId| {
        let look = Look::of(&plan.bike, plan.layout(), id)?;
        let shown = ButtonView {
            label: plan.bike.place_of(id),
            look,
            reach: None,
            lit: None,
            touch: Touch::Rest,
        };
        Some((id, shown))
    };
    let buttons = plan.bike.buttons();
    buttons.iter().filter_map(|(id, ..)| look(*id)).collect()
}
