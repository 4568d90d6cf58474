//! Everything about the layouts in one table; on a telephone, in lists.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::variants::{Comparison, Line, Topic};

use super::Compared;
use crate::erase::view_of;
use crate::widgets::Tick;
use crate::words::capitalised;

/// The table, of what differs or of everything.
#[component]
pub fn Table(compared: Compared) -> impl IntoView {
    let comparison = &compared.1;
    if comparison.columns.len() < 2 {
        return ().into_any();
    }
    let alike = comparison
        .lines
        .iter()
        .filter(|line| !line.differs())
        .count();
    let all = RwSignal::new(false);
    let label = match alike {
        1 => "Show the line that is alike, too".to_owned(),
        _ => format!("Show the {alike} lines that are alike, too"),
    };
    view! {
        <section class="compare-table" aria-labelledby="compare-table">
            <h2 id="compare-table">"Side by side"</h2>
            <div class="on-screen"><Tick label on=all set=move |on: bool| all.set(on)/></div>
            {view_of(move || rows(&compared.1, all.get()))}
        </section>
    }
    .into_any()
}

fn rows(comparison: &Comparison, all: bool) -> impl IntoView + use<> {
    let names: Vec<String> = comparison
        .columns
        .iter()
        .map(|column| column.name.clone())
        .collect();
    let heads = names
        .iter()
        .map(|name| view! { <th scope="col">{name.clone()}</th> })
        .collect_view();
    let groups = Topic::ALL
        .iter()
        .map(|topic| {
            let of_topic: Vec<&Line> = comparison
                .lines
                .iter()
                .filter(|line| line.topic == *topic)
                .collect();
            group(*topic, &of_topic, &names, all)
        })
        .collect_view();
    view! {
        <table class="compared">
            <thead><tr><th scope="col">"What"</th>{heads}</tr></thead>
            {groups}
        </table>
    }
}

/// The lines about one topic under its name; one line where they are alike.
fn group(topic: Topic, lines: &[&Line], names: &[String], all: bool) -> impl IntoView + use<> {
    let name = capitalised(topic.words());
    let shown = lines.iter().filter(|line| all || line.differs());
    let shown = shown.map(|line| row(line, names)).collect_view();
    if shown.is_empty() {
        return view! {
            <tbody>
                <tr class="none">
                    <th scope="row">{name}</th>
                    <td colspan=names.len().to_string()>{nothing(topic, lines)}</td>
                </tr>
            </tbody>
        }
        .into_any();
    }
    let columns = (names.len() + 1).to_string();
    view! {
        <tbody>
            <tr class="topic"><th scope="rowgroup" colspan=columns>{name}</th></tr>
            {shown}
        </tbody>
    }
    .into_any()
}

/// Why there is nothing to tell apart.
fn nothing(topic: Topic, lines: &[&Line]) -> &'static str {
    match (lines.is_empty(), topic) {
        (true, Topic::Gears) => {
            "The teeth of rings and cogs are not entered yet. Gears has fields for them."
        }
        (true, Topic::Loads) => "No ride is kept yet. On Ride, press “Keep with the plan”.",
        (true, Topic::Practice) => "Nobody practised yet.",
        (true, Topic::Marks) => "No button is marked yet.",
        (true, _) => "Nothing to say.",
        (false, _) => "Alike in all.",
    }
}

fn row(line: &Line, names: &[String]) -> impl IntoView + use<> {
    let differs = line.differs();
    let cells = line.cells.iter().zip(names).map(|(cell, name)| {
        let words = if cell.is_empty() {
            "–".to_owned()
        } else {
            cell.clone()
        };
        view! { <td data-head=name.clone()>{words}</td> }
    });
    let mark = differs.then(|| view! {
        <span class="diamond" aria-hidden="true">"◆"</span><span class="unseen">"Differs: "</span>
    });
    view! {
        <tr class:differs=differs><th scope="row">{mark}{line.head.clone()}</th>{cells.collect_view()}</tr>
    }
}
