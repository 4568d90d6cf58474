//! One step, as large as the screen allows.

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::proof::{Answer, CheckStep, Progress, Run, STOP_WHEN, StepDone};
use leverwright_core::record::{Check, Outcome};
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::HEADING;
use super::count::Count;
use super::desk::CheckDesk;
use super::drawing::{StepDrawing, numbers};
use super::result::missed_twice;
use crate::route::Route;
use crate::widgets::NumberField;
use crate::words::capitalised;
use crate::workspace::Workspace;

/// What to do, what to expect, where it is, and what may be answered.
#[component]
pub fn StepPage(at: usize) -> impl IntoView {
    let desk = CheckDesk::here();
    let plan = Workspace::here().plan.get_untracked()?;
    let run = desk.run.get_untracked()?;
    let shown = run.steps.get(at)?.clone();
    let step = shown.step.clone();
    let keys = move |event: KeyboardEvent| key_down(desk, at, &event);
    let warning = missed_twice(&plan, &run);
    Some(view! {
        <PageHead check=run.check/>
        <section class="stand-step" tabindex="-1" aria-labelledby=HEADING on:keydown=keys>
            <div class="step-words">
                <p class="step-progress" id="step-progress">{progress(&run, at)}</p>
                <h2 id=HEADING tabindex="-1" aria-describedby="step-progress step-expect">
                    {step.act.clone()}
                </h2>
                {expect(&plan, &step)}
                {before(&shown)}
                {warning}
                <Asked step=step.clone()/>
            </div>
            <StepDrawing plan places=step.places.clone()/>
            <Acts at step can_go_on=shown.done.is_some()/>
            {stop_when(run.check)}
        </section>
    })
}

/// The screen's heading, and the way back to the checks.
#[component]
pub fn PageHead(check: Check) -> impl IntoView {
    view! {
        <div class="stand-head">
            <h1>{capitalised(check.words())}</h1>
            <a href=Route::Stand.href()>"All checks"</a>
        </div>
    }
}

fn progress(run: &Run, at: usize) -> String {
    let step = &run.steps[at];
    let (done, of) = run.count();
    let kind = capitalised(step.step.kind.words());
    let open = match run.progress() {
        Progress::Next(_) | Progress::MendBrake(_) => format!(" {} to do.", of - done),
        _ => String::new(),
    };
    format!("Step {} of {of}.{open} {kind}.", at + 1)
}

fn expect(plan: &Plan, step: &CheckStep) -> impl IntoView + use<> {
    let times = match step.times {
        0 | 1 => None,
        2 => Some("Twice. ".to_owned()),
        3 => Some("Three times. ".to_owned()),
        times => Some(format!("{times} times. ")),
    };
    let numbers = numbers(plan, &step.places)
        .into_iter()
        .map(|number| view! { <span class="balloon-number">{number}</span> " " })
        .collect_view();
    view! {
        <p class="step-expect" id="step-expect">
            {numbers}{times}"Expect: "<strong>{step.expect.clone()}</strong>"."
        </p>
    }
}

/// What came of it before.
fn before(shown: &StepDone) -> Option<impl IntoView + use<>> {
    let done = shown.done.as_ref()?;
    let what = match done.what.as_str() {
        "" => String::new(),
        what => format!(" ({what})"),
    };
    let again = match shown.again {
        true => " Do it again: something about it was mended since.",
        false => "",
    };
    let words = format!("Before: {}{what}.{again}", shown.step.answer(done.outcome));
    Some(view! { <p class="step-before">{words}</p> })
}

/// When a first ride ends at once, told at each of its steps.
fn stop_when(check: Check) -> Option<impl IntoView> {
    let items = || {
        let items = STOP_WHEN.iter();
        items.map(|when| view! { <li>{*when}</li> }).collect_view()
    };
    (check == Check::FirstRide).then(|| {
        view! {
            <div class="stop-when">
                <h3>"Stop the ride at once when"</h3>
                <ul>{items()}</ul>
            </div>
        }
    })
}

/// What is counted, measured or noted.
#[component]
fn Asked(step: CheckStep) -> impl IntoView {
    let desk = CheckDesk::here();
    let count = (step.seconds > 0).then(|| view! { <Count seconds=step.seconds/> });
    let measure = step.measure.map(|measure| {
        let set = move |value| desk.measured.set(value);
        view! {
            <NumberField label=format!("{}, mm", measure.label) least=0.0 most=200.0
                value=desk.measured set/>
        }
    });
    let note = (!step.note.is_empty()).then(|| {
        view! {
            <label class="field">
                <span>{step.note}</span>
                <textarea rows="2" maxlength="400" prop:value=desk.note
                    on:input:target=move |event| desk.note.set(event.target().value())></textarea>
            </label>
        }
    });
    view! { {count}{measure}{note} }
}

/// The answers, and the way to the steps before and after.
#[component]
fn Acts(at: usize, step: CheckStep, can_go_on: bool) -> impl IntoView {
    let desk = CheckDesk::here();
    let answer = |(n, answer): (usize, &Answer)| {
        let outcome = answer.outcome;
        let class = if outcome == Outcome::Ok { "main" } else { "" };
        view! {
            <button type="button" class=class data-key=(n + 1).to_string()
                on:click=move |_| desk.answer(at, outcome)>{answer.words}</button>
        }
    };
    let answers = step.answers().iter().enumerate().map(answer).collect_view();
    let forward = can_go_on.then(|| {
        view! { <button type="button" on:click=move |_| desk.walk(1)>"Step after"</button> }
    });
    view! {
        <div class="step-acts stays">
            <div class="answers">{answers}</div>
            <div class="walk">
                {(at > 0).then(|| view! {
                    <button type="button" on:click=move |_| desk.walk(-1)>"Step before"</button>
                })}
                {forward}
                <p class="quiet keys">"Keys: 1, 2, 3 answer; arrows walk the steps."</p>
            </div>
        </div>
    }
}

/// Keys count only while the focus is on the step, and never while typing.
fn key_down(desk: CheckDesk, at: usize, event: &KeyboardEvent) {
    if is_typing(event) || event.ctrl_key() || event.meta_key() || event.alt_key() {
        return;
    }
    let nth = |n: usize| untrack(|| desk.step(at)?.step.answers().get(n).map(|a| a.outcome));
    let answer = match event.key().as_str() {
        "ArrowLeft" => return desk.walk(-1),
        "ArrowRight" => return desk.walk(1),
        "1" => nth(0),
        "2" => nth(1),
        "3" => nth(2),
        _ => None,
    };
    if let Some(outcome) = answer {
        event.prevent_default();
        desk.answer(at, outcome);
    }
}

/// Whether keys belong to a field.
pub fn is_typing(event: &KeyboardEvent) -> bool {
    let target = event.target().and_then(|t| t.dyn_into::<Element>().ok());
    target
        .is_some_and(|target| ["INPUT", "TEXTAREA", "SELECT"].contains(&target.tag_name().as_str()))
}
