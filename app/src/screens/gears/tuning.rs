//! What tunes the shift plan: paired counts, the ladder's aim, holds, pace.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::HoldRun;
use leverwright_core::edit::GearEdit;
use leverwright_core::gears::{
    Direction, HoldRuns, LadderGoal, Millis, Pace, Paired, PairedSettings, Scheme, Shifting,
};
use leverwright_core::plan::Plan;
use leverwright_core::shift_plan::ShiftPlanKind;

use super::desk::GearDesk;
use super::net_steps::NetSteps;
use crate::erase::{memo, view_of};
use crate::number::number;
use crate::widgets::{Choice, ReadField, Select, Tick};
use crate::words::capitalised;

/// The settings of the plan in hand, then those of every plan.
#[component]
pub fn Tuning() -> impl IntoView {
    let desk = GearDesk::here();
    let kind = memo(move || desk.read(|plan| plan.shift_plan));
    view! {
        {view_of(move || match kind.get() {
            Some(ShiftPlanKind::Paired) => view! { <PairedCounts/> }.into_any(),
            Some(ShiftPlanKind::Ladder) => view! { <LadderAim/> }.into_any(),
            _ => ().into_any(),
        })}
        <details class="holds-and-pace">
            <summary>"Holds and pace"</summary>
            <CogsPerHold/>
            <HoldsCross/>
            <PaceFields/>
        </details>
    }
}

/// How many rear shifts a front shift brings.
#[component]
fn PairedCounts() -> impl IntoView {
    view! {
        <PairedCount way=Direction::Up label="Rear shifts with front larger"/>
        <PairedCount way=Direction::Down label="Rear shifts with front smaller"/>
        <NetSteps/>
    }
}

#[component]
fn PairedCount(way: Direction, label: &'static str) -> impl IntoView {
    let desk = GearDesk::here();
    let by_hand = move |settings: PairedSettings| match way {
        Direction::Up => settings.larger,
        Direction::Down => settings.smaller,
    };
    let chosen = memo(move || desk.read(|plan| by_hand(plan.shift_settings.paired)));
    let choices = Signal::derive(move || {
        let mut choices = vec![(None, "as worked out".to_owned())];
        let worked_out = desk.read(worked_out).flatten();
        if let Some(paired) = worked_out {
            let count = match way {
                Direction::Up => paired.larger,
                Direction::Down => paired.smaller,
            };
            choices[0].1 = format!("as worked out: {count}");
        }
        choices.extend((0..=Paired::MOST).map(|n| (Some(n), n.to_string())));
        choices
    });
    let set = move |count: Option<u8>| {
        desk.commit(GearEdit::RearShifts(way, count));
    };
    view! { <Select label choices chosen set/> }
}

fn worked_out(plan: &Plan) -> Option<Paired> {
    let gears = plan.bike.drivetrain.gears()?;
    Some(Paired::of(&gears, PairedSettings::default()))
}

/// What the ladder aims at where it is worked out.
#[component]
fn LadderAim() -> impl IntoView {
    let desk = GearDesk::here();
    let chosen = memo(move || desk.read(|plan| plan.shift_settings.ladder.goal));
    let choices = LadderGoal::ALL
        .iter()
        .map(|goal| (Some(*goal), capitalised(goal.words())))
        .collect();
    let choose = Callback::new(move |goal: Option<LadderGoal>| {
        if let Some(goal) = goal {
            desk.commit(GearEdit::LadderGoal(goal));
        }
    });
    let rungs = memo(move || desk.read(rungs).flatten());
    view! {
        <div class="ladder-aim">
            <Choice legend="The ladder aims at" name="ladder-goal" choices
                chosen=Signal::derive(move || chosen.get()) choose/>
        </div>
        <p class="quiet">{move || rungs.get()}</p>
    }
}

fn rungs(plan: &Plan) -> Option<String> {
    match Shifting::of(plan).ok()?.scheme {
        Scheme::Ladder(ladder) => Some(format!(
            "{} rungs up, {} down.",
            ladder.up.len(),
            ladder.down.len()
        )),
        _ => None,
    }
}

/// One hold for all buttons that shift on.
#[component]
fn CogsPerHold() -> impl IntoView {
    let desk = GearDesk::here();
    let runs = memo(move || desk.read(HoldRuns::of));
    let choices = Signal::derive(move || {
        let runs = runs.get();
        let mut choices = Vec::new();
        if runs.as_ref().is_some_and(|runs| runs.all.is_none()) {
            choices.push((None, "differs from button to button".to_owned()));
        }
        for run in runs.map(|runs| runs.offered).unwrap_or_default() {
            let words = run.map_or("holds shift nothing".to_owned(), |run| run.to_string());
            choices.push((Some(run), words));
        }
        choices
    });
    let chosen = Signal::derive(move || runs.get().map(|runs| runs.all));
    let set = move |run: Option<Option<HoldRun>>| {
        if let (Some(run), Some(runs)) = (run, runs.get_untracked()) {
            desk.workspace.commit(runs.set(run));
        }
    };
    view! {
        {view_of(move || match runs.with(|runs| runs.as_ref().is_some_and(|r| r.buttons.is_empty())) {
            true => view! {
                <p class="quiet">
                    "No button takes a hold: the system programs none, or no button shifts yet."
                </p>
            }.into_any(),
            false => view! { <Select label="One hold shifts" choices chosen set/> }.into_any(),
        })}
    }
}

/// Whether holds run on across a crossover.
#[component]
fn HoldsCross() -> impl IntoView {
    let desk = GearDesk::here();
    let is_ladder = memo(move || desk.read(|plan| plan.shift_plan == ShiftPlanKind::Ladder));
    let on = memo(move || desk.read(|plan| plan.shift_settings.holds_cross) == Some(true));
    view_of(move || {
        (is_ladder.get() == Some(true)).then(|| {
            view! {
                <div id="holds-cross">
                    <Tick label="A hold runs on across a crossover" on
                        set={move |on: bool| { desk.commit(GearEdit::HoldsCross(on)); }}/>
                </div>
            }
        })
    })
}

/// How fast the system is.
#[component]
fn PaceFields() -> impl IntoView {
    view! {
        <div class="fields">
            <PaceField label="Trigger time of a hold (ms)" id="trigger"
                read=|pace| pace.trigger put=|pace, time| pace.trigger = time/>
            <PaceField label="From rear shift to rear shift (ms)" id="rear-pace"
                read=|pace| pace.rear put=|pace, time| pace.rear = time/>
            <PaceField label="A front shift (ms)" id="front-pace"
                read=|pace| pace.front put=|pace, time| pace.front = time/>
        </div>
    }
}

#[component]
fn PaceField(
    label: &'static str,
    id: &'static str,
    read: fn(&Pace) -> Millis,
    put: fn(&mut Pace, Millis),
) -> impl IntoView {
    let desk = GearDesk::here();
    let pace = memo(move || desk.read(|plan| plan.shift_settings.pace));
    let value = memo(move || {
        pace.get()
            .map(|pace| read(&pace).0.to_string())
            .unwrap_or_default()
    });
    let set = move |text: String| {
        let Some(ms) = number(&text) else {
            return Err(format!(
                "“{text}” is no time. Enter thousandths of a second, such as 500."
            ));
        };
        let mut changed = pace.get_untracked().unwrap_or_default();
        // A float cast saturates; what is out of range the core refuses.
        put(&mut changed, Millis(ms as u32));
        desk.try_commit(GearEdit::Pace(changed))
    };
    view! { <ReadField label id value set/> }
}
