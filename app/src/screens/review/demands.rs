//! What the layout asks of each contact, beside what is known of it: what does
//! not meet stands first.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Place;
use leverwright_core::record::Pin;
use leverwright_core::review::{Demand, Fit, ReviewPage};
use leverwright_core::rider::Day;

use super::desk::Desk;
use crate::erase::view_of;
use crate::words::capitalised;

/// The demands that do not meet, then the others.
#[component]
pub fn Demands() -> impl IntoView {
    let desk = Desk::here();
    let demands = desk.read(|page| page.demands.clone());
    let lead = desk.read(ReviewPage::demands_words);
    let shown = view_of(move || {
        let (all, lead) = (demands.get(), lead.get());
        view! { <p>{lead}</p>{(!all.is_empty()).then(|| table(desk, &all))} }
    });
    view! {
        <section aria-labelledby="review-demands">
            <h2 id="review-demands">"What is asked of each hand"</h2>
            {shown}
        </section>
    }
}

fn table(desk: Desk, all: &[Demand]) -> impl IntoView + use<> {
    let rows = all.iter().map(|demand| row(desk, demand)).collect_view();
    view! {
        <table class="review-table demands">
            <thead>
                <tr>
                    <th scope="col">"Who"</th>
                    <th scope="col">"What is asked"</th>
                    <th scope="col">"Usual day"</th>
                    <th scope="col">"Bad day"</th>
                    <th scope="col">"How they meet"</th>
                    <th scope="col">"Comment"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}

fn row(desk: Desk, demand: &Demand) -> impl IntoView + use<> {
    let places = demand.places.clone();
    let light = move || desk.light(&places);
    let light_too = light.clone();
    let at = desk.workspace.plan.with_untracked(|plan| {
        plan.as_deref()
            .map(|plan| demand.where_words(plan))
            .unwrap_or_default()
    });
    let at = (!at.is_empty()).then(|| format!(" ({at})"));
    let who = demand.who();
    let pin = Pin::Place(Place::Hand(demand.hand));
    let about = format!(" on the {} hand: {}", demand.hand, demand.asked);
    view! {
        <tr class=demand.fit.code()
            on:pointerenter=move |_| light() on:pointerleave=move |_| desk.light(&[])
            on:focusin=move |_| light_too() on:focusout=move |_| desk.light(&[])>
            <th scope="row">{capitalised(&who)}</th>
            <td>{demand.asked.clone()}{at}</td>
            <td>{cell("Usual day")}{demand.step_words(Day::Usual)}</td>
            <td>{cell("Bad day")}{demand.step_words(Day::Bad)}</td>
            <td class="fit">{fit_mark(demand.fit)}{demand.fit.words()}</td>
            <td>
                <button type="button" on:click=move |_| desk.comment_on(pin.clone())>
                    "Comment"<span class="unseen">{about}</span>
                </button>
            </td>
        </tr>
    }
}

/// The head of a column again, where rows stand as blocks.
fn cell(head: &'static str) -> impl IntoView {
    view! { <span class="cell-head" aria-hidden="true">{head}</span> }
}

/// Told apart by shape: octagon, triangle, square with a question, tick.
pub fn fit_mark(fit: Fit) -> impl IntoView {
    let (outline, sign) = match fit {
        Fit::Beyond => ("M8 2h8l6 6v8l-6 6H8l-6-6V8z", "M7 12h10"),
        Fit::GreatEffortNotOnBadDay | Fit::GreatEffort | Fit::NotOnBadDay => {
            ("M12 2.5 22.5 21h-21z", "M12 9v6M12 17.5v1")
        }
        Fit::NotAsked | Fit::BadDayNotAsked => (
            "M3 3h18v18H3z",
            "M9 9.5a3 3 0 1 1 4.5 2.6c-1 .6-1.5 1-1.5 2.1M12 17v1",
        ),
        Fit::Within => (
            "M12 2a10 10 0 1 1 0 20 10 10 0 0 1 0-20z",
            "M7.5 12.5l3 3 6-6.5",
        ),
    };
    view! {
        <svg class="mark" viewBox="0 0 24 24" aria-hidden="true">
            <path class="outline" d=outline></path>
            <path class="sign" d=sign></path>
        </svg>
    }
}
