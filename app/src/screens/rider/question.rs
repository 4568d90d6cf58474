//! One question, asked of both hands.

use crate::erase::{When, flag, memo};
use leptos::prelude::*;
use leverwright_core::Vocabulary;
use leverwright_core::rider::{Question, Side};

use super::Desk;
use super::hand_column::HandColumn;

/// One question with its answers for the left and the right hand.
#[component]
pub fn QuestionCard(question: &'static Question) -> impl IntoView {
    let desk = Desk::here();
    let open = memo(move || desk.rider.with(|rider| question.open_hands(rider)));
    let id = format!("question-{}", question.id.code());
    let labelled_by = id.clone();
    view! {
        <section class="question" aria-labelledby=labelled_by>
            <h3 id=id>{question.ask}</h3>
            <p class="question-state">
                {move || match open.get().as_slice() {
                    [] => "Answered".to_owned(),
                    [side] => format!("Still open for the {side} hand"),
                    _ => "Still open".to_owned(),
                }}
                <When holds={flag(move || desk.clinical.get())}>
                    <span class="code">{format!(" · {}", question.icf_words())}</span>
                </When>
            </p>
            <div class="hands">
                {Side::ALL.iter().map(|side| view! { <HandColumn question side=*side/> }).collect_view()}
            </div>
        </section>
    }
}
