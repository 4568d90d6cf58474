//! Reasons, first ride, cautions, sign-off.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::sheet::{
    AcceptedPoint, CoverageAnswer, CoverageLine, CoverageTable, CoverageWords, Field, OpenPoint,
    Page, SIGNATURE_NOTE, Sheet,
};
use std::sync::Arc;

use super::on_the_stand::Points;
use super::page::{Balloons, Fill, Group, Part, SheetPage, known_or_fill};
use super::table::{Cell, Table, cell, column, text};
use super::ticks::Ticks;
use crate::widgets::SeverityMark;

/// The page that is kept.
#[component]
pub fn ProofPage(sheet: Arc<Sheet>) -> impl IntoView {
    let first_ride = sheet
        .first_ride
        .iter()
        .map(|list| view! { <Ticks list=list.clone()/> })
        .collect_view();
    let cautions = sheet
        .cautions
        .iter()
        .map(|caution| view! { <li>{*caution}</li> })
        .collect_view();
    view! {
        <SheetPage page=Page::Proof title=sheet.title.clone()>
            <Coverage table=sheet.coverage.clone()/>
            <Open points=sheet.open.clone() none=sheet.no_open_points()/>
            <Accepted points=sheet.accepted.clone()/>
            <Group heading="First ride">{first_ride}</Group>
            <Part heading="Cautions" class="sheet-cautions"><ul>{cautions}</ul></Part>
            <Part heading="Remarks" class="sheet-remarks">
                <Fill long=true/><Fill long=true/>
            </Part>
            <SignOff groups=sheet.sign_off.clone()/>
        </SheetPage>
    }
}

#[component]
fn Coverage(table: CoverageTable) -> impl IntoView {
    let about_bad_day = table.about_bad_day();
    let mut columns = vec![column("What", "name")];
    columns.extend(table.heads().map(|head| column(head, "wide")));
    let rows = table.lines.into_iter().map(coverage_row).collect();
    view! {
        <Part heading="Coverage" class="sheet-coverage">
            <p class="sheet-note">"Button, hand and contact from each position. "{about_bad_day}</p>
            <Table label="Coverage" columns rows/>
        </Part>
    }
}

fn coverage_row(line: CoverageLine) -> Vec<Cell> {
    let what = if line.needed {
        line.what
    } else {
        format!("{} (the shift plan does without)", line.what)
    };
    let cells = line.cells.into_iter().map(|words| {
        let CoverageWords { usual, bad } = words;
        let bad = bad.map(|bad| view! { <br/> "Bad day: " {answer(bad)} });
        cell(view! { {answer(usual)} {bad} })
    });
    std::iter::once(text(what)).chain(cells).collect()
}

fn answer(answer: CoverageAnswer) -> impl IntoView {
    view! { {answer.before} <Balloons numbers=answer.numbers/> {answer.words} }
}

#[component]
fn Open(points: Vec<OpenPoint>, none: &'static str) -> impl IntoView {
    view! {
        <Part heading="Open points" class="sheet-open">
            {if points.is_empty() {
                view! { <p>{none}</p> }.into_any()
            } else {
                view! { <Points points/> }.into_any()
            }}
        </Part>
    }
}

#[component]
fn Accepted(points: Vec<AcceptedPoint>) -> impl IntoView {
    if points.is_empty() {
        return view! { <Part heading="Accepted" class="sheet-accepted"><p>"None."</p></Part> }
            .into_any();
    }
    let columns = vec![
        column("Point", "name"),
        column("Reason", "wide"),
        column("Who", "who"),
        column("Date", "date"),
    ];
    let rows = points.into_iter().map(accepted_row).collect();
    view! {
        <Part heading="Accepted" class="sheet-accepted"><Table label="Accepted points" columns rows/></Part>
    }
    .into_any()
}

fn accepted_row(point: AcceptedPoint) -> Vec<Cell> {
    let by = (!point.by.is_empty()).then_some(point.by);
    vec![
        cell(view! {
            <SeverityMark severity=point.severity/> " "
            <Balloons numbers=point.numbers/> {point.message}
        }),
        text(point.reason),
        cell(view! { {known_or_fill(by)} ", " {point.role.words()} }),
        cell(known_or_fill(point.date.map(|date| date.to_string()))),
    ]
}

/// Lines to sign on.
pub fn signature(fields: Vec<Field>) -> impl IntoView {
    fields
        .into_iter()
        .map(|field| view! { <p class="sheet-sign">{field.label} <Fill long=true/></p> })
        .collect_view()
}

#[component]
fn SignOff(groups: Vec<(&'static str, Vec<Field>)>) -> impl IntoView {
    let groups = groups
        .into_iter()
        .map(|(who, fields)| {
            view! { <div class="sheet-signer"><h4>{who}</h4>{signature(fields)}</div> }
        })
        .collect_view();
    view! {
        <Part heading="Sign-off" class="sheet-sign-off">
            <p class="sheet-note">{SIGNATURE_NOTE}</p>
            <div class="sheet-signers">{groups}</div>
        </Part>
    }
}
