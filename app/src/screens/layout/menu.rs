//! The menu of one button: everything that can be done with it, without
//! dragging and without picking up.

mod chords;
mod reach;
mod said;

use leptos::ev::MouseEvent;
use leptos::html;
use leptos::prelude::*;
use leverwright_core::cockpit::ButtonId;
use leverwright_core::edit::{BikeEdit, Edit, LayoutEdit, may_take};
use leverwright_core::function::Function;
use leverwright_core::layout::Hold;
use leverwright_core::slot::Slot;
use wasm_bindgen::JsCast;
use web_sys::Element;

use super::bench::Bench;
use super::hands_on::focus_slot;
use super::words::{FunctionIcons, capitalised, function_words, gloss, hold_words};
use chords::Chords;
use reach::ReachOf;
use said::Said;

/// The menu of the button that asked for it, as a dialog: the browser keeps the
/// focus inside, closes it on Escape and gives the focus back.
#[component]
pub fn ButtonMenu() -> impl IntoView {
    let bench = Bench::here();
    let dialog = NodeRef::<html::Dialog>::new();
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        match bench.menu.get() {
            Some(_) if !dialog.open() => drop(dialog.show_modal()),
            Some(_) => {}
            None => dialog.close(),
        }
    });
    let closed = move |_| {
        if let Some(id) = bench.menu.get_untracked() {
            bench.menu.set(None);
            focus_slot(id);
        }
    };
    let close = move || {
        if let Some(dialog) = dialog.get_untracked() {
            dialog.close();
        }
    };
    // The dialog's own padding is within its parts: what hits the dialog itself is beside it.
    let beside = move |event: MouseEvent| {
        let hit = event
            .target()
            .and_then(|hit| hit.dyn_into::<Element>().ok());
        if hit.is_some_and(|hit| hit.tag_name() == "DIALOG") {
            close();
        }
    };
    view! {
        <dialog class="button-menu" aria-labelledby="button-menu" node_ref=dialog
            on:close=closed on:click=beside>
            {move || bench.menu.get().map(|id| view! {
                <Content id/>
                <button type="button" class="main close" on:click=move |_| close()>"Close"</button>
            })}
        </dialog>
    }
}

#[component]
fn Content(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let shown = Memo::new(move |_| bench.slot(id));
    let read = move |read: fn(&Slot) -> String| move || shown.with(|slot| slot.as_ref().map(read));
    let effect = move || shown.with(|slot| slot.as_ref()?.look.function.map(Function::effect));
    // What the button takes at all, or why it takes nothing.
    let refusal = Memo::new(move |_| {
        let clear = Edit::Layout(LayoutEdit::ClearButton(id));
        bench.plan(|plan| plan.apply(&clear).err().map(|error| error.to_string()))?
    });
    view! {
        <h2 id="button-menu" tabindex="-1" autofocus=true>
            <span class="balloon-number">{read(|slot| slot.number.to_string())}</span>" "
            {read(|slot| capitalised(&slot.place))}
        </h2>
        <div class="menu-body">
        <p>{read(now)}</p>
        {move || effect().map(|effect| view! { <p>"What it does: "{effect}"."</p> })}
        <p class="refusal" role="alert">{move || bench.refusal_at(id)}</p>
        {move || match refusal.get() {
            Some(why) => view! { <p>{why}</p> }.into_any(),
            None => view! {
                <Taps id shown/>
                <Holds id shown/>
                <Chords id shown/>
            }
            .into_any(),
        }}
        <Connection id/>
        <ReachOf id/>
        <Said id/>
        </div>
    }
}

/// What the button does now, in a sentence.
fn now(slot: &Slot) -> String {
    let hold = slot
        .hold
        .map(|hold| format!("; hold: {}", hold_words(hold)));
    let was = slot
        .was
        .map(|was| format!("; it was {}", function_words(was)));
    format!(
        "Tap: {}{}{}.",
        slot.look.words(),
        hold.unwrap_or_default(),
        was.unwrap_or_default()
    )
}

