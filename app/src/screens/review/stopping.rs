//! Stopping: each wheel from each position, and who steers meanwhile.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::finding::Place;
use leverwright_core::review::{Fit, ReviewPage, StoppingRow};

use super::demands::fit_mark;
use super::desk::Desk;
use crate::erase::view_of;
use crate::words::capitalised;

/// The table.
#[component]
pub fn StoppingTable() -> impl IntoView {
    let desk = Desk::here();
    let rows = desk.read(ReviewPage::stopping_rows);
    view! {
        <section aria-labelledby="review-stopping">
            <h2 id="review-stopping">"Stopping"</h2>
            <p class="quiet">"Who brakes each wheel from each hand position, and who steers meanwhile."</p>
            {view_of(move || rows.with(|rows| match rows.is_empty() {
                true => view! {
                    <p>"No hand position is noted yet, or the bike has no brakes entered."</p>
                }
                .into_any(),
                false => table(desk, rows),
            }))}
        </section>
    }
}

fn table(desk: Desk, rows: &[StoppingRow]) -> AnyView {
    let rows = rows.iter().map(|line| row(desk, line)).collect_view();
    view! {
        <table class="review-table stopping">
            <thead>
                <tr>
                    <th scope="col">"Wheel, from"</th>
                    <th scope="col">"Usual day"</th>
                    <th scope="col">"Bad day"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
    .into_any()
}

fn row(desk: Desk, row: &StoppingRow) -> impl IntoView + use<> {
    let places = [Place::Wheel(row.wheel)];
    let from = format!(
        "{}, from the {}",
        capitalised(row.wheel.words()),
        row.position
    );
    let mark = row.is_out_of_reach.then(|| {
        view! { <span class="review-reach">{fit_mark(Fit::Beyond)}"Out of reach: "</span> }
    });
    let bad = match row.usual == row.bad {
        true => "As on a usual day".to_owned(),
        false => row.bad.clone(),
    };
    view! {
        <tr on:pointerenter=move |_| desk.light(&places) on:pointerleave=move |_| desk.light(&[])>
            <th scope="row">{mark}{from}</th>
            <td><span class="cell-head" aria-hidden="true">"Usual day"</span>{row.usual.clone()}</td>
            <td><span class="cell-head" aria-hidden="true">"Bad day"</span>{bad}</td>
        </tr>
    }
}
