//! Fields to type into. What is typed is handed on when the field is left.

use leptos::prelude::*;
use leverwright_core::text::Date;

use crate::number::number;
use crate::workspace::Workspace;

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

/// A day; `None` is an empty field. While one is typed, browsers tell of years such as 0002 and of days
/// that lack a part: those are no answers yet.
#[component]
pub fn DateField(
    #[prop(into)] label: String,
    /// Its name on the page, where something leads to it.
    #[prop(optional, into)]
    id: Option<String>,
    #[prop(into)] value: Signal<Option<Date>>,
    #[prop(into)] set: Callback<Option<Date>>,
) -> impl IntoView {
    let shown = move || value.get().map(|date| date.to_string()).unwrap_or_default();
    view! {
        <label class="field">
            <span>{label}</span>
            <input type="date" id=id min="1900-01-01" max="2999-12-31" prop:value=shown
                on:change:target=move |ev| {
                    if ev.target().check_validity() {
                        set.run(Date::parse(&ev.target().value()));
                    }
                }/>
        </label>
    }
}

/// A line that is read when the field is left. What is refused stays as it was
/// typed, with the reason under it.
#[component]
pub fn ReadField(
    #[prop(into)] label: String,
    /// The name of the field on the page.
    id: &'static str,
    /// What stands there while nothing was refused.
    #[prop(into)]
    value: Signal<String>,
    /// Takes what was typed, or says why not.
    #[prop(into)]
    set: Callback<String, Result<(), String>>,
    /// What may be typed.
    #[prop(optional)]
    hint: &'static str,
) -> impl IntoView {
    let workspace = Workspace::here();
    let refused = RwSignal::new(None::<String>);
    // What comes from elsewhere takes the place of what was typed.
    Effect::new(move |_| {
        value.with(|_| ());
        refused.set(None);
    });
    let note = format!("{id}-note");
    let described = note.clone();
    let read = move |text: String| match set.run(text) {
        Ok(()) => {
            refused.set(None);
            Some(value.get_untracked())
        }
        Err(reason) => {
            workspace.say(reason.clone());
            refused.set(Some(reason));
            None
        }
    };
    view! {
        <div class=format!("field read-field read-{id}")>
            <label for=id>{label}</label>
            <input type="text" id=id autocomplete="off" maxlength="400" spellcheck="false"
                aria-describedby=described
                aria-invalid=move || refused.with(Option::is_some).then_some("true")
                prop:value=value
                on:change:target=move |ev| {
                    if let Some(held) = read(ev.target().value()) {
                        ev.target().set_value(&held);
                    }
                }/>
            <p id=note class="field-note" class:refused=move || refused.with(Option::is_some)>
                {move || refused.get().unwrap_or_else(|| hint.to_owned())}
            </p>
        </div>
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