/// What a tap does: one of the functions offered, or nothing.
#[component]
fn Taps(id: ButtonId, shown: Memo<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let functions = Memo::new(move |_| {
        let offered = bench
            .plan(|plan| plan.offered_functions())
            .unwrap_or_default();
        offered
            .into_iter()
            .map(Some)
            .chain([None])
            .collect::<Vec<_>>()
    });
    view! {
        <section aria-labelledby="menu-tap">
            <h3 id="menu-tap">"Tap"</h3>
            <div class="picks">
                <For each=move || functions.get() key=|function| *function let:function>
                    <Tap id shown function/>
                </For>
            </div>
        </section>
    }
}

/// One choice for the tap; a function that the button refuses says why.
#[component]
fn Tap(id: ButtonId, shown: Memo<Option<Slot>>, function: Option<Function>) -> impl IntoView {
    let bench = Bench::here();
    let is_chosen = move || shown.with(|s| s.as_ref().map(|s| s.look.function)) == Some(function);
    let refusal = Memo::new(move |_| {
        let refusal = |function| bench.plan(|plan| may_take(&plan.bike, id, function).err());
        function.and_then(refusal)?.map(|error| error.to_string())
    });
    let give = move |_| match function {
        Some(_) => bench.commit_at(id, &Edit::Layout(LayoutEdit::Tap(id, function))),
        None => bench.clear(id),
    };
    let words = if function.is_some() {
        function_words(function)
    } else {
        "leave it blank"
    };
    view! {
        <button type="button" aria-pressed=move || is_chosen().to_string()
            aria-disabled=move || refusal.with(Option::is_some).then_some("true")
            on:click=give>
            <FunctionIcons function/>
            <span>{words}{gloss(function)}</span>
        </button>
        {move || refusal.get().map(|why| view! { <p class="why-not">{why}</p> })}
    }
}

/// What keeping the button pressed does.
#[component]
fn Holds(id: ButtonId, shown: Memo<Option<Slot>>) -> impl IntoView {
    let bench = Bench::here();
    let holds = Memo::new(move |_| {
        let offered = bench
            .plan(|plan| plan.offered_holds(id))
            .unwrap_or_default();
        let now = shown.with(|slot| slot.as_ref().and_then(|slot| slot.hold));
        let extra = now.filter(|hold| !offered.contains(hold));
        offered.into_iter().chain(extra).collect::<Vec<_>>()
    });
    let choice = move |hold: Option<Hold>| {
        let is_chosen = move || shown.with(|s| s.as_ref().map(|s| s.hold)) == Some(hold);
        let give = move |_| bench.commit_at(id, &Edit::Layout(LayoutEdit::Hold(id, hold)));
        let words = hold.map_or_else(|| "nothing".to_owned(), hold_words);
        view! {
            <button type="button" aria-pressed=move || is_chosen().to_string() on:click=give>
                {words}
            </button>
        }
    };
    view! {
        <section aria-labelledby="menu-hold">
            <h3 id="menu-hold">"Hold"</h3>
            <Show when=move || !holds.with(Vec::is_empty)
                fallback=|| view! { <p>"This shift system programs no holds."</p> }>
                <div class="picks">
                    {choice(None)}
                    <For each=move || holds.get() key=|hold| *hold let:hold>{choice(Some(hold))}</For>
                </div>
            </Show>
        </section>
    }
}

/// Plugged in or not: unplugging is the remedy where a function is fixed.
#[component]
fn Connection(id: ButtonId) -> impl IntoView {
    let bench = Bench::here();
    let control = Memo::new(move |_| {
        bench.plan(|plan| {
            let control = plan.bike.control(id.control)?;
            Some((control.place(), control.connected))
        })?
    });
    move || {
        control.get().map(|(place, connected)| {
            let edit = Edit::Bike(BikeEdit::Connect(id.control, !connected));
            let act = if connected { "Unplug" } else { "Plug in" };
            view! {
                <button type="button" class="connection"
                    on:click=move |_| bench.commit_at(id, &edit)>{act}" the "{place}</button>
            }
        })
    }
}
