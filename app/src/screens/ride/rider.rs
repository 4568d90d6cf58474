//! How the rider rides.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, RideEdit};
use leverwright_core::ride::habits::Habit;

use crate::erase::text;
use crate::widgets::NumberField;
use crate::workspace::Workspace;

/// A field for each habit, with what is taken while it is not asked.
#[component]
pub fn HowTheRiderRides() -> impl IntoView {
    let workspace = Workspace::here();
    let speed = text(move || {
        let plan = workspace.plan.get();
        let speed = plan.map_or(0.0, |plan| plan.rides.habits.level_speed());
        format!("That makes about {:.0} km/h on the level.", speed * 3.6)
    });
    let fields = Habit::ALL
        .iter()
        .map(|habit| view! { <HabitField habit=*habit/> })
        .collect_view();
    view! {
        <section aria-labelledby="ride-rider">
            <details class="ride-habits" open=!starts_folded(workspace)>
                <summary><h2 id="ride-rider">"How the rider rides"</h2></summary>
                <p class="quiet">
                    "Leave empty what you do not know: it is taken as usual for an unhurried rider on a \
                    touring bike. Power, in watts, is how hard you pedal. Cadence is how many turns \
                    the pedals make in a minute (rpm)."
                </p>
                <div class="habits">{fields}</div>
            </details>
            <p class="level-speed">{speed}</p>
        </section>
    }
}

/// On a telephone fields that nobody filled in stay out of the way to the ride.
fn starts_folded(workspace: Workspace) -> bool {
    let small = "(max-width: 44em), (max-height: 29.99em) and (orientation: landscape)";
    let query = window().match_media(small).ok().flatten();
    let plan = workspace.plan.get_untracked();
    query.is_some_and(|query| query.matches())
        && plan.is_some_and(|plan| plan.rides.habits.are_usual())
}

#[component]
fn HabitField(habit: Habit) -> impl IntoView {
    let workspace = Workspace::here();
    let value = Signal::derive(move || {
        let plan = workspace.plan.get()?;
        plan.rides.habits.answer(habit).map(f64::from)
    });
    let set = move |value: Option<f64>| {
        let value = value.map(|value| value.round().clamp(0.0, 9999.0) as u16);
        workspace.commit(Edit::Ride(RideEdit::Habit(habit, value)));
    };
    let (least, most) = habit.range();
    let usual = format!("usually {} {}", habit.usual(), habit.unit());
    view! {
        <div class="habit">
            <NumberField label=format!("{}, {}", habit.label(), habit.unit())
                least=least.into() most=most.into() value set/>
            <span class="quiet">{usual}</span>
        </div>
    }
}
