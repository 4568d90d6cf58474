//! What happened instead: large choices, or words.

use leptos::ev::KeyboardEvent;
use leptos::ev::SubmitEvent;
use leptos::prelude::*;
use leverwright_core::record::Outcome;

use super::HEADING;
use super::desk::CheckDesk;
use super::step::{PageHead, is_typing};

/// Asks what happened. A choice or words write it down.
#[component]
pub fn Instead(at: usize) -> impl IntoView {
    let desk = CheckDesk::here();
    let run = desk.run.get_untracked()?;
    let step = run.steps.get(at)?.step.clone();
    let all = step.instead();
    let write = move |what: &str| desk.write(at, Outcome::SomethingElse, what);
    let choices = all.iter().enumerate().map(|(n, what)| {
        view! {
            <button type="button" data-key=(n + 1).to_string()
                on:click=move |_| write(what)>{*what}</button>
        }
    });
    let keys = move |event: KeyboardEvent| {
        if is_typing(&event) {
            return;
        }
        let key = event.key();
        let chosen = key
            .parse::<usize>()
            .ok()
            .and_then(|n| all.get(n.checked_sub(1)?));
        match (key.as_str(), chosen) {
            ("Escape" | "ArrowLeft", _) => desk.take_back(),
            (_, Some(what)) => write(what),
            _ => {}
        }
    };
    Some(view! {
        <PageHead check=run.check/>
        <section class="stand-instead" tabindex="-1" aria-labelledby=HEADING on:keydown=keys>
            <p class="step-progress" id="step-act">{step.act.clone()}</p>
            <h2 id=HEADING tabindex="-1" aria-describedby="step-act">"What happened?"</h2>
            <div class="answers">{choices.collect_view()}</div>
            <OtherWords at/>
            <div class="walk">
                <button type="button" on:click=move |_| desk.take_back()>"Back to the step"</button>
            </div>
        </section>
    })
}

#[component]
fn OtherWords(at: usize) -> impl IntoView {
    let desk = CheckDesk::here();
    let words = RwSignal::new(String::new());
    let submit = move |event: SubmitEvent| {
        event.prevent_default();
        desk.write(at, Outcome::SomethingElse, &words.get_untracked());
    };
    view! {
        <form class="other-words" on:submit=submit>
            <label class="field">
                <span>"In other words"</span>
                <input type="text" autocomplete="off" maxlength="400" prop:value=words
                    on:input:target=move |event| words.set(event.target().value())/>
            </label>
            <button type="submit">"Write it down"</button>
        </form>
    }
}
