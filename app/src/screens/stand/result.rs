//! What did not go as expected, what may be behind it, and what to do.

use leptos::prelude::*;
use leverwright_core::plan::Plan;
use leverwright_core::proof::{Advice, Run, StepDone, advice};
use leverwright_core::record::Check;

use super::HEADING;
use super::desk::CheckDesk;
use super::list::{AllSteps, BeginAgain, done_words};
use super::step::PageHead;
use crate::route::Route;
use crate::words::capitalised;
use crate::workspace::Workspace;

/// A brake to be mended before anything else.
#[component]
pub fn Mend(at: usize) -> impl IntoView {
    let desk = CheckDesk::here();
    let run = desk.run.get_untracked()?;
    let step = run.steps.get(at)?;
    let (title, sentence) = match run.check {
        Check::FirstRide => (
            "Stop the ride here",
            "A brake was not as it must be. Nobody rides on before it is mended and this step is OK.",
        ),
        _ => (
            "Mend this brake first",
            "Brakes come first: nothing else is checked before this step is OK.",
        ),
    };
    Some(view! {
        <PageHead check=run.check/>
        <section class="stand-result" aria-labelledby=HEADING>
            <h2 id=HEADING tabindex="-1">{title}</h2>
            <p class="lead">{sentence}</p>
            <ul class="differing">{differing(step)}</ul>
            <div class="acts">
                <button type="button" class="main large" on:click=move |_| desk.go(Some(at))>
                    "Mended: do this step again"
                </button>
            </div>
            <AllSteps run=run.clone()/>
        </section>
    })
}

/// Every step was done, and something differs.
#[component]
pub fn Differs() -> impl IntoView {
    let desk = CheckDesk::here();
    let plan = Workspace::here().plan.get_untracked()?;
    let run = desk.run.get_untracked()?;
    let all: Vec<&StepDone> = run.differing().collect();
    let count = all.len();
    let title = match count {
        0 => "Every step was done".to_owned(),
        1 => "1 step did not go as expected".to_owned(),
        count => format!("{count} steps did not go as expected"),
    };
    let again = match count {
        1 => "Mended: do this step again".to_owned(),
        count => format!("Mended: do these {count} steps again"),
    };
    let list = all.into_iter().map(differing).collect_view();
    Some(view! {
        <PageHead check=run.check/>
        <section class="stand-result" aria-labelledby=HEADING>
            <h2 id=HEADING tabindex="-1">{title}</h2>
            {missed_twice(&plan, &run)}
            <ul class="differing">{list}</ul>
            <div class="acts">
                {(count > 0).then(|| view! {
                    <button type="button" class="main large" on:click=move |_| desk.repeat()>
                        {again}
                    </button>
                })}
                <BeginAgain check=run.check/>
            </div>
            <p class="quiet">{after_mending(run.check)}</p>
            <AllSteps run=run.clone()/>
        </section>
    })
}

const fn after_mending(check: Check) -> &'static str {
    match check {
        Check::Stand => {
            "Only these, and steps about the same button or lever, are done again. If the cure \
             changes the plan, the whole check begins anew for the new revision."
        }
        Check::Rider | Check::FirstRide => {
            "Only these are done again. If the layout changes, the stand check comes first again."
        }
    }
}

/// A step that differs: what was done, what came of it, likely causes.
fn differing(shown: &StepDone) -> impl IntoView + use<> {
    let step = &shown.step;
    let causes = shown.done.as_ref().map(|done| advice(step, done.outcome));
    let causes = causes.unwrap_or_default().iter();
    let causes = causes.map(|Advice { cause, remedy }| {
        view! { <li><strong>{*cause}</strong>" "{*remedy}</li> }
    });
    view! {
        <li>
            <h3>{step.act.clone()}</h3>
            <p>"Expected: "{step.expect.clone()}". "<strong>{done_words(shown)}</strong></p>
            <p class="causes-head">"Likely causes, and what to do:"</p>
            <ol class="causes">{causes.collect_view()}</ol>
        </li>
    }
}

/// Places that were missed twice: the layout should change there.
pub fn missed_twice(plan: &Plan, run: &Run) -> Option<impl IntoView + use<>> {
    let missed = run.missed_twice();
    if missed.is_empty() {
        return None;
    }
    let places: Vec<String> = missed
        .iter()
        .map(|miss| format!("{} ({} times)", miss.place.words(&plan.bike), miss.times))
        .collect();
    let words = capitalised(&format!("{}: missed twice or more.", places.join(", ")));
    Some(view! {
        <div class="missed-twice">
            <p><strong>{words}</strong>" Change the layout there. It then begins again on the stand."</p>
            <a href=Route::Layout.href()>"Change the layout"</a>
        </div>
    })
}
