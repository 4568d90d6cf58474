//! Rings, cogs, wheel, crank, and what the derailleurs take.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::GearEdit;
use leverwright_core::gears::{
    Derailleurs, Drivetrain, PresetId, Rolling, Sprockets, Teeth, ToothError,
};
use leverwright_core::units::Mm;

use super::desk::GearDesk;
use crate::erase::{memo, text, view_of};
use crate::number::number;
use crate::widgets::{ReadField, Select};

/// What the bike has.
#[component]
pub fn DrivetrainSection() -> impl IntoView {
    let desk = GearDesk::here();
    let words = text(move || {
        desk.read(|plan| plan.bike.drivetrain.to_string())
            .unwrap_or_default()
    });
    view! {
        <section class="gears-drivetrain" aria-labelledby="drivetrain">
            <h2 id="drivetrain">"Drivetrain"</h2>
            <p class="drivetrain-words">{words}</p>
            <div class="fields">
                <UsualSet/>
                <DrivetrainField label="Teeth of the chainrings" id="rings" hint="such as 34 50"
                    show=|d| d.rings.to_field() read=|text, _| {
                        said(Sprockets::read_rings(text)).map(GearEdit::Rings)
                    }/>
                <DrivetrainField label="Teeth of the cogs" id="cogs" hint="such as 11 12 13 14 15 17 19 21 24 27 30 34"
                    show=|d| d.cogs.to_field() read=|text, _| {
                        said(Sprockets::read_cogs(text)).map(GearEdit::Cogs)
                    }/>
                <DrivetrainField label="Tyre, or measured roll" id="wheel"
                    hint="28-622 from its side wall, or 2105 mm in one turn"
                    show=|d| d.wheel.map(Rolling::to_field).unwrap_or_default()
                    read=|text, _| said(Rolling::read(text)).map(GearEdit::Wheel)/>
                <DrivetrainField label="Crank (mm)" id="crank" hint="such as 170"
                    show=|d| millimetres(d.crank) read=|text, _| length(text).map(GearEdit::Crank)/>
            </div>
            <details class="derailleurs">
                <summary>"What the derailleurs take, and chain length"</summary>
                <p class="quiet">"Enter it from their manuals. Empty is not entered."</p>
                <div class="fields">
                    <DrivetrainField label="Largest cog (teeth)" id="derailleurs"
                        show=|d| teeth(d.derailleurs.largest_cog)
                        read=|text, d| take(text, d, |takes, teeth| takes.largest_cog = teeth)/>
                    <DrivetrainField label="Chain taken up (teeth)" id="wrap"
                        show=|d| teeth(d.derailleurs.wrap)
                        read=|text, d| take(text, d, |takes, teeth| takes.wrap = teeth)/>
                    <DrivetrainField label="Between the rings (teeth)" id="front-difference"
                        show=|d| teeth(d.derailleurs.front_difference)
                        read=|text, d| take(text, d, |takes, teeth| takes.front_difference = teeth)/>
                    <DrivetrainField label="Chainstay (mm)" id="chainstay"
                        hint="bottom bracket to rear axle"
                        show=|d| millimetres(d.chainstay)
                        read=|text, _| length(text).map(GearEdit::Chainstay)/>
                </div>
                <Asks/>
            </details>
        </section>
    }
}

/// One field: how it is shown, and what is read from it.
#[component]
fn DrivetrainField(
    label: &'static str,
    id: &'static str,
    #[prop(optional)] hint: &'static str,
    show: fn(&Drivetrain) -> String,
    read: fn(&str, &Drivetrain) -> Result<GearEdit, String>,
) -> impl IntoView {
    let desk = GearDesk::here();
    let value = memo(move || {
        desk.read(|plan| show(&plan.bike.drivetrain))
            .unwrap_or_default()
    });
    let set = move |text: String| {
        let edit = untrack(|| desk.read(|plan| read(&text, &plan.bike.drivetrain)));
        desk.try_commit(edit.unwrap_or_else(|| Err(String::new()))?)
    };
    view! { <ReadField label id hint value set/> }
}

/// Usual drivetrains to start from.
#[component]
fn UsualSet() -> impl IntoView {
    let desk = GearDesk::here();
    let now = memo(move || {
        desk.read(|plan| PresetId::of(&plan.bike.drivetrain))
            .flatten()
    });
    let choices = Signal::derive(move || {
        let mut choices = Vec::new();
        if now.get().is_none() {
            choices.push((None, "none of these".to_owned()));
        }
        for preset in PresetId::ALL {
            choices.push((Some(*preset), preset.words().to_owned()));
        }
        choices
    });
    let set = move |preset: Option<PresetId>| {
        if let Some(preset) = preset {
            desk.commit(GearEdit::Preset(preset));
        }
    };
    view! {
        <div class="usual-set">
            <Select label="Usual set" choices chosen=Signal::derive(move || Some(now.get())) set/>
        </div>
    }
}

/// What rings and cogs ask of the derailleurs, and the chain.
#[component]
fn Asks() -> impl IntoView {
    let desk = GearDesk::here();
    view_of(move || {
        desk.read(|plan| {
            let drivetrain = &plan.bike.drivetrain;
            let lines = drivetrain.asks().into_iter().map(|ask| ask.words());
            let chain = drivetrain.chain_words();
            let items = lines
                .chain(chain)
                .map(|line| view! { <li>{line}</li> })
                .collect_view();
            view! { <ul class="asks">{items}</ul> }
        })
    })
}

fn said<T>(read: Result<T, ToothError>) -> Result<T, String> {
    read.map_err(|error| error.to_string())
}

fn teeth(teeth: Option<Teeth>) -> String {
    teeth.map(|teeth| teeth.to_string()).unwrap_or_default()
}

fn millimetres(length: Option<Mm>) -> String {
    length.map(|mm| mm.0.to_string()).unwrap_or_default()
}

/// A length out of a field; nothing is not entered.
fn length(text: &str) -> Result<Option<Mm>, String> {
    match (text.trim(), number(text)) {
        ("", _) => Ok(None),
        (_, Some(mm)) => Ok(Some(Mm(mm))),
        (text, None) => Err(format!(
            "“{text}” is no length. Enter millimetres, such as 170."
        )),
    }
}

fn take(
    text: &str,
    drivetrain: &Drivetrain,
    put: fn(&mut Derailleurs, Option<Teeth>),
) -> Result<GearEdit, String> {
    let mut takes = drivetrain.derailleurs;
    put(&mut takes, said(Teeth::read(text))?);
    Ok(GearEdit::Derailleurs(takes))
}
