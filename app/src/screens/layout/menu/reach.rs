//! How each hand reaches the button from each position.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::coverage::press_by;
use leverwright_core::rider::Side;

use super::super::bench::Bench;
use super::super::words::cell_words;

/// A small table: positions down, hands across.
#[component]
pub fn ReachOf(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let rows = Memo::new(move |_| {
        let day = bench.day.get();
        let rows = bench.plan(|plan| {
            let positions = plan.positions_used().into_iter();
            let rows = positions.map(|from| {
                let by = |hand| cell_words(&press_by(plan, hand, id, from, day));
                (
                    from,
                    Side::ALL.iter().map(|hand| by(*hand)).collect::<Vec<_>>(),
                )
            });
            rows.collect::<Vec<_>>()
        });
        rows.unwrap_or_default()
    });
    view! {
        <section aria-labelledby="menu-reach">
            <h3 id="menu-reach">"Reach, "{move || bench.day.get().words()}</h3>
            <table>
                <thead>
                    <tr>
                        <th scope="col">"From the"</th>
                        <th scope="col">"Left hand"</th>
                        <th scope="col">"Right hand"</th>
                    </tr>
                </thead>
                <tbody>
                    {move || rows.get().into_iter().map(|(from, cells)| view! {
                        <tr>
                            <th scope="row">{from.words()}</th>
                            {cells.into_iter().map(|words| view! { <td>{words}</td> }).collect_view()}
                        </tr>
                    }).collect_view()}
                </tbody>
            </table>
        </section>
    }
}
