//! Brakes as plumbing: which lever pulls which wheel, and through what.

use crate::erase::{When, act, flag, memo, text};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{
    BrakeRun, ControlId, Joint, Medium, PulledTogether, Wheel, WheelBrake,
};
use leverwright_core::edit::BrakeEdit;
use leverwright_core::rider::{Answer, Side, YesNo};
use leverwright_core::spot::Spot;

use super::control_card::all;
use super::{OpenMark, Stand};
use crate::widgets::{Choice, Select, Tick, seen};

/// Every lever with what it pulls, axles, and levers pulled together.
#[component]
pub fn BrakesSection() -> impl IntoView {
    let stand = Stand::here();
    let levers = memo(move || {
        stand
            .read(|bike| {
                let levers = bike.controls.iter().filter(|c| c.blade.is_some());
                levers.map(|c| c.id).collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    view! {
        <section aria-labelledby="brakes">
            <h2 id="brakes">"Brakes"</h2>
            <p class="quiet">
                "What each lever pulls, and through what. Which brakes a bike must have, and where, differs by place: ask."
            </p>
            <For each=move || levers.get() key=|id| *id let:id><LeverRun id/></For>
            <Axles/>
            <Together levers/>
        </section>
    }
}

#[component]
fn LeverRun(id: ControlId) -> impl IntoView {
    let stand = Stand::here();
    let place = memo(move || stand.control(id, |c| c.place()).unwrap_or_default());
    let run = memo(move || stand.read(|bike| bike.brakes.run(id).cloned()).flatten());
    let wheels = memo(move || {
        stand
            .read(|bike| {
                bike.brakes
                    .wheels
                    .iter()
                    .map(|b| b.wheel)
                    .collect::<Vec<_>>()
            })
            .unwrap_or_default()
    });
    let change = move |change: &dyn Fn(&mut BrakeRun)| {
        let mut next = run.get_untracked().unwrap_or_else(|| new_run(stand, id));
        change(&mut next);
        stand.commit_brakes(if next.wheels.is_empty() {
            BrakeEdit::RemoveRun(id)
        } else {
            BrakeEdit::SetRun(next)
        });
    };
    let set_tested = Callback::new(move |value: Option<YesNo>| {
        stand.commit_brakes(BrakeEdit::ThrowTested(
            id,
            value.map_or(Answer::NOT_ASKED, Answer::of),
        ));
    });
    view! {
        <div class="lever-run" role="group" aria-label=place>
            <h3>{place}</h3>
            <button on:click={act(move || stand.commit_brakes(BrakeEdit::AllOnLever(id)))}>
                {text(move || format!("All brakes on the {}", place.get()))}
            </button>
            <div class="fields">
                <For each=move || wheels.get() key=|w| *w let:wheel>
                    <Tick label=format!("pulls the {wheel}")
                        on={memo(move || run.with(|r| {
                            r.as_ref().is_some_and(|r| r.wheels.contains(&wheel))
                        }))}
                        set={move |on: bool| change(&|run| {
                            run.wheels.retain(|w| *w != wheel);
                            if on {
                                run.wheels.push(wheel);
                            }
                        })}/>
                </For>
            </div>
            <When holds={flag(move || run.with(Option::is_some))}>
                <div class="fields">
                    <Select label="by" choices={all::<Medium>()}
                        chosen={memo(move || run.with(|r| r.as_ref().map(|r| r.medium)))}
                        set={move |medium: Medium| change(&|run| run.medium = medium)}/>
                    <Select label="through" choices={all::<Joint>()}
                        chosen={memo(move || run.with(|r| r.as_ref().map(|r| r.joint)))}
                        set={move |joint: Joint| change(&|run| run.joint = joint)}/>
                </div>
                <OpenMark spot=Spot::Throw(id)/>
                <Choice legend="Throw test: do all wheel brakes work fully before the blade comes near the bar?"
                    name=format!("throw-{id}")
                    choices={seen("tested: they do", "tested: they do not", "not tested")}
                    chosen={Signal::derive(move || run.get()?.throw_tested.value)}
                    choose=set_tested/>
            </When>
        </div>
    }
}

fn new_run(stand: Stand, lever: ControlId) -> BrakeRun {
    let medium = stand
        .read(|bike| bike.brakes.runs.first().map(|run| run.medium))
        .flatten();
    BrakeRun {
        lever,
        medium: medium.unwrap_or(Medium::Cable),
        joint: Joint::Direct,
        throw_tested: Answer::NOT_ASKED,
        wheels: Vec::new(),
    }
}

/// Wheels side by side on one axle.
#[component]
fn Axles() -> impl IntoView {
    let stand = Stand::here();
    let axles = memo(move || {
        stand
            .read(|bike| {
                let left = bike.brakes.wheels.iter().copied();
                left.filter(|b| matches!(b.wheel, Wheel::FrontLeft | Wheel::RearLeft))
                    .collect::<Vec<WheelBrake>>()
            })
            .unwrap_or_default()
    });
    view! {
        <For each=move || axles.get() key=|b| b.wheel let:brake>
            <Balanced wheel=brake.wheel/>
        </For>
    }
}

#[component]
fn Balanced(wheel: Wheel) -> impl IntoView {
    let stand = Stand::here();
    let chosen = memo(move || {
        stand
            .read(|bike| {
                let brake = bike.brakes.wheels.iter().find(|b| b.wheel == wheel);
                brake.and_then(|b| b.balanced.value)
            })
            .flatten()
    });
    let choose = Callback::new(move |value: Option<YesNo>| {
        stand.commit_brakes(BrakeEdit::Balanced(
            wheel,
            value.map_or(Answer::NOT_ASKED, Answer::of),
        ));
    });
    let axle = if wheel.is_front() { "front" } else { "rear" };
    view! {
        <OpenMark spot=Spot::Axle(wheel)/>
        <Choice legend=format!("Do the two {axle} wheels brake alike?")
            name=format!("balanced-{axle}") choices={seen("seen: alike", "seen: not alike", "not looked yet")} chosen choose/>
    }
}

/// Two levers that one hand pulls together; asked where a side has two.
#[component]
fn Together(levers: Memo<Vec<ControlId>>) -> impl IntoView {
    let stand = Stand::here();
    let pairs = memo(move || {
        let levers = levers.get();
        stand
            .read(|bike| {
                let mut pairs = Vec::new();
                for (at, first) in levers.iter().enumerate() {
                    for second in &levers[at + 1..] {
                        let side = |id: ControlId| bike.control(id).and_then(|c| c.side.hand());
                        if let (Some(a), Some(b)) = (side(*first), side(*second))
                            && a == b
                        {
                            pairs.push((a, *first, *second));
                        }
                    }
                }
                pairs
            })
            .unwrap_or_default()
    });
    view! {
        <For each=move || pairs.get() key=|pair| *pair let:pair>
            <TogetherChoice hand=pair.0 first=pair.1 second=pair.2/>
        </For>
    }
}

#[component]
fn TogetherChoice(hand: Side, first: ControlId, second: ControlId) -> impl IntoView {
    let stand = Stand::here();
    let chosen = memo(move || {
        stand
            .read(|bike| {
                let pair =
                    bike.brakes.together.iter().find(|t| {
                        [(first, second), (second, first)].contains(&(t.first, t.second))
                    });
                pair.and_then(|t| t.tried.value)
            })
            .flatten()
    });
    let choose = Callback::new(move |value: Option<YesNo>| {
        stand.commit_brakes(match value {
            None => BrakeEdit::NotTogether(first, second),
            Some(value) => BrakeEdit::Together(PulledTogether {
                hand,
                first,
                second,
                tried: Answer::of(value),
            }),
        });
    });
    view! {
        <Choice legend=format!("Does the {} hand pull both of its levers together?", hand.words())
            name=format!("together-{first}-{second}") choices={seen("tried: it does", "tried: it does not", "not tried")} chosen choose/>
    }
}
