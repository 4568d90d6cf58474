//! Fields that hand on each letter, so that nothing typed is lost on the way to
//! another screen.

use leptos::prelude::*;
use leverwright_core::text::Text;

use crate::widgets::Tick;

/// A few lines of text.
#[component]
pub fn Words(
    #[prop(into)] label: String,
    /// Its name on the page, where something leads to it.
    #[prop(optional, into)]
    id: Option<String>,
    #[prop(into)] value: Signal<String>,
    #[prop(into)] set: Callback<String>,
    #[prop(default = 2)] rows: u8,
) -> impl IntoView {
    view! {
        <label class="field">
            <span>{label}</span>
            <textarea id=id rows=rows.to_string() maxlength=Text::LIMIT.to_string()
                prop:value=value
                on:input:target=move |ev| set.run(ev.target().value())></textarea>
        </label>
    }
}

/// A line of text.
#[component]
pub fn Line(
    #[prop(into)] label: String,
    /// Its name on the page, where something leads to it.
    #[prop(optional, into)]
    id: Option<String>,
    #[prop(into)] value: Signal<String>,
    #[prop(into)] set: Callback<String>,
) -> impl IntoView {
    view! {
        <label class="field">
            <span>{label}</span>
            <input type="text" id=id autocomplete="off" maxlength=Text::LIMIT.to_string()
                prop:value=value
                on:input:target=move |ev| set.run(ev.target().value())/>
        </label>
    }
}

/// One box to tick: its words, whether it is ticked, what ticking does.
pub type Labelled = (String, Signal<bool>, Callback<bool>);

/// Boxes that belong together.
#[component]
pub fn Ticks(#[prop(into)] legend: String, boxes: Vec<Labelled>) -> impl IntoView {
    let boxes = boxes
        .into_iter()
        .map(|(label, on, set)| view! { <Tick label on set/> })
        .collect_view();
    view! {
        <fieldset class="review-ticks">
            <legend>{legend}</legend>
            <div>{boxes}</div>
        </fieldset>
    }
}

/// Puts an item into a list or takes it out.
pub fn put<T: PartialEq>(all: &mut Vec<T>, item: T, is_in: bool) {
    all.retain(|other| *other != item);
    if is_in {
        all.push(item);
    }
}

/// Why something was not recorded, where the eyes are.
#[component]
pub fn Problem(#[prop(into)] id: String, words: RwSignal<String>) -> impl IntoView {
    view! {
        <p class="must-fix review-problem" role="alert" id=id tabindex="-1">
            {move || words.get()}
        </p>
    }
}
