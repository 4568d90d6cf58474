//! The page that hangs on the stand.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::share::QrMatrix;
use leverwright_core::sheet::{
    BrakeLine, BrakeSheet, ButtonRow, CAUTIONS, LatchState, OpenPoint, Page, SettingsList, Sheet,
    ThrowTest, TitleBlock, Verdict,
};
use std::sync::Arc;

use super::cockpit::PrintedCockpit;
use super::code::SheetCode;
use super::page::{Balloons, Part, SheetPage, known_or_fill};
use super::table::{Cell, Table, cell, column, text};
use super::ticks::{balloons, one_box};
use crate::widgets::SeverityMark;

/// Verdict and title block, drawing, buttons, brakes, settings.
#[component]
pub fn OnTheStand(plan: Arc<Plan>, sheet: Arc<Sheet>, code: Option<QrMatrix>) -> impl IntoView {
    let is_clear = sheet.verdict.reasons.is_empty();
    let top = match (is_clear, code.is_some()) {
        (true, true) => "sheet-top clear with-code",
        (true, false) => "sheet-top clear",
        (false, _) => "sheet-top",
    };
    // Beside the drawing where nothing else stands there, or else below.
    let (beside, below) = match is_clear {
        true => (code, None),
        false => (None, code),
    };
    view! {
        <SheetPage page=Page::OnTheStand title=sheet.title.clone()>
            <TitleGrid title=sheet.title.clone()/>
            <VerdictBlock verdict=sheet.verdict.clone()/>
            <p class="sheet-proved">{sheet.proved.join(" ")}</p>
            {sheet.decided.clone().map(|words| view! { <p class="sheet-decided">{words}</p> })}
            <div class=top>
                <PrintedCockpit plan=&plan/>
                <Points points=sheet.verdict.reasons.clone()/>
                {beside.map(|code| view! { <SheetCode code/> })}
            </div>
            <Buttons buttons=sheet.buttons.clone()/>
            <Brakes brakes=sheet.brakes.clone()/>
            <Settings settings=sheet.settings.clone()/>
            {below.map(|code| view! { <div class="sheet-code-room"><SheetCode code/></div> })}
        </SheetPage>
    }
}

#[component]
fn VerdictBlock(verdict: Verdict) -> impl IntoView {
    let class = format!("sheet-verdict {}", verdict.readiness.code());
    let accepted = verdict.accepted;
    view! {
        <div class=class>
            <p class="word">{verdict.readiness.words()}</p>
            <p>
                {verdict.line} " "
                {(accepted > 0).then(|| view! {
                    "Accepted with a reason: " {accepted} ", see “Accepted”. "
                })}
                {CAUTIONS[0]} " More under “Cautions”."
            </p>
        </div>
    }
}

/// Open points: those of one weight together under its mark and word.
#[component]
pub fn Points(points: Vec<OpenPoint>) -> impl IntoView {
    let groups = points
        .chunk_by(|a, b| (a.never, a.severity) == (b.never, b.severity))
        .map(|points| {
            let (never, severity) = (points[0].never, points[0].severity);
            let lines = points.iter().cloned().map(point).collect_view();
            view! {
                <p class="sheet-weight">
                    <SeverityMark severity/> {never.then_some(": can never be accepted")}
                </p>
                <ul>{lines}</ul>
            }
        })
        .collect_view();
    view! { <div class="sheet-points">{groups}</div> }
}

fn point(point: OpenPoint) -> impl IntoView {
    view! { <li><Balloons numbers=point.numbers/> {point.message}</li> }
}

