//! What was kept, layout by layout, so that layouts are compared by the rider's
//! own hands.

use leptos::prelude::*;
use leverwright_core::layout::LayoutId;
use leverwright_core::practice::{Report, Total, total};

use super::desk::PracticeDesk;
use super::keep::send;
use super::results::Facts;
use crate::erase::{act, view_of};

/// The layouts that were practised, beside each other; nothing before.
#[component]
pub fn Kept() -> impl IntoView {
    let desk = PracticeDesk::here();
    view_of(move || {
        let plan = desk.workspace.plan.get()?;
        let layouts = plan.layouts.iter();
        let found: Vec<_> = layouts
            .filter_map(|layout| {
                let total = total(&plan, layout.id)?;
                let report = Report::of_total(&plan, &total);
                Some((layout.id, layout.name.to_string(), total, report))
            })
            .collect();
        if found.is_empty() {
            return None;
        }
        let rows = found
            .iter()
            .map(|(_, name, total, report)| row(name, total, report));
        let rows = rows.collect_view();
        let more = found
            .into_iter()
            .map(|(id, name, total, report)| more(desk, id, name, &total, report))
            .collect_view();
        Some(view! {
            <section class="practice-kept" aria-labelledby="practice-kept">
                <h2 id="practice-kept">"Kept so far"</h2>
                <div class="table-scroll" tabindex="0" role="region" aria-label="Practice by layout">
                    <table class="practice-table">
                        <thead><tr>
                            <th scope="col">"Layout"</th><th scope="col">"Sessions"</th>
                            <th scope="col">"Right first time"</th><th scope="col">"Wrong button"</th>
                        </tr></thead>
                        <tbody>{rows}</tbody>
                    </table>
                </div>
                {more}
            </section>
        })
    })
}

fn row(name: &str, total: &Total, report: &Report) -> impl IntoView + use<> {
    view! {
        <tr>
            <th scope="row">{name.to_owned()}</th>
            <td>{total.sessions}</td>
            <td>{report.right_first.clone()}</td>
            <td>{total.wrong}</td>
        </tr>
    }
}

fn more(
    desk: PracticeDesk,
    id: LayoutId,
    name: String,
    total: &Total,
    report: Report,
) -> impl IntoView + use<> {
    let sent = total.sent;
    let of = name.clone();
    view! {
        <details>
            <summary>{format!("More about {name}")}</summary>
            <Facts report/>
            {if sent {
                view! { <p>"Goes along with links and files."</p> }.into_any()
            } else {
                view! {
                    <p class="quiet">"Not sent: it stays out of links and files until you say so."</p>
                    <div class="acts">
                        <button type="button" on:click=act(move || send(desk, id))>
                            "Send it along"<span class="unseen">{format!(" for {of}")}</span>
                        </button>
                    </div>
                }.into_any()
            }}
        </details>
    }
}
