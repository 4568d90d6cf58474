//! What is chosen before printing.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::edit::{Edit, PlanEdit};
use leverwright_core::plan::Plan;
use leverwright_core::share::LAYOUT_IS_TOO_LARGE;
use leverwright_core::sheet::{Paper, Sheet};
use leverwright_core::text::{Date, Text};
use std::sync::Arc;

use super::code::code_of;
use crate::erase::view_of;
use crate::storage::is_page_from_file;
use crate::today::today;
use crate::widgets::{Choice, DateField, TextField, Tick};
use crate::workspace::Workspace;

/// Paper, large print, the page with hand details, what the title block still
/// lacks, and the act of printing.
#[component]
pub fn Choices(sheet: Memo<Option<(Arc<Plan>, Arc<Sheet>)>>) -> impl IntoView {
    let print = Workspace::here().print;
    let papers = Paper::ALL
        .iter()
        .map(|paper| (Some(*paper), paper.words().to_owned()))
        .collect();
    let set_paper = Callback::new(move |paper: Option<Paper>| {
        if let Some(paper) = paper {
            print.update(|options| options.paper = paper);
        }
    });
    let set_large = move |on: bool| print.update(|options| options.large_print = on);
    let set_clinical = move |on: bool| print.update(|options| options.clinical = on);
    let set_code = move |on: bool| print.update(|options| options.code = on);
    let set_gears = move |on: bool| print.update(|options| options.gear_card = on);
    let set_hands = move |on: bool| print.update(|options| options.hand_page = on);
    view! {
        <section class="sheet-choices" aria-label="Before printing">
            <Choice legend="Paper" name="paper" choices=papers
                chosen=Signal::derive(move || Some(print.get().paper)) choose=set_paper/>
            <div>
                <Tick label="Large print" set=set_large
                    on=Signal::derive(move || print.get().large_print)/>
                <Tick label="Code to scan, where the first page has room (not in large print)" set=set_code
                    on=Signal::derive(move || print.get().code)/>
                <Tick label="Add the gear card" set=set_gears
                    on=Signal::derive(move || print.get().gear_card)/>
                <Tick label="Add the page with hand details" set=set_hands
                    on=Signal::derive(move || print.get().hand_page)/>
                <Show when=move || print.get().hand_page>
                    <Tick label="With step numbers and the closest ICF codes" set=set_clinical
                        on=Signal::derive(move || print.get().clinical)/>
                </Show>
            </div>
            <TitleFields/>
            <OtherLayout sheet/>
            <CodeNote sheet/>
            <Acts sheet/>
        </section>
    }
}

/// Says that another layout was chosen for the sheet, and takes it in hand.
#[component]
fn OtherLayout(sheet: Memo<Option<(Arc<Plan>, Arc<Sheet>)>>) -> impl IntoView {
    let workspace = Workspace::here();
    view_of(move || {
        let (plan, _) = sheet.get()?;
        let chosen = plan.not_the_chosen(plan.current)?;
        let id = chosen.id;
        let words = format!(
            "This is the sheet of “{}”. Chosen for the sheet is “{}”.",
            plan.layout().name,
            chosen.name
        );
        Some(view! {
            <p class="sheet-other check">
                {words}" "
                <button type="button" on:click=move |_| {
                    workspace.commit(Edit::Plan(PlanEdit::SelectLayout(id)));
                }>"Show the chosen one"</button>
            </p>
        })
    })
}

/// Why there is no code although it was asked for.
#[component]
fn CodeNote(sheet: Memo<Option<(Arc<Plan>, Arc<Sheet>)>>) -> impl IntoView {
    view_of(move || {
        let (plan, sheet) = sheet.get()?;
        let lacks = sheet.options.code && code_of(&plan).is_none();
        let words = match is_page_from_file() {
            true => "No code: this page was opened from a file and has no address to scan.",
            false => LAYOUT_IS_TOO_LARGE,
        };
        lacks.then(|| view! { <p class="quiet code-note">{words}</p> })
    })
}

/// Job number and date, which stand nowhere else.
#[component]
fn TitleFields() -> impl IntoView {
    let workspace = Workspace::here();
    let read = move |of: fn(&Plan) -> String| {
        Signal::derive(move || {
            workspace
                .plan
                .with(|plan| plan.as_ref().map(|plan| of(plan)).unwrap_or_default())
        })
    };
    let set_job = move |job: String| {
        workspace.commit(Edit::Plan(PlanEdit::Job(Text::new(&job))));
    };
    let date = Signal::derive(move || workspace.plan.with(|plan| plan.as_ref()?.date));
    let set_date = move |date: Option<Date>| {
        workspace.commit(Edit::Plan(PlanEdit::Date(date)));
    };
    view! {
        <div class="sheet-title-fields">
            <TextField label="Job number" value=read(|plan| plan.job.to_string()) set=set_job/>
            <DateField label="Date" value=date set=set_date/>
            <button type="button" on:click=move |_| set_date(today())>"Today"</button>
            <p class="quiet date-note">{move || date.get().and_then(other_day)}</p>
        </div>
    }
}

/// Says that the sheet bears another day's date: it stays as it is until
/// somebody sets it.
fn other_day(date: Date) -> Option<String> {
    let today = today()?;
    (date != today).then(|| format!("The sheet says {date}. Today is {today}."))
}

#[component]
fn Acts(sheet: Memo<Option<(Arc<Plan>, Arc<Sheet>)>>) -> impl IntoView {
    let print = move |_| {
        // A browser without printing leaves the page as it is.
        let _ = window().print();
    };
    view! {
        <div class="acts">
            <button type="button" class="main" on:click=print>"Print"</button>
            <details class="as-text">
                <summary>"As plain text"</summary>
                <label class="field">
                    <span>"The same sheet, to copy or to have read out"</span>
                    <textarea readonly rows="12" prop:value=move || {
                        sheet.get().map(|(_, sheet)| sheet.to_text()).unwrap_or_default()
                    }></textarea>
                </label>
            </details>
        </div>
    }
}
