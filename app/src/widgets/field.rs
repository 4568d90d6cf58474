//! Fields to type into. What is typed is handed on when the field is left.

use leptos::prelude::*;

use crate::number::number;

/// A line of text.
#[component]
pub fn TextField(
    #[prop(into)] label: String,
    #[prop(into)] value: Signal<String>,
    #[prop(into)] set: Callback<String>,
) -> impl IntoView {
    view! {
        <label class="field">
            <span>{label}</span>
            <input type="text" autocomplete="off" maxlength="400"
                prop:value=value
                on:change:target=move |ev| set.run(ev.target().value())/>
        </label>
    }
}

/// A number; `None` is an empty field. After a refusal the field shows again
/// what holds.
#[component]
pub fn NumberField(
    #[prop(into)] label: String,
    least: f64,
    most: f64,
    #[prop(into)] value: Signal<Option<f64>>,
    #[prop(into)] set: Callback<Option<f64>>,
) -> impl IntoView {
    let shown = move || value.get().map_or_else(String::new, |n| n.to_string());
    view! {
        <label class="field number">
            <span>{label}</span>
            <input type="number" inputmode="decimal" step="any"
                min=least.to_string() max=most.to_string()
                prop:value=shown
                on:change:target=move |ev| {
                    set.run(number(&ev.target().value()));
                    ev.target().set_value(&shown());
                }/>
        </label>
    }
}

/// A yes or no that is always known.
#[component]
pub fn Tick(
    #[prop(into)] label: String,
    #[prop(into)] on: Signal<bool>,
    #[prop(into)] set: Callback<bool>,
) -> impl IntoView {
    view! {
        <label class="tick">
            <input type="checkbox" prop:checked=on
                on:change:target=move |ev| set.run(ev.target().checked())/>
            <span>{label}</span>
        </label>
    }
}

/// One of a list, as the browser's own menu.
#[component]
pub fn Select<T>(
    #[prop(into)] label: String,
    #[prop(into)] choices: Signal<Vec<(T, String)>>,
    #[prop(into)] chosen: Signal<Option<T>>,
    #[prop(into)] set: Callback<T>,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let options = move || {
        let now = chosen.get();
        choices
            .get()
            .into_iter()
            .enumerate()
            .map(|(at, (value, words))| {
                let selected = now.as_ref() == Some(&value);
                view! { <option value=at.to_string() prop:selected=selected>{words}</option> }
            })
            .collect_view()
    };
    let choose = move |at: String| {
        let value = at.parse::<usize>().ok().and_then(|at| {
            choices
                .get_untracked()
                .get(at)
                .map(|(value, _)| value.clone())
        });
        if let Some(value) = value {
            set.run(value);
        }
    };
    view! {
        <label class="field">
            <span>{label}</span>
            <select on:change:target=move |ev| choose(ev.target().value())>{options}</select>
        </label>
    }
}
