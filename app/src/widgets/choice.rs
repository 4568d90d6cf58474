//! One of several, as a row of radio buttons that look like segments.

use crate::erase::flag;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::rider::YesNo;

/// What may be chosen: a value, or nothing said, each with its words.
pub type Choices<T> = Vec<(Option<T>, String)>;

/// Every item of a vocabulary, then *not asked*.
pub fn all_or_not_asked<T: Vocabulary>() -> Choices<T> {
    T::ALL
        .iter()
        .map(|item| (Some(*item), item.words().to_owned()))
        .chain([(None, "not asked".to_owned())])
        .collect()
}

/// Yes and no as what was seen, and that nobody looked yet.
pub fn seen(yes: &str, no: &str, not_yet: &str) -> Choices<YesNo> {
    [
        (Some(YesNo::Yes), yes),
        (Some(YesNo::No), no),
        (None, not_yet),
    ]
    .map(|(value, words)| (value, words.to_owned()))
    .to_vec()
}

/// A row of choices. The browser's own radio buttons bring arrow keys, screen
/// readers and voice control along.
#[component]
pub fn Choice<T>(
    /// What is asked; read out before the choices.
    #[prop(into)]
    legend: String,
    /// Whether the legend is read out only, because it already stands nearby.
    #[prop(optional)]
    legend_unseen: bool,
    /// A name that no other choice on the page has.
    #[prop(into)]
    name: String,
    /// What may be chosen.
    choices: Choices<T>,
    /// What is chosen now.
    #[prop(into)]
    chosen: Signal<Option<T>>,
    /// Called with what was chosen, also when it was chosen already: then the
    /// same is said anew.
    #[prop(into)]
    choose: Callback<Option<T>>,
    /// What stands below, for instance who said so; its line is kept free, so
    /// that nothing moves when it comes.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
) -> impl IntoView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let note_id = note.map(|_| format!("{name}-note"));
    let note = note_id
        .clone()
        .map(|id| view! { <p class="choice-note" id=id>{note}</p> });
    let segments = choices
        .into_iter()
        .map(|(value, words)| {
            view! {
                <label class="segment">
                    <input type="radio" name=name.clone()
                        prop:checked={flag(move || chosen.get() == value)}
                        on:click=move |_| {
                            // A click on another one is told by its change.
                            if chosen.get_untracked() == value {
                                choose.run(value);
                            }
                        }
                        on:change=move |_| choose.run(value)/>
                    <span>{words}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choice" aria-describedby=note_id>
            <legend class:unseen=legend_unseen>{legend}</legend>
            <div class="segments">{segments}</div>
            {note}
        </fieldset>
    }
}
