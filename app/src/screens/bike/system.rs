//! What the shift system can program, entered from its manual.

use crate::erase::memo;
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::cockpit::{BarSide, HoldRun, ProfileOrigin, SystemProfile};
use leverwright_core::edit::BikeEdit;
use leverwright_core::function::Function;
use leverwright_core::rider::{Answer, YesNo};
use leverwright_core::shift_plan::ShiftPlanKind;
use leverwright_core::spot::Spot;
use leverwright_core::text::Text;

use super::control_card::all;
use super::{OpenMark, Stand};
use crate::widgets::{Choice, Select, TextField, Tick, all_or_not_asked};

/// Reads and changes the profile as a whole.
#[derive(Clone, Copy)]
struct Profile {
    stand: Stand,
    profile: Memo<Option<SystemProfile>>,
}

impl Profile {
    fn memo<T: PartialEq + Send + Sync + 'static>(
        self,
        read: impl Fn(&SystemProfile) -> T + Send + Sync + 'static,
    ) -> Memo<Option<T>> {
        memo(move || self.profile.with(|p| p.as_ref().map(&read)))
    }

    fn change(self, change: impl FnOnce(&mut SystemProfile)) {
        if let Some(mut profile) = self.profile.get_untracked() {
            change(&mut profile);
            self.stand.commit(BikeEdit::System(profile));
        }
    }
}

/// The system profile.
#[component]
pub fn SystemSection() -> impl IntoView {
    let stand = Stand::here();
    let profile = Profile {
        stand,
        profile: memo(move || stand.read(|bike| bike.system.clone())),
    };
    let name = memo(move || {
        let name = |p: &SystemProfile| p.name.as_str().to_owned();
        profile
            .profile
            .with(|p| p.as_ref().map(name).unwrap_or_default())
    });
    let set_keeps = Callback::new(move |value: Option<YesNo>| {
        profile.change(|p| p.keeps_settings = value.map_or(Answer::NOT_ASKED, Answer::of));
    });
    view! {
        <section aria-labelledby="system">
            <h2 id="system">"What the shift system can program"</h2>
            <OpenMark spot=Spot::System/>
            <p class="quiet">
                "Enter it from the system’s manual. A layout that the system cannot program cannot be built."
            </p>
            <div class="fields">
                <TextField label="What the shop calls it" value=name
                    set={move |text: String| profile.change(|p| p.name = Text::new(&text))}/>
                <Select label="This profile is" choices={all::<ProfileOrigin>()}
                    chosen={profile.memo(|p| p.origin)}
                    set={move |origin: ProfileOrigin| profile.change(|p| p.origin = origin)}/>
                <Select label="Longest hold" choices=hold_runs() chosen={profile.memo(|p| p.holds)}
                    set={move |holds: Option<HoldRun>| profile.change(|p| p.holds = holds)}/>
            </div>
            <SetTicks profile legend="Functions that a button can be given"
                has=|p: &SystemProfile, f: Function| p.functions.contains(&f)
                put=|p: &mut SystemProfile, f: Function, on: bool| {
                    if on { p.functions.insert(f) } else { p.functions.remove(&f) };
                }/>
            <SetTicks profile legend="Shift plans"
                has=|p: &SystemProfile, k: ShiftPlanKind| p.shift_plans.contains(&k)
                put=|p: &mut SystemProfile, k: ShiftPlanKind, on: bool| {
                    if on { p.shift_plans.insert(k) } else { p.shift_plans.remove(&k) };
                }/>
            <SetTicks profile legend="Levers that must be plugged in for it to run"
                has=|p: &SystemProfile, s: BarSide| p.required_levers.contains(&s)
                put=|p: &mut SystemProfile, s: BarSide, on: bool| {
                    if on { p.required_levers.insert(s) } else { p.required_levers.remove(&s) };
                }/>
            <Tick label="Two buttons pressed together can have a function"
                on={memo(move || profile.profile.with(|p| p.as_ref().is_some_and(|p| p.chords)))}
                set={move |on: bool| profile.change(|p| p.chords = on)}/>
            <Choice legend="Settings are kept after a reset or an update" name="keeps-settings"
                choices=all_or_not_asked()
                chosen={Signal::derive(move || {
                    profile.profile.with(|p| p.as_ref().and_then(|p| p.keeps_settings.value))
                })}
                choose=set_keeps/>
        </section>
    }
}

fn hold_runs() -> Signal<Vec<(Option<HoldRun>, String)>> {
    let mut runs = vec![(None, "holds cannot be programmed".to_owned())];
    runs.extend((1..=5).map(|n| (Some(HoldRun::Cogs(n)), HoldRun::Cogs(n).to_string())));
    runs.push((Some(HoldRun::ToEnd), HoldRun::ToEnd.to_string()));
    Signal::stored(runs)
}

/// A tick for each item of a vocabulary that is in a set of the profile.
#[component]
fn SetTicks<T: Vocabulary + Send + Sync>(
    profile: Profile,
    legend: &'static str,
    has: fn(&SystemProfile, T) -> bool,
    put: fn(&mut SystemProfile, T, bool),
) -> impl IntoView {
    let ticks = T::ALL
        .iter()
        .map(|item| {
            let item = *item;
            let on = memo(move || {
                profile
                    .profile
                    .with(|p| p.as_ref().is_some_and(|p| has(p, item)))
            });
            view! {
                <Tick label=item.words() on set={move |on: bool| profile.change(|p| put(p, item, on))}/>
            }
        })
        .collect_view();
    view! {
        <fieldset class="ticks">
            <legend>{legend}</legend>
            {ticks}
        </fieldset>
    }
}
