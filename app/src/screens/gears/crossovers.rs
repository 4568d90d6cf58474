//! The crossovers in words, moved by buttons; and what was set by hand.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::GearEdit;
use leverwright_core::gears::plot::GearPlot;
use leverwright_core::gears::{Crossover, CrossoverEnd, Direction, Gear, Teeth};
use leverwright_core::shift_plan::ShiftPlanKind;

use super::desk::GearDesk;
use crate::erase::{When, act, flag, memo, text, view_of};
use crate::words::capitalised;

/// Which crossover: between which rings, and which way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Which {
    pub pair: u8,
    pub way: Direction,
}

impl Which {
    pub fn of(crossover: Crossover) -> Which {
        Which {
            pair: crossover.pair(),
            way: crossover.way,
        }
    }

    /// The name of something of it on the page.
    pub fn name(self, what: &str) -> String {
        format!("{what}-{}-{}", self.way.code(), self.pair)
    }

    /// What it is called: "Crossover up, 34 to 50".
    pub fn title(self, desk: GearDesk) -> String {
        let teeth = |ring: u8| {
            desk.read(|plan| {
                let rings = plan.bike.drivetrain.rings.teeth()?;
                rings.get(usize::from(ring)).copied()
            })
            .flatten()
            .map_or(String::new(), |teeth: Teeth| teeth.to_string())
        };
        let (from, to) = match self.way {
            Direction::Up => (self.pair, self.pair + 1),
            Direction::Down => (self.pair + 1, self.pair),
        };
        format!("Crossover {}, {} to {}", self.way, teeth(from), teeth(to))
    }
}

/// The crossovers that there are.
pub fn which(desk: GearDesk) -> Vec<Which> {
    let all = |plot: &GearPlot| {
        let lines = plot.crossovers.iter();
        lines.map(|line| Which::of(line.crossover)).collect()
    };
    desk.plot
        .with(|plot| plot.as_deref().map(all))
        .unwrap_or_default()
}

/// A crossover as it is drawn.
pub fn crossover(plot: &GearPlot, which: Which) -> Option<Crossover> {
    let mut all = plot.crossovers.iter().map(|line| line.crossover);
    all.find(|crossover| Which::of(*crossover) == which)
}

/// Moves one end of a crossover by one cog, and says where it is then.
pub fn move_one(desk: GearDesk, which: Which, end: CrossoverEnd, harder: bool) {
    let moved = untrack(|| {
        let gears = desk.read(|plan| plan.bike.drivetrain.gears()).flatten()?;
        let now = desk.plot.with(|plot| crossover(plot.as_deref()?, which))?;
        Some(now.stepped(&gears, end, harder))
    });
    match moved {
        Some(Some(cogs)) if desk.commit(GearEdit::Crossover(which.pair, which.way, cogs)) => {
            desk.workspace.say(untrack(|| words(desk, which)));
        }
        Some(None) => desk.workspace.report("The cassette ends there."),
        // What was refused is told by the commit.
        Some(Some(_)) | None => {}
    }
}

fn words(desk: GearDesk, which: Which) -> String {
    desk.plot.with(|plot| {
        let mut lines = plot.iter().flat_map(|plot| &plot.crossovers);
        let line = lines.find(|line| Which::of(line.crossover) == which);
        line.map(|line| line.words.clone()).unwrap_or_default()
    })
}

/// Only for a ladder.
#[component]
pub fn Crossovers() -> impl IntoView {
    let desk = GearDesk::here();
    let is_ladder = memo(move || desk.read(|plan| plan.shift_plan == ShiftPlanKind::Ladder));
    let all = memo(move || which(desk));
    view! {
        <When holds={flag(move || is_ladder.get() == Some(true))}>
            <section class="gears-crossovers" aria-labelledby="crossovers">
                <h3 id="crossovers" tabindex="-1">"Crossovers: where the front changes"</h3>
                <p class="quiet">
                    "Drag the round handles in the picture, or press the buttons. On a handle the \
                    arrow keys move it; with Shift they move its landing alone."
                </p>
                <ul class="crossover-list">
                    <For each=move || all.get() key=|which| *which let:which>
                        <Row which/>
                    </For>
                </ul>
                <ByHand/>
                <Forbidden/>
            </section>
        </When>
    }
}

