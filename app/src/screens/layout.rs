//! The Layout screen: which button does what.

mod acts;
mod bench;
mod cockpit;
mod coverage;
mod ghost;
mod hands_on;
mod layouts;
mod menu;
mod reach;
mod room;
mod slot;
mod tray;
mod walk;
mod words;

use leptos::ev;
use leptos::prelude::*;
use leverwright_core::summary::Summary;

use crate::widgets::{FindingList, NoPlan};
use crate::workspace::Workspace;
use acts::Head;
use bench::Bench;
use cockpit::Cockpit;
use coverage::CoverageTable;
use ghost::Ghost;
use menu::ButtonMenu;
use reach::ReachKey;
use tray::Tray;

/// The Layout screen.
#[component]
pub fn LayoutScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = Memo::new(move |_| workspace.plan.with(Option::is_some));
    let closed = || view! { <h1>"Layout"</h1> <NoPlan/> };
    view! {
        <Show when=move || is_open.get() fallback=closed>
            <Workplace/>
        </Show>
    }
}

/// One bar of acts, one drawing, one column of what matters.
#[component]
fn Workplace() -> impl IntoView {
    let bench = Bench::new();
    provide_context(bench);
    let listener = window_event_listener(ev::keydown, move |event| {
        if event.key() == "Escape" {
            hands_on::escape(bench);
        }
    });
    on_cleanup(move || listener.remove());
    view! {
        <Head/>
        <div class="layout" data-spot="away">
            <InWords/>
            <ReachKey/>
            <div class="workplace" data-spot="between"
                on:pointerdown=move |event| hands_on::pointer_down(bench, &event)
                on:pointermove=move |event| hands_on::pointer_move(bench, &event)
                on:pointerup=move |event| hands_on::pointer_up(bench, &event)
                on:pointercancel=move |event| bench.pointer_lost(event.pointer_id())
                on:touchmove=move |event| hands_on::touch_move(bench, &event)
                on:lostpointercapture=move |event| bench.pointer_lost(event.pointer_id())
                on:click=move |event| hands_on::click(bench, &event)
                on:keydown=move |event| hands_on::key_down(bench, &event)
                on:focusin=move |event| hands_on::focus_in(bench, &event)
                on:focusout=move |_| bench.focus_out()
                on:contextmenu=move |event| hands_on::context_menu(bench, &event)>
                <Cockpit/>
                <Tray/>
            </div>
            <div class="column"><FindingList/></div>
            <CoverageTable/>
        </div>
        <Ghost/>
        <ButtonMenu/>
    }
}

/// The layout in a sentence for each hand.
#[component]
fn InWords() -> impl IntoView {
    let workspace = Workspace::here();
    let summary = Memo::new(move |_| {
        let settled = workspace.settled;
        settled.with(|settled| Some(settled.as_ref()?.1.summary.clone()))
    });
    move || {
        let Summary {
            left,
            right,
            centre,
        } = summary.get()?;
        Some(view! {
            <p class="in-words">
                <span>{left}</span>" "<span>{right}</span>
                {centre.map(|centre| view! { " "<span>{centre}</span> })}
            </p>
        })
    }
}
