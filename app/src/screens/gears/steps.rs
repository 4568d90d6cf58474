//! The steps from gear to gear as bars.

use std::sync::Arc;

use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use leverwright_core::gears::plot::StepPlot;

use super::desk::GearDesk;
use super::drawn::{bar_class, bar_parts, bar_words, step_ground};
use crate::erase::{memo, text, view_of};
use crate::focus::focus_on;

/// The picture of the steps with what is said of one.
#[component]
pub fn Steps() -> impl IntoView {
    let desk = GearDesk::here();
    let shown = RwSignal::new(0_usize);
    let at = memo(move || {
        let bars = desk
            .steps
            .with(|plot| plot.as_ref().map_or(0, |plot| plot.bars.len()));
        shown.get().min(bars.saturating_sub(1))
    });
    let title = text(move || {
        desk.steps.with(|plot| {
            plot.as_ref()
                .map(|plot| plot.title.clone())
                .unwrap_or_default()
        })
    });
    let words = text(move || {
        desk.steps.with(|plot| {
            let bar = plot.as_ref().and_then(|plot| plot.bars.get(at.get()));
            bar.map(|bar| bar.words.clone()).unwrap_or_default()
        })
    });
    let is_drawn = memo(move || {
        desk.steps
            .with(|plot| plot.as_ref().is_some_and(|p| !p.bars.is_empty()))
    });
    view! {
        {view_of(move || is_drawn.get().then(|| view! {
            <section class="gears-steps" aria-labelledby="steps">
                <h3 id="steps">{title}</h3>
                {view_of(move || desk.steps.get().map(|plot| picture(plot, shown, at)))}
                <p class="gear-words">{words}</p>
            </section>
        }))}
    }
}

fn picture(plot: Arc<StepPlot>, shown: RwSignal<usize>, at: Memo<usize>) -> impl IntoView {
    let bars = plot
        .bars
        .iter()
        .enumerate()
        .map(|(n, bar)| {
            view! {
                <g id=format!("step-{n}") role="option" class=bar_class(bar)
                    class:shown=move || at.get() == n
                    tabindex=move || if at.get() == n { "0" } else { "-1" }
                    aria-selected=move || if at.get() == n { "true" } else { "false" }
                    aria-label=bar.words.clone()
                    on:focus=move |_| shown.set(n) on:click=move |_| shown.set(n)>
                    {bar_parts(bar, plot.ground)}
                </g>
            }
        })
        .collect_view();
    let words = plot
        .bars
        .iter()
        .map(|bar| bar_words(bar, plot.ground))
        .collect_view();
    let last = plot.bars.len().saturating_sub(1);
    let key = move |event: KeyboardEvent| {
        let here = at.get_untracked();
        let to = match event.key().as_str() {
            "ArrowRight" | "ArrowDown" => (here + 1).min(last),
            "ArrowLeft" | "ArrowUp" => here.saturating_sub(1),
            "Home" => 0,
            "End" => last,
            _ => return,
        };
        event.prevent_default();
        shown.set(to);
        focus_on(&format!("#step-{to}"));
    };
    let (width, height) = plot.size;
    view! {
        <svg class="step-plot" viewBox=format!("0 0 {width} {height}")>
            <g aria-hidden="true">{step_ground(&plot)}</g>
            <g role="listbox" aria-label=plot.title.clone() on:keydown=key>{bars}</g>
            <g aria-hidden="true">{words}</g>
        </svg>
    }
}
