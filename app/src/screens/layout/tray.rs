//! The tray: the functions that the plan has use for.

use leptos::prelude::*;
use leverwright_core::finding::Place;
use leverwright_core::function::Function;

use super::bench::Bench;
use super::hands_on::item_id;
use super::words::{FunctionIcons, function_words, gloss};
use crate::gesture::{Load, Spot};
use crate::route::Route;

/// What can be put on buttons: functions, and nothing.
#[component]
pub fn Tray() -> impl IntoView {
    let bench = Bench::here();
    let functions = Memo::new(move |_| {
        bench
            .plan(|plan| plan.offered_functions())
            .unwrap_or_default()
    });
    let items = move || {
        let functions = functions.get().into_iter().map(Some);
        functions.chain([None]).collect::<Vec<_>>()
    };
    let takes_back = Memo::new(move |_| {
        bench
            .shown
            .with(|c| matches!(c.load, Some(Load::Button(_))))
    });
    view! {
        <section class="tray stays" data-spot="tray"
            class:takes=move || takes_back.get()
            class:over=move || bench.shown.with(|c| c.over == Some(Spot::Tray))>
            <h2 id="tray">"Functions"</h2>
            <div role="toolbar" aria-labelledby="tray" class="items">
                <For each=items key=|function| *function let:function>
                    <Item function functions/>
                </For>
            </div>
            <a class="try-it" href=Route::Practice.href()>"Try it"</a>
        </section>
    }
}

#[component]
fn Item(function: Option<Function>, functions: Memo<Vec<Function>>) -> impl IntoView {
    let bench = Bench::here();
    let load = function.map_or(Load::Blank, Load::Function);
    let is_carried = move || bench.shown.with(|c| c.load == Some(load));
    let is_lit = move || {
        let lit = bench.workspace.lit.get();
        function.is_some_and(|function| lit.contains(&Place::Function(function)))
    };
    let tab_stop = Memo::new(move |_| {
        let first = functions.with(|all| all.first().copied());
        let first = first.map_or(Load::Blank, Load::Function);
        let offered = |load: &Load| match load {
            Load::Function(function) => functions.with(|all| all.contains(function)),
            Load::Blank | Load::Button(_) => true,
        };
        let current = bench.current_item.get().filter(offered);
        current.unwrap_or(first) == load
    });
    view! {
        <button type="button" class="item" id=item_id(load) data-load=load.key()
            class:lit=is_lit
            tabindex=move || if tab_stop.get() { "0" } else { "-1" }
            aria-pressed=move || is_carried().to_string()>
            <span class="grip"><FunctionIcons function/></span>
            <span class="words">{function_words(function)}{gloss(function)}</span>
        </button>
    }
}
