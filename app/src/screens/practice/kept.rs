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
        let sending = found
            .iter()
            .map(|(id, name, total, _)| sending(desk, *id, name, total));
        let sending = sending.collect_view();
        let more = found
            .into_iter()
            .map(|(_, name, _, report)| more(&name, report))
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
                {sending}
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

/// Whether practice with a layout goes along when the plan is handed on.
fn sending(desk: PracticeDesk, id: LayoutId, name: &str, total: &Total) -> impl IntoView + use<> {
    if total.sent {
        return view! { <p class="sending">{format!("{name}: goes along with links and files.")}</p> }
            .into_any();
    }
    let of = format!(" for {name}");
    view! {
        <div class="sending">
            <p>{format!("{name}: stays here, out of links and files.")}</p>
            <button type="button" on:click=act(move || send(desk, id))>
                "Send it along"<span class="unseen">{of}</span>
            </button>
        </div>
    }
    .into_any()
}

fn more(name: &str, report: Report) -> impl IntoView + use<> {
    view! {
        <details>
            <summary>{format!("More about {name}")}</summary>
            <Facts report/>
        </details>
    }
}
