//! Afterwards: what came of it, what the rider says, keep or throw away.

use leptos::prelude::*;
use leverwright_core::practice::Report;

use super::desk::PracticeDesk;
use super::keep;
use super::marks::Marks;
use crate::erase::{act, view_of};

/// What came of a session.
#[component]
pub fn Results() -> impl IntoView {
    let desk = PracticeDesk::here();
    desk.shows_marks.set(true);
    let report = desk
        .plan()
        .zip(desk.result())
        .map(|(plan, result)| Report::of(&plan, &result));
    view! {
        <section class="practice-results" aria-labelledby="practice-results">
            <h2 id="practice-results" tabindex="-1">"How it went"</h2>
            {report.map(|report| view! { <Facts report/> })}
            <div class="acts practice-keep">
                <button type="button" class="main" on:click=act(move || {
                    if keep::keep(desk) {
                        desk.back();
                    }
                })>"Keep"</button>
                <button type="button" on:click=act(move || {
                    desk.back();
                    desk.workspace.report("Thrown away. Nothing of it is kept.");
                })>"Throw away"</button>
            </div>
            <p class="quiet">
                "Kept with this layout in your plan, and yours: it goes along with links and files \
                only once you send it."
            </p>
            <h3>"Say what you think of a button"</h3>
            <Marks/>
        </section>
    }
}

/// The facts, in words and numbers.
#[component]
pub fn Facts(report: Report) -> impl IntoView {
    let late = report
        .late
        .map(|late| fact("Answered late", late.to_string()));
    let contacts = report.contacts.into_iter().map(|(contact, times)| {
        view! { <li><span>{contact}</span><span class="count">{times}</span></li> }
    });
    let contacts = contacts.collect_view();
    let confuses = report.confuses;
    let none = confuses.is_empty();
    let confuses = confuses.into_iter().map(|line| view! { <li>{line}</li> });
    let confuses = confuses.collect_view();
    view! {
        <dl class="facts">
            {fact("Right first time", report.right_first)}
            {fact("Wrong button", report.wrong.to_string())}
            {late}
        </dl>
        <div class="practice-lists">
            <div>
                <h3>"Presses by hand and finger"</h3>
                <ul class="counts">{contacts}</ul>
            </div>
            <div>
                <h3>"What confuses"</h3>
                {view_of(move || none.then(|| view! { <p>"No button was taken for another."</p> }))}
                <ul>{confuses}</ul>
            </div>
        </div>
    }
}

fn fact(what: &'static str, words: String) -> impl IntoView {
    view! { <div><dt>{what}</dt><dd>{words}</dd></div> }
}