#[component]
fn Row(which: Which) -> impl IntoView {
    let desk = GearDesk::here();
    let title = text(move || which.title(desk));
    let words = text(move || {
        let words = words(desk, which);
        // The heading says which way.
        words
            .split_once(": ")
            .map_or(words.clone(), |(_, rest)| rest.to_owned())
    });
    view! {
        <li class="crossover-row">
            <h4>{title}</h4>
            <p class="crossover-words">{words}</p>
            <div class="crossover-ends">
                <Stepper which end=CrossoverEnd::Leaves/>
                <Stepper which end=CrossoverEnd::Lands/>
            </div>
        </li>
    }
}

/// Moves one end by a cog, easier or harder.
#[component]
fn Stepper(which: Which, end: CrossoverEnd) -> impl IntoView {
    let desk = GearDesk::here();
    let gear = memo(move || {
        let crossover = desk.plot.with(|plot| crossover(plot.as_deref()?, which))?;
        let gear = match end {
            CrossoverEnd::Leaves => crossover.from,
            CrossoverEnd::Lands => crossover.to,
        };
        desk.read(|plan| Some(plan.bike.drivetrain.gears()?.words(gear)))?
    });
    let label = format!("{} in ", capitalised(end.words()));
    let about = format!(", crossover {} {}", which.way, end.words());
    let about_too = about.clone();
    view! {
        <div class="stepper" role="group" aria-label=format!("Crossover {}, {}", which.way, end.words())>
            <span>{label}<strong>{move || gear.get()}</strong></span>
            <button type="button" on:click={act(move || move_one(desk, which, end, false))}>
                "Easier"<span class="unseen">{about}</span>
            </button>
            <button type="button" on:click={act(move || move_one(desk, which, end, true))}>
                "Harder"<span class="unseen">{about_too}</span>
            </button>
        </div>
    }
}

/// The way back to what is worked out.
#[component]
fn ByHand() -> impl IntoView {
    let desk = GearDesk::here();
    let by_hand = memo(move || desk.read(|plan| !plan.shift_settings.ladder.by_hand.is_empty()));
    view_of(move || {
        (by_hand.get() == Some(true)).then(|| {
            view! {
                <div class="acts">
                    <p class="quiet">"The crossovers were set by hand."</p>
                    <button type="button" on:click={act(move || {
                        desk.commit(GearEdit::CrossoversWorkedOut);
                    })}>"Take the crossovers worked out"</button>
                </div>
            }
        })
    })
}

/// Gears that the ladder keeps out of.
#[component]
fn Forbidden() -> impl IntoView {
    let desk = GearDesk::here();
    let forbidden = memo(move || {
        let named = |gear: &Gear, name: String| (*gear, name);
        desk.read(|plan| {
            let gears = plan.bike.drivetrain.gears()?;
            let forbidden = plan.shift_settings.ladder.forbidden.iter();
            Some(
                forbidden
                    .map(|gear| named(gear, gears.words(*gear)))
                    .collect::<Vec<_>>(),
            )
        })
        .flatten()
        .unwrap_or_default()
    });
    view_of(move || {
        let forbidden = forbidden.get();
        let buttons = forbidden
            .iter()
            .map(|(gear, name)| {
                let gear = *gear;
                view! {
                    <button type="button" on:click={act(move || {
                        desk.commit(GearEdit::Forbid(gear, false));
                    })}>{format!("Allow {name}")}</button>
                }
            })
            .collect_view();
        (!forbidden.is_empty()).then(|| {
            view! {
                <div class="acts forbidden-gears" role="group" aria-label="Forbidden gears">
                    <p class="quiet">"Forbidden:"</p>
                    {buttons}
                </div>
            }
        })
    })
}
