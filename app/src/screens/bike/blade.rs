//! A control's brake blade.

use crate::erase::{When, flag, memo};
use leptos::prelude::*;
use leverwright_core::cockpit::{Blade, ControlId, Latch};
use leverwright_core::edit::BikeEdit;
use leverwright_core::rider::{Answer, YesNo};
use leverwright_core::spot::Spot;
use leverwright_core::units::Mm;

use super::{OpenMark, Stand};
use crate::widgets::{Choice, NumberField, Tick, seen};

/// Fitted or not, its measures, and a parking latch.
#[component]
pub fn BladeSection(id: ControlId) -> impl IntoView {
    let stand = Stand::here();
    let blade = memo(move || stand.control(id, |c| c.blade).flatten());
    let has =
        move |read: fn(&Blade) -> bool| memo(move || blade.with(|b| b.as_ref().is_some_and(read)));
    let measure = move |read: fn(&Blade) -> Option<Mm>| {
        memo(move || blade.with(|b| b.as_ref().and_then(read)).map(|mm| mm.0))
    };
    let has_latch = has(|b| b.latch.is_some());
    let set_tried = Callback::new(move |value: Option<YesNo>| {
        let tried = value.map_or(Answer::NOT_ASKED, Answer::of);
        stand.commit(BikeEdit::Latch(id, Some(Latch { tried })));
    });
    view! {
        <div class="blade" role="group" aria-label="Brake blade">
            <h4 id={Spot::Blade(id).key()}>"Brake blade"</h4>
            <OpenMark spot=Spot::Blade(id)/>
            <Tick label="The blade is fitted" on={has(|b| b.fitted)}
                set={move |on: bool| stand.commit(BikeEdit::BladeFitted(id, on))}/>
            <div class="fields">
                <NumberField label="From the bar to the blade at rest (mm)" least=10.0 most=200.0
                    value={measure(|b| b.reach)}
                    set={move |n: Option<f64>| stand.commit(BikeEdit::BladeReach(id, n.map(Mm)))}/>
                <NumberField label="From the bar to the blade at full pull (mm)" least=0.0 most=200.0
                    value={measure(|b| b.gap_at_full_pull)}
                    set={move |n: Option<f64>| stand.commit(BikeEdit::BladeGap(id, n.map(Mm)))}/>
            </div>
            <Tick label="It has a parking latch" on=has_latch
                set={move |on: bool| stand.commit(BikeEdit::Latch(id, on.then(Latch::default)))}/>
            <When holds={flag(move || has_latch.get())}>
                <OpenMark spot=Spot::Latch(id)/>
                <Choice legend="Does the hand that must do it set and release the latch?"
                    name=format!("latch-{id}")
                    choices={seen("tried: it does", "tried: it does not", "not tried")}
                    chosen={Signal::derive(move || blade.get()?.latch?.tried.value)}
                    choose=set_tried/>
            </When>
        </div>
    }
}
