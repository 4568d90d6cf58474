//! The rider's own words and marks: read here, and written by the rider alone.

use leptos::prelude::*;

use super::about::lines;
use super::desk::Desk;
use crate::erase::view_of;
use crate::route::Route;

/// The rider's words.
#[component]
pub fn Voices() -> impl IntoView {
    let desk = Desk::here();
    let said = desk.read(|page| page.own_words.clone());
    let marks = desk.read(|page| page.marks.clone());
    let words = view_of(move || {
        let said = said.get().into_iter();
        let said = said.map(|own| {
            let when = own.when();
            view! { <blockquote><p>{own.text.to_string()}</p><p class="quiet">{when}</p></blockquote> }
        });
        said.collect_view()
    });
    let nothing = view_of(move || {
        (said.with(Vec::is_empty) && marks.with(Vec::is_empty))
            .then(|| view! { <p>"The rider has written nothing yet."</p> })
    });
    let marked = view_of(move || {
        let words = marks.with(|marks| {
            desk.of_plan(|plan| {
                marks
                    .iter()
                    .map(|mark| mark.words(plan))
                    .collect::<Vec<_>>()
            })
        });
        (!words.is_empty()).then(|| view! { <h3>"Marks on buttons"</h3>{lines(words)} })
    });
    view! {
        <section class="review-voices" aria-labelledby="review-words">
            <h2 id="review-words">"The rider’s own words"</h2>
            <p class="quiet">
                "Nobody else can change them. The rider writes them under "
                <a href=format!("{}/own-words", Route::Rider.href())>"Rider"</a>"."
            </p>
            {words}
            {marked}
            {nothing}
        </section>
    }
}
