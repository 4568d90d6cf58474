//! Before it starts: one button, and what may be chosen.

use leptos::prelude::*;
use leverwright_core::layout::LayoutId;
use leverwright_core::practice::GLASS;

use super::desk::PracticeDesk;
use super::kept::Kept;
use super::keys::Keys;
use super::marks::Marks;
use super::stage::Level;
use super::voice;
use crate::erase::{act, flag, memo, view_of};
use crate::widgets::{Select, Tick};

/// The screen before it starts.
#[component]
pub fn Ready() -> impl IntoView {
    let desk = PracticeDesk::here();
    view! {
        <div class="practice-ready">
            <p class="lead">
                "Learn at home which button does what, without the bike. A road comes toward you and \
                calls for a gear; press the button on your own cockpit. It starts with one button, \
                and the road waits for you. "<strong>{GLASS}</strong>
            </p>
            <div class="practice-start">
                <button type="button" id="practice-start" class="main"
                    on:click=act(move || desk.start())>"Start with one button"</button>
            </div>
            <section aria-labelledby="practice-how" class="practice-how">
                <h2 id="practice-how">"How"</h2>
                <WhichLayout/>
                <Level/>
                <Ticks/>
                <Keys/>
            </section>
            <Kept/>
            <section aria-labelledby="practice-say">
                <h2 id="practice-say">"Say what you think of a button"</h2>
                <p class="quiet">"Yours alone to write; whoever has the plan reads it."</p>
                <details open=desk.shows_marks.get_untracked()>
                    <summary>"Hurts, confuses, change"</summary>
                    <Marks/>
                </details>
            </section>
        </div>
    }
}

/// Which layout is practised, where there are several.
#[component]
fn WhichLayout() -> impl IntoView {
    let desk = PracticeDesk::here();
    let choices = memo(move || {
        let plan = desk.workspace.plan.get();
        let named = plan.iter().flat_map(|plan| plan.layouts.iter());
        named
            .map(|layout| (layout.id, layout.name.to_string()))
            .collect::<Vec<_>>()
    });
    let chosen = memo(move || desk.workspace.plan.get().map(|plan| desk.layout_of(&plan)));
    let set = move |id: LayoutId| desk.layout.set(Some(id));
    let several = memo(move || choices.with(|choices| choices.len() > 1));
    view_of(move || {
        several
            .get()
            .then(|| view! { <Select label="Layout" choices chosen set/> })
    })
}

#[component]
fn Ticks() -> impl IntoView {
    let desk = PracticeDesk::here();
    let speaks = flag(move || desk.choices.get().speaks);
    let is_still = flag(move || desk.choices.get().is_still);
    let counts_late = flag(move || desk.choices.get().counts_late);
    view! {
        <div class="practice-ticks">
            {voice::is_there().then(|| view! {
                <Tick label="Speak the calls" on=speaks
                    set=move |on| desk.choose(|choices| choices.speaks = on)/>
            })}
            <Tick label="Still pictures" on=is_still
                set=move |on| desk.choose(|choices| choices.is_still = on)/>
            <Tick label="Count calls answered late" on=counts_late
                set=move |on| desk.choose(|choices| choices.counts_late = on)/>
        </div>
    }
}
