//! The page that hangs on the stand.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::sheet::{
    BrakeLine, BrakeSheet, ButtonRow, LatchState, OpenPoint, Page, SettingsList, Sheet, ThrowTest,
    TitleBlock, Verdict,
};
use std::sync::Arc;

use super::cockpit::PrintedCockpit;
use super::page::{Balloons, Part, SheetPage, known_or_fill};
use super::table::{Cell, Table, cell, column, text};
use super::ticks::{balloons, one_box};
use crate::widgets::SeverityMark;

/// Verdict and title block, drawing, buttons, brakes, settings.
#[component]
pub fn OnTheStand(plan: Arc<Plan>, sheet: Arc<Sheet>) -> impl IntoView {
    let bike = plan.bike.clone();
    let buttons = sheet.buttons.iter().map(button_row).collect();
    let columns = vec![
        column("Set", "boxes"),
        column("No.", "number"),
        column("Place", "name"),
        column("Was", "was"),
        column("Now: tap", "now"),
        column("Hold", "hold"),
        column("Two together", "chord"),
        column("Hand and contact", "hand"),
    ];
    view! {
        <SheetPage page=Page::OnTheStand title=sheet.title.clone()>
            <div class="sheet-top">
                <VerdictBlock verdict=sheet.verdict.clone()/>
                <TitleGrid title=sheet.title.clone()/>
            </div>
            <PrintedCockpit bike/>
            <Part heading="Buttons" class="buttons">
                <Table label="Buttons" columns rows=buttons/>
            </Part>
            <Brakes brakes=sheet.brakes.clone()/>
            <Settings settings=sheet.settings.clone()/>
        </SheetPage>
    }
}

#[component]
fn VerdictBlock(verdict: Verdict) -> impl IntoView {
    let class = format!("verdict {}", verdict.readiness.code());
    let accepted = verdict.accepted;
    view! {
        <div class=class>
            <p class="word">{verdict.readiness.words()}</p>
            <p>{verdict.line}</p>
            <Points points=verdict.reasons/>
            {(accepted > 0).then(|| view! {
                <p>"Accepted with a reason: " {accepted} ". See “Accepted points”."</p>
            })}
        </div>
    }
}

/// Open points, each with its mark and word.
#[component]
pub fn Points(points: Vec<OpenPoint>) -> impl IntoView {
    let lines = points
        .into_iter()
        .map(|point| {
            view! {
                <li>
                    <SeverityMark severity=point.severity/> " "
                    {point.never.then_some("Can never be accepted. ")}
                    <Balloons numbers=point.numbers/>
                    {point.message}
                </li>
            }
        })
        .collect_view();
    view! { <ul class="points">{lines}</ul> }
}

/// What the sheet is about, as on a drawing.
#[component]
fn TitleGrid(title: TitleBlock) -> impl IntoView {
    let fields = title
        .fields
        .into_iter()
        .map(|field| {
            view! {
                <div>
                    <dt>{field.label}</dt>
                    <dd>{known_or_fill(field.value)}</dd>
                </div>
            }
        })
        .collect_view();
    view! {
        <dl class="title-block">
            <div class="plan"><dt>"Plan"</dt><dd>{title.plan}</dd></div>
            <div><dt>"Revision"</dt><dd>{title.revision}</dd></div>
            {fields}
        </dl>
    }
}

fn button_row(row: &ButtonRow) -> Vec<Cell> {
    let now = row.now.to_string();
    let now = if row.changed() == Some(true) {
        view! { <strong>{now}</strong> }.into_any()
    } else {
        now.into_any()
    };
    let chords: Vec<String> = row.chords.iter().map(ToString::to_string).collect();
    vec![
        one_box(),
        balloons(vec![row.number]),
        text(row.place.clone()),
        text(row.was.to_string()),
        cell(now),
        text(row.hold.map(|hold| hold.to_string()).unwrap_or_default()),
        text(chords.join("; ")),
        text(row.pressed.to_string()),
    ]
}

#[component]
fn Brakes(brakes: BrakeSheet) -> impl IntoView {
    let columns = vec![
        column("Set", "boxes"),
        column("Lever, line, wheels", "name"),
        column("Blade from the bar", "blade"),
        column("Throw test", "throw"),
        column("Parking latch", "latch"),
        column("Hand and finger", "hand"),
    ];
    let rows = brakes.levers.iter().map(brake_row).collect();
    let notes = brakes
        .notes
        .into_iter()
        .map(|note| view! { <li>{note}</li> })
        .collect_view();
    view! {
        <Part heading="Brakes" class="brakes">
            <Table label="Brakes" columns rows/>
            <ul class="notes">{notes}</ul>
        </Part>
    }
}

fn brake_row(line: &BrakeLine) -> Vec<Cell> {
    let throw = match line.throw {
        ThrowTest::NotNeeded => String::new(),
        throw => throw.to_string(),
    };
    let latch = match line.latch {
        LatchState::None => String::new(),
        latch => latch.to_string(),
    };
    vec![
        one_box(),
        text(line.chain()),
        text(line.blade.to_string()),
        text(throw),
        text(latch),
        text(line.pulled_by.clone().unwrap_or_default()),
    ]
}

/// What is typed into the system, in columns where the paper has room.
#[component]
fn Settings(settings: SettingsList) -> impl IntoView {
    let typed = settings
        .settings
        .into_iter()
        .map(|setting| {
            view! {
                <li>
                    <Balloons numbers=setting.numbers/>
                    {setting.what} ": " <strong>{known_or_fill(setting.value)}</strong>
                </li>
            }
        })
        .collect_view();
    let alone = settings.left_alone;
    view! {
        <Part heading="Settings, in the order of typing" class="settings">
            <p class="note">{settings.system}</p>
            <ol class="typed">{typed}</ol>
            {(!alone.is_empty()).then(|| view! {
                <p class="note">"Not typed in: " {alone.join("; ")} "."</p>
            })}
            <p class="note">{settings.after_reset}</p>
        </Part>
    }
}