/// What the sheet is about, as on a drawing.
#[component]
fn TitleGrid(title: TitleBlock) -> impl IntoView {
    let fields = title
        .fields
        .into_iter()
        .map(|field| {
            let name = field.label.to_lowercase().replace(' ', "-");
            let class = format!("field-{name}");
            view! {
                <div class=class>
                    <dt>{field.label}</dt>
                    <dd>{known_or_fill(field.value)}</dd>
                </div>
            }
        })
        .collect_view();
    view! {
        <dl class="sheet-title">
            <div class="field-plan"><dt>"Plan"</dt><dd>{title.plan}</dd></div>
            <div class="field-revision"><dt>"Revision"</dt><dd>{title.revision}</dd></div>
            {fields}
        </dl>
    }
}

/// The button table. Columns that no button needs are left out: paper is
/// narrow.
#[component]
fn Buttons(buttons: Vec<ButtonRow>) -> impl IntoView {
    let holds = buttons.iter().any(|row| row.hold.is_some());
    let chords = buttons.iter().any(|row| !row.chords.is_empty());
    let mut columns = vec![
        column("Set", "boxes"),
        column("No.", "number"),
        column("Place", "name"),
        column("Was", "was"),
        column("Now", "now"),
    ];
    columns.extend(holds.then(|| column("Hold", "hold")));
    columns.extend(chords.then(|| column("Two together", "chord")));
    columns.push(column("Hand and contact", "hand"));
    let rows = buttons
        .iter()
        .map(|row| button_row(row, holds, chords))
        .collect();
    view! {
        <Part heading="Buttons" class="sheet-buttons">
            <p class="sheet-note">"Was and now: what a tap does. Bold: changed."</p>
            <Table label="Buttons" columns rows/>
        </Part>
    }
}

fn button_row(row: &ButtonRow, holds: bool, chords: bool) -> Vec<Cell> {
    let now = row.now.to_string();
    let now = if row.changed() == Some(true) {
        view! { <strong>{now}</strong> }.into_any()
    } else {
        now.into_any()
    };
    let mut cells = vec![
        one_box(),
        balloons(vec![row.number]),
        text(row.place.clone()),
        text(row.was.to_string()),
        cell(now),
    ];
    let hold = row.hold.map(|hold| hold.to_string()).unwrap_or_default();
    let together: Vec<String> = row.chords.iter().map(ToString::to_string).collect();
    cells.extend(holds.then(|| text(hold)));
    cells.extend(chords.then(|| text(together.join("; "))));
    cells.push(text(row.pressed.to_string()));
    cells
}

#[component]
fn Brakes(brakes: BrakeSheet) -> impl IntoView {
    let columns = vec![
        column("Set", "boxes"),
        column("Lever, line, wheels", "name"),
        column("Blade from the bar", "blade"),
        column("Tests", "tests"),
        column("Hand and finger", "hand"),
    ];
    let rows = brakes.levers.iter().map(brake_row).collect();
    let notes = brakes
        .notes
        .into_iter()
        .map(|note| view! { <li>{note}</li> })
        .collect_view();
    view! {
        <Part heading="Brakes" class="sheet-brakes">
            <Table label="Brakes" columns rows/>
            <ul class="sheet-notes">{notes}</ul>
        </Part>
    }
}

fn brake_row(line: &BrakeLine) -> Vec<Cell> {
    let throw = match line.throw {
        ThrowTest::NotNeeded => None,
        throw => Some(format!("throw {throw}")),
    };
    let latch = match line.latch {
        LatchState::None => None,
        latch => Some(format!("parking latch {latch}")),
    };
    let tests: Vec<String> = throw.into_iter().chain(latch).collect();
    vec![
        one_box(),
        text(line.chain()),
        text(line.blade.to_string()),
        text(tests.join("; ")),
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
        <Part heading="Settings, in the order of typing" class="sheet-settings">
            <p class="sheet-note">{settings.system}</p>
            <ol class="sheet-typed">{typed}</ol>
            {(!alone.is_empty()).then(|| view! {
                <p class="sheet-note">"Not typed in: " {alone.join("; ")} "."</p>
            })}
            <p class="sheet-note">{settings.after_reset}</p>
        </Part>
    }
}
