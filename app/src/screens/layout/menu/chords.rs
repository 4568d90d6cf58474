//! What the button does together with another one.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::edit::{Edit, LayoutEdit};
use leverwright_core::function::Function;
use leverwright_core::layout::Chord;
use leverwright_core::slot::Slot;

use super::super::bench::Bench;
use super::super::words::capitalised;
use crate::widgets::Select;

/// The chords that the button takes part in, and a way to add one.
#[component]
pub fn Chords(id: ButtonId, shown: Memo<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let partners = Memo::new(move |_| {
        bench
            .plan(|plan| plan.offered_partners(id))
            .unwrap_or_default()
    });
    let chords = Memo::new(move |_| {
        shown
            .with(|s| s.as_ref().map(|s| s.chords.clone()))
            .unwrap_or_default()
    });
    view! {
        <section aria-labelledby="menu-chord">
            <h3 id="menu-chord">"Together with another button"</h3>
            <ul class="chords">
                <For each=move || chords.get() key=|chord| *chord let:chord>
                    <ChordLine id chord/>
                </For>
            </ul>
            <Show when=move || !partners.with(Vec::is_empty)
                fallback=|| view! { <p>"This shift system programs no two buttons together."</p> }>
                <NewChord id partners/>
            </Show>
        </section>
    }
}

#[component]
fn ChordLine(id: ButtonId, chord: Chord) -> impl IntoView {
    let bench = Bench::here();
    let other = if chord.first == id {
        chord.second
    } else {
        chord.first
    };
    let place = move || numbered(bench, other);
    let remove = move |_| bench.commit_at(id, &Edit::Layout(LayoutEdit::RemoveChord(chord)));
    let function = capitalised(chord.function.words());
    view! {
        <li>
            {function}" with "{place}" "
            <button type="button" on:click=remove>
                "Take away"<span class="unseen">": "{chord.function.words()}" with "{place}</span>
            </button>
        </li>
    }
}

/// Chooses the other button and the function.
#[component]
fn NewChord(id: ButtonId, partners: Memo<Vec<ButtonId>>) -> impl IntoView {
    let bench = Bench::here();
    let others = Memo::new(move |_| {
        let partners = partners.get().into_iter();
        partners
            .map(|other| (other, numbered(bench, other)))
            .collect::<Vec<_>>()
    });
    let functions = Memo::new(move |_| {
        let offered = bench
            .plan(|plan| plan.offered_functions())
            .unwrap_or_default();
        let named = |function: Function| (function, function.words().to_owned());
        offered.into_iter().map(named).collect::<Vec<_>>()
    });
    let other = RwSignal::new(None::<ButtonId>);
    let function = RwSignal::new(None::<Function>);
    let other_now = Memo::new(move |_| other.get().or(others.with(|all| Some(all.first()?.0))));
    let function_now = Memo::new(move |_| {
        function
            .get()
            .or(functions.with(|all| Some(all.first()?.0)))
    });
    let add = move |_| {
        if let (Some(second), Some(function)) = (other_now.get(), function_now.get()) {
            let chord = Chord {
                first: id,
                second,
                function,
            };
            bench.commit_at(id, &Edit::Layout(LayoutEdit::AddChord(chord)));
        }
    };
    view! {
        <div class="new-chord">
            <Select label="Other button" choices=others chosen=other_now
                set=move |id| other.set(Some(id))/>
            <Select label="Does" choices=functions chosen=function_now
                set=move |f| function.set(Some(f))/>
            <button type="button" on:click=add>"Add this pair"</button>
        </div>
    }
}

/// A button by its balloon and place: "3 left outer paddle".
fn numbered(bench: Bench, id: ButtonId) -> String {
    bench.slot(id).map_or_else(String::new, |slot| {
        format!("{} {}", slot.number, slot.place)
    })
}
