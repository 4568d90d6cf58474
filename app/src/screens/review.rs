//! The Review screen: what a therapist reads in ten minutes, in the order of
//! reading, and decides; and how the plan came to be what it is.

mod about;
mod comments;
mod decide;
mod decided;
mod demands;
mod desk;
mod drawn;
mod entry_acts;
mod fields;
mod hand_use;
mod paper;
mod revisions;
mod seat;
mod stopping;
mod trial;
mod voices;

use leptos::prelude::*;
use leverwright_core::review::ReviewPage;

use crate::erase::{memo, text, view_of};
use crate::focus::focus_field_soon;
use crate::widgets::NoPlan;
use crate::workspace::Workspace;
use about::About;
use comments::Comments;
use decide::Decide;
use decided::Records;
use demands::Demands;
use desk::Desk;
use drawn::Drawn;
use hand_use::{HandUse, OffTheBar};
use paper::{OnPaper, ReviewPaper};
use revisions::Revisions;
use seat::Seat;
use stopping::StoppingTable;
use voices::Voices;

/// The Review screen.
#[component]
pub fn ReviewScreen() -> impl IntoView {
    let workspace = Workspace::here();
    let is_open = memo(move || workspace.plan.with(Option::is_some));
    provide_context(Desk::new(workspace));
    view! {
        <h1>"Review"</h1>
        {view_of(move || match is_open.get() {
            true => view! { <Open/> }.into_any(),
            false => view! { <NoPlan/> }.into_any(),
        })}
    }
}

#[component]
fn Open() -> impl IntoView {
    view! {
        <p class="lead">
            "What this layout asks of each hand, beside what is known of the hands: to be read in ten \
            minutes, commented, and decided in words that can be defended."
        </p>
        <Seat/>
        <Parts/>
        <div class="review">
            <div class="review-parts">
                <About/>
                <StoppingTable/>
                <Demands/>
                <OffTheBar/>
                <Voices/>
                <HandUse/>
                <Comments/>
                <Decide/>
                <Records/>
                <Revisions/>
                <OnPaper/>
            </div>
            <Drawn/>
        </div>
        <ReviewPaper/>
    }
}

/// The parts of the page: the name of each heading, and its words.
const PARTS: [(&str, &str); 11] = [
    ("review-about", "Revision and answers"),
    ("review-stopping", "Stopping"),
    ("review-demands", "What is asked of each hand"),
    ("review-off", "Hand off the bar"),
    ("review-words", "The rider’s own words"),
    ("review-use", "Findings about hand use"),
    ("review-comments", "Comments"),
    ("review-decide", "The decision"),
    ("review-records", "Decisions on record"),
    ("review-revisions", "Revision history"),
    ("review-paper", "Print"),
];

/// How much there is to look at in a part; none where counting says nothing.
fn count(page: &ReviewPage, part: &str) -> Option<usize> {
    match part {
        "review-off" => Some(page.off_the_bar.len()),
        "review-words" => Some(page.own_words.len() + page.marks.len()),
        "review-use" => Some(page.open.len()),
        "review-comments" => Some(page.comments.len()),
        "review-records" => Some(page.decided.len()),
        _ => None,
    }
}

#[component]
fn Parts() -> impl IntoView {
    let desk = Desk::here();
    let links = PARTS.map(|(id, words)| {
        let lead = move |_| focus_field_soon(id.to_owned());
        let label = text(move || {
            let count = desk.page.with(|page| count(page.as_deref()?, id));
            match count {
                Some(count) => format!("{words} ({count})"),
                None => words.to_owned(),
            }
        });
        view! { <li><a href=format!("#/review/{id}") on:click=lead>{label}</a></li> }
    });
    view! {
        <nav class="review-nav" aria-label="Parts of this page">
            <ul>{links.collect_view()}</ul>
        </nav>
    }
}
