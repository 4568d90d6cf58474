//! Fields to type into.

use leptos::prelude::*;

/// One line of text that is taken over when the field is left or Enter is
/// pressed, so that each entry is one step of undo.
#[component]
pub fn TextField(
    /// What is asked for.
    #[prop(into)]
    label: String,
    /// What is kept now.
    #[prop(into)]
    value: Signal<String>,
    /// Called with what was typed.
    #[prop(into)]
    typed: Callback<String>,
    /// The most characters taken.
    #[prop(optional)]
    most: Option<usize>,
) -> impl IntoView {
    view! {
        <label class="field">{label}
            <input type="text" autocomplete="off" maxlength=most.map(|n| n.to_string())
                prop:value=value on:change:target=move |e| typed.run(e.target().value())/>
        </label>
    }
}
