//! The page with hand details, to be kept apart.

use leptos::prelude::*;
use leverwright_core::sheet::{HandLine, HandPage, Page, SIGNATURE_NOTE, TitleBlock};

use super::page::{Part, SheetPage};
use super::proof::signature;
use super::table::{Table, column, text};

/// The answers, each with where it came from.
#[component]
pub fn HandsPage(hands: HandPage, title: TitleBlock) -> impl IntoView {
    let each = hands
        .hands
        .into_iter()
        .map(|(side, lines)| view! { <Answers heading=format!("The {side} hand") lines/> })
        .collect_view();
    view! {
        <SheetPage page=Page::Hands title>
            <p class="sheet-note">{hands.note}</p>
            {(!hands.icf_note.is_empty()).then(|| view! { <p class="sheet-note">{hands.icf_note}</p> })}
            {each}
            <Answers heading="Asked once".to_owned() lines=hands.once/>
            {(!hands.own_words.is_empty()).then(|| view! {
                <Part heading="In the rider’s words"><p>{hands.own_words}</p></Part>
            })}
            <Part heading="Not assessed here"><p>{hands.not_assessed.join(", ")} "."</p></Part>
            <Part heading="Seen by" class="sheet-sign-off">
                <p class="sheet-note">{SIGNATURE_NOTE}</p>
                <div class="sheet-signer">{signature(hands.sign)}</div>
            </Part>
        </SheetPage>
    }
}

#[component]
fn Answers(heading: String, lines: Vec<HandLine>) -> impl IntoView {
    let columns = vec![
        column("Asked", "name"),
        column("Answer", "wide"),
        column("Source", "who"),
        column("Date", "date"),
        column("Worn", "who"),
    ];
    let rows = lines
        .into_iter()
        .map(|line| {
            vec![
                text(line.asked),
                text(match line.before.is_empty() {
                    true => line.answer,
                    false => format!("{}; {}", line.answer, line.before),
                }),
                text(line.source),
                text(line.date),
                text(line.worn),
            ]
        })
        .collect();
    view! {
        <section class="sheet-part sheet-answers">
            <h3 class="part-name">{heading.clone()}</h3>
            <Table label=heading columns rows/>
        </section>
    }
}
