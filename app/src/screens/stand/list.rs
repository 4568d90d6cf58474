//! All steps of a check with what came of them, and beginning it again.

use std::sync::Arc;

use leptos::prelude::*;
use leverwright_core::proof::{Run, StepDone};
use leverwright_core::record::Check;

use super::desk::CheckDesk;
use crate::widgets::Confirm;

/// What came of a step, as a sentence.
pub fn done_words(shown: &StepDone) -> String {
    let Some(done) = &shown.done else {
        return "Not done yet.".into();
    };
    let mut words = shown.step.answer(done.outcome).to_owned();
    if let Some(mm) = done.measured {
        words += &format!(", {mm}");
    }
    if !done.what.is_empty() {
        words += &format!(": {}", done.what);
    }
    words += ".";
    if shown.again {
        words += " To be done again.";
    }
    words
}

/// Every step, folded away.
#[component]
pub fn AllSteps(run: Arc<Run>) -> impl IntoView {
    let rows = run.steps.iter().map(|step| {
        view! {
            <li class:open=step.is_open() class:missed=step.is_missed()>
                {step.step.act.clone()}" "<strong>{done_words(step)}</strong>
            </li>
        }
    });
    view! {
        <details class="all-steps">
            <summary>"All steps"</summary>
            <ol>{rows.collect_view()}</ol>
        </details>
    }
}

/// Begins the check again, once that was asked.
#[component]
pub fn BeginAgain(check: Check) -> impl IntoView {
    let desk = CheckDesk::here();
    let asked = RwSignal::new(false);
    let question = Signal::stored(format!("Begin the {check} again?"));
    view! {
        <button type="button" class="large" on:click=move |_| asked.set(true)>
            "Begin this check again"
        </button>
        <Confirm open=asked question go_on="Begin again" confirmed=move |()| desk.begin_again()>
            <p>"Every step is then to be done. What was written down stays in the record."</p>
        </Confirm>
    }
}
