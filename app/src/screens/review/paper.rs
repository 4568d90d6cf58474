//! The review on paper, and the same as plain text.

use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::plan::Plan;
use leverwright_core::review::{Block, PaperPart, ReviewPage};
use leverwright_core::sheet::Paper;

use super::desk::Desk;
use crate::alone::alone;
use crate::erase::{flag, memo, text, view_of};
use crate::screens::sheet::cockpit::PrintedCockpit;
use crate::screens::sheet::running::{Foot, follow};
use crate::today::today;
use crate::widgets::{Choice, Tick};

/// Paper, large print, the act of printing.
#[component]
pub fn OnPaper() -> impl IntoView {
    let desk = Desk::here();
    let print = desk.workspace.print;
    let papers = Paper::ALL.iter();
    let papers = papers.map(|paper| (Some(*paper), paper.words().to_owned()));
    let choose = Callback::new(move |paper: Option<Paper>| {
        if let Some(paper) = paper {
            print.update(|options| options.paper = paper);
        }
    });
    let said = text(move || {
        desk.page.with(|page| {
            let page = page.as_deref();
            page.map(|page| desk.of_plan(|plan| page.to_text(plan, today())))
                .unwrap_or_default()
        })
    });
    let press = move |_| {
        // A browser without printing leaves the page as it is.
        let _ = window().print();
    };
    view! {
        <section class="review-print" aria-labelledby="review-paper">
            <h2 id="review-paper">"Print"</h2>
            <p class="quiet">"The page says what hands do: hand it only to who should read it. It has a line to sign on."</p>
            <Choice legend="Paper" name="review-paper-size" choices=papers.collect()
                chosen=Signal::derive(move || Some(print.get().paper)) choose/>
            <Tick label="Large print" on=flag(move || print.get().large_print)
                set=move |on: bool| print.update(|options| options.large_print = on)/>
            <div class="acts">
                <button type="button" class="main" on:click=press>"Print the review"</button>
                <details class="as-text">
                    <summary>"As plain text"</summary>
                    <label class="field">
                        <span>"The same review, to copy or to have read out"</span>
                        <textarea readonly rows="14" prop:value=said></textarea>
                    </label>
                </details>
            </div>
        </section>
    }
}

/// Out of sight until it is printed.
#[component]
pub fn ReviewPaper() -> impl IntoView {
    let desk = Desk::here();
    follow(memo(move || {
        let title = desk.page.get()?.title.clone();
        Some(Foot {
            title,
            parts: false,
        })
    }));
    view_of(move || {
        let page = desk.page.get()?;
        let options = desk.workspace.print.get();
        let large = if options.large_print { " large" } else { "" };
        let class = format!("review-sheet {}{large}", options.paper.code());
        let plan = desk.workspace.plan.get()?;
        Some(paper(&page, &plan, class, page.parts(&plan, today())))
    })
}

fn paper(
    page: &ReviewPage,
    plan: &Plan,
    class: String,
    parts: Vec<PaperPart>,
) -> impl IntoView + use<> {
    alone("review");
    let fields = page.title.running_fields();
    let fields = fields
        .map(|field| view! { <li>{field}</li> })
        .collect_view();
    let parts = parts.into_iter().map(|part| {
        let blocks = part.blocks.into_iter().map(block).collect_view();
        view! { <section><h2>{part.heading}</h2>{blocks}</section> }
    });
    view! {
        <article class=class aria-label="Review, as printed">
            <h1>"Review: "{page.title.running_head()}</h1>
            <ul class="review-title">{fields}</ul>
            <PrintedCockpit plan/>
            {parts.collect_view()}
        </article>
    }
}

/// Characters that fit in half a leaf.
const SHORT: usize = 90;

fn block(block: Block) -> AnyView {
    match block {
        Block::Line(words) => view! { <p>{words}</p> }.into_any(),
        Block::Items(all) => items(all),
        Block::Named(name, all) => {
            // Short lines stand in two columns, to spare paper.
            let short = all.iter().all(|words| words.chars().count() < SHORT);
            let class = if short {
                "review-named short"
            } else {
                "review-named"
            };
            view! { <div class=class><h3>{name}</h3>{items(all)}</div> }.into_any()
        }
        Block::Table(heads, rows) => table(heads, rows),
        Block::ToFillIn(name) => {
            view! { <p class="review-fill"><span>{name}</span><span></span></p> }.into_any()
        }
    }
}

fn items(all: Vec<String>) -> AnyView {
    let items = all.into_iter().map(|words| view! { <li>{words}</li> });
    view! { <ul>{items.collect_view()}</ul> }.into_any()
}

fn table(heads: Vec<&'static str>, rows: Vec<Vec<String>>) -> AnyView {
    let heads = heads
        .into_iter()
        .map(|head| view! { <th scope="col">{head}</th> });
    let rows = rows.into_iter().map(|row| {
        let cells = row.into_iter().enumerate().map(|(at, words)| match at {
            0 => view! { <th scope="row">{words}</th> }.into_any(),
            _ => view! { <td>{words}</td> }.into_any(),
        });
        view! { <tr>{cells.collect_view()}</tr> }
    });
    view! {
        <table>
            <thead><tr>{heads.collect_view()}</tr></thead>
            <tbody>{rows.collect_view()}</tbody>
        </table>
    }
    .into_any()
}
